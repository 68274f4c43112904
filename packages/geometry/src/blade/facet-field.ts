import type { EdgeElement } from "./edge-element.js";
import type { Joint } from "./edge-run-parts.js";
import type { StretchVisitor } from "./plain-walk.js";
import type { StretchEnd } from "./ridge-walk.js";
import { RoundElement } from "./round-element.js";
import { StraightElement } from "./straight-element.js";

/** A point this far on the wrong side of a facet is still on it, mm. */
const OUTSIDE = 1e-9;

/** Turning that rounding leaves in an edge that does not turn at all, rad. */
const STRAIGHT = 1e-9;

const isCorner = (element: EdgeElement | undefined): boolean =>
  element instanceof RoundElement && element.radius === 0;

/**
 * The distance to an edge of straight facets that turns toward the blade at every corner. On its inner side the nearest
 * point lies on the line that is nearest, so that the distance along a station is the lowest of straight lines, one for
 * each facet: nothing has to be searched, however many facets there are.
 */
export class FacetField {
  private readonly elements: readonly EdgeElement[];
  /** Indexes of the facets among the edge's elements; those that lie on one line follow each other. */
  private readonly facets: Int32Array;
  /** Distance to facet k: a·x + b·y + c, mm. */
  private readonly a: Float64Array;
  private readonly b: Float64Array;
  private readonly c: Float64Array;
  /** Whether each facet rises less along a station than the one before it, so that going up they follow each other. */
  private readonly isInOrder: boolean;

  private constructor(elements: readonly EdgeElement[], facets: readonly number[]) {
    this.elements = elements;
    this.facets = Int32Array.from(facets);
    const lines = facets.map((i) => elements[i] as StraightElement);
    this.a = Float64Array.from(lines, (line) => -line.ty);
    this.b = Float64Array.from(lines, (line) => line.tx);
    this.c = Float64Array.from(lines, ({ origin, tx, ty }) => ty * origin.x - tx * origin.y);
    this.isInOrder = lines.every(({ tx }, k) => tx <= (lines[k - 1]?.tx ?? Number.POSITIVE_INFINITY));
  }

  /** @returns undefined where the edge has a curve, or a corner that turns away from the blade, or turns back. */
  static of(elements: readonly EdgeElement[], joints: readonly Joint[]): FacetField | undefined {
    const first = elements[0];
    const last = elements[elements.length - 1];
    if (!(first instanceof StraightElement && last instanceof StraightElement)) return undefined;
    const facets: number[] = [];
    for (let i = 0; i < elements.length; i++) {
      const element = elements[i];
      if (element instanceof StraightElement) facets.push(i);
      // A corner that turns away has a fan of its own; its joints are passed smoothly.
      else if (!isCorner(element) || joints[i - 1]?.smooth !== false) return undefined;
    }
    const turn = first.tx * last.ty - first.ty * last.tx;
    const isLessThanHalf = turn > 0 || first.tx * last.tx + first.ty * last.ty > 0;
    return turn >= -STRAIGHT && isLessThanHalf ? new FacetField(elements, facets) : undefined;
  }

  /** Index of the nearest element to (x, y); −1 on the outer side of the edge, where the field says nothing. */
  nearest(x: number, y: number): number {
    const best = this.lowest(x, y);
    const beside = this.at(best, x, y) >= -OUTSIDE ? this.facetBeside(best, x, y) : -1;
    return beside < 0 ? -1 : (this.facets[beside] as number);
  }

