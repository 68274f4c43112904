import { type HardnessAnswer, TESTER_SCATTER } from "@scantling/geometry";
import { type FileUnits, formatNumber, formatTemperature } from "@scantling/geometry/units";
import type { Measured } from "../measure.js";
import type { HardnessAnswered } from "../record/hardness-held.js";
import { fixed } from "./figures.js";

/** A hardness as it is asked for: whole, or with the half that it has. */
const points = (hardness: number): string => fixed(hardness, Number.isInteger(hardness) ? 0 : 1);

/** What was asked: `60 to 62 HRC`, `above 60 HRC`. */
export function askedHardness({ asked: { low, high } }: Pick<HardnessAnswer, "asked">): string {
  if (!Number.isFinite(high)) return `above ${points(low)} HRC`;
  if (!Number.isFinite(low)) return `below ${points(high)} HRC`;
  return low === high ? `${points(low)} HRC` : `${points(low)} to ${points(high)} HRC`;
}

/** A hardness that was measured, held against the order. */
export function heldHardness({ asked, byFiles, held }: HardnessAnswered): string {
  const order = askedHardness({ asked });
  if (held === undefined) return `The order asks ${order}: test again after the temper.`;
  if (held.is === "as-asked") return `HARDNESS as asked: ${order}.`;
  if (held.is === "either")
    return `The files leave open whether this is as asked, ${order}: try one in between, or a tester.`;
  const by =
    held.by === 0
      ? "this is on the limit, which is not allowed itself"
      : `this is ${held.is} by ${byFiles ? "at least " : ""}${formatNumber(held.by, 0.1)}`;
  const todo =
    !byFiles && held.by <= TESTER_SCATTER
      ? `A tester is good to ± ${TESTER_SCATTER}: test again first.`
      : held.is === "over"
        ? "Temper it again, hotter, and test again."
        : "A temper does not bring it back: test again, and if it stands, harden again.";
  return `HARDNESS NOT AS ASKED: the order asks ${order}, and ${by}. ${todo}`;
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
