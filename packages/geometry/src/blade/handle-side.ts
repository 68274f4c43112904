import { gaussRule } from "../numeric/gauss.js";
import { findRoot } from "../numeric/roots.js";
import { splitAtXExtremes } from "../plane/monotone.js";
import { endTangent, line, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import type { EdgeElement } from "./edge-element.js";
import type { RoundedSums } from "./handle-rounded-sums.js";
import { HandleRun } from "./handle-run.js";

/** Enough for √v over a stretch in which the distance from the edge runs from 0 to the radius. */
const RULE = gaussRule(14);
/** Width to which a place on a station is found, mm. */
export const FINE = 1e-12;
/** How closely the end of a rounding is found, mm: the quarter circle is level there. */
const NEAR_RADIUS = 1e-6;

/** An end of a side that runs less than this along x, as a share of its length, belongs to the handle's front or butt. */
const LEAST_ALONG = 0.5;

/** One long side: distances to it, and the sums over the part of a station that it rounds. */
export class HandleSide {
  readonly run: HandleRun;
  /** x at which a station's make-up changes. */
  readonly breaks: readonly number[];
  /** Stretches of x near which it turns back: elsewhere the distance only grows up a station, away from it. */
  private readonly turns: readonly (readonly [from: number, to: number])[];
  private readonly radius: number;
  private readonly inward: 1 | -1;

  /** @param inward - direction along y into the handle. */
  constructor(segments: readonly Segment[], radius: number, inward: 1 | -1) {
    this.run = new HandleRun(withLevelEnds(segments, inward));
    this.radius = radius;
    this.inward = inward;
    this.turns = segments
      .flatMap((segment) => splitAtXExtremes(segment))
      .filter(({ from, to }) => (to.x - from.x) * inward < 0)
      .map(({ from, to }) => [Math.min(from.x, to.x) - radius, Math.max(from.x, to.x) + radius]);
    const joints = this.run.joints.flatMap(({ at, normals }) => [
      at.x,
      ...normals.map((normal) => at.x + radius * normal.x),
    ]);
    this.breaks = [...joints, ...this.turns.flat()];
  }

  turnsBackNear(x: number): boolean {
    return this.turns.some(([from, to]) => x > from && x < to);
  }

  /** Where, going in from `from` toward `to`, the distance reaches the radius; `to` where it does not. */
  reach(x: number, from: number, to: number): number {
    const { run, radius } = this;
    let y0 = from;
    let v0 = run.nearest(x, from);
    if (v0 >= radius) return from;
    // Secants: on a straight side the second lands on it.
    let y1 = from + this.inward * Math.min(Math.abs(to - from), radius - v0);
    for (let pass = 0; pass < 8; pass++) {
      const v1 = run.nearest(x, y1);
      // What is left between here and the radius loses no more than the third power of this.
      if (Math.abs(v1 - radius) < NEAR_RADIUS) return y1;
      if (v1 === v0) break;
      const next = y1 + ((y1 - y0) * (radius - v1)) / (v1 - v0);
      if (!((next - from) * this.inward > 0 && (to - next) * this.inward > 0)) break;
      y0 = y1;
      v0 = v1;
      y1 = next;
    }
    if (run.nearest(x, to) <= radius) return to;
    const beyond = (y: number): number => run.nearest(x, y) - radius;
    return findRoot(beyond, Math.min(from, to), Math.max(from, to), NEAR_RADIUS) ?? to;
  }

  /** Whether a point is so far inside that nothing within `around` of it is rounded. */
  isClear(x: number, y: number, around: number): boolean {
    return this.run.nearest(x, y) >= this.radius + around;
  }

  /** Adds what lies between two heights of the station, `from` at or nearer the side. */
  add(x: number, from: number, to: number, sums: RoundedSums): void {
    if (!((to - from) * this.inward > 0)) return;
    const { run } = this;
    const v0 = run.nearest(x, from);
    const e0 = run.element;
    const v1 = run.nearest(x, to);
    this.between(x, from, v0, e0, to, v1, run.element, sums, 0);
  }

  /** Cuts a stretch where the nearest element of the run changes. */
  private between(
    x: number,
    y0: number,
    v0: number,
    e0: number,
    y1: number,
    v1: number,
    e1: number,
    sums: RoundedSums,
    depth: number,
  ): void {
    if (e0 === e1 || Math.abs(y1 - y0) < 10 * FINE || depth > 20) {
      this.stretch(x, y0, v0, y1, v1, e0, sums);
      return;
    }
    const { run } = this;
    const isFirst = (y: number): boolean => {
      run.nearest(x, y);
      return run.element === e0;
    };
    let near = y0;
    let far = y1;
    while (Math.abs(far - near) > FINE) {
      const y = (near + far) / 2;
      if (y === near || y === far) break;
      if (isFirst(y)) near = y;
      else far = y;
    }
    const v = run.nearest(x, far);
    this.stretch(x, y0, v0, far, v, e0, sums);
    run.nearest(x, far);
    this.between(x, far, v, run.element, y1, v1, e1, sums, depth + 1);
  }

  /**
   * One element throughout. The nodes are spread evenly in the square root of the distance, in which the quarter circle is
   * smooth where it stands upright at the edge.
   */
  private stretch(
    x: number,
    y0: number,
    v0: number,
    y1: number,
    v1: number,
    e: number,
    sums: RoundedSums,
  ): void {
    const rise = v1 - v0;
    if (!(rise > 0)) return;
    const element = this.run.elements[e] as EdgeElement;
    const w0 = Math.sqrt(v0);
    const w1 = Math.sqrt(v1);
    const { nodes, weights } = RULE;
    let hint = Number.NaN;
    for (let i = 0; i < nodes.length; i++) {
      const w = w0 + (w1 - w0) * (nodes[i] as number);
      const y = y0 + ((y1 - y0) * (w * w - v0)) / rise;
      let v = element.distance(x, y, hint);
      if (v < Number.POSITIVE_INFINITY) hint = element.foot;
      else v = this.run.nearest(x, y);
      const weight = ((weights[i] as number) * 2 * w * (w1 - w0) * Math.abs(y1 - y0)) / rise;
      sums.add(y, v, weight);
    }
  }
}

/**
 * A side goes on past its ends along its end tangents. Where an end stands upright or turns back (a hooked butt) that would
 * lead into the handle: there it goes on level, away from it.
 */
function withLevelEnds(segments: readonly Segment[], inward: 1 | -1): readonly Segment[] {
  const first = segments[0] as Segment;
  const last = segments[segments.length - 1] as Segment;
  const leads = (segment: Segment, end: "from" | "to"): boolean =>
    (endTangent(segment, end)?.x ?? 0) * inward >= LEAST_ALONG;
  const away = ({ x, y }: Vec2, by: number): Vec2 => ({ x: x + by * inward, y });
  return [
    ...(leads(first, "from") ? [] : [line(away(first.from, -1), first.from)]),
    ...segments,
    ...(leads(last, "to") ? [] : [line(last.to, away(last.to, 1))]),
  ];
}
