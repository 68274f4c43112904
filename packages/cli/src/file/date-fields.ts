import { type DaysOff, dateOfDay, dayOfDate, MINUTES_PER_HOUR, MOST_DAYS_OFF } from "@scantling/geometry";
import { z } from "zod";
import { showText } from "./problem.js";

const DATE = "a date, written year-month-day, such as 2026-12-20";

/** Days of orders: dates that are reckoned on from these still have years of four digits. */
const [FIRST_YEAR, LAST_YEAR] = [1900, 2199];
export const FAR_OFF = `the year is ${FIRST_YEAR} to ${LAST_YEAR}`;

/** Whether a day lies in years that an order can be of. */
export function isInReach(day: number): boolean {
  const year = Number(dateOfDay(day).slice(0, -"-12-31".length));
  return year >= FIRST_YEAR && year <= LAST_YEAR;
}

/** A date as days from 1 January 1970. */
export function date(about: string) {
  return z
    .string({ error: `needs ${DATE}` })
    .transform((raw, ctx) => {
      const day = dayOfDate(raw.trim());
      if (day === undefined) ctx.addIssue(problem("no-date", `"${showText(raw)}" is not ${DATE}`));
      else if (!isInReach(day)) ctx.addIssue(problem("date-far-off", `"${showText(raw)}": ${FAR_OFF}`));
      return day ?? z.NEVER;
    })
    .meta({ description: `${about} (year-month-day, such as 2026-12-20)` });
}

/** Days off: one date, or the first and the last of several. */
export function daysOff(about: string) {
  const example = "2026-12-24, or 2026-12-24 to 2027-01-01";
  const entry = z
    .string({ error: `needs a date or two, such as ${example}` })
    .transform((raw, ctx): DaysOff => {
      const parts = raw.split(/\s+to\s+/u).map((part) => part.trim());
      const days = parts.map(dayOfDate);
      const [from, to = from] = days;
      const complain = (code: string, message: string): DaysOff => {
        ctx.addIssue(problem(code, `"${showText(raw)}" ${message}`));
        return z.NEVER;
      };
      if (from === undefined || to === undefined || days.length > 2 || days.includes(undefined))
        return complain("no-date", `is not a date or two; write ${example}`);
      if (to < from) return complain("days-off-swapped", "has the later date first");
      if (to - from >= MOST_DAYS_OFF)
        return complain("days-off-long", "is more than a year; write a shorter one");
      return { from, to };
    });
  return z
    .array(entry, { error: `needs a list of dates, such as [${example}]` })
    .meta({ description: `${about} (${example})` });
}

/** A time of day as minutes after midnight. */
export function timeOfDay(about: string) {
  return z
    .string({ error: "needs a time of day, such as 08:00" })
    .transform((raw, ctx) => {
      const [, hours = "", minutes = ""] = /^(\d{1,2}):(\d{2})$/u.exec(raw.trim()) ?? [];
      const value = Number(hours) * MINUTES_PER_HOUR + Number(minutes);
      const real = hours !== "" && Number(hours) < 24 && Number(minutes) < MINUTES_PER_HOUR;
      if (!real)
        ctx.addIssue(problem("no-time-of-day", `"${showText(raw)}" is not a time of day; write it 08:00`));
      return real ? value : z.NEVER;
    })
    .meta({ description: `${about} (08:00)` });
}

const problem = (code: string, message: string) => ({ code: "custom", message, params: { code } }) as const;
