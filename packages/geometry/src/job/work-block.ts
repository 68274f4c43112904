import type { TimeSlot } from "./calendar.js";
import { inOrder, type TaskLink, type WorkTask } from "./work-task.js";

/** A task with those that follow on it at once: one stretch of work. */
export interface WorkBlock {
  readonly tasks: readonly WorkTask[];
  readonly minutes: number;
  readonly whole: boolean;
  /** What the first of them waits for. */
  readonly after: readonly TaskLink[];
}

/** The tasks in blocks, each block after those that it waits for. */
export function blocksOf(tasks: readonly WorkTask[]): WorkBlock[] {
  const ordered = inOrder(tasks);
  const followers = (id: string): WorkTask[] => {
    const next = ordered.find((task) => task.joined === true && task.after[0]?.id === id);
    return next === undefined ? [] : [next, ...followers(next.id)];
  };
  return ordered
    .filter(({ joined }) => joined !== true)
    .map((first) => {
      const all = [first, ...followers(first.id)];
      return {
        tasks: all,
        minutes: all.reduce((sum, { minutes }) => sum + minutes, 0),
        whole: all.length > 1 || first.whole === true,
        after: first.after,
      };
    });
}

/** Minutes of a block before each of its tasks. */
export const offsetsOf = ({ tasks }: WorkBlock): number[] =>
  tasks.map((_, index) => tasks.slice(0, index).reduce((sum, { minutes }) => sum + minutes, 0));

/** The slot of each task in the slot of its block: a block of several is whole, one of one task is that task. */
export function slotsOf(block: WorkBlock, slot: TimeSlot): TimeSlot[] {
  if (block.tasks.length === 1) return [slot];
  const offsets = offsetsOf(block);
  return block.tasks.map(({ minutes }, index) => {
    const start = slot.start + (offsets[index] ?? 0);
    return { start, end: start + minutes };
  });
}
