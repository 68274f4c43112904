import type { KnifeSpec } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { Measured } from "../measure.js";
import { type ReportStation, stationsOf } from "../stations.js";
import {
  fineMassText,
  inBoth,
  lengthText,
  massText,
  otherUnits,
  percentText,
  placeText,
  range,
  volumeText,
} from "./figures.js";
import { inputWords } from "./input-words.js";
import { layOutTable, wrap } from "./layout.js";
import { densityLines } from "./materials.js";
import { stationLines } from "./stations.js";

/** Places nearer than this are one, mm. */
const SAME_PLACE = 0.005;
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
    fineMassText(mass, units),
    fineMassText(mass, other),
    lengthText(centre.x, units),
  ]);
  return [
    ...layOutTable(
      [
        ["", "mass", "", "centre, from heel"],
        ...rows,
        [
          "whole knife",
          fineMassText(knife.mass, units),
          fineMassText(knife.mass, other),
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
    ...balanceCauseLines(measured),
    "",
    ...stationLines(measured, stations),
  ];
}

/** Where the knife balances, from both places that a smith measures from. */
export function balanceLines({ weight, interval }: Measured, units: FileUnits): string[] {
  const { balanceFromHeel, balanceFromHandle } = weight.knife;
  const ofHeel = placeText(balanceFromHeel, units);
  const together = Math.abs(balanceFromHandle - balanceFromHeel) < SAME_PLACE;
  const fromHandle = together
    ? ` and ${ofHeel.endsWith("ahead of the heel") ? "of " : ""}the handle front`
    : `, ${placeText(balanceFromHandle, units, "the handle front")}`;
  return wrap(`Balance: ${ofHeel}${fromHandle}; 95 in 100: ${placeRange(interval.balanceInterval, units)}.`);
}

/** From the nearer to the farther, where both lie on one side. */
function placeRange([low, high]: readonly [number, number], units: FileUnits): string {
  const [first, last] = [placeText(low, units), placeText(high, units)];
  if (first === last) return first;
  if (first === AT_HEEL || last === AT_HEEL) return `from the heel to ${first === AT_HEEL ? last : first}`;
  if (low < 0 && high > 0) return `from ${first.replace(/ the heel$/u, "")} to ${last}`;
  return high < 0 ? `${lengthText(-high, units)} to ${first}` : `${lengthText(low, units)} to ${last}`;
}

const AT_HEEL = placeText(0, "mm");

/** The inputs that the interval of the mass comes from, largest first, in one sentence. */
export function causeLines({ interval, job }: Measured): string[] {
  const shares = interval.contributions.map(({ input, share }) => ({ input, share }));
  return causes("The band", shares, job.spec);
}

/** The same for the balance: what moves it need not move the mass. */
export function balanceCauseLines({ interval, job }: Measured): string[] {
  const shares = interval.contributions
    .map(({ input, balanceShare }) => ({ input, share: balanceShare }))
    .sort((a, b) => b.share - a.share);
  return causes("That of the balance", shares, job.spec);
}

function causes(
  band: string,
  shares: readonly { readonly input: string; readonly share: number }[],
  spec: KnifeSpec,
): string[] {
  const shown = shares.slice(0, MOST_CAUSES);
  const rest = shares.slice(MOST_CAUSES).reduce((sum, { share }) => sum + share, 0);
  if (shown.length === 0) return [];
  const list = [
    ...shown.map(({ input, share }) => `${inputWords(input, spec)} ${percentText(share)}`),
    ...(rest > 0 ? [`all others ${percentText(rest)}`] : []),
  ];
  return wrap(`${band} comes from: ${list.join(", ")}.`, undefined, "  ");
}
