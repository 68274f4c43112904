import { GeometryError } from "../../errors/errors.js";

/** What the shop can lay between the dies, mm: posts, of which one is used at a time, and shims laid on it. */
export interface StopSet {
  readonly blocks: readonly number[];
  /** One entry for every shim in hand: two of a size are listed twice. */
  readonly shims: readonly number[];
}

/** One post and the shims on it, mm. */
export interface StopChoice {
  readonly block: number;
  /** Thickest first; empty where the post alone does it. */
  readonly shims: readonly number[];
  /** Block and shims together. */
  readonly height: number;
  /** `height` less the wanted height: above nothing where the stop stands too tall. */
  readonly error: number;
}

/** More shims than this are refused: every one more makes the search half as long again. */
export const MOST_SHIMS = 32;

/** Sums are taken in whole billionths of a mm, so that sizes that add up to the same compare as the same. */
const GRAINS_PER_MM = 1e9;

/** The different heights that some of the shims make, rising, each with the fewest shims that make it. */
interface Sums {
  readonly heights: readonly number[];
  /** Bit `i` stands for shim `i` of those summed. */
  readonly masks: readonly number[];
  readonly pieces: readonly number[];
}

const grains = (mm: number): number => Math.round(mm * GRAINS_PER_MM);

/**
 * The post and shims whose height is nearest to a wanted one. Exact: every post with every choice of shims is as good
 * as tried. Among equally near ones the fewest pieces are taken, then one that is not under.
 *
 * @param height - Wanted height, mm.
 * @throws {GeometryError} `no-stop-blocks` without a post, `too-many-shims` with more than {@link MOST_SHIMS}.
 *
 * @example
 * nearestStop(7.44, { blocks: [6, 12], shims: [1, 0.5, 0.5, 0.2] }).shims; // [1, 0.5]
 */
export function nearestStop(height: number, set: StopSet): StopChoice {
  const choice = stopFinder(set)(height, "both");
  if (choice === undefined)
    throw new GeometryError("no-stop-blocks", "there is no stop block to choose from");
  return choice;
}

/**
 * The lowest post with shims that is not below a wanted height: the safe side where more can be pressed off but
 * nothing put back. The fewest pieces among equally low ones.
 *
 * @param height - Wanted height, mm.
 * @returns undefined where nothing in hand is that tall.
 * @throws {GeometryError} `too-many-shims` with more than {@link MOST_SHIMS}.
 *
 * @example
 * stopNotBelow(7.44, { blocks: [6, 12], shims: [1, 0.5, 0.2] })?.height; // 7.5
 */
export function stopNotBelow(height: number, set: StopSet): StopChoice | undefined {
  return stopFinder(set)(height, "above");
}

/**
 * The highest post with shims that is not above a wanted height. The fewest pieces among equally high ones.
 *
 * @param height - Wanted height, mm.
 * @returns undefined where even the lowest post is taller.
 * @throws {GeometryError} `too-many-shims` with more than {@link MOST_SHIMS}.
 *
 * @example
 * stopNotAbove(7.44, { blocks: [6, 12], shims: [1, 0.5, 0.2] })?.height; // 7.2
 */
export function stopNotAbove(height: number, set: StopSet): StopChoice | undefined {
  return stopFinder(set)(height, "below");
}

/** Which stops are looked among: those not under a height, those not over it, or all. */
export type StopSide = "above" | "below" | "both";

/** The nearest stop on a side of a height; undefined where there is none. */
export type StopFinder = (height: number, side: StopSide) => StopChoice | undefined;

/**
 * A search over one set of stops, for whoever asks it more than once: {@link nearestStop} on `both` sides,
 * {@link stopNotBelow} `above`, {@link stopNotAbove} `below`.
 *
 * Shims are summed in two halves; for every post and every sum of the one half, only the two sums of the other on
 * either side of what is missing can be the best, and both lists are walked once.
 *
 * @throws {GeometryError} `too-many-shims` with more than {@link MOST_SHIMS}.
 *
 * @example
 * const find = stopFinder({ blocks: [6, 12], shims: [1, 0.5] });
 * find(7.2, "both")?.height; // 7
 */
