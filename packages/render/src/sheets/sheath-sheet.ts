import { formatNumber } from "@scantling/geometry/units";
import { cleanText } from "../clean-text.js";
import type { DrawingItem } from "../drawing.js";
import { fitText } from "../fit-text.js";
import { type DualText, lengthText, onOneLine, sizeText } from "../label-text.js";
import { steelColumns } from "../lay-out/footprint.js";
import { type Part, tablePart } from "../lay-out/part.js";
import { type SheetContent, type SheetView, viewOf } from "../lay-out/sheet-content.js";
import { SMALL } from "../lettering-size.js";
import type { SheathModel } from "../models/sheath-model.js";
import { silhouetteOf } from "../silhouette.js";
import type { TableContent } from "../table.js";
import { orderFields, orderTitle } from "./order-words.js";
import { blockSize, partOf, small, textBlock } from "./part-of.js";
import { sheathItems, stitchCentres, weltItems } from "./sheath/view.js";
import { inTwoLines } from "./two-lines.js";
import { printWords } from "./words.js";

/**
 * A fold-over sheath at true size: the leather laid flat with its fold, the finished edge and the stitches, the welt beside it,
 * and the blade where it lies.
 *
 * @example
 * layOutSheet(sheathContents(model), { kind: "smallest", papers: papersFor("mm") }).length; // 1
 */
export function sheathContents(model: SheathModel): SheetContent[] {
  const { sheath, units } = model;
  const welt = weltItems(model);
  const beside = [sideParts(model, false), sideParts(model, true)];
  // On paper that has no room for both the welt may stand on a page of its own, and the sheath need not be joined.
  const tip = sheath.blade.reduce((a, { to }) => (to.x > a.x ? to : a), { x: sheath.mouth, y: sheath.fold });
  const showing = (items: readonly DrawingItem[]): SheetView =>
    viewOf(items, {
      solid: steelColumns(silhouetteOf(sheath.blank)),
      features: [tip, { x: sheath.mouth, y: sheath.fold }],
      punched: stitchCentres(sheath),
    });
  const both = showing([...sheathItems(model), ...welt]);
  const alone = showing(sheathItems(model));
  const versions = [
    ...beside.map((parts) => ({ view: both, parts })),
    ...beside.map((parts) => ({
      view: alone,
      parts: [{ ...partOf("welt", welt), trueSize: true }, ...parts],
    })),
  ];
  return versions.map(
    ({ view, parts }): SheetContent => ({
      name: "sheath",
      units: units,
      trueSize: true,
      trueLine: "True size is the middle of the cut line.",
      title: orderTitle(model, "sheath"),
      describe: ({ paper }) =>
        cleanText(
          `A fold-over sheath laid flat, ${onOneLine(lengthText(2 * sheath.halfWidth, units))} wide at the mouth, with its fold dashed, ` +
            `the finished edge, ${sheath.stitches.length} stitch holes on each half, and the welt. ${printWords(paper)}.`,
        ),
      fields: (page) =>
        orderFields(
          model,
          [
            ["Leather", onOneLine(sizeText(sheath.sizes.leather, units))],
            ["Lines", "cut outside; fold dashed"],
          ],
          page,
        ),
      view,
      parts,
    }),
  );
}

/** Sizes and notes with their words whole, or narrow, so that they have room beside the view. */
const sideParts = (model: SheathModel, narrow: boolean): Part[] => [
  tablePart("sheath-sizes", sizes(model, narrow)),
  notes(narrow ? NOTES_WIDTH.narrow : NOTES_WIDTH.wide),
];

/** Widths of the notes, mm. */
const NOTES_WIDTH = { wide: 104, narrow: 66 } as const;
const MOST_LINES = 4;

function sizes({ sheath, units }: SheathModel, narrow: boolean): TableContent {
  const caliper = (mm: number): DualText => sizeText(mm, units);
  const row = (long: string, short: string, size: DualText): string[][] =>
    narrow ? inTwoLines([short, size]) : [[long, onOneLine(size)]];
  const { welt, trim, stitchInset, leather } = sheath.sizes;
  const holes = sheath.stitches.length;
  const pitch = caliper(Math.round(sheath.stitchPitch * 100) / 100);
  const layers = formatNumber(sheath.weltLayers, 1);
  return {
    caption: "Sheath",
    header: ["From the blade outward", "Size"],
    rows: [
      ...row("Welt, blade to finished edge", "Welt, to finished edge", caliper(welt)),
      ...row("Stitches inside the finished edge", "Stitches inside that", caliper(stitchInset)),
      ...(narrow
        ? inTwoLines([`${holes} holes a half, apart`, pitch])
        : [["Stitch holes in each half", `${holes}, ${onOneLine(pitch)} apart`]]),
      ...row("Trim, sanded off after gluing", "Trim, sanded off", caliper(trim)),
      ...row(
        sheath.weltLayers === 1 ? "Welt, cut 1, thick" : `Welt, cut ${layers}, together thick`,
        `Welt, cut ${layers}, thick`,
        caliper(sheath.weltLayers * leather),
      ),
      ...row("Blade at its thickest", "Blade, thickest", caliper(sheath.bladeThickness)),
      ...row("Mouth, clear height", "Mouth, clear", caliper(sheath.mouthHeight)),
      ...row("Blade at its highest", "Blade, highest", caliper(sheath.bladeHeight)),
    ],
  };
}

function notes(width: number): Part {
  const lines = [
    "Dash and two dots: the blade. Everything that passes the mouth keeps clear of the welt.",
    "Glue in the welt, fold, stitch, trim to the finished edge.",
    "The edge must meet the welt, never the thread.",
    "Try it with a card dummy of the blade before cutting.",
    "CAUTION: tape the edge while fitting; keep fingers off the edge side when drawing the knife.",
  ].flatMap((text) => fitText(text, SMALL, width, MOST_LINES).map(small));
  return partOf("sheath-notes", textBlock(lines, { left: 0, top: blockSize(lines).height }));
}
