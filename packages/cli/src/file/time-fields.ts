import { type Banded, TASK_WORDS, type TaskName } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { type QuantityRule, quantity, type Reading, readQuantity } from "./fields.js";
import { showText } from "./problem.js";
import { GROUP } from "./shared-fields.js";

/** A year: longer times are slips of the pen, s. */
const LONGEST = 366 * 24 * 3600;
const SECONDS_PER_HOUR = 3600;
const SECONDS_PER_DAY = 24 * SECONDS_PER_HOUR;

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

/** What is counted in days: a bare number would be hours. */
export function wholeDays(units: FileUnits, about: string) {
  const EXAMPLE = "30 days";
  return z
    .string({ error: `needs a time with its unit, such as ${EXAMPLE}` })
    .transform((raw, ctx) => {
      const complain = (code: string, message: string): void =>
        ctx.addIssue({ code: "custom", message, params: { code } });
      if (/^[\d\s.,/]+$/u.test(raw)) {
        complain("unit-missing", `"${showText(raw)}" needs its unit, such as ${EXAMPLE}`);
        return z.NEVER;
      }
      const rule = { from: SECONDS_PER_DAY, to: LONGEST, usual: EXAMPLE, tolerance: false, about };
      const reading = readQuantity(raw, "time", units, rule, complain);
      return reading === undefined ? z.NEVER : Math.floor(reading.value / SECONDS_PER_DAY);
    })
    .meta({ description: `${about} (whole days; ${EXAMPLE}, 4 weeks)` });
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
