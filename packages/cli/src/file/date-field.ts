import { z } from "zod";
import { showText } from "./problem.js";

const EXAMPLE = "2026-11-28";

/** A day of the calendar as ISO 8601 writes it. */
export function dateField(about: string) {
  return z
    .string({ error: `needs a day, such as ${EXAMPLE}` })
    .refine(isDay, {
      error: ({ input }) =>
        `"${showText(String(input))}" is not a day; write year, month and day: ${EXAMPLE}`,
      params: { code: "not-a-day" },
    })
    .meta({ description: `${about}: ${EXAMPLE}` });
}

/**
 * Whether a text is a day that the calendar has.
 *
 * @example
 * isDay("2026-02-29"); // false
 */
export function isDay(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(text) ?? [];
  if (year === undefined) return false;
  const date = new Date(`${text}T00:00:00Z`);
  // A day too many rolls over into the next month.
  return (
    !Number.isNaN(date.getTime()) &&
    date.getUTCMonth() + 1 === Number(month) &&
    date.getUTCDate() === Number(day)
  );
}
