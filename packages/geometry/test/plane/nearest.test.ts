import { Bezier } from "bezier-js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arcParameter, distanceFromCircle } from "../../src/plane/arc-parameter.js";
import { nearestOnSegment } from "../../src/plane/nearest.js";
import { arcAround, arcBetween, cubic, line, pointAt, type Segment } from "../../src/plane/segment.js";
import { type Vec2, vec2 } from "../../src/plane/vec2.js";
import { anyCubic, anySegment, between, point, SEED } from "./arbitraries.js";

const gap = (a: Vec2, b: Vec2): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Second method: a dense scan, then golden-section search beside the best sample. */
function scanned(segment: Segment, p: Vec2): number {
  const n = 1000;
  const at = (t: number): number => gap(pointAt(segment, t), p);
  let best = 0;
  for (let i = 1; i <= n; i++) if (at(i / n) < at(best / n)) best = i;
  let low = Math.max(0, best - 1) / n;
  let high = Math.min(n, best + 1) / n;
  const ratio = (Math.sqrt(5) - 1) / 2;
  for (let pass = 0; pass < 80; pass++) {
    const a = high - ratio * (high - low);
    const b = low + ratio * (high - low);
    if (at(a) < at(b)) high = b;
    else low = a;
  }
  return Math.min(at(0), at(1), at((low + high) / 2));
}

describe("nearestOnSegment", () => {
  it("line: foot of the perpendicular, or an end", () => {
    const base = line(vec2(0, 0), vec2(8, 0));
    expect(nearestOnSegment(base, vec2(2, 3))).toEqual({ t: 0.25, distance: 3 });
    expect(nearestOnSegment(base, vec2(11, 4))).toEqual({ t: 1, distance: 5 });
    expect(nearestOnSegment(line(vec2(1, 1), vec2(1, 1)), vec2(4, 5))).toEqual({ t: 0, distance: 5 });
  });

  it("arc: along the radius, or an end", () => {
    const quarter = arcAround(vec2(0, 0), 10, 0, Math.PI / 2);
    expect(nearestOnSegment(quarter, vec2(3, 4)).distance).toBeCloseTo(5, 12);
    expect(nearestOnSegment(quarter, vec2(10, -3)).t).toBe(0);
    expect(nearestOnSegment(quarter, vec2(0, 0)).distance).toBeCloseTo(10, 12);
  });

  it("keeps its digits on a flat arc of a radius of 2.8 km", () => {
    const flat = arcBetween(vec2(0, 0), vec2(75, 0.001), 2 * Math.atan2(0.001, 75));
    const middle = pointAt(flat, 0.5);
    expect(nearestOnSegment(flat, middle).distance).toBeLessThan(1e-14);
    expect(nearestOnSegment(flat, vec2(middle.x, middle.y + 3)).distance).toBeCloseTo(3, 8);
    expect(distanceFromCircle(flat, vec2(75, 0.001))).toBeCloseTo(0, 14);
    expect(arcParameter(flat, vec2(75, 0.001))).toBeCloseTo(1, 9);
  });

  it("never misses the nearest branch: at least as near as a dense scan, to 1e-12 mm", () => {
    fc.assert(
      fc.property(anySegment, point, (segment, p) => {
        const { t, distance } = nearestOnSegment(segment, p);
        expect(t >= 0 && t <= 1).toBe(true);
        expect(distance).toBeLessThanOrEqual(scanned(segment, p) + 1e-12);
        expect(Math.abs(distance - gap(pointAt(segment, t), p))).toBeLessThan(1e-11);
      }),
      { seed: SEED, numRuns: 400 },
    );
  });

  it("finds points of the curve itself at distance 0", () => {
    fc.assert(
      fc.property(anyCubic, between(0, 1), (curve, t) => {
        expect(nearestOnSegment(curve, pointAt(curve, t)).distance).toBeLessThan(1e-12);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it("is right where bezier-js's own projection is tenths of a millimetre off or lands on another branch", () => {
    const curve = cubic(vec2(0, 0), vec2(120, 90), vec2(-20, 90), vec2(100, 0));
    let worst = 0;
    for (let i = 0; i < 200; i++) {
      const p = vec2(i / 2, 20 + (i % 37));
      const projected = new Bezier(0, 0, 120, 90, -20, 90, 100, 0).project(p).d ?? Number.NaN;
      const { distance } = nearestOnSegment(curve, p);
      expect(distance).toBeLessThanOrEqual(projected + 1e-12);
      worst = Math.max(worst, projected - distance);
    }
    expect(worst).toBeGreaterThan(1e-6);
  });

  it("bears cusps, doubled-back lines, handles of no length and single points", () => {
    const cusp = cubic(vec2(0, 0), vec2(10, 10), vec2(0, 10), vec2(10, 0));
    const doubled = cubic(vec2(0, 0), vec2(20, 0), vec2(-10, 0), vec2(10, 0));
    const bare = cubic(vec2(0, 0), vec2(0, 0), vec2(10, 0), vec2(10, 0));
    const nothing = cubic(vec2(1, 1), vec2(1, 1), vec2(1, 1), vec2(1, 1));
    expect(nearestOnSegment(cusp, vec2(5, 7.5)).distance).toBeCloseTo(0, 12);
    expect(nearestOnSegment(doubled, vec2(5, 4)).distance).toBeCloseTo(4, 12);
    expect(nearestOnSegment(bare, vec2(3, -2)).distance).toBeCloseTo(2, 12);
    expect(nearestOnSegment(nothing, vec2(4, 5))).toEqual({ t: 0, distance: 5 });
  });
});
