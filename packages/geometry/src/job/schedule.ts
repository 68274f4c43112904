import { SpecError } from "../errors/errors.js";
import { checkCalendar, placeBackward, type WorkCalendar, workingMinutes } from "./calendar.js";
import { type BlockDriver, type Hands, layOutWork, type PlacedBlock } from "./lay-out-work.js";
import { blocksOf, offsetsOf, slotsOf } from "./work-block.js";
import { checkWorkTasks, type WorkTask } from "./work-task.js";

export type { BlockDriver, Hands } from "./lay-out-work.js";

/** A task with its time; moments are minutes from 1 January 1970 by the shop's own clock. */
export interface ScheduledTask {
  readonly task: WorkTask;
  readonly start: number;
  readonly end: number;
  /** Bench time by which it may begin later without the job ending later, the order of the work kept; minutes. */
  readonly slackMinutes: number;
  /** Why it does not begin earlier. */
  readonly driver: BlockDriver;
  /** Whether it is one of the tasks that decide the date. */
  readonly onPath: boolean;
}

/** A job laid out on a calendar. */
export interface JobSchedule {
  /** In the order in which they are begun. */
  readonly tasks: readonly ScheduledTask[];
  readonly begin: number;
  readonly finish: number;
  /** The tasks that decide the date, first to last: each begins when the one before it lets it. */
  readonly path: readonly string[];
  /** Whether no other order of the work ends earlier. */
  readonly proven: boolean;
}

/**
 * Lays a job out: every task after those that it waits for, `start = max(end + wait)`, at the bench in working hours only,
 * with one pair of hands; waits run through nights and days off. The job ends as early as can be.
 *
 * @param begin - No task begins earlier; minutes from 1 January 1970.
 * @param hands - `many` is the plain network of tasks, without a smith who does one thing at a time.
 * @throws {SpecError} where tasks or calendar break their rules, see `checkWorkTasks` and `checkCalendar`.
 *
 * @remarks What decides the date is followed back from the last task: to the one before it whose end and wait let it begin, or
 * to the one that had the hands. A task on that path may still have slack in bench time, where its wait ends in the night.
 *
 * @example
 * const glue = { id: "glue", name: "glue", minutes: 30, after: [] } as const;
 * const shape = { id: "shape", name: "shape", minutes: 120, after: [{ id: "glue", waitMinutes: 1440 }] } as const;
 * scheduleJob([glue, shape], AROUND_THE_CLOCK, 0).finish; // 1590
 */
export function scheduleJob(
  tasks: readonly WorkTask[],
  calendar: WorkCalendar,
  begin: number,
  hands: Hands = "one",
): JobSchedule {
  const issues = [...checkCalendar(calendar), ...checkWorkTasks(tasks)];
  if (issues.length > 0) throw new SpecError(issues);
  const { placed, finish, proven } = layOutWork(blocksOf(tasks), calendar, begin, hands);
  const inTime = [...placed].sort((a, b) => a.slot.start - b.slot.start || a.slot.end - b.slot.end);
  const latest = latestStarts(inTime, calendar, finish, hands);
  const path = pathBack(inTime);
  const scheduled = inTime.flatMap(({ block, slot, driver }): ScheduledTask[] => {
    const slack = workingMinutes(calendar, slot.start, latest.get(block.tasks[0]?.id ?? "") ?? slot.start);
    const slots = slotsOf(block, slot);
    return block.tasks.map((task, index) => ({
      task,
      start: slots[index]?.start ?? slot.start,
      end: slots[index]?.end ?? slot.end,
      slackMinutes: slack,
      driver: index === 0 ? driver : { kind: "task", id: block.tasks[index - 1]?.id ?? "" },
      onPath: path.includes(task.id),
    }));
  });
  return { tasks: scheduled, begin, finish, path, proven };
}

/** When each block has to begin at the latest, by its first task: the order in which the hands do them is kept. */
function latestStarts(
  inTime: readonly PlacedBlock[],
  calendar: WorkCalendar,
  finish: number,
  hands: Hands,
): Map<string, number> {
  const latest = new Map<string, number>();
  const startOf = ({ block }: PlacedBlock): number => latest.get(block.tasks[0]?.id ?? "") ?? finish;
  for (const [index, placed] of [...inTime.entries()].reverse()) {
    const { block } = placed;
    const later = inTime.slice(index + 1);
    const offsets = offsetsOf(block);
    const limits = block.tasks.flatMap(({ id, minutes }, inner) => {
      const behind = block.minutes - (offsets[inner] ?? 0) - minutes;
      return inTime.flatMap((other) =>
        other.block.after.flatMap((link) =>
          link.id === id ? [startOf(other) - link.waitMinutes + behind] : [],
        ),
      );
    });
    const next = hands === "one" ? later.find((other) => other.block.minutes > 0) : undefined;
    const by = Math.min(finish, ...limits, ...(next === undefined ? [] : [startOf(next)]));
    latest.set(block.tasks[0]?.id ?? "", placeBackward(calendar, by, block.minutes, block.whole).start);
  }
  return latest;
}

/** From the task that ends last back to the one that nothing holds. */
function pathBack(inTime: readonly PlacedBlock[]): string[] {
  const last = inTime.reduce<PlacedBlock | undefined>(
    (a, b) => (a === undefined || b.slot.end >= a.slot.end ? b : a),
    undefined,
  );
  const path: string[] = [];
  for (let at = last; at !== undefined; ) {
    const { block, driver } = at;
    const reached = path[0];
    // Of a block only what comes before the task that was waited for.
    path.unshift(
      ...upTo(
        block.tasks.map(({ id }) => id),
        reachedFrom(inTime, reached),
      ),
    );
    at =
      driver.kind === "begin"
        ? undefined
        : inTime.find((other) => other.block.tasks.some(({ id }) => id === driver.id));
  }
  return path;
}

/** The task that lets the first task of the path so far begin. */
function reachedFrom(inTime: readonly PlacedBlock[], reached: string | undefined): string | undefined {
  const of = inTime.find(({ block }) => block.tasks[0]?.id === reached);
  return of === undefined || of.driver.kind === "begin" ? undefined : of.driver.id;
}

function upTo(ids: readonly string[], last: string | undefined): string[] {
  const index = last === undefined ? -1 : ids.indexOf(last);
  return index < 0 ? [...ids] : ids.slice(0, index + 1);
}
