import { distinct } from "./footprint.js";
import type { Block } from "./handle-block.js";
import type { Steel } from "./handle-moments.js";

/** The place where a block is thinnest beside the steel inside it. */
export interface Mortise {
  /** Least of what is left above, below and beside the steel, mm; negative by how far the steel stands out. */
  readonly wall: number;
  /** x of that place, mm. */
  readonly at: number;
}

/** Samples between two places where outline, steel or block change their law. */
const SAMPLES = 8;

/**
 * What a block leaves around the steel that goes through it, at its thinnest; infinite where there is no steel in it.
 * Above and below it is counted along y, beside the steel along z.
 */
export function mortiseOf(block: Block, { footprint, slab }: Steel): Mortise {
  let least: Mortise = { wall: Number.POSITIVE_INFINITY, at: block.front };
  for (const { x0, x1, spans } of footprint.intervals) {
    const from = Math.max(x0, block.rear);
    const to = Math.min(x1, block.front);
    if (!(to > from)) continue;
    const cuts = distinct([from, to, ...[...block.breaks, ...slab.breaks].filter((x) => x > from && x < to)]);
    // Ends belong to the stretch between them: just inside, so that a shoulder does not count as tang.
    const inset = 1e-9 * (to - from);
    for (const [i, cut] of cuts.slice(1).entries()) {
      const start = cuts[i] as number;
      for (let k = 0; k <= SAMPLES; k++) {
        const x = Math.min(to - inset, Math.max(from + inset, start + ((cut - start) * k) / SAMPLES));
        const section = block.sectionAt(x);
        const half = slab.thicknessAt(x) / 2;
        for (const { lower, upper } of spans) {
          const low = lower.heightAt(x) - block.centre;
          const high = upper.heightAt(x) - block.centre;
          const wall = Math.min(
            section.halfHeight - high,
            low + section.halfHeight,
            section.widthAt(low) - half,
            section.widthAt(high) - half,
          );
          if (wall < least.wall) least = { wall, at: x };
        }
      }
    }
  }
  return least;
}