  private lowest(x: number, y: number): number {
    const { a, b, c } = this;
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < a.length; k++) {
      const d = (a[k] as number) * x + (b[k] as number) * y + (c[k] as number);
      if (d < least) {
        least = d;
        best = k;
      }
    }
    return best;
  }

  /** Of the facets on the line of facet k the one that the foot of (x, y) lies on; −1: on none. */
  private facetBeside(k: number, x: number, y: number): number {
    const { facets, elements } = this;
    const reaches = (j: number): boolean =>
      (elements[facets[j] as number] as StraightElement).distance(x, y) < Number.POSITIVE_INFINITY;
    if (reaches(k)) return k;
    for (const step of [-1, 1]) {
      for (let j = k + step; this.isOneLine(j, j - step); j += step) if (reaches(j)) return j;
    }
    return -1;
  }

  /** Whether facets j and k, neighbours, lie on one line. */
  private isOneLine(j: number, k: number): boolean {
    const { a, b } = this;
    if (j < 0 || j >= a.length) return false;
    return Math.abs((a[j] as number) * (b[k] as number) - (a[k] as number) * (b[j] as number)) <= STRAIGHT;
  }

  /**
   * Visits the station x between two ends, both on the inner side: facet after facet, each as long as its line is lowest.
   *
   * @returns false, with nothing visited, where an end is on the outer side.
   */
  walk(x: number, low: StretchEnd, high: StretchEnd, visit: StretchVisitor): boolean {
    if (this.nearest(x, low.y) < 0 || this.nearest(x, high.y) < 0) return false;
    const { b } = this;
    let y = low.y;
    let k = this.lowestAbove(x, y);
    // In order, none before this one can come, nor one behind that which is nearest at the top.
    const last = this.isInOrder ? this.lowest(x, high.y) : b.length - 1;
    while (y < high.y) {
      let next = -1;
      let yNext = high.y;
      const at = this.at(k, x, 0);
      for (let j = this.isInOrder ? k + 1 : 0; j <= last; j++) {
        const closing = (b[k] as number) - (b[j] as number);
        if (!(closing > 0)) continue;
        const meet = (this.at(j, x, 0) - at) / closing;
        // Of several that meet there the one that rises least goes on.
        if (meet < yNext || (meet === yNext && next >= 0 && (b[j] as number) < (b[next] as number))) {
          next = j;
          yNext = meet;
        }
      }
      const to = Math.max(yNext, y);
      if (to > y) this.along(k, x, y, to, visit);
      if (next < 0) return true;
      y = to;
      k = next;
    }
    return true;
  }

  /** Visits what belongs to the line of facet k: facets that lie on it in turn, each as far as its feet reach. */
  private along(k: number, x: number, y0: number, y1: number, visit: StretchVisitor): void {
    const { facets, elements } = this;
    const line = elements[facets[k] as number] as StraightElement;
    // Going up, the foot moves along the line by its direction's share of height.
    const step = line.ty > 0 ? 1 : -1;
    let y = y0;
    let j = Math.max(0, this.facetBeside(k, x, y0 + (y1 - y0) * 1e-9));
    while (y < y1) {
      const own = elements[facets[j] as number] as StraightElement;
      const left = (step > 0 ? own.to : own.from) - footOf(own, x, y);
      const yEnd = own.ty === 0 ? Number.POSITIVE_INFINITY : y + left / own.ty;
      const to = yEnd < y1 && this.isOneLine(j + step, j) ? Math.max(y, yEnd) : y1;
      if (to > y) {
        const [v0, v1] = [Math.max(0, this.at(k, x, y)), Math.max(0, this.at(k, x, to))];
        visit(facets[j] as number, y, v0, footOf(own, x, y), to, v1, footOf(own, x, to));
      }
      y = to;
      j += step;
    }
  }

  private at(k: number, x: number, y: number): number {
    return (this.a[k] as number) * x + (this.b[k] as number) * y + (this.c[k] as number);
  }

  /** The facet that is nearest just above y: of those equally near the one that rises least. */
  private lowestAbove(x: number, y: number): number {
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < this.b.length; k++) {
      const d = this.at(k, x, y);
      if (d < least - 1e-12 || (d < least + 1e-12 && (this.b[k] as number) < (this.b[best] as number))) {
        best = k;
        least = Math.min(least, d);
      }
    }
    return best;
  }
}

/** Parameter of the foot of (x, y) on a line, mm along it. */
const footOf = ({ origin, tx, ty }: StraightElement, x: number, y: number): number =>
  (x - origin.x) * tx + (y - origin.y) * ty;
