import { type Banded, TASK_WORDS, type TaskName } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { type QuantityRule, quantity, type Reading } from "./fields.js";
import { GROUP } from "./shared-fields.js";

/** A year: longer times are slips of the pen, s. */
const LONGEST = 366 * 24 * 3600;
const SECONDS_PER_HOUR = 3600;

/** A time with its band, hours. */
export function bandedHours(units: FileUnits, about: string) {
  return quantity("time", units, { from: 0, to: LONGEST, usual: "2 h", about }).transform(toHours);
}

/** A time without a band, hours. */
export function hours(
  units: FileUnits,
  about: string,
  more: Pick<QuantityRule, "above" | "from"> = { above: 0 },
) {
  return quantity("time", units, { ...more, to: LONGEST, usual: "6 h", tolerance: false, about }).transform(
    ({ value }) => value / SECONDS_PER_HOUR,
  );
}

function toHours({ value, plus, minus }: Reading): Banded {
  const inHours = (seconds: number): number => seconds / SECONDS_PER_HOUR;
  return { value: inHours(value), low: inHours(value - minus), high: inHours(value + plus) };
}

/** Bench hours by task; the same keys in a knife file and a shop file. */
export function taskHours(units: FileUnits, about: string) {
  const each = Object.fromEntries(
    Object.entries(TASK_WORDS).map(([name, words]) => [
      name,
      bandedHours(units, `Bench time of ${words}; 0 h leaves it out`).optional(),
    ]),
  ) as Record<TaskName, z.ZodOptional<ReturnType<typeof bandedHours>>>;
  return z.strictObject(each, { error: GROUP }).meta({ description: about });
}
