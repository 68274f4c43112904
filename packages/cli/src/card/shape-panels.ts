import type { ForgeCard } from "@scantling/geometry";
import { type FileUnits, formatCaliper, formatTemperature } from "@scantling/geometry/units";
import type { CardBlock, CardCell, CardPanel } from "@scantling/render";

import { fewerPreformRows, pointText, taperRows } from "../report/setup-shape.js";
import { hammeredText, ruleText, unitless } from "../report/setup-sizes.js";
import { stopsKnown } from "../report/setup-stops.js";
import {
  BOX,
  bareCaliper,
  type CardUnits,
  figures,
  laidCell,
  laidHead,
  panel,
  passTable,
  STOP,
  table,
  withOther,
  words,
} from "./card-blocks.js";

/** From the marked billet to the forged blade. */
export const shapePanels = (card: ForgeCard, units: CardUnits): CardPanel[] => [
  ...shoulderPanel(card, units),
  ...downPanel(card, units),
  ...preformPanel(card, units),
  ...taperPanel(card, units),
];

function shoulderPanel(card: ForgeCard, cardUnits: CardUnits): CardPanel[] {
  const { units, other } = cardUnits;
  const { shoulder, tang } = card;
  const bare = (mm: number): string => unitless(hammeredText(mm, units));
  const size = ({ height, thickness }: typeof tang.front): string => `${bare(height)} × ${bare(thickness)}`;
  const middle = tang.middle === undefined ? "" : `, ${size(tang.middle)} in the middle`;
  const fillet =
    tang.fillet === undefined ? "" : ` behind the radius of ${ruleText(tang.fillet, units)} in its corners`;
  const drawn = words(
    `Then draw the handle ${withOther(ruleText, tang.length, units, other)} long: ${size(tang.front)} at the shoulder${fillet}${middle}, ${size(tang.butt)} at the butt.`,
  );
  const [first] = shoulder.passes;
  if (first === undefined) return panel("Handle", `cold, ${units}`, [words("No shoulder to set in."), drawn]);
  const heads = ["pass", "in at edge", "in at spine", "high", "thick", "fuller radius"];
  const rows = shoulder.passes.map((pass, index) => [
    `${index + 1}.`,
    pass.edgeSide > 0 ? bare(pass.edgeSide) : "–",
    pass.spineSide > 0 ? bare(pass.spineSide) : "–",
    bare(pass.height),
    thickAfter(card, index, units),
    bare(pass.fuller),
  ]);
  const pressed = stopsKnown(card.handle.passes) ? stopCells(card, cardUnits) : undefined;
  return panel("Shoulder and handle", `cold, ${units}`, [
    ...(pressed === undefined
      ? table(heads, rows)
      : table(
          [...heads, pressed.head],
          rows.map((row, index) => [...row, pressed.cells[index] ?? "–"]),
        )),
    drawn,
  ]);
}

/** What the press leaves where the stops are known; else what is meant. */
function thickAfter(
  { shoulder, shoulderPressing, handle }: ForgeCard,
  index: number,
  units: FileUnits,
): string {
  const meant = shoulder.passes[index]?.thickness ?? 0;
  return stopsKnown(handle.passes)
    ? bareCaliper(shoulderPressing[index]?.thickness ?? meant, units)
    : unitless(hammeredText(meant, units));
}

/** Beside the passes of the fuller those of the press: by their numbers where the blade has the same below. */
function stopCells({ handle, thickness, shoulderPressing }: ForgeCard, units: CardUnits): StopCells {
  if (handle.passes !== thickness.passes)
    return { head: laidHead(units), cells: shoulderPressing.map(({ passes }) => laidCell(passes, units)) };
  return {
    head: "press pass",
    cells: shoulderPressing.map(({ passes }) =>
      passes.length === 0 ? "–" : passes.map((pass) => thickness.passes.indexOf(pass) + 1).join(", "),
    ),
  };
}

interface StopCells {
  readonly head: string;
  readonly cells: readonly string[];
}

function downPanel({ thickness }: ForgeCard, cardUnits: CardUnits): CardPanel[] {
  const { units } = cardUnits;
  const { from, to, passes } = thickness;
  if (passes.length === 0) return [];
  return panel("Press the blade down", `stops, ${units}`, [
    words(`From ${formatCaliper(from, units)} to ${formatCaliper(to, units)} cold, at the heel.`),
    ...passTable(thickness, cardUnits),
  ]);
}

function preformPanel(card: ForgeCard, { units, other }: CardUnits): CardPanel[] {
  const [, ...rows] = fewerPreformRows(card, units);
  const bend: CardBlock =
    card.preCurve === undefined
      ? figures({ label: "The bevels lift the point by", boxes: [units] })
      : figures({
          label: "First bend it down more, by",
          figure: withOther(ruleText, card.preCurve, units, other),
        });
  return panel("Preform, then bevels", `cold, ${units}`, [
    ...table(["from shoulder", "high", "thick", "bevelled: from heel", "bevelled: high"], rows),
    words(pointText(card, (mm) => withOther(ruleText, mm, units, other))),
    bend,
  ]);
}

function taperPanel(card: ForgeCard, cardUnits: CardUnits): CardPanel[] {
  const { units } = cardUnits;
  const { taper, temperature } = card;
  const [, ...rows] = taperRows(card, units);
  const known = stopsKnown(taper);
  const heads = known
    ? ["from shoulder", "cold", laidHead(cardUnits), "measured"]
    : ["from shoulder", "cold", `at ${formatTemperature(temperature, units)}`, STOP, "measured"];
  const cells = rows.map(([place = "", , ...row], index): CardCell[] => {
    const stop = taper[index];
    const laid = known ? [stop === undefined ? "–" : laidCell([stop], cardUnits)] : [];
    // Where a place comes to with the bevels in, the preform says; what comes out of the stops a note does, where it matters.
    return [place, ...(known ? row.slice(0, 1) : row), ...laid, BOX];
  });
  return panel("Taper at the spine", `caliper, ${known ? "cold, " : ""}${units}`, table(heads, cells));
}
