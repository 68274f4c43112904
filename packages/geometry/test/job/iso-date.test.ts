import { describe, expect, it } from "vitest";
import { dateOfDay, dayOfDate, WEEKDAYS, weekdayOf } from "../../src/index.js";

/** A second method: the platform's own calendar, in universal time, which has no clocks put forward. */
const platformDay = (date: string): number => Date.UTC(...ymd(date)) / 86_400_000;
const ymd = (date: string): [number, number, number] => {
  const [year = 0, month = 1, day = 1] = date.split("-").map(Number);
  return [year, month - 1, day];
};

describe("dates as days", () => {
  it("are those of the platform's calendar, day by day, and come back as they were", () => {
    for (let day = -141_000; day < 80_000; day += 1) {
      const text = new Date(day * 86_400_000).toISOString().slice(0, 10);
      if (dateOfDay(day) !== text) expect(dateOfDay(day)).toBe(text);
      if (dayOfDate(text) !== day) expect([text, dayOfDate(text)]).toEqual([text, day]);
    }
    for (const date of ["1583-01-01", "1970-01-01", "2000-02-29", "2026-12-20", "9999-12-31"])
      expect(dayOfDate(date), date).toBe(platformDay(date));
  });

  it("have leap years by the Gregorian rule", () => {
    // 1900 and 2100 are none, 2000 is one (from memory).
    for (const date of ["1900-02-29", "2100-02-29", "2026-02-29"]) expect(dayOfDate(date)).toBeUndefined();
    for (const date of ["2000-02-29", "2024-02-29", "2400-02-29"]) expect(dayOfDate(date)).toBeDefined();
  });

  it.each([
    "2026-13-01",
    "2026-00-10",
    "2026-04-31",
    "2026-1-1",
    "26-01-01",
    "1582-12-31",
    "2026-12-20T08:00",
    "",
    "2026-12-00",
  ])("%s is none", (text) => {
    expect(dayOfDate(text)).toBeUndefined();
  });

  it("fall on the days of the week that they fell on", () => {
    // Source: 20 July 1969 was a Sunday, 1 January 2000 a Saturday (from memory).
    const on = (date: string): string => weekdayOf(dayOfDate(date) ?? Number.NaN);
    expect(on("1969-07-20")).toBe("sun");
    expect(on("2000-01-01")).toBe("sat");
    expect(on("2026-12-20")).toBe("sun");
    expect(on("1600-02-29")).toBe(WEEKDAYS[(new Date(Date.UTC(1600, 1, 29)).getUTCDay() + 6) % 7]);
  });
});
