import { clockText, dateOfDay, dayOfMoment, MINUTES_PER_DAY, weekdayOf } from "@scantling/geometry";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

const dayAndMonth = (day: number): string => {
  const [, month = "", date = ""] = dateOfDay(day).split("-");
  return `${Number(date)} ${MONTHS[Number(month) - 1] ?? ""}`;
};

/** `20 Dec 2026` */
export const plainDate = (day: number): string => `${dayAndMonth(day)} ${dateOfDay(day).slice(0, 4)}`;

const weekdayWord = (day: number): string => {
  const word = weekdayOf(day);
  return `${word.charAt(0).toUpperCase()}${word.slice(1)}`;
};

/** `Sun 20 Dec 2026` */
export const dateWords = (day: number): string => `${weekdayWord(day)} ${plainDate(day)}`;

/** `Sun 20 Dec 08:00` */
export function momentWords(moment: number): string {
  const day = dayOfMoment(moment);
  return `${weekdayWord(day)} ${dayAndMonth(day)} ${clockText(moment - day * MINUTES_PER_DAY)}`;
}
