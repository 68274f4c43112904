import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import { gaussRule } from "../numeric/gauss.js";
import { findRoot } from "../numeric/roots.js";
import { pathBounds } from "../plane/bounds.js";
import type { Path } from "../plane/path.js";
import type { Segment } from "../plane/segment.js";
import { distinct, Footprint, type FootprintInterval } from "./footprint.js";
import { RoundedSums } from "./handle-rounded-sums.js";
import { FINE, HandleSide } from "./handle-side.js";
import { MOMENTS, type Moments } from "./moments.js";
import type { Thickness } from "./slab-moments.js";
import { uprightMap } from "./station-pieces.js";

/** Cells up a station along a side that turns back, the rule in each, and how much more error that leaves. */
const CELLS = 48;
const CELL = gaussRule(6);
const CELL_ERROR = 1e5;

/**
 * What rounding the long edges of a handle takes off both faces: a quarter circle of radius r along each of its two long
 * sides. A side is a run along x that goes on past its ends along its end tangents; the distance to it is true, so that
 * the quarter circle stands square to it everywhere.
 *
 * Up a station the distance to a run that never turns back along x only grows, away from it: so each side takes one
 * stretch of the station. Where a run does turn back (a hooked butt), the stretches are searched for, which costs more.
 */
export class HandleRounding {
  readonly radius: number;
  private readonly below: HandleSide | undefined;
  private readonly above: HandleSide | undefined;
  private readonly sums: RoundedSums;

  /** @param bottom, top - the runs of the outline, in its order, without upright pieces at their ends. */
  constructor(bottom: readonly Segment[], top: readonly Segment[], radius: number) {
    this.radius = radius;
    this.sums = new RoundedSums(radius);
    this.below = bottom.length === 0 ? undefined : new HandleSide(bottom, radius, 1);
    this.above = top.length === 0 ? undefined : new HandleSide(top, radius, -1);
  }

  /**
   * Integrals of what is taken off over a region of the flats.
   *
   * @param thickness - of the whole before rounding.
   * @param isRounded - stations that are left square.
   * @param tolerance - absolute errors aimed at; 10⁵ times as much where a side turns back.
   */
  over(
    region: Path,
    thickness: Thickness,
    isRounded: (x: number) => boolean,
    tolerance: Float64Array,
  ): Moments {
    const value = new Float64Array(MOMENTS);
    const error = new Float64Array(MOMENTS);
    const sides = [this.below, this.above].filter((side) => side !== undefined);
    const { minX, maxX, minY, maxY } = pathBounds(region);
    const around = Math.hypot(maxX - minX, maxY - minY) / 2;
    // Most pins stand clear of the rounded edges.
    if (sides.every((side) => side.isClear((minX + maxX) / 2, (minY + maxY) / 2, around)))
      return { value, error };
    const breaks = [...thickness.breaks, ...sides.flatMap((side) => side.breaks)];
    for (const interval of new Footprint(region).intervals) {
      const { x0, x1 } = interval;
      const map = uprightMap(interval);
      const cuts = distinct([x0, x1, ...breaks.filter((x) => x > x0 && x < x1)]).map((x) => map.u(x));
      const pieces = cuts.slice(1).map((u, i): Piece => ({ from: cuts[i] as number, to: u }));
      const middles = cuts.slice(1).map((u, i) => map.x((u + (cuts[i] as number)) / 2));
      const turnsBack = sides.some((side) => middles.some((x) => side.turnsBackNear(x)));
      const result = integrateAdaptive(
        (u, out) => {
          const x = map.x(u);
          out.fill(0);
          if (!isRounded(x)) return;
          this.sums.begin(x, thickness.thicknessAt(x) / 2);
          if (sides.some((side) => side.turnsBackNear(x))) this.search(x, interval.spans);
          else this.station(x, interval.spans);
          const stretch = map.slope(u);
          for (let i = 0; i < MOMENTS; i++) out[i] = (this.sums.value[i] as number) * stretch;
        },
        MOMENTS,
        pieces,
        { tolerance: turnsBack ? tolerance.map((t) => t * CELL_ERROR) : tolerance, maxPieces: 100 },
      );
      for (let i = 0; i < MOMENTS; i++) {
        value[i] = (value[i] as number) + (result.value[i] as number);
        error[i] = (error[i] as number) + (result.error[i] as number);
      }
    }
    return { value, error };
  }

  private station(x: number, spans: FootprintInterval["spans"]): void {
    const { below, above } = this;
    for (const { lower, upper } of spans) {
      const y0 = lower.heightAt(x);
      const y1 = upper.heightAt(x);
      let low = below === undefined ? y0 : below.reach(x, y0, y1);
      let high = above === undefined ? y1 : above.reach(x, y1, y0);
      if (below !== undefined && above !== undefined && low > high) {
        // A handle lower than twice the radius: the two meet on a ridge.
        const gap = (y: number): number => below.run.nearest(x, y) - above.run.nearest(x, y);
        const ridge = findRoot(gap, high, low, FINE) ?? (gap(high) > 0 ? high : low);
        low = ridge;
        high = ridge;
      }
      below?.add(x, y0, low, this.sums);
      above?.add(x, y1, high, this.sums);
    }
  }

  private search(x: number, spans: FootprintInterval["spans"]): void {
    const distance = (y: number): number =>
      Math.min(
        this.below?.run.nearest(x, y) ?? Number.POSITIVE_INFINITY,
        this.above?.run.nearest(x, y) ?? Number.POSITIVE_INFINITY,
      );
    const beyond = (y: number): number => distance(y) - this.radius;
    for (const { lower, upper } of spans) {
      const y0 = lower.heightAt(x);
      const y1 = upper.heightAt(x);
      let a = y0;
      let isOut = beyond(a) >= 0;
      for (let k = 1; k <= CELLS; k++) {
        const b = y0 + ((y1 - y0) * k) / CELLS;
        const isNextOut = beyond(b) >= 0;
        if (!(isOut && isNextOut)) {
          const change = isOut === isNextOut ? undefined : findRoot(beyond, a, b, 1e-9);
          this.cell(distance, isOut ? (change ?? a) : a, isNextOut ? (change ?? b) : b);
        }
        a = b;
        isOut = isNextOut;
      }
    }
  }

  /** One cell of the search: nodes gather at its ends, where the quarter circle may stand upright. */
  private cell(distance: (y: number) => number, from: number, to: number): void {
    const { nodes, weights } = CELL;
    for (let i = 0; i < nodes.length; i++) {
      const turn = (Math.PI * (nodes[i] as number)) / 2;
      const y = from + (to - from) * Math.sin(turn) ** 2;
      const width = ((to - from) * Math.PI * Math.sin(2 * turn) * (weights[i] as number)) / 2;
      this.sums.add(y, distance(y), width);
    }
  }
}
