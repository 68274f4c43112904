import { type ForgeCard, thermalElongation } from "@scantling/geometry";
import { type FileUnits, formatTemperature, inchesToMm } from "@scantling/geometry/units";
import { beside } from "./beside.js";
import { fixed, inBoth } from "./figures.js";
import { layOutTable, wrap } from "./layout.js";
import { type PreformPlace, preformPlaces, withoutStraight } from "./preform-places.js";
import { hammeredText, placeCell, ruleCell, ruleText, unitless } from "./setup-sizes.js";
import { bare, rightAligned, stopsKnown, withLayIn } from "./setup-stops.js";

/** Steps along the preform that a rule lays off: 25 mm, 1 in. */
const STEP: Readonly<Record<FileUnits, number>> = { mm: 25, in: inchesToMm(1) };
/** A long blade is told in longer steps. */
const MOST_STEPS = 10;

/** So wide a table stands beside that of the preform. */
const TAPER_WIDTH = 42;

/** The preform before its bevels, and beside it the distal taper. */
export function shapeLines(card: ForgeCard, units: FileUnits): string[] {
  const { temperature } = card;
  const longer = `${fixed(thermalElongation(temperature) * 100, 1)} %`;
  return [
    ...wrap(
      `Preform, before the bevels: cold sizes, hot ${longer} more. At: from the shoulder; then: bevelled, from the heel. ${bendText(card, units)}`,
      undefined,
      "  ",
    ),
    ...beside(preformTable(card, units), taperTable(card, units), 78).map((line) => `  ${line}`.trimEnd()),
  ];
}

/** A point that lies lower or higher than the heel by less is level with it, mm. */
const LEVEL = 0.5;

/** How low the spine side of the point is forged; `write`: how far, as on a rule. */
export function pointText({ pointDrop }: ForgeCard, write: (mm: number) => string): string {
  const off = write(Math.abs(pointDrop));
  const place = Math.abs(pointDrop) < LEVEL ? "level with" : `${off} ${pointDrop > 0 ? "below" : "above"}`;
  return `Forge the point's spine side ${place} that of the heel.`;
}

function bendText(card: ForgeCard, units: FileUnits): string {
  const { preCurve } = card;
  const bend =
    preCurve === undefined
      ? "Bevels lift it: measure (preCurve in the shop file)."
      : `Bend the point down by ${inBoth(ruleText, preCurve, units)} more: the bevels lift it.`;
  return `${pointText(card, (mm) => inBoth(ruleText, mm, units))} ${bend}`;
}

function preformTable(card: ForgeCard, units: FileUnits): string[] {
  return layOutTable(preformRows(card, units), rightAligned(5));
}

/** Sizes along the preform, heads first: where, how high and thick; where it ends once the bevels are in, and how high. */
export const preformRows = (card: ForgeCard, units: FileUnits): string[][] =>
  preformCells(preformPlaces(card, stepOf(card, units)), units);

/** The same without the rows that lie on the straight line between others: a smith draws from row to row. */
export const fewerPreformRows = (card: ForgeCard, units: FileUnits): string[][] =>
  preformCells(withoutStraight(preformPlaces(card, stepOf(card, units)), units), units);

function stepOf({ preform }: ForgeCard, units: FileUnits): number {
  const end = preform.at(-1)?.at ?? 0;
  return STEP[units] * Math.max(1, Math.ceil(end / STEP[units] / MOST_STEPS));
}

const preformCells = (places: readonly PreformPlace[], units: FileUnits): string[][] => [
  [`at ${units}`, "high", "thick", "then at", "high"],
  ...places.map(({ at, high, thick, thenAt, thenHigh }) => [
    placeCell(at, units),
    ruleCell(high, units),
    unitless(hammeredText(thick, units)),
    placeCell(thenAt, units),
    ruleCell(thenHigh, units),
  ]),
];

/** Thickness at the spine. */
function taperTable(card: ForgeCard, units: FileUnits): string[] {
  const { taper } = card;
  const stops = stopsKnown(taper) ? taper.map((stop) => [stop]) : undefined;
  // Beside the preform there is no room for both places: those before the bevels count while it is pressed.
  const rows = taperRows(card, units).map((row) => row.toSpliced(1, 1));
  const table = withLayIn(rows, stops, units, TAPER_WIDTH);
  return ["Distal taper at the spine", ...table];
}

/** The same as rows, heads first; places as in {@link preformRows}. */
export function taperRows({ taper, temperature }: ForgeCard, units: FileUnits): string[][] {
  const known = stopsKnown(taper);
  const rows = taper.map(({ x, at, cold, hot, wanted, out }) => [
    placeCell(at, units),
    placeCell(x, units),
    bare(cold, units),
    ...(known ? [out === undefined ? "–" : bare(out.cold, units)] : [bare(hot, units), bare(wanted, units)]),
  ]);
  const heads = known
    ? [`at ${units}`, "then at", "wish", "out"]
    : [`at ${units}`, "then at", "cold", `at ${formatTemperature(temperature, units)}`, "stop"];
  return [heads, ...rows];
}
