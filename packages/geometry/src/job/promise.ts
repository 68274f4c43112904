import type { WorkCalendar } from "./calendar.js";
import type { JobTask } from "./job-tasks.js";
import { dayOfMoment, lastDayOf, MINUTES_PER_DAY } from "./moment.js";
import { scheduleJob } from "./schedule.js";
import type { WaitName } from "./wait-names.js";

/** What shortening one wait, wherever it comes in the job, does to the date; days from 1 January 1970. */
export interface ShorterWait {
  readonly wait: WaitName;
  /** As reckoned with, and the least that will do; minutes, the longest of several. */
  readonly fromMinutes: number;
  readonly toMinutes: number;
  readonly finishDay: number;
}

/** A job held against the day that it is promised for; days from 1 January 1970. */
export interface PromiseCheck {
  readonly finishDay: number;
  readonly promisedDay: number;
  /** Days from the promised one to that on which it is done; below nothing: to spare. */
  readonly daysLate: number;
  /** Waits of which the least would end the job on an earlier day, that which gains most first. */
  readonly shorter: readonly ShorterWait[];
  /** With all waits at their least. */
  readonly allShortDay: number;
  /** The last day on which the work can begin and the promise be kept; left out where there is none within three years. */
  readonly beginByDay?: number;
}

/** The day on which a job that begins at a moment is done. */
function finishDayOf(tasks: readonly JobTask[], calendar: WorkCalendar, begin: number): number {
  return lastDayOf(begin, scheduleJob(tasks, calendar, begin).finish);
}

/**
 * Holds a job against a promised day: by how much it is missed, which waits to shorten, when to begin instead.
 *
 * @param begin - When the work begins, minutes from 1 January 1970.
 * @param promisedDay - Days from 1 January 1970; done on that day is in time.
 *
 * @example
 * const facts = jobFacts(knife, { welds: 0, mixed: false, edge: "1084" }, [], {});
 * const promise = checkPromise(jobTasks(facts), { ...CALENDAR_DEFAULTS, daysOff: [] }, 20_800 * 1440, 20_807);
 * promise.shorter[0]?.wait; // "coat"
 */
export function checkPromise(
  tasks: readonly JobTask[],
  calendar: WorkCalendar,
  begin: number,
  promisedDay: number,
): PromiseCheck {
  const finishDay = finishDayOf(tasks, calendar, begin);
  const waits = [...new Set(tasks.flatMap(({ after }) => after.flatMap(({ wait }) => wait ?? [])))];
  const shorter = waits
    .flatMap((wait): ShorterWait[] => {
      const links = tasks.flatMap(({ after }) => after.filter((link) => link.wait === wait));
      const gained = finishDayOf(withLeast(tasks, [wait]), calendar, begin);
      if (gained >= finishDay) return [];
      const longest = links.reduce((a, b) => (b.waitMinutes > a.waitMinutes ? b : a));
      const { waitMinutes: fromMinutes, leastMinutes: toMinutes } = longest;
      return [{ wait, fromMinutes, toMinutes, finishDay: gained }];
    })
    .sort((a, b) => a.finishDay - b.finishDay);
  const beginByDay = lastBeginning(tasks, calendar, promisedDay);
  return {
    finishDay,
    promisedDay,
    daysLate: finishDay - promisedDay,
    shorter,
    allShortDay: finishDayOf(withLeast(tasks, waits), calendar, begin),
    ...(beginByDay === undefined ? {} : { beginByDay }),
  };
}

/** The same tasks with some waits at their least. */
function withLeast(tasks: readonly JobTask[], waits: readonly WaitName[]): JobTask[] {
  return tasks.map((task) => ({
    ...task,
    after: task.after.map((link) =>
      link.wait !== undefined && waits.includes(link.wait)
        ? { ...link, waitMinutes: Math.min(link.waitMinutes, link.leastMinutes) }
        : link,
    ),
  }));
}

/** How far back a beginning is looked for, days. */
const FARTHEST_BACK = 1100;

/** Who begins later is never done earlier, so that halving finds the last day. */
function lastBeginning(
  tasks: readonly JobTask[],
  calendar: WorkCalendar,
  promisedDay: number,
): number | undefined {
  const inTime = (day: number): boolean => finishDayOf(tasks, calendar, day * MINUTES_PER_DAY) <= promisedDay;
  let [early, late] = [promisedDay - FARTHEST_BACK, promisedDay + 1];
  if (!inTime(early)) return undefined;
  while (late - early > 1) {
    const middle = Math.floor((early + late) / 2);
    if (inTime(middle)) early = middle;
    else late = middle;
  }
  return dayOfMoment(early * MINUTES_PER_DAY);
}
