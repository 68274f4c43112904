import type { Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import type { EdgeElement, FootFrame } from "./edge-element.js";
import { addRun, boxesOf, type Joint, plainReach } from "./edge-run-parts.js";
import { FacetField } from "./facet-field.js";
import { type StretchVisitor, walkPlainly } from "./plain-walk.js";
import { RidgeWalk } from "./ridge-walk.js";

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
  private ridges: RidgeWalk | undefined;
  private readonly facets: FacetField | undefined;
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
    this.facets = runs.length === 1 && this.plainReach === 0 ? FacetField.of(elements, joints) : undefined;
    this.isCurved = elements.some((element) => element.maxCurvature !== 0 || element.minCurvature !== 0);
  }

  /** Distance from (x, y) to the run, mm; sets `element` and `foot`. */
  nearest(x: number, y: number): number {
    const elements = this.elements;
    const known = this.plainReach > 0 ? this.nearestKnown(x, y) : Number.POSITIVE_INFINITY;
    if (known < Number.POSITIVE_INFINITY) return known;
    const facet = this.facets?.nearest(x, y) ?? -1;
    if (facet >= 0) {
      const element = elements[facet] as EdgeElement;
      this.element = facet;
      this.distance = element.distance(x, y, Number.NaN);
      this.foot = element.foot;
      return this.distance;
    }
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

  /** Parameter of that end of element i that is nearer to (x, y). */
  nearerEnd(i: number, x: number, y: number): number {
    const { footAtStart, footAtEnd } = this.elements[i] as EdgeElement;
    return this.jointDistance(i - 1, x, y) <= this.jointDistance(i, x, y) ? footAtStart : footAtEnd;
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

  /**
   * Where no ridge is near, a foot within reach is the only one: the element that was nearest last time is asked first, then
   * the one between whose normals the point lies.
   */
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
    const low = { y: y0, v: v0, element: e0, foot: f0 };
    const high = { y: y1, v: v1, element: e1, foot: f1 };
    if (this.facets?.walk(x, low, high, visit) === true) return;
    this.ridges ??= new RidgeWalk(this);
    this.ridges.walk(x, low, high, visit);
  }
}
