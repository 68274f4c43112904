import type { Banded } from "../stock/shop.js";
import { TASK_HOURS, WAIT_HOURS } from "./job-defaults.js";
import type { JobFacts } from "./job-facts.js";
import { MINUTES_PER_HOUR } from "./moment.js";
import type { TaskName } from "./task-names.js";
import type { WaitName } from "./wait-names.js";
import type { TaskLink, WorkTask } from "./work-task.js";

/** How long things take in a shop, hours; what is left out is as published. */
export interface JobTimes {
  readonly hours?: Readonly<Partial<Record<TaskName, Banded>>>;
  /** Of `temper`: oven and cooling together; left out, the cycles and the published cooling. */
  readonly waits?: Readonly<Partial<Record<WaitName, Banded>>>;
}

/** The wait between two tasks, with the least that would do. */
export interface JobLink extends TaskLink {
  readonly leastMinutes: number;
}

/** A task of a job, with its time at the bench and the band of it, hours. */
export interface JobTask extends WorkTask {
  readonly hours: Banded;
  readonly after: readonly JobLink[];
}

/** Which side of the bands a job is laid out on. */
export type TimeSide = "low" | "value" | "high";

/** Done in one go, on one day. */
const WHOLE: readonly TaskName[] = ["weld", "anneal", "harden", "temper", "etch", "glue", "oil"];

/**
 * The tasks of a job in the order in which they are done, each with what it waits for. A task that takes no time in this shop
 * is left out, and its wait with it.
 *
 * @param side - Of the hours' bands; waits are always the usual ones.
 *
 * @remarks What follows on what: saw and weld before forging; slow cooling after it, where holes are drilled; hardening after
 * rough grinding, tempering at once after that; the handle when the blade is done; oil coat by coat; the edge last. A sheath can be
 * made as soon as the handle is shaped.
 *
 * @example
 * const facts = jobFacts(knife, { welds: 0, mixed: false, edge: "1084" }, [], { coats: 1 });
 * jobTasks(facts).map(({ id }) => id).slice(0, 4); // ["design", "stack", "forge", "profile"]
 */
export function jobTasks(facts: JobFacts, times: JobTimes = {}, side: TimeSide = "value"): JobTask[] {
  const waitOf = (wait: WaitName): Banded => times.waits?.[wait] ?? usualWait(wait, facts);
  const tasks: JobTask[] = [];
  // What is done next waits for the step before it, and for what that step leaves to be waited for.
  let before: { readonly id: string; readonly waits: readonly WaitName[] } | undefined;
  const linkTo = (last: NonNullable<typeof before>): JobLink => ({
    id: last.id,
    waitMinutes: last.waits.reduce((sum, wait) => sum + minutesOf(waitOf(wait).value), 0),
    leastMinutes: last.waits.reduce((sum, wait) => sum + minutesOf(waitOf(wait).low), 0),
    ...(last.waits.length === 0 ? {} : { wait: longestOf(last.waits, waitOf) }),
  });
  const add = (id: string, name: TaskName, after: readonly JobLink[], joined = false): boolean => {
    const hours = times.hours?.[name] ?? TASK_HOURS[name];
    if (hours.value <= 0) return false;
    tasks.push({
      id,
      name,
      hours,
      minutes: minutesOf(hours[side]),
      ...(WHOLE.includes(name) ? { whole: true } : {}),
      ...(joined ? { joined: true } : {}),
      after,
    });
    return true;
  };
  const step = ({ name, id, waits = [], joined }: Step): void => {
    const after = before === undefined ? [] : [linkTo(before)];
    if (add(id, name, after, joined !== undefined && joined === before?.id)) before = { id, waits };
  };

  const { steel, handle } = stepsOf(facts);
  for (const one of steel) step(one);
  const bladeDone = before;
  const finishedHandle = handle.filter(({ name }) => name !== "oil");
  for (const one of finishedHandle) step(one);
  const shaped = before ?? bladeDone;
  for (const one of handle.filter(({ name }) => name === "oil")) step(one);
  step({ id: "sharpen", name: "sharpen" });
  const sharpened = before;
  const sheath =
    facts.sheath && add("sheath", "sheath", shaped === undefined ? [] : [linkTo({ ...shaped, waits: [] })]);
  add("pack", "pack", [
    ...(sharpened === undefined ? [] : [linkTo(sharpened)]),
    ...(sheath ? [linkTo({ id: "sheath", waits: [] })] : []),
  ]);
  return tasks;
}

interface Step {
  readonly id: string;
  readonly name: TaskName;
  /** What has to be waited for after it. */
  readonly waits?: readonly WaitName[];
  /** The task that it follows at once. */
  readonly joined?: TaskName;
}

function stepsOf(facts: JobFacts): { steel: Step[]; handle: Step[] } {
  const plain = (name: TaskName): Step => ({ id: name, name });
  const several = (name: TaskName, count: number): string[] =>
    Array.from({ length: count }, (_, index) => (count === 1 ? name : `${name}-${index + 1}`));
  const steel: Step[] = [
    { ...plain("design"), waits: ["reply", "delivery"] },
    plain("stack"),
    ...several("weld", facts.welds).map((id): Step => ({ id, name: "weld" })),
    plain("forge"),
    ...(facts.drilled ? [{ ...plain("anneal"), waits: ["anneal"] } as const] : []),
    plain("profile"),
    ...(facts.drilled ? [plain("drill")] : []),
    plain("rough"),
    plain("harden"),
    { ...plain("temper"), waits: ["temper"], joined: "harden" },
    plain("finish"),
    ...(facts.etched ? [{ ...plain("etch"), waits: ["etch"] } as const] : []),
  ];
  const coats = several("oil", facts.coats);
  const handle: Step[] = facts.handle
    ? [
        plain("fit"),
        { ...plain("glue"), waits: ["glue"] },
        plain("shape"),
        ...coats.map(
          (id, index): Step => ({
            id,
            name: "oil",
            waits: [index === coats.length - 1 ? "cure" : "coat"],
          }),
        ),
      ]
    : [];
  return { steel, handle };
}

function usualWait(wait: WaitName, { temper }: JobFacts): Banded {
  const { low, value, high } = WAIT_HOURS[wait];
  if (wait !== "temper") return { low, value, high };
  const cycles = (temper.times * temper.minutes) / MINUTES_PER_HOUR;
  return { low: cycles + low, value: cycles + value, high: cycles + high };
}

/** Whole minutes, up. */
const minutesOf = (hours: number): number => Math.ceil(hours * MINUTES_PER_HOUR - 1e-6);

const longestOf = (waits: readonly WaitName[], waitOf: (wait: WaitName) => Banded): WaitName =>
  waits.reduce((a, b) => (waitOf(b).value > waitOf(a).value ? b : a));
