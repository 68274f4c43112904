import type { HardnessAnswer } from "@scantling/geometry";
import { type FileUnits, formatTemperature } from "@scantling/geometry/units";
import type { Measured } from "../measure.js";
import { fixed } from "./figures.js";

/** A hardness as it is asked for: whole, or with the half that it has. */
const points = (hardness: number): string => fixed(hardness, Number.isInteger(hardness) ? 0 : 1);

/** What was asked: `60 to 62 HRC`, `above 60 HRC`. */
export function askedHardness({ asked: { low, high } }: HardnessAnswer): string {
  if (!Number.isFinite(high)) return `above ${points(low)} HRC`;
  if (!Number.isFinite(low)) return `below ${points(high)} HRC`;
  return low === high ? `${points(low)} HRC` : `${points(low)} to ${points(high)} HRC`;
}

/** Where the sources temper for what is aimed at: one temperature, or from and to. */
function temper({ tempers }: HardnessAnswer, units: FileUnits): string {
  const told = tempers.flatMap(({ temperature }) => temperature ?? []);
  if (told.length === 0) return "no table tells of it";
  const shown = [
    ...new Set([Math.min(...told), Math.max(...told)].map((at) => formatTemperature(at, units))),
  ];
  return `temper at ${shown.join(" to ")}`;
}

/** The row of the asks for a hardness: it is measured, never computed. Nothing where none was asked for. */
export function hardnessRows(
  { hardness, job: { knife } }: Pick<Measured, "hardness" | "job">,
  units: FileUnits,
): string[][] {
  if (hardness === undefined) return [];
  const wish = knife.order.hardness?.should === true ? "*" : "";
  return [[`hardness${wish}`, askedHardness(hardness), temper(hardness, units), "not computed: test it"]];
}

/** The same for programs. */
export function hardnessJson({ hardness, job: { knife } }: Pick<Measured, "hardness" | "job">): unknown[] {
  if (hardness === undefined) return [];
  const { asked: limits, steel, tempers, reach } = hardness;
  const finite = (value: number | undefined): number | null =>
    value !== undefined && Number.isFinite(value) ? value : null;
  return [
    {
      ask: "hardness",
      verdict: "not-computed",
      should: knife.order.hardness?.should ?? false,
      atLeast: finite(limits.low),
      atMost: finite(limits.high),
      standing: "not-computed",
      aim: hardness.aim,
      steel,
      reach: reach === undefined ? null : [finite(reach.low), reach.high],
      tempers: tempers.map(({ temperature, source }) => ({ temperatureC: temperature ?? null, source })),
    },
  ];
}
