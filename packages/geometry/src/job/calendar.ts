import type { Issue } from "../errors/issue.js";
import { count } from "../errors/issue.js";
import { WEEKDAYS, type Weekday, weekdayOf } from "./iso-date.js";
import { dayOfMoment, MINUTES_PER_DAY } from "./moment.js";

/** Days off, first and last, as days from 1 January 1970. */
export interface DaysOff {
  readonly from: number;
  readonly to: number;
}

/** When there is work at the bench: the same hours on every working day. */
export interface WorkCalendar {
  readonly days: readonly Weekday[];
  /** Minutes after midnight at which a day's work begins. */
  readonly fromMinute: number;
  /** Bench time of a day, minutes. */
  readonly minutesPerDay: number;
  readonly daysOff: readonly DaysOff[];
}

/** Work around the clock, every day. */
export const AROUND_THE_CLOCK: WorkCalendar = {
  days: WEEKDAYS,
  fromMinute: 0,
  minutesPerDay: MINUTES_PER_DAY,
  daysOff: [],
};

/** A stretch of time, from one moment to another. */
export interface TimeSlot {
  readonly start: number;
  readonly end: number;
}

/** More days off in one go than this are a slip of the pen. */
export const MOST_DAYS_OFF = 366;

/**
 * What has to hold of a calendar before work can be laid out on it.
 *
 * @example
 * checkCalendar({ days: [], fromMinute: 480, minutesPerDay: 360, daysOff: [] })[0]?.code; // "no-working-days"
 */
export function checkCalendar({ days, fromMinute, minutesPerDay, daysOff }: WorkCalendar): Issue[] {
  const whole = (value: number): boolean => Number.isInteger(value);
  return [
    ...(days.length > 0
      ? []
      : [
          {
            code: "no-working-days",
            path: "days",
            text: "There is no day of the week to work on. Name one.",
          },
        ]),
    ...(whole(fromMinute) && fromMinute >= 0 && fromMinute < MINUTES_PER_DAY
      ? []
      : [
          {
            code: "no-time-of-day",
            path: "from",
            text: "Work cannot begin {value} minutes after midnight.",
            values: { value: count(fromMinute) },
          },
        ]),
    ...(whole(minutesPerDay) && minutesPerDay > 0 && fromMinute + minutesPerDay <= MINUTES_PER_DAY
      ? []
      : [
          {
            code: "working-day-too-long",
            path: "hoursPerDay",
            text: "A day's work has to be some time, and over by midnight: {value} minutes.",
            values: { value: count(minutesPerDay) },
          },
        ]),
    ...daysOff.flatMap(({ from, to }, index) => {
      const path = `daysOff[${index}]`;
      if (!(from <= to))
        return [{ code: "days-off-swapped", path, text: "The first day off lies behind the last one." }];
      // What is not finite is no shorter.
      return to - from < MOST_DAYS_OFF
        ? []
        : [
            {
              code: "days-off-long",
              path,
              text: "Days off in one go are no more than {value}: is the year right?",
              values: { value: count(MOST_DAYS_OFF) },
            },
          ];
    }),
  ];
}

/**
 * Whether there is work on a day.
 *
 * @param day - Days from 1 January 1970.
 *
 * @example
 * const calendar = { days: ["thu"], fromMinute: 480, minutesPerDay: 360, daysOff: [] } as const;
 * isWorkday(calendar, 0); // true, a Thursday
 */
export const isWorkday = ({ days, daysOff }: WorkCalendar, day: number): boolean =>
  days.includes(weekdayOf(day)) && daysOff.every(({ from, to }) => day < from || day > to);

/** No night, no day off: work is never broken off at midnight. */
const isAroundTheClock = ({ days, minutesPerDay, daysOff }: WorkCalendar): boolean =>
  minutesPerDay === MINUTES_PER_DAY && daysOff.length === 0 && new Set(days).size === WEEKDAYS.length;

/** The hours of a day, worked or not. */
function hoursOf({ fromMinute, minutesPerDay }: WorkCalendar, day: number): TimeSlot {
  const start = day * MINUTES_PER_DAY + fromMinute;
  return { start, end: start + minutesPerDay };
}

/**
 * Where work goes that may begin at a moment: over as many days as it takes, or whole. Whole work goes on the first day
 * with room for it; what is longer than a day is begun in the morning and worked through.
 *
 * @param minutes - Of work, 0 or more. No work takes no place and needs no working hours.
 *
 * @example
 * const calendar = { days: ["thu", "fri"], fromMinute: 480, minutesPerDay: 360, daysOff: [] } as const;
 * placeForward(calendar, 0, 400, false); // { start: 480, end: 1960 }, forty minutes of it on Friday
 * placeForward(calendar, 700, 300, true).start; // 1920, whole on Friday
 */
export function placeForward(
  calendar: WorkCalendar,
  from: number,
  minutes: number,
  whole: boolean,
): TimeSlot {
  if (minutes <= 0) return { start: from, end: from };
  if (isAroundTheClock(calendar)) return { start: from, end: from + minutes };
  let start: number | undefined;
  let left = minutes;
  for (let day = dayOfMoment(from); ; day++) {
    if (!isWorkday(calendar, day)) continue;
    const hours = hoursOf(calendar, day);
    const begin = Math.max(from, hours.start);
    if (begin >= hours.end) continue;
    if (whole) {
      const fits =
        begin + minutes <= hours.end || (begin === hours.start && minutes > calendar.minutesPerDay);
      if (fits) return { start: begin, end: begin + minutes };
      continue;
    }
    start ??= begin;
    if (begin + left <= hours.end) return { start, end: begin + left };
    left -= hours.end - begin;
  }
}

/**
 * The latest place for work that has to be done by a moment; otherwise as {@link placeForward}.
 *
 * @example
 * const calendar = { days: ["thu", "fri"], fromMinute: 480, minutesPerDay: 360, daysOff: [] } as const;
 * placeBackward(calendar, 1960, 400, false); // { start: 480, end: 1960 }
 */
export function placeBackward(calendar: WorkCalendar, by: number, minutes: number, whole: boolean): TimeSlot {
  if (minutes <= 0) return { start: by, end: by };
  if (isAroundTheClock(calendar)) return { start: by - minutes, end: by };
  let end: number | undefined;
  let left = minutes;
  for (let day = dayOfMoment(by); ; day--) {
    if (!isWorkday(calendar, day)) continue;
    const hours = hoursOf(calendar, day);
    if (whole && minutes > calendar.minutesPerDay) {
      if (hours.start + minutes <= by) return { start: hours.start, end: hours.start + minutes };
      continue;
    }
    const stop = Math.min(by, hours.end);
    if (stop <= hours.start) continue;
    if (whole) {
      if (stop - minutes >= hours.start) return { start: stop - minutes, end: stop };
      continue;
    }
    end ??= stop;
    if (stop - left >= hours.start) return { start: stop - left, end };
    left -= stop - hours.start;
  }
}

/**
 * Bench time between two moments, minutes.
 *
 * @example
 * const calendar = { days: ["thu", "fri"], fromMinute: 480, minutesPerDay: 360, daysOff: [] } as const;
 * workingMinutes(calendar, 0, 2880); // 720
 */
export function workingMinutes(calendar: WorkCalendar, from: number, to: number): number {
  let sum = 0;
  for (let day = dayOfMoment(from); day <= dayOfMoment(to); day++) {
    if (!isWorkday(calendar, day)) continue;
    const hours = hoursOf(calendar, day);
    sum += Math.max(0, Math.min(to, hours.end) - Math.max(from, hours.start));
  }
  return sum;
}
