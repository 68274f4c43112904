import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import { distinct, type Footprint, type FootprintInterval } from "./footprint.js";
import type { Block } from "./handle-block.js";
import { MOMENTS, type Moments, VOLUME, X, XX, XY, Y, YY, ZZ } from "./moments.js";
import type { SlabLaw } from "./slab-law.js";
import { uprightMap } from "./station-pieces.js";

/** Relative error aimed at. */
const AIM = 1e-11;

/** A region of the flats, and how thick the steel is there: what is inside a block and inside this counts. */
export interface Steel {
  readonly footprint: Footprint;
  readonly slab: SlabLaw;
}

/**
 * Integrals of a solid block. Its sections are exact, the stations are summed by a rule that is exact for the polynomials
 * that straight and smooth laws give.
 *
 * @example
 * // elliptic cylinder 100 long, 30 high, 20 wide: π/4 · 30 · 20 · 100 mm³
 * const grip = { material: { name: "ash" }, section: "oval", length: 100, height: 30, width: 20 } as const;
 * blockMoments(handleBlock(grip, 0, 0)).value[VOLUME]; // 47123.9
 */
export function blockMoments(block: Block): Moments {
  return integrate(block, [{ x0: block.rear, x1: block.front, spans: undefined }], undefined);
}

/** Integrals of the part of a block that stands over a region of the flats, such as a hole. */
export function blockOver(block: Block, region: Footprint): Moments {
  return integrate(block, region.intervals, undefined);
}

/**
 * Integrals of the steel inside a block: the mortise of a handle, the slot of a guard. Where the steel would stand out
 * of the block, only what is inside counts.
 *
 * @param region - counts only what stands over this region too, such as a hole's; left out: the steel's own outline.
 */
export function steelInBlock(block: Block, steel: Steel, region: Footprint = steel.footprint): Moments {
  return integrate(block, region.intervals, steel);
}

interface Stretch {
  readonly x0: number;
  readonly x1: number;
  /** Undefined: all heights. */
  readonly spans: FootprintInterval["spans"] | undefined;
}

function integrate(block: Block, stretches: readonly Stretch[], steel: Steel | undefined): Moments {
  const value = new Float64Array(MOMENTS);
  const error = new Float64Array(MOMENTS);
  const tolerance = toleranceFor(block);
  const breaks = [...block.breaks];
  if (steel !== undefined) {
    breaks.push(...steel.slab.breaks, ...steel.footprint.intervals.flatMap(({ x0, x1 }) => [x0, x1]));
  }
  for (const { x0, x1, spans } of stretches) {
    const from = Math.max(x0, block.rear);
    const to = Math.min(x1, block.front);
    if (!(to > from)) continue;
    const map = uprightMap({ x0, x1, spans: spans ?? [] });
    const cuts = distinct([from, to, ...breaks.filter((x) => x > from && x < to)]).map((x) => map.u(x));
    const pieces = cuts.slice(1).map((u, i): Piece => ({ from: cuts[i] as number, to: u }));
    const result = integrateAdaptive(
      (u, out) => {
        const x = map.x(u);
        station(block, x, spans, steel, out);
        const stretch = map.slope(u);
        for (let i = 0; i < MOMENTS; i++) out[i] = (out[i] as number) * stretch;
      },
      MOMENTS,
      pieces,
      { tolerance },
    );
    for (let i = 0; i < MOMENTS; i++) {
      value[i] = (value[i] as number) + (result.value[i] as number);
      error[i] = (error[i] as number) + (result.error[i] as number);
    }
  }
  return { value, error };
}

/** Integrals over the section at x, per mm of x. */
function station(
  block: Block,
  x: number,
  spans: Stretch["spans"],
  steel: Steel | undefined,
  out: Float64Array,
): void {
  const section = block.sectionAt(x);
  const c = block.centre;
  section.clear();
  if (spans === undefined)
    section.add(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY);
  for (const { lower, upper } of spans ?? []) {
    const low = lower.heightAt(x);
    const high = upper.heightAt(x);
    if (steel === undefined) section.add(low - c, high - c, Number.POSITIVE_INFINITY);
    else {
      const cap = steel.slab.thicknessAt(x) / 2;
      for (const [y0, y1] of steel.footprint.spansAt(x)) {
        section.add(Math.max(low, y0) - c, Math.min(high, y1) - c, cap);
      }
    }
  }
  const [i0, i1, i2, cubes] = section.sums as unknown as [number, number, number, number];
  const iy = c * i0 + i1;
  out.fill(0);
  out[VOLUME] = 2 * i0;
  out[X] = 2 * x * i0;
  out[Y] = 2 * iy;
  out[XX] = 2 * x * x * i0;
  out[YY] = 2 * (c * c * i0 + 2 * c * i1 + i2);
  out[ZZ] = (2 * cubes) / 3;
  out[XY] = 2 * x * iy;
}

/** The aim as absolute errors, from the box around the block. */
function toleranceFor(block: Block): Float64Array {
  const middle = block.sectionAt((block.front + block.rear) / 2);
  const { halfHeight, halfWidth } = middle;
  const aim = AIM * 4 * halfHeight * halfWidth * (block.front - block.rear);
  const x = Math.max(1, Math.abs(block.front), Math.abs(block.rear));
  const y = Math.max(1, Math.abs(block.centre) + halfHeight);
  const tolerance = new Float64Array(MOMENTS).fill(aim);
  tolerance[X] = aim * x;
  tolerance[Y] = aim * y;
  tolerance[XX] = aim * x * x;
  tolerance[YY] = aim * y * y;
  tolerance[ZZ] = aim * halfWidth * halfWidth;
  tolerance[XY] = aim * x * y;
  return tolerance;
}