export function stopFinder({ blocks, shims }: StopSet): StopFinder {
  if (shims.length > MOST_SHIMS)
    throw new GeometryError("too-many-shims", `at most ${MOST_SHIMS} shims can be searched`);
  const thickestFirst = [...shims].sort((a, b) => b - a);
  const half = Math.ceil(shims.length / 2);
  const first = sumsOf(thickestFirst.slice(0, half));
  const second = sumsOf(thickestFirst.slice(half));
  return (height, side) => {
    const wanted = grains(height);
    let best: Found | undefined;
    for (const block of blocks) best = searchOn(block, wanted - grains(block), [first, second], side, best);
    if (best === undefined) return undefined;
    const mask = (first.masks[best.i] ?? 0) + (second.masks[best.j] ?? 0) * 2 ** half;
    const total = (wanted + best.off) / GRAINS_PER_MM;
    const used = thickestFirst.filter((_, i) => Math.floor(mask / 2 ** i) % 2 === 1);
    return { block: best.block, shims: used, height: total, error: total - height };
  };
}

/** The best so far: how far off in grains, how many shims, the post, and a sum of either half. */
interface Found {
  readonly off: number;
  readonly pieces: number;
  readonly block: number;
  readonly i: number;
  readonly j: number;
}

/** The best so far, or a better one on this post. */
function searchOn(
  block: number,
  missing: number,
  [first, second]: readonly [Sums, Sums],
  side: StopSide,
  soFar: Found | undefined,
): Found | undefined {
  let best = soFar;
  let j = second.heights.length;
  for (const [i, sum] of first.heights.entries()) {
    while (j > 0 && sum + (second.heights[j - 1] ?? 0) >= missing) j--;
    // `j` is the lowest that meets the height or stands over it, the one before it the highest under it.
    for (let at = j; at >= Math.max(0, j - 1); at--) {
      const off = sum + (second.heights[at] ?? Number.NaN) - missing;
      if (Number.isNaN(off) || (side === "above" && off < 0) || (side === "below" && off > 0)) continue;
      const pieces = (first.pieces[i] ?? 0) + (second.pieces[at] ?? 0);
      if (best === undefined || isBetter(off, pieces, best)) best = { off, pieces, block, i, j: at };
    }
  }
  return best;
}

function isBetter(
  off: number,
  pieces: number,
  than: { readonly off: number; readonly pieces: number },
): boolean {
  const closer = Math.abs(off) - Math.abs(than.off);
  if (closer !== 0) return closer < 0;
  if (pieces !== than.pieces) return pieces < than.pieces;
  return off > than.off;
}

/** Every sum once: the list so far and the same list raised by the next shim, merged. */
function sumsOf(shims: readonly number[]): Sums {
  let sums: Sums = { heights: [0], masks: [0], pieces: [0] };
  shims.forEach((shim, bit) => {
    sums = withShim(sums, grains(shim), 1 << bit);
  });
  return sums;
}

function withShim(sums: Sums, size: number, bit: number): Sums {
  const heights: number[] = [];
  const masks: number[] = [];
  const pieces: number[] = [];
  const put = (height: number, mask: number, count: number): void => {
    const last = heights.length - 1;
    if (heights[last] !== height) {
      heights.push(height);
      masks.push(mask);
      pieces.push(count);
    } else if (count < (pieces[last] ?? 0)) {
      masks[last] = mask;
      pieces[last] = count;
    }
  };
  const end = sums.heights.length;
  for (let without = 0, withIt = 0; withIt < end; ) {
    const plain = sums.heights[without] ?? Number.POSITIVE_INFINITY;
    const raised = (sums.heights[withIt] ?? 0) + size;
    if (plain <= raised) {
      put(plain, sums.masks[without] ?? 0, sums.pieces[without] ?? 0);
      without++;
    } else {
      put(raised, (sums.masks[withIt] ?? 0) | bit, (sums.pieces[withIt] ?? 0) + 1);
      withIt++;
    }
  }
  return { heights, masks, pieces };
}
