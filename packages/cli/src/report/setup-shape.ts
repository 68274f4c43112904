import { type ForgeCard, preformSteps, thermalElongation } from "@scantling/geometry";
import { type FileUnits, formatTemperature, inchesToMm } from "@scantling/geometry/units";
import { beside } from "./beside.js";
import { fixed } from "./figures.js";
import { layOutTable, wrap } from "./layout.js";
import { anvilText, hammeredText, inBothUnits, unitless } from "./setup-sizes.js";
import { bare, rightAligned, stopsKnown, withLayIn } from "./setup-stops.js";

/** Steps along the preform that a rule lays off: 25 mm, 1 in. */
const STEP: Readonly<Record<FileUnits, number>> = { mm: 25, in: inchesToMm(1) };
/** A long blade is told in longer steps. */
const MOST_STEPS = 10;

/** So wide a table stands beside that of the preform. */
const TAPER_WIDTH = 42;

/** The preform before its bevels, and beside it the distal taper. */
export function shapeLines(card: ForgeCard, units: FileUnits): string[] {
  const { temperature, preCurve } = card;
  const longer = `${fixed(thermalElongation(temperature) * 100, 1)} %`;
  const bend =
    preCurve === undefined
      ? "The point comes up with the bevels: measure how far (preCurve in the shop file)."
      : `Bend the point down by ${inBothUnits(anvilText, preCurve, units)} before the bevels go in.`;
  return [
    ...wrap(
      `Preform, before the bevels: cold sizes, hot ${longer} more. At: from the shoulder; then: with the bevels in, from the heel.`,
      undefined,
      "  ",
    ),
    ...wrap(`  ${bend}`, undefined, "  "),
    ...beside(preformTable(card, units), taperTable(card, units), 78).map((line) => `  ${line}`.trimEnd()),
  ];
}

function preformTable(card: ForgeCard, units: FileUnits): string[] {
  return layOutTable(preformRows(card, units), rightAligned(5));
}

/**
 * Sizes along the preform, heads first: where, how high and thick; where it ends once the bevels are in, and how high.
 *
 * @param most - Steps along the preform at the most.
 */
export function preformRows(
  { preform, spreadShare }: ForgeCard,
  units: FileUnits,
  most = MOST_STEPS,
): string[][] {
  const end = preform.at(-1)?.at ?? 0;
  const step = STEP[units] * Math.max(1, Math.ceil(end / STEP[units] / most));
  const long = (mm: number): string => unitless(anvilText(mm, units)).replace(/^-/u, "−");
  const rows = preformSteps(preform, step).map((station) => [
    long(station.at),
    long(station.height),
    unitless(hammeredText(station.thickness, units)),
    long(station.x),
    long(station.height * (station.thickness / station.meanThickness) ** spreadShare),
  ]);
  return [[`at ${units}`, "high", "thick", "then at", "high"], ...rows];
}

/** Thickness at the spine. Distances from the heel. */
function taperTable(card: ForgeCard, units: FileUnits): string[] {
  const { taper } = card;
  const stops = stopsKnown(taper) ? taper.map((stop) => [stop]) : undefined;
  const table = withLayIn(taperRows(card, units), stops, units, TAPER_WIDTH);
  return ["Distal taper at the spine, from the heel", ...table];
}

/** The same as rows, heads first. */
export function taperRows({ taper, temperature }: ForgeCard, units: FileUnits): string[][] {
  const known = stopsKnown(taper);
  const rows = taper.map(({ x, cold, hot, wanted, out }) => [
    unitless(anvilText(x, units)),
    bare(cold, units),
    ...(known ? [out === undefined ? "–" : bare(out.cold, units)] : [bare(hot, units), bare(wanted, units)]),
  ]);
  const heads = known
    ? [`at ${units}`, "wish", "out"]
    : [`at ${units}`, "cold", `at ${formatTemperature(temperature, units)}`, "stop"];
  return [heads, ...rows];
}
