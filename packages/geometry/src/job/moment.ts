import { dateOfDay } from "./iso-date.js";

/** Minutes of a day. */
export const MINUTES_PER_DAY = 1440;
/** Minutes of an hour. */
export const MINUTES_PER_HOUR = 60;

/**
 * The day that a moment lies in, as days from 1 January 1970. A moment is whole minutes from the beginning of that day by the
 * shop's own clock; every day has 24 hours, so where clocks are put forward or back a wait is an hour off, and no date.
 *
 * @example
 * dayOfMoment(1440 + 480); // 1
 */
export const dayOfMoment = (moment: number): number => Math.floor(moment / MINUTES_PER_DAY);

/**
 * The day on which something ends: what ends at midnight ends with the day before.
 *
 * @example
 * lastDayOf(0, 1440); // 0
 */
export const lastDayOf = (start: number, end: number): number => dayOfMoment(end > start ? end - 1 : end);

/**
 * A moment as `2026-12-20T08:00`.
 *
 * @example
 * momentText(20807 * 1440 + 480); // "2026-12-20T08:00"
 */
export function momentText(moment: number): string {
  const day = dayOfMoment(moment);
  return `${dateOfDay(day)}T${clockText(moment - day * MINUTES_PER_DAY)}`;
}

/**
 * Minutes after midnight as `08:00`.
 *
 * @example
 * clockText(485); // "08:05"
 */
export function clockText(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / MINUTES_PER_HOUR), minutes % MINUTES_PER_HOUR];
  return `${String(hours).padStart(2, "0")}:${String(rest).padStart(2, "0")}`;
}
