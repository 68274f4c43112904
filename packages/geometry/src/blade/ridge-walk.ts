import type { EdgeElement } from "./edge-element.js";
import type { EdgeRun } from "./edge-run.js";
import { type StretchVisitor, visitTurning } from "./plain-walk.js";
import { RidgeProbes } from "./ridge-probes.js";
import { RoundElement } from "./round-element.js";
import { StraightElement } from "./straight-element.js";

/** Over less than this two elements are taken as one, mm: where they are equally far to rounding they change for ever. */
const NARROWEST = 1e-6;
/** How often a stretch may be divided, and how often for the jumps of one element. */
const DEEPEST = 48;
const JUMP = 8;

/** One end of a stretch of a station: its height, its distance from the edge, and the nearest element with its parameter. */
export interface StretchEnd {
  readonly y: number;
  readonly v: number;
  readonly element: number;
  readonly foot: number;
}

/** Walks stations where a ridge of the distance field may lie: an element can give way to another and come back higher up. */
export class RidgeWalk {
  private readonly run: EdgeRun;
  private readonly probes: RidgeProbes;
  /** Whether the edge turns toward the blade in a corner, and its greatest curvature: where a ridge starts. */
  private readonly hollowCorner: boolean;
  private readonly maxCurvature: number;

  constructor(run: EdgeRun) {
    const { elements, joints } = run;
    this.run = run;
    this.probes = new RidgeProbes(run);
    this.hollowCorner = joints.some((joint, i) => !joint.smooth && elements[i + 1] instanceof RoundElement);
    this.maxCurvature = Math.max(...elements.map((element) => element.maxCurvature));
  }

  /** Visits the station x between two ends in stretches with one nearest element, over which the distance is monotone. */
  walk(x: number, low: StretchEnd, high: StretchEnd, visit: StretchVisitor): void {
    let from = low;
    if (this.hollowCorner || this.maxCurvature * Math.max(low.v, high.v) > 0.98) {
      for (const y of this.probes.look(x, low.y, high.y)) {
        const to = this.at(x, y);
        if (to.element === from.element) continue;
        this.between(x, from, to, visit, 0);
        from = to;
      }
    }
    this.between(x, from, high, visit, 0);
  }

  /** The nearest element at a height of the station. */
  private at(x: number, y: number): StretchEnd {
    const v = this.run.nearest(x, y);
    return { y, v, element: this.run.element, foot: this.run.foot };
  }

  /**
   * The same height seen from a given element; from where it reaches no farther, at the distance that is known, from its
   * nearer end: the other's foot says nothing of this one.
   */
  private seenFrom(element: number, x: number, { y, v }: StretchEnd): StretchEnd {
    const own = this.run.elements[element] as EdgeElement;
    const d = own.distance(x, y, Number.NaN);
    return Number.isFinite(d)
      ? { y, v: d, element, foot: own.foot }
      : { y, v, element, foot: this.run.nearerEnd(element, x, y) };
  }

  private between(x: number, low: StretchEnd, high: StretchEnd, visit: StretchVisitor, depth: number): void {
    if (!(high.y > low.y)) return;
    if (low.element === high.element) {
      this.within(x, low, high, visit, depth);
      return;
    }
    const isDivisible = depth < DEEPEST && high.y - low.y > NARROWEST;
    const y = isDivisible ? this.changeOver(x, low, high) : low.y;
    if (!(y > low.y && y < high.y)) {
      const { element } = y <= low.y ? high : low;
      this.within(x, this.seenFrom(element, x, low), this.seenFrom(element, x, high), visit, depth);
      return;
    }
    const middle = this.at(x, y);
    if (middle.element !== low.element && middle.element !== high.element) {
      this.between(x, low, middle, visit, depth + 1);
      this.between(x, middle, high, visit, depth + 1);
      return;
    }
    // At the change-over both are equally near: each stretch is closed with its own element.
    this.within(x, low, this.seenFrom(low.element, x, middle), visit, depth);
    this.within(x, this.seenFrom(high.element, x, middle), high, visit, depth);
  }

  /** One nearest element throughout; what may still be inside is a jump of its foot, or its turning point. */
  private within(x: number, low: StretchEnd, high: StretchEnd, visit: StretchVisitor, depth: number): void {
    const own = this.run.elements[low.element] as EdgeElement;
    const isNearFocal = own.maxCurvature * Math.max(low.v, high.v) > 0.98;
    if (depth < DEEPEST && isNearFocal && Math.abs(high.foot - low.foot) > 1e-6) {
      const y = jumpWithin(own, x, low, high);
      if (y !== undefined) {
        // Across the jump another element may have its place before this one comes back.
        const below = this.at(x, y - 1e-12);
        const above = this.at(x, y + 1e-12);
        this.between(x, low, { ...below, y }, visit, depth + JUMP);
        this.between(x, { ...above, y }, high, visit, depth + JUMP);
        return;
      }
    }
    visitTurning(own, x, low.element, low.y, low.v, low.foot, high.y, high.v, high.foot, visit);
  }

  /** Where, going up the station, the nearest element stops being the lower end's on the way to the upper end's. */
  private changeOver(x: number, from: StretchEnd, to: StretchEnd): number {
    const { elements, joints } = this.run;
    const joint = joints[Math.min(from.element, to.element)];
    const areNeighbours = Math.abs(to.element - from.element) === 1;
    if (joint !== undefined && areNeighbours && joint.smooth && joint.normal.x !== 0) {
      const v = (x - joint.at.x) / joint.normal.x;
      const y = joint.at.y + v * joint.normal.y;
      // Behind a ridge the joint's normal goes on, but something else is nearer there.
      if (v >= 0 && y >= from.y && y <= to.y && this.run.nearest(x, y) > v - 1e-9) return y;
    }
    const one = elements[from.element];
    const other = elements[to.element];
    if (one instanceof StraightElement && other instanceof StraightElement) {
      // Between two facets: their bisector.
      const y = one.equallyFar(other, x);
      if (y >= from.y && y <= to.y && this.run.nearest(x, y) > one.distance(x, y) - 1e-9) return y;
    }
    let low = from.y;
    let high = to.y;
    for (let pass = 0; pass < 60 && high - low > 1e-13 * Math.max(1, Math.abs(high)); pass++) {
      const y = (low + high) / 2;
      this.run.nearest(x, y);
      if (this.run.element === from.element) low = y;
      else if (this.run.element === to.element) high = y;
      else return y;
    }
    return (low + high) / 2;
  }
}

/** Finds a ridge inside one curve: the place where its nearest parameter jumps. */
function jumpWithin(element: EdgeElement, x: number, low: StretchEnd, high: StretchEnd): number | undefined {
  let a = low.y;
  let b = high.y;
  let footA = low.foot;
  let footB = high.foot;
  for (let pass = 0; pass < 50 && b - a > 1e-13; pass++) {
    const y = (a + b) / 2;
    element.distance(x, y, Number.NaN);
    const { foot } = element;
    if (Math.abs(foot - footA) > Math.abs(footB - foot)) {
      b = y;
      footB = foot;
    } else {
      a = y;
      footA = foot;
    }
  }
  return Math.abs(footB - footA) > 1e-5 ? (a + b) / 2 : undefined;
}
