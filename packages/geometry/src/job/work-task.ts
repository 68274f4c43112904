import type { Issue } from "../errors/issue.js";
import type { TaskName } from "./task-names.js";
import type { WaitName } from "./wait-names.js";

/** That a task begins only when another has ended, and some time has passed. */
export interface TaskLink {
  /** The task before. */
  readonly id: string;
  /** What has to pass between the two, nights and days off counted, minutes. */
  readonly waitMinutes: number;
  /** What is waited for; left out where nothing is. */
  readonly wait?: WaitName;
}

/** Something that is done at the bench, and what it waits for. */
export interface WorkTask {
  /** Its own name in a job: `weld-2`. */
  readonly id: string;
  readonly name: TaskName;
  /** Bench time, minutes. */
  readonly minutes: number;
  /** Begun and finished in one go; else it may be left overnight. */
  readonly whole?: boolean;
  /** Follows at once on the one task before it, without a night between: tempering on hardening. */
  readonly joined?: boolean;
  readonly after: readonly TaskLink[];
}

/**
 * What has to hold of tasks before they can be laid out.
 *
 * @example
 * const after = [{ id: "weld", waitMinutes: 0 }];
 * checkWorkTasks([{ id: "forge", name: "forge", minutes: 60, after }])[0]?.code; // "task-unknown"
 */
export function checkWorkTasks(tasks: readonly WorkTask[]): Issue[] {
  const ids = tasks.map(({ id }) => id);
  const issue = (code: string, id: string, text: string): Issue => ({
    code,
    path: `tasks[${ids.indexOf(id)}]`,
    text,
    values: { task: id },
  });
  const twice = ids.filter((id, index) => ids.indexOf(id) < index);
  const wrong = tasks.flatMap(({ id, minutes, after, joined }) => [
    ...(Number.isInteger(minutes) && minutes >= 0 && after.every(({ waitMinutes }) => waitMinutes >= 0)
      ? []
      : [issue("task-time-wrong", id, "The time of {task} has to be whole minutes, none of them missing.")]),
    ...(after.every((link) => ids.includes(link.id))
      ? []
      : [issue("task-unknown", id, "{task} waits for a task that there is not.")]),
    ...(joined !== true || (after.length === 1 && after[0]?.waitMinutes === 0)
      ? []
      : [issue("task-joined-wrong", id, "{task} has to follow at once on one task.")]),
  ]);
  const joinedTo = tasks.flatMap(({ id, joined, after }) =>
    joined === true && after[0] !== undefined ? [{ id, to: after[0].id }] : [],
  );
  const crowded = joinedTo.filter(({ to }, index) => joinedTo.findIndex((other) => other.to === to) < index);
  const found = [
    ...crowded.map(({ id }) =>
      issue("task-joined-twice", id, "{task} cannot follow at once on a task that another follows at once."),
    ),
    ...twice.map((id) => issue("task-twice", id, "There is more than one task {task}.")),
    ...wrong,
  ];
  if (found.length > 0) return found;
  const ordered = new Set(inOrder(tasks).map(({ id }) => id));
  const stuck = tasks.filter(({ id }) => !ordered.has(id));
  return stuck.slice(0, 1).map(({ id }) => issue("task-circle", id, "{task} waits for itself in the end."));
}

/**
 * The tasks, each after those that it waits for; what waits for itself is left out. What is listed first comes first.
 *
 * @example
 * const weld = { id: "weld", name: "weld", minutes: 60, after: [] } as const;
 * const forge = { id: "forge", name: "forge", minutes: 60, after: [{ id: "weld", waitMinutes: 0 }] } as const;
 * inOrder([forge, weld]).map(({ id }) => id); // ["weld", "forge"]
 */
export function inOrder(tasks: readonly WorkTask[]): WorkTask[] {
  const done = new Set<string>();
  const ordered: WorkTask[] = [];
  for (;;) {
    const next = tasks.find(({ id, after }) => !done.has(id) && after.every((link) => done.has(link.id)));
    if (next === undefined) return ordered;
    done.add(next.id);
    ordered.push(next);
  }
}
