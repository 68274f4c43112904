import type { FileUnits } from "@scantling/geometry/units";
import type { Measured } from "../measure.js";
import { type ReportStation, stationsOf } from "../stations.js";
import {
  inBoth,
  lengthText,
  massText,
  otherUnits,
  partMassText,
  percentText,
  range,
  volumeText,
} from "./figures.js";
import { inputWords } from "./input-words.js";
import { layOutTable, wrap } from "./layout.js";
import { densityLines } from "./materials.js";
import { stationLines } from "./stations.js";

/** Causes that are shown; the rest are summed up. */
const MOST_CAUSES = 6;

/**
 * The weight for people: the parts, the knife with its interval, the balance, what the interval comes from, and what is
 * found at stations along the blade.
 */
export function weighText(
  measured: Measured,
  stations: readonly ReportStation[] = stationsOf(measured.knife),
): string[] {
  const { weight, interval, job } = measured;
  const { units } = job;
  const { steel, knife, parts } = weight;
  const other = otherUnits(units);
  const rows = parts.map(({ name, mass, centre }) => [
    name,
    partMassText(mass, units),
    partMassText(mass, other),
    lengthText(centre.x, units),
  ]);
  return [
    ...layOutTable(
      [
        ["", "mass", "", "centre, from heel"],
        ...rows,
        [
          "whole knife",
          partMassText(knife.mass, units),
          partMassText(knife.mass, other),
          lengthText(knife.balanceFromHeel, units),
        ],
      ],
      ["left", "right", "right", "right"],
    ),
    "",
    ...wrap(`Mass: 95 in 100 such knives weigh ${range(massText, interval.massInterval, units)}.`),
    ...balanceLines(measured, units),
    ...wrap(`Steel: ${inBoth(volumeText, steel.volume, units)}, blade and tang in one piece.`),
    ...densityLines(job.spec, units),
    "",
    ...causeLines(measured),
    "",
    ...stationLines(measured, stations),
  ];
}

/** Where the knife balances, from both places that a smith measures from. */
export function balanceLines({ weight, interval }: Measured, units: FileUnits): string[] {
  const { balanceFromHeel, balanceFromHandle } = weight.knife;
  return wrap(
    `Balance: ${place(balanceFromHeel, units)} the heel, ${place(balanceFromHandle, units)} the handle front; 95 in 100: ${placeRange(interval.balanceInterval, units)} the heel.`,
  );
}

function place(x: number, units: FileUnits): string {
  return `${lengthText(Math.abs(x), units)} ${x < 0 ? "behind" : "ahead of"}`;
}

function placeRange([low, high]: readonly [number, number], units: FileUnits): string {
  if (low >= 0) return `${range(lengthText, [low, high], units)} ahead of`;
  if (high <= 0) return `${range(lengthText, [-high, -low], units)} behind`;
  return `from ${place(low, units)} to ${place(high, units)}`;
}

/** The inputs that the mass interval comes from, largest first, in one sentence. */
export function causeLines({ interval, job }: Measured): string[] {
  const shown = interval.contributions.slice(0, MOST_CAUSES);
  const rest = interval.contributions.slice(MOST_CAUSES).reduce((sum, { share }) => sum + share, 0);
  if (shown.length === 0) return [];
  const causes = [
    ...shown.map(({ input, share }) => `${inputWords(input, job.spec)} ${percentText(share)}`),
    ...(rest > 0 ? [`all others ${percentText(rest)}`] : []),
  ];
  return wrap(`The band comes from: ${causes.join(", ")}.`, undefined, "  ");
}
