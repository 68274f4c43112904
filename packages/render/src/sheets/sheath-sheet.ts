import { formatNumber } from "@scantling/geometry/units";
import { cleanText } from "../clean-text.js";
import { caliperText, lengthText, onOneLine } from "../label-text.js";
import { steelColumns } from "../lay-out/footprint.js";
import { type Part, tablePart } from "../lay-out/part.js";
import { type SheetContent, viewOf } from "../lay-out/sheet-content.js";
import type { SheathModel } from "../models/sheath-model.js";
import { silhouetteOf } from "../silhouette.js";
import type { TableContent } from "../table.js";
import { orderFields, orderTitle } from "./order-words.js";
import { blockSize, partOf, small, textBlock } from "./part-of.js";
import { sheathItems } from "./sheath/view.js";
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
  const items = sheathItems(model);
  const tip = sheath.blade.reduce((a, { to }) => (to.x > a.x ? to : a), { x: sheath.mouth, y: sheath.fold });
  return [
    {
      name: "sheath",
      units: units,
      trueSize: true,
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
            ["Leather", onOneLine(caliperText(sheath.sizes.leather, units))],
            ["Lines", "cut outside; fold dashed"],
          ],
          page,
        ),
      view: viewOf(items, {
        solid: steelColumns(silhouetteOf(sheath.blank)),
        features: [tip, { x: sheath.mouth, y: sheath.fold }],
      }),
      parts: [tablePart("sheath-sizes", sizes(model)), notes()],
    },
  ];
}

function sizes({ sheath, units }: SheathModel): TableContent {
  const caliper = (mm: number): string => onOneLine(caliperText(mm, units));
  const { welt, trim, stitchInset, leather } = sheath.sizes;
  return {
    caption: "Sheath",
    header: ["From the blade outward", "Size"],
    rows: [
      ["Welt, blade to finished edge", caliper(welt)],
      ["Stitches inside the finished edge", caliper(stitchInset)],
      [
        "Stitch holes in each half",
        `${sheath.stitches.length}, ${onOneLine(caliperText(Math.round(sheath.stitchPitch * 100) / 100, units))} apart`,
      ],
      ["Trim, sanded off after gluing", caliper(trim)],
      [
        `Welt of ${sheath.weltLayers === 1 ? "one layer" : `${formatNumber(sheath.weltLayers, 1)} layers`}`,
        caliper(sheath.weltLayers * leather),
      ],
      ["Blade at its thickest", caliper(sheath.bladeThickness)],
      ["Mouth, clear height", caliper(sheath.mouthHeight)],
      ["Blade at its highest", caliper(sheath.bladeHeight)],
    ],
  };
}

function notes(): Part {
  const lines = [
    "Dash and two dots: the blade. Everything that passes the",
    "mouth keeps clear of the welt.",
    "The edge must meet the welt, never the thread.",
    "Try it with a card dummy of the blade before cutting.",
    "CAUTION: tape the edge while fitting; keep fingers off the",
    "edge side when drawing the knife.",
  ].map(small);
  return partOf("sheath-notes", textBlock(lines, { left: 0, top: blockSize(lines).height }));
}
