import type { Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import type { EdgeElement, FootFrame } from "./edge-element.js";
import { addRun, boxesOf, type Joint, plainReach } from "./edge-run-parts.js";
import { type StretchVisitor, visitTurning, walkPlainly } from "./plain-walk.js";
import { RidgeProbes } from "./ridge-probes.js";
import { RoundElement } from "./round-element.js";
import { StraightElement } from "./straight-element.js";

/** Over less than this two elements are taken as one, mm: where they are equally far to rounding they change for ever. */
const NARROWEST = 1e-6;

/**
 * The edge run as a distance field: the run goes on past heel and tip along its end tangents.
 *
 * Not re-entrant within one object: the last foot found is kept in fields, because millions are asked for.
 */
export class EdgeRun {
  readonly elements: readonly EdgeElement[];
  /** Joint i lies between element i and element i + 1. */
  readonly joints: readonly Joint[];
  /** The segment that each element was made of; undefined for rays and corners. */
  readonly sources: readonly (Segment | undefined)[];
  /** Whether any piece of the run is an arc or a cubic. */
  readonly isCurved: boolean;
  /** Least and greatest x and y of every element, without end for rays and corners. */
  private readonly boxes: Float64Array;
  /** How far from the edge every point is sure to have one nearest point only; 0 where nothing is sure. */
  readonly plainReach: number;
  /** Element, parameter and distance of the last nearest point. */
  element = 0;
  foot = 0;
  distance = 0;
  private readonly hollowCorner: boolean;
  /** Greatest curvature: with a corner that turns toward the blade it says where a ridge starts. */
  private readonly maxCurvature: number;
  private probes: RidgeProbes | undefined;
  private readonly frameBuffer: FootFrame = { normalX: 0, normalY: 1 };

  /** @param runs - one run, or several that lie apart; each heel to tip with the steel on its left. */
  constructor(...runs: readonly (readonly Segment[])[]) {
    const elements: EdgeElement[] = [];
    const joints: Joint[] = [];
    const sources: (Segment | undefined)[] = [];
    for (const run of runs) {
      // Between two runs there is no joint to pass: the change from one to the other is found by halving.
      if (elements.length > 0) joints.push({ at: { x: 0, y: 0 }, normal: { x: 0, y: 1 }, smooth: false });
      addRun(run, elements, joints, sources);
    }
    this.elements = elements;
    this.joints = joints;
    this.sources = sources;
    this.boxes = boxesOf(sources, elements.length);
    this.plainReach = runs.length === 1 ? plainReach(elements, joints) : 0;
    this.isCurved = elements.some((element) => element.maxCurvature !== 0 || element.minCurvature !== 0);
    this.hollowCorner = joints.some((joint, i) => !joint.smooth && elements[i + 1] instanceof RoundElement);
    this.maxCurvature = Math.max(...elements.map((element) => element.maxCurvature));
  }

  /** Distance from (x, y) to the run, mm; sets `element` and `foot`. */
  nearest(x: number, y: number): number {
    const elements = this.elements;
    const known = this.plainReach > 0 ? this.nearestKnown(x, y) : Number.POSITIVE_INFINITY;
    if (known < Number.POSITIVE_INFINITY) return known;
    let best = Number.POSITIVE_INFINITY;
    for (let i = 0; i < elements.length; i++) {
      if (this.boxDistance(i, x, y) >= best) continue;
      const element = elements[i] as EdgeElement;
      const d = element.distance(x, y, Number.NaN);
      // On a tie the earlier one stays, but a plain corner gives way to the curve that ends in it.
      if (d < best - 1e-13) {
        best = d;
        this.element = i;
        this.foot = element.foot;
      }
    }
    this.distance = best;
    return best;
  }

  /** Distance to element i with its ends, mm: never infinite, as that to the element's own nearest points can be. */
  closedDistance(i: number, x: number, y: number): number {
    const own = (this.elements[i] as EdgeElement).distance(x, y, Number.NaN);
    if (own < Number.POSITIVE_INFINITY) return own;
    return Math.sqrt(Math.min(this.jointDistance(i - 1, x, y), this.jointDistance(i, x, y)));
  }

  private jointDistance(i: number, x: number, y: number): number {
    const at = this.joints[i]?.at;
    return at === undefined ? Number.POSITIVE_INFINITY : (x - at.x) ** 2 + (y - at.y) ** 2;
  }

  /** Least distance at which anything of element i can lie, mm. */
  boxDistance(i: number, x: number, y: number): number {
    const k = 4 * i;
    const boxes = this.boxes;
    const dx = Math.max((boxes[k] as number) - x, x - (boxes[k + 1] as number), 0);
    const dy = Math.max((boxes[k + 2] as number) - y, y - (boxes[k + 3] as number), 0);
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** Where no ridge is near a foot within reach is the only one: of the last element, or that between whose normals (x, y) is. */
  private nearestKnown(x: number, y: number): number {
    for (let attempt = 0; attempt < 2; attempt++) {
      const i = attempt === 0 ? this.element : this.elementBeside(x, y);
      const d = (this.elements[i] as EdgeElement).distance(x, y, attempt === 0 ? this.foot : Number.NaN);
      if (!(d <= this.plainReach && d < Number.POSITIVE_INFINITY)) continue;
      this.element = i;
      this.foot = (this.elements[i] as EdgeElement).foot;
      this.distance = d;
      return d;
    }
    return Number.POSITIVE_INFINITY;
  }

  /** The element between whose normals a point lies, where no ridge is near: along the run they are passed one by one. */
  private elementBeside(x: number, y: number): number {
    let low = 0;
    let high = this.joints.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      const { at, normal } = this.joints[middle] as Joint;
      if ((x - at.x) * normal.y - (y - at.y) * normal.x > 0) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** Unit normal at the nearest point of (x, y): the direction in which the distance grows. */
  normalAt(x: number, y: number): Vec2 {
    this.nearest(x, y);
    const element = this.elements[this.element] as EdgeElement;
    element.foot = this.foot;
    element.frame(x, y, this.frameBuffer);
    return { x: this.frameBuffer.normalX, y: this.frameBuffer.normalY };
  }

  /** Visits the station x from y0 up to y1 in stretches over which one element is nearest and the distance is monotone. */
  walk(x: number, y0: number, y1: number, visit: StretchVisitor): void {
    if (!(y1 > y0)) return;
    const v = this.nearest(x, y0);
    const e = this.element;
    const f = this.foot;
    const v1 = this.nearest(x, y1);
    this.walkBetween(x, y0, v, e, f, y1, v1, this.element, this.foot, visit);
  }

  /** The same where the nearest points of both ends are known: distance, element, parameter. */
  walkBetween(
    x: number,
    y0: number,
    v0: number,
    e0: number,
    f0: number,
    y1: number,
    v1: number,
    e1: number,
    f1: number,
    visit: StretchVisitor,
  ): void {
    if (!(y1 > y0)) return;
    if (v0 <= this.plainReach && v1 <= this.plainReach) {
      walkPlainly(this.elements, this.joints, x, y0, v0, e0, f0, y1, v1, e1, f1, visit);
      return;
    }
    let y = y0;
    let v = v0;
    let e = e0;
    let f = f0;
    // Where a ridge may run through the blade, an element can give way to another and come back higher up.
    if (this.hollowCorner || this.maxCurvature * Math.max(v0, v1) > 0.98) {
      this.probes ??= new RidgeProbes(this);
      this.probes.look(x, y0, y1);
      for (const yk of this.probes.changes) {
        const vk = this.nearest(x, yk);
        const ek = this.element;
        if (ek === e) continue;
        const fk = this.foot;
        this.between(x, y, v, e, f, yk, vk, ek, fk, visit, 0);
        y = yk;
        v = vk;
        e = ek;
        f = fk;
      }
    }
    this.between(x, y, v, e, f, y1, v1, e1, f1, visit, 0);
  }

  private between(
    x: number,
    y0: number,
    v0: number,
    e0: number,
    f0: number,
    y1: number,
    v1: number,
    e1: number,
    f1: number,
    visit: StretchVisitor,
    depth: number,
  ): void {
    if (!(y1 > y0)) return;
    if (e0 === e1) {
      this.within(x, e0, y0, v0, f0, y1, v1, f1, visit, depth);
      return;
    }
    const isDivisible = depth < 48 && y1 - y0 > NARROWEST;
    const y = isDivisible ? this.changeOver(x, y0, e0, y1, e1) : y0;
    if (!(y > y0 && y < y1)) {
      const e = y <= y0 ? e1 : e0;
      const element = this.elements[e] as EdgeElement;
      const d0 = element.distance(x, y0, Number.NaN);
      const g0 = element.foot;
      const d1 = element.distance(x, y1, Number.NaN);
      const g1 = element.foot;
      this.within(
        x,
        e,
        y0,
        Number.isFinite(d0) ? d0 : v0,
        g0,
        y1,
        Number.isFinite(d1) ? d1 : v1,
        g1,
        visit,
        depth,
      );
      return;
    }
    const v = this.nearest(x, y);
    const e = this.element;
    const f = this.foot;
    if (e !== e0 && e !== e1) {
      this.between(x, y0, v0, e0, f0, y, v, e, f, visit, depth + 1);
      this.between(x, y, v, e, f, y1, v1, e1, f1, visit, depth + 1);
      return;
    }
    // At the change-over both are equally near: close each stretch with its own element.
    this.close(x, e0, y0, v0, f0, y, v, visit, true, depth);
    this.close(x, e1, y1, v1, f1, y, v, visit, false, depth);
  }

  private close(
    x: number,
    e: number,
    yEnd: number,
    vEnd: number,
    fEnd: number,
    y: number,
    v: number,
    visit: StretchVisitor,
    upward: boolean,
    depth: number,
  ): void {
    const element = this.elements[e] as EdgeElement;
    const own = element.distance(x, y, Number.NaN);
    const foot = element.foot;
    const d = Number.isFinite(own) ? own : v;
    if (upward) this.within(x, e, yEnd, vEnd, fEnd, y, d, foot, visit, depth);
    else this.within(x, e, y, d, foot, yEnd, vEnd, fEnd, visit, depth);
  }

  /** One nearest element throughout; what may still be inside is the turning point of a round element. */
  private within(
    x: number,
    e: number,
    y0: number,
    v0: number,
    f0: number,
    y1: number,
    v1: number,
    f1: number,
    visit: StretchVisitor,
    depth: number,
  ): void {
    const element = this.elements[e] as EdgeElement;
    if (depth < 48 && element.maxCurvature * Math.max(v0, v1) > 0.98 && Math.abs(f1 - f0) > 1e-6) {
      const y = this.jumpWithin(x, element, y0, f0, y1, f1);
      if (y !== undefined) {
        // Across the jump another element may have its place before this one comes back.
        const below = this.nearest(x, y - 1e-12);
        const eBelow = this.element;
        const footBelow = this.foot;
        const above = this.nearest(x, y + 1e-12);
        const eAbove = this.element;
        const footAbove = this.foot;
        this.between(x, y0, v0, e, f0, y, below, eBelow, footBelow, visit, depth + 8);
        this.between(x, y, above, eAbove, footAbove, y1, v1, e, f1, visit, depth + 8);
        return;
      }
    }
    visitTurning(element, x, e, y0, v0, f0, y1, v1, f1, visit);
  }

  /** Finds a ridge inside one curve: the place where its nearest parameter jumps. */
  private jumpWithin(
    x: number,
    element: EdgeElement,
    y0: number,
    f0: number,
    y1: number,
    f1: number,
  ): number | undefined {
    let a = y0;
    let b = y1;
    let fa = f0;
    let fb = f1;
    for (let pass = 0; pass < 50 && b - a > 1e-13; pass++) {
      const y = (a + b) / 2;
      element.distance(x, y, Number.NaN);
      const f = element.foot;
      if (Math.abs(f - fa) > Math.abs(fb - f)) {
        b = y;
        fb = f;
      } else {
        a = y;
        fa = f;
      }
    }
    return Math.abs(fb - fa) > 1e-5 ? (a + b) / 2 : undefined;
  }

  /** Where, going up the station, the nearest element stops being e0 on the way to e1. */
  private changeOver(x: number, y0: number, e0: number, y1: number, e1: number): number {
    const joint = e1 > e0 ? this.joints[e0] : this.joints[e1];
    if (joint !== undefined && Math.abs(e1 - e0) === 1 && joint.smooth && joint.normal.x !== 0) {
      const v = (x - joint.at.x) / joint.normal.x;
      const y = joint.at.y + v * joint.normal.y;
      // Behind a ridge the joint's normal goes on, but something else is nearer there.
      if (v >= 0 && y >= y0 && y <= y1 && this.nearest(x, y) > v - 1e-9) return y;
    }
    const one = this.elements[e0];
    const other = this.elements[e1];
    if (one instanceof StraightElement && other instanceof StraightElement) {
      // Between two facets: their bisector.
      const y = one.equallyFar(other, x);
      if (y >= y0 && y <= y1 && this.nearest(x, y) > one.distance(x, y) - 1e-9) return y;
    }
    let low = y0;
    let high = y1;
    for (let pass = 0; pass < 60 && high - low > 1e-13 * Math.max(1, Math.abs(high)); pass++) {
      const y = (low + high) / 2;
      this.nearest(x, y);
      if (this.element === e0) low = y;
      else if (this.element === e1) high = y;
      else return y;
    }
    return (low + high) / 2;
  }
}
