import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  AROUND_THE_CLOCK,
  checkCalendar,
  dayOfDate,
  isWorkday,
  momentText,
  placeBackward,
  placeForward,
  WEEKDAYS,
  type WorkCalendar,
  workingMinutes,
} from "../../src/index.js";

const day = (date: string): number => dayOfDate(date) ?? Number.NaN;
const at = (date: string, clock: string): number => {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  return day(date) * 1440 + hours * 60 + minutes;
};

/** Monday to Friday, 8 to 14 o'clock; Christmas Eve and the days between the years off. */
const SHOP: WorkCalendar = {
  days: ["mon", "tue", "wed", "thu", "fri"],
  fromMinute: 480,
  minutesPerDay: 360,
  daysOff: [{ from: day("2026-12-24"), to: day("2027-01-01") }],
};

const shown = ({ start, end }: { start: number; end: number }): [string, string] => [
  momentText(start),
  momentText(end),
];

describe("work on a calendar, by hand", () => {
  it("goes on the next day where the day is over, and over the weekend", () => {
    // Thursday 17 December 2026. Six hours a day: 2 h on Thursday from 12, 6 h on Friday, 1 h on Monday.
    expect(shown(placeForward(SHOP, at("2026-12-17", "12:00"), 9 * 60, false))).toEqual([
      "2026-12-17T12:00",
      "2026-12-21T09:00",
    ]);
  });

  it("waits for the morning, and for the end of the days off", () => {
    expect(shown(placeForward(SHOP, at("2026-12-17", "05:00"), 60, false))[0]).toBe("2026-12-17T08:00");
    expect(shown(placeForward(SHOP, at("2026-12-17", "14:00"), 60, false))[0]).toBe("2026-12-18T08:00");
    // Wednesday the 23rd is the last day; 1 January is a Friday off, so Monday the 4th.
    expect(shown(placeForward(SHOP, at("2026-12-23", "14:00"), 60, false))[0]).toBe("2027-01-04T08:00");
  });

  it("is not parted where it is whole", () => {
    expect(shown(placeForward(SHOP, at("2026-12-17", "12:30"), 120, true))).toEqual([
      "2026-12-18T08:00",
      "2026-12-18T10:00",
    ]);
    expect(shown(placeForward(SHOP, at("2026-12-17", "12:00"), 120, true))[0]).toBe("2026-12-17T12:00");
  });

  it("is worked through from the morning where it is whole and longer than a day", () => {
    expect(shown(placeForward(SHOP, at("2026-12-17", "08:01"), 420, true))).toEqual([
      "2026-12-18T08:00",
      "2026-12-18T15:00",
    ]);
    expect(shown(placeBackward(SHOP, at("2026-12-18", "14:59"), 420, true))).toEqual([
      "2026-12-17T08:00",
      "2026-12-17T15:00",
    ]);
  });

  it("backwards: the latest place before a moment", () => {
    expect(shown(placeBackward(SHOP, at("2026-12-21", "09:00"), 9 * 60, false))).toEqual([
      "2026-12-17T12:00",
      "2026-12-21T09:00",
    ]);
    expect(shown(placeBackward(SHOP, at("2026-12-20", "12:00"), 60, false))).toEqual([
      "2026-12-18T13:00",
      "2026-12-18T14:00",
    ]);
  });

  it("counts bench time between two moments", () => {
    expect(workingMinutes(SHOP, at("2026-12-17", "12:00"), at("2026-12-21", "09:00"))).toBe(9 * 60);
    expect(workingMinutes(SHOP, at("2026-12-19", "00:00"), at("2026-12-20", "23:00"))).toBe(0);
  });

  it("of no time stays where it is", () => {
    expect(placeForward(SHOP, 17, 0, false)).toEqual({ start: 17, end: 17 });
    expect(placeBackward(SHOP, 17, 0, true)).toEqual({ start: 17, end: 17 });
  });
});

const calendars = fc.record({
  days: fc.subarray([...WEEKDAYS], { minLength: 1 }),
  fromMinute: fc.integer({ min: 0, max: 700 }),
  minutesPerDay: fc.integer({ min: 1, max: 740 }),
  daysOff: fc.array(
    fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 12 })).map(([from, length]) => ({
      from,
      to: from + length,
    })),
    { maxLength: 3 },
  ),
});

/** Minute by minute: is there work now? */
const worked = (calendar: WorkCalendar, moment: number): boolean => {
  const today = Math.floor(moment / 1440);
  const clock = moment - today * 1440;
  return (
    isWorkday(calendar, today) &&
    clock >= calendar.fromMinute &&
    clock < calendar.fromMinute + calendar.minutesPerDay
  );
};

describe("any calendar", () => {
  it("places work as a walk from minute to minute does", () => {
    fc.assert(
      fc.property(
        calendars,
        fc.integer({ min: 0, max: 20_000 }),
        fc.integer({ min: 1, max: 900 }),
        (calendar, from, minutes) => {
          let now = from;
          while (!worked(calendar, now)) now++;
          const start = now;
          let left = minutes;
          while (left > 0) if (worked(calendar, now++)) left--;
          expect(placeForward(calendar, from, minutes, false)).toEqual({ start, end: now });
          expect(workingMinutes(calendar, start, now)).toBe(minutes);
        },
      ),
      { seed: 7, numRuns: 60 },
    );
  });

  it("backwards and forwards meet: nothing later would be done in time", () => {
    fc.assert(
      fc.property(
        calendars,
        fc.integer({ min: 60_000, max: 80_000 }),
        fc.integer({ min: 1, max: 2000 }),
        fc.boolean(),
        (calendar, by, minutes, whole) => {
          const { start, end } = placeBackward(calendar, by, minutes, whole);
          expect(end).toBeLessThanOrEqual(by);
          expect(placeForward(calendar, start, minutes, whole)).toEqual({ start, end });
          expect(placeForward(calendar, start + 1, minutes, whole).end).toBeGreaterThan(
            whole || worked(calendar, by - 1) ? by : end,
          );
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });
});

describe("around the clock", () => {
  it("nothing is broken off at midnight, forward or backward", () => {
    expect(placeForward(AROUND_THE_CLOCK, 1200, 600, true)).toEqual({ start: 1200, end: 1800 });
    expect(placeBackward(AROUND_THE_CLOCK, 1800, 600, true)).toEqual({ start: 1200, end: 1800 });
    expect(placeForward(AROUND_THE_CLOCK, 1200, 6000, false)).toEqual({ start: 1200, end: 7200 });
  });
});

describe("checkCalendar", () => {
  it("takes the shop's and the clock's", () => {
    expect(checkCalendar(SHOP)).toEqual([]);
    expect(checkCalendar(AROUND_THE_CLOCK)).toEqual([]);
  });

  it("names what cannot be, all at once", () => {
    const wrong = { days: [], fromMinute: 1500, minutesPerDay: 0, daysOff: [{ from: 5, to: 4 }] };
    expect(checkCalendar(wrong).map(({ code }) => code)).toEqual([
      "no-working-days",
      "no-time-of-day",
      "working-day-too-long",
      "days-off-swapped",
    ]);
    for (const to of [366, Number.POSITIVE_INFINITY])
      expect(checkCalendar({ ...SHOP, daysOff: [{ from: 0, to }] })[0]?.code).toBe("days-off-long");
    expect(checkCalendar({ ...SHOP, daysOff: [{ from: 0, to: 365 }] })).toEqual([]);
    expect(checkCalendar({ ...SHOP, fromMinute: 1200 })[0]?.code).toBe("working-day-too-long");
  });
});
