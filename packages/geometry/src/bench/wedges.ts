import { BENCH_DEFAULTS } from "./defaults.js";

/** Wedges laid together: what they add up to, and what is missing. rad. */
export interface WedgeSet {
  /** Laid with their slopes the same way. */
  readonly add: readonly number[];
  /** Laid the other way round. */
  readonly subtract: readonly number[];
  /** What they stand at together. */
  readonly angle: number;
  /** By how much that is more than wanted. */
  readonly error: number;
}

/** Angles closer than this are the same, rad. */
const SAME = 1e-9;

/**
 * Every way that wedges come near an angle, tried out in full: of one wedge, of two, … the nearest, as far as each more
 * gets nearer. Each wedge is used once; two of an angle are listed twice.
 *
 * @param wedges - Angles of the wedges in hand, rad; ten at the most are tried in reasonable time.
 * @param wanted - rad.
 *
 * @example
 * // in degrees, for the sums are the same: 20 and 11 make 31
 * wedgeSets([5, 11, 20], 31).map(({ add, angle }) => [add, angle]); // [[[20], 20], [[11, 20], 31]]
 */
export function wedgeSets(wedges: readonly number[], wanted: number): WedgeSet[] {
  const best: (WedgeSet | undefined)[] = [];
  const add: number[] = [];
  const subtract: number[] = [];
  const look = (from: number, angle: number): void => {
    const used = add.length + subtract.length;
    if (used > 0 && angle > SAME) {
      const known = best[used];
      const set = { add: [...add], subtract: [...subtract], angle, error: angle - wanted };
      if (known === undefined || isBetter(set, known)) best[used] = set;
    }
    for (let i = from; i < wedges.length; i++) {
      const wedge = wedges[i] as number;
      add.push(wedge);
      look(i + 1, angle + wedge);
      add.pop();
      subtract.push(wedge);
      look(i + 1, angle - wedge);
      subtract.pop();
    }
  };
  look(0, 0);
  let nearest = Number.POSITIVE_INFINITY;
  return best.flatMap((set) => {
    if (set === undefined || Math.abs(set.error) >= nearest - SAME) return [];
    nearest = Math.abs(set.error);
    return [set];
  });
}

function isBetter(set: WedgeSet, known: WedgeSet): boolean {
  const gain = Math.abs(known.error) - Math.abs(set.error);
  return gain > SAME || (gain > -SAME && set.subtract.length < known.subtract.length);
}

/**
 * The fewest wedges that come near enough to an angle; where none do, those that come nearest. Undefined without wedges.
 *
 * @param wedges - rad.
 * @param wanted - rad.
 * @param within - What is near enough, rad; left out: 0.1° (common practice, no source).
 *
 * @example
 * fewestWedges([5, 11, 20], 15.05, 0.1); // { add: [20], subtract: [5], angle: 15, error: -0.05 }
 */
export function fewestWedges(
  wedges: readonly number[],
  wanted: number,
  within: number = BENCH_DEFAULTS.wedgeTolerance.value,
): WedgeSet | undefined {
  const sets = wedgeSets(wedges, wanted);
  return sets.find(({ error }) => Math.abs(error) <= within + SAME) ?? sets.at(-1);
}
