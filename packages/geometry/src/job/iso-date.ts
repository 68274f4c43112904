/** Days of the week as files and reports name them, Monday first as ISO 8601 counts them. */
export const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;

/** One of {@link WEEKDAYS}. */
export type Weekday = (typeof WEEKDAYS)[number];

const DAYS_PER_ERA = 146_097;
const YEARS_PER_ERA = 400;
/** From 1 March of year 0 to 1 January 1970. */
const EPOCH = 719_468;
/** 1 January 1970 was a Thursday. */
const EPOCH_WEEKDAY = 3;

/**
 * A date as a count of days from 1 January 1970; no clock and no time zone comes into it.
 *
 * @param text - `2026-12-20`: year, month and day, with two digits each for month and day (ISO 8601).
 * @returns undefined where it is no date of the calendar, or earlier than the Gregorian calendar (1583).
 *
 * @remarks Counts from 1 March, so that the leap day is the last of its year; after H. Hinnant's page on such algorithms
 * (from memory).
 *
 * @example
 * dayOfDate("2026-12-20"); // 20807
 * dayOfDate("2026-02-29") === undefined; // true, for 2026 is no leap year
 */
export function dayOfDate(text: string): number | undefined {
  const [, years = "", months = "", days = ""] = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(text) ?? [];
  const [year, month, date] = [Number(years), Number(months), Number(days)];
  if (year < 1583 || month < 1 || month > 12 || date < 1) return undefined;
  const fromMarch = month <= 2 ? year - 1 : year;
  const era = Math.floor(fromMarch / YEARS_PER_ERA);
  const yearOfEra = fromMarch - era * YEARS_PER_ERA;
  const dayOfYear = firstOfMonth((month + 9) % 12) + date - 1;
  const day = era * DAYS_PER_ERA + daysBeforeYear(yearOfEra) + dayOfYear - EPOCH;
  // The 30th of February is some day in March: it is told by not coming back as it was written.
  return dateOfDay(day) === text ? day : undefined;
}

/**
 * The date of a day, as `2026-12-20`.
 *
 * @param day - Days from 1 January 1970.
 *
 * @example
 * dateOfDay(20807); // "2026-12-20"
 */
export function dateOfDay(day: number): string {
  const shifted = day + EPOCH;
  const era = Math.floor(shifted / DAYS_PER_ERA);
  const dayOfEra = shifted - era * DAYS_PER_ERA;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - daysBeforeYear(yearOfEra);
  const month = Math.floor((5 * dayOfYear + 2) / 153);
  const date = dayOfYear - firstOfMonth(month) + 1;
  const calendarMonth = month < 10 ? month + 3 : month - 9;
  const year = yearOfEra + era * YEARS_PER_ERA + (calendarMonth <= 2 ? 1 : 0);
  return `${String(year).padStart(4, "0")}-${twoDigits(calendarMonth)}-${twoDigits(date)}`;
}

/** Days of an era before a year of it. */
const daysBeforeYear = (year: number): number => 365 * year + Math.floor(year / 4) - Math.floor(year / 100);

/** Days from 1 March to the first of a month, March being 0. */
const firstOfMonth = (month: number): number => Math.floor((153 * month + 2) / 5);

const twoDigits = (value: number): string => String(value).padStart(2, "0");

/**
 * The day of the week.
 *
 * @param day - Days from 1 January 1970.
 *
 * @example
 * weekdayOf(0); // "thu"
 */
export function weekdayOf(day: number): Weekday {
  const index = (((day + EPOCH_WEEKDAY) % 7) + 7) % 7;
  return WEEKDAYS[index] ?? "mon";
}
