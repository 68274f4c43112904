import { inOrder, placeForward, type WorkCalendar, type WorkTask } from "../../src/index.js";

/** Six hours from Monday to Friday; day 4 of 1970 is Monday the 5th. */
export const SHOP: WorkCalendar = {
  days: ["mon", "tue", "wed", "thu", "fri"],
  fromMinute: 480,
  minutesPerDay: 360,
  daysOff: [],
};
export const MONDAY = 4 * 1440;

/** The moment that lies so much bench time later. */
export function latestWith(start: number, slack: number): number {
  return slack === 0 ? start : placeForward(SHOP, start, slack, false).end;
}

/** One after another in an order, some not before a moment; when the last is done. */
export function laidInOrder(
  tasks: readonly WorkTask[],
  order: readonly string[],
  notBefore: ReadonlyMap<string, number>,
): number {
  const ends = new Map<string, number>();
  for (const id of order) {
    const one = tasks.find((each) => each.id === id);
    if (one === undefined) continue;
    const ready = one.after.map((link) => (ends.get(link.id) ?? Number.NaN) + link.waitMinutes);
    const from = Math.max(MONDAY, notBefore.get(id) ?? 0, ...ready);
    ends.set(id, placeForward(SHOP, from, one.minutes, one.whole === true).end);
  }
  return Math.max(...ends.values());
}

/** Every order of the tasks, each put into the first gap. */
export function bestOfAllOrders(tasks: readonly WorkTask[]): number {
  const orders = (rest: readonly WorkTask[]): WorkTask[][] =>
    rest.length === 0
      ? [[]]
      : rest.flatMap((first) =>
          orders(rest.filter((one) => one !== first)).map((others) => [first, ...others]),
        );
  return Math.min(
    ...orders(tasks)
      .filter((order) => inOrder(order).every((one, index) => one === order[index]))
      .map((order) => {
        const done: { id: string; start: number; end: number }[] = [];
        for (const one of order) {
          const ready = one.after.map(
            (link) => (done.find(({ id }) => id === link.id)?.end ?? Number.NaN) + link.waitMinutes,
          );
          let slot = placeForward(SHOP, Math.max(MONDAY, ...ready), one.minutes, one.whole === true);
          for (;;) {
            const hit = done.find(({ start, end }) => start < slot.end && slot.start < end);
            if (hit === undefined) break;
            slot = placeForward(SHOP, hit.end, one.minutes, one.whole === true);
          }
          done.push({ id: one.id, ...slot });
        }
        return Math.max(...done.map(({ end }) => end));
      }),
  );
}

/** Every choice of whole beginnings up to a horizon. */
export function bestOfAllBeginnings(tasks: readonly WorkTask[], horizon: number): number {
  let best = Number.POSITIVE_INFINITY;
  const place = (index: number, starts: readonly number[]): void => {
    const one = tasks[index];
    if (one === undefined) {
      best = Math.min(best, Math.max(...tasks.map(({ minutes }, i) => (starts[i] ?? 0) + minutes)));
      return;
    }
    for (let start = 0; start + one.minutes <= horizon; start++) {
      const waits = one.after.every((link) => {
        const before = tasks.findIndex(({ id }) => id === link.id);
        return start >= (starts[before] ?? 0) + (tasks[before]?.minutes ?? 0) + link.waitMinutes;
      });
      const free = starts.every((other, i) => {
        const minutes = tasks[i]?.minutes ?? 0;
        return start >= other + minutes || other >= start + one.minutes;
      });
      if (waits && free) place(index + 1, [...starts, start]);
    }
  };
  place(0, []);
  return best;
}
