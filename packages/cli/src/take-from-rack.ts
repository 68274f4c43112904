import type { RackBar } from "@scantling/geometry";

/** Last digits of a double, mm. */
const HAIR = 1e-6;

/** A bar that is cut: which line of the rack it lies on, and what is left of it where that is known, mm. */
export interface TakenBar {
  readonly bar: number;
  readonly leftover?: number | undefined;
}

/**
 * The lines of the rack after bars were cut: fewer of those that were opened, and a line for each length of leftover
 * that is long enough to keep, the longest first. Bars that are as long as needed stay.
 *
 * @param minKeep - A shorter leftover is scrap, mm.
 */
export function takeFromRack(
  rack: readonly RackBar[],
  taken: readonly TakenBar[],
  minKeep: number,
): RackBar[] {
  const whole = rack.flatMap((bar, i): RackBar[] => {
    if (bar.length === undefined) return [bar];
    const { count = 1, ...line } = bar;
    const left = count - taken.filter((cut) => cut.bar === i).length;
    return left <= 0 ? [] : [withCount(line, left)];
  });
  const leftovers: { readonly line: RackBar; count: number }[] = [];
  for (const { bar, leftover = 0 } of [...taken].sort((a, b) => (b.leftover ?? 0) - (a.leftover ?? 0))) {
    const from = rack[bar];
    const length = floorToTenth(leftover);
    if (from?.length === undefined || length <= 0 || leftover < minKeep - HAIR) continue;
    const same = leftovers.find(({ line }) => line.length === length && line.name === from.name);
    if (same === undefined) {
      const { count: _, ...line } = { ...from, length };
      leftovers.push({ line, count: 1 });
    } else same.count++;
  }
  return [...whole, ...leftovers.map(({ line, count }) => withCount(line, count))];
}

const withCount = (line: RackBar, count: number): RackBar => (count === 1 ? line : { ...line, count });

/** A leftover is never said to be longer than it is, mm. */
const floorToTenth = (mm: number): number => Math.floor(mm * 10 + HAIR) / 10;
