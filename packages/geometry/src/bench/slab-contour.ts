import { HandleSide } from "../blade/handle-side.js";
import type { Outline } from "../blade/outline.js";
import { longSide } from "../blade/rounded-slab.js";
import { findRoot } from "../numeric/roots.js";
import { cubic, line, reverseSegment, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { ellipsePart } from "./ellipse-part.js";

/** Width to which a height on a station is found, mm. */
const FINE = 1e-12;
/** Cubics to a rounding that is no ellipse: beside a corner or a curve of the side. */
const PIECES = 24;
/** A rounding that follows an ellipse within this is one, mm. */
const ELLIPTIC = 1e-9;
/** Step over which the rise of the distance is read, mm. */
const STEP = 1e-6;

/** The rounded long sides of a slabbed tang, for its sections. */
export class SlabContour {
  private readonly radius: number;
  private readonly below: HandleSide | undefined;
  private readonly above: HandleSide | undefined;

  /** @param radius - of the long outer edges, mm; 0 leaves them square. */
  constructor(outline: Outline, radius: number) {
    const side = (run: readonly Segment[], inward: 1 | -1): HandleSide | undefined =>
      radius > 0 && run.length > 0 ? new HandleSide(run, radius, inward) : undefined;
    this.radius = radius;
    this.below = side(longSide(outline.runs.tangBottom), 1);
    this.above = side(longSide(outline.runs.tangTop), -1);
  }

  /** Whether a side turns back near x, so that the roundings of a station cannot be followed one after the other. */
  turnsBackNear(x: number): boolean {
    return [this.below, this.above].some((side) => side?.turnsBackNear(x) === true);
  }

  /**
   * Right-hand half of a section, from the top of the centre plane round to its foot, as (z, y).
   *
   * @param half - half-width of the whole before rounding, mm.
   */
  at(x: number, low: number, high: number, half: number): Segment[] {
    const { above, below } = this;
    let top = above === undefined ? high : above.reach(x, high, low);
    let foot = below === undefined ? low : below.reach(x, low, high);
    if (above !== undefined && below !== undefined && foot > top) {
      const gap = (y: number): number => below.run.nearest(x, y) - above.run.nearest(x, y);
      const ridge = findRoot(gap, top, foot, FINE) ?? top;
      top = ridge;
      foot = ridge;
    }
    const upper = this.rounding(above, x, high, top, half);
    const lower = this.rounding(below, x, low, foot, half);
    const corners: Segment[] = [
      ...leads({ x: 0, y: high }, upper[0]?.from ?? { x: half, y: high }),
      ...upper,
      ...leads(upper.at(-1)?.to ?? { x: half, y: high }, lower.at(-1)?.to ?? { x: half, y: low }),
      ...lower.map(reverseSegment).reverse(),
      ...leads(lower[0]?.from ?? { x: half, y: low }, { x: 0, y: low }),
    ];
    return corners;
  }

  /** From the side's rim inward to where the section is at its full width, or to the ridge. */
  private rounding(
    side: HandleSide | undefined,
    x: number,
    rim: number,
    end: number,
    half: number,
  ): Segment[] {
    if (side === undefined || Math.abs(end - rim) < FINE) return [];
    const { radius: r } = this;
    const distance = (y: number): number => side.run.nearest(x, y);
    const deepest = Math.min(r, distance(end));
    const last = deepest > r - ELLIPTIC ? Math.PI / 2 : Math.acos(1 - deepest / r);
    const depths = Array.from({ length: PIECES + 1 }, (_, i) => {
      const phi = (last * i) / PIECES;
      const d = r * (1 - Math.cos(phi));
      const y =
        i === 0 ? rim : i === PIECES ? end : (findRoot((at) => distance(at) - d, rim, end, FINE) ?? end);
      return { phi, d, y };
    });
    const lean = (end - rim) / (r * (1 - Math.cos(last)));
    const isEllipse = depths.every(({ d, y }) => Math.abs(rim + lean * d - y) < ELLIPTIC * 10);
    if (isEllipse) {
      const ry = Math.abs(lean) * r;
      const up = rim > end;
      return ellipsePart(
        { x: half - r, y: rim + lean * r },
        { x: r, y: ry },
        up ? Math.PI / 2 : -Math.PI / 2,
        up ? -last : last,
      );
    }
    const inward = Math.sign(end - rim);
    const velocity = (phi: number, y: number): Vec2 => {
      const rise = (distance(y + inward * STEP) - distance(y)) / STEP;
      return { x: r * Math.cos(phi), y: (inward * r * Math.sin(phi)) / Math.max(rise, 1e-3) };
    };
    return depths.slice(1).map((to, i) => {
      const from = depths[i] ?? to;
      const third = (to.phi - from.phi) / 3;
      const [a, b] = [velocity(from.phi, from.y), velocity(to.phi, to.y - inward * 2 * STEP)];
      const start = { x: half - r + r * Math.sin(from.phi), y: from.y };
      const stop = { x: half - r + r * Math.sin(to.phi), y: to.y };
      return cubic(
        start,
        { x: start.x + third * a.x, y: start.y + third * a.y },
        { x: stop.x - third * b.x, y: stop.y - third * b.y },
        stop,
      );
    });
  }
}

/** A straight piece, left out where the two points are one. */
export function leads(from: Vec2, to: Vec2): Segment[] {
  return Math.hypot(to.x - from.x, to.y - from.y) < FINE ? [] : [line(from, to)];
}
