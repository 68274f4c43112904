import { describe, expect, it } from "vitest";
import { checkPromise, dayOfDate, type JobTask, type WorkCalendar } from "../../src/index.js";

const day = (date: string): number => dayOfDate(date) ?? Number.NaN;
const SHOP: WorkCalendar = {
  days: ["mon", "tue", "wed", "thu", "fri"],
  fromMinute: 480,
  minutesPerDay: 360,
  daysOff: [],
};
const task = (id: string, hours: number, after: JobTask["after"] = []): JobTask => ({
  id,
  name: "forge",
  minutes: hours * 60,
  hours: { low: hours, value: hours, high: hours },
  after,
});

// By hand, from Monday 7 December 2026: a day of work; glue, 24 h, on Tuesday at 14 → Wednesday 8 o'clock, 6 h; oil, three days:
// Wednesday 14 → Saturday 14 → Monday the 14th, one hour.
const JOB: readonly JobTask[] = [
  task("file", 6),
  task("shape", 6, [{ id: "file", waitMinutes: 1440, leastMinutes: 480, wait: "glue" }]),
  task("pack", 1, [{ id: "shape", waitMinutes: 4320, leastMinutes: 1440, wait: "cure" }]),
];
const BEGIN = day("2026-12-07") * 1440;

describe("a promised day", () => {
  it("is kept on the very day, and with days to spare", () => {
    const kept = checkPromise(JOB, SHOP, BEGIN, day("2026-12-14"));
    expect(kept).toMatchObject({ finishDay: day("2026-12-14"), daysLate: 0 });
    expect(checkPromise(JOB, SHOP, BEGIN, day("2026-12-18")).daysLate).toBe(-4);
  });

  it("is missed by days, and every wait says what it would gain", () => {
    const late = checkPromise(JOB, SHOP, BEGIN, day("2026-12-10"));
    expect(late.daysLate).toBe(4);
    // A cure of one day: Wednesday 14 → Thursday 14 → Friday the 11th. Glue of 8 h: still the next morning, so that
    // shaping is on Tuesday: Tuesday 14 → Friday 14 → Monday: nothing gained.
    expect(late.shorter).toEqual([
      { wait: "cure", fromMinutes: 4320, toMinutes: 1440, finishDay: day("2026-12-11") },
    ]);
    // Both: Tuesday 14 → Wednesday 14 → Thursday the 10th.
    expect(late.allShortDay).toBe(day("2026-12-10"));
  });

  it("says when to begin so that it is kept", () => {
    // Filed on Wednesday the 2nd, shaped on Friday, cured on Monday at 14: packed on Tuesday the 8th. A day later: shaped on Monday,
    // cured on Thursday the 10th at 14, when the day is over.
    const { beginByDay = Number.NaN } = checkPromise(JOB, SHOP, BEGIN, day("2026-12-10"));
    expect(checkPromise(JOB, SHOP, beginByDay * 1440, day("2026-12-10")).daysLate).toBeLessThanOrEqual(0);
    expect(checkPromise(JOB, SHOP, (beginByDay + 1) * 1440, day("2026-12-10")).daysLate).toBeGreaterThan(0);
    expect(beginByDay).toBe(day("2026-12-02"));
  });
});
