import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Meeting, meetings } from "../../src/plane/intersect.js";
import { partedAtJoint } from "../../src/plane/joint-cones.js";
import { nearestOnSegment } from "../../src/plane/nearest.js";
import {
  arcAround,
  arcBetween,
  cubic,
  line,
  pointAt,
  reverseSegment,
  type Segment,
} from "../../src/plane/segment.js";
import { selfCrossing } from "../../src/plane/self-crossing.js";
import { splitSegment } from "../../src/plane/split.js";
import { type Vec2, vec2 } from "../../src/plane/vec2.js";
import { anyCubic, anySegment, SEED } from "./arbitraries.js";

const points = (found: readonly Meeting[]): Vec2[] =>
  found.map((meeting) => {
    if (meeting.kind !== "point") throw new Error("an overlap where points were expected");
    return meeting.point;
  });
const near = (x: number, y: number): unknown => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) });

/** Crossings of two dense polylines: the second method. */
function polylineCrossings(a: Segment, b: Segment, n: number): number {
  const as = Array.from({ length: n + 1 }, (_, i) => pointAt(a, i / n));
  const bs = Array.from({ length: n + 1 }, (_, i) => pointAt(b, i / n));
  const side = (p: Vec2, q: Vec2, r: Vec2): boolean =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x) > 0;
  let crossings = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const [p, q, r, s] = [as[i], as[i + 1], bs[j], bs[j + 1]] as [Vec2, Vec2, Vec2, Vec2];
      if (side(p, q, r) !== side(p, q, s) && side(r, s, p) !== side(r, s, q)) crossings++;
    }
  }
  return crossings;
}

describe("meetings in closed form", () => {
  it("two lines; two parallel ones; two on the same line", () => {
    const base = line(vec2(0, 0), vec2(8, 0));
    expect(meetings(base, line(vec2(2, -1), vec2(2, 3)))).toEqual([
      { kind: "point", t1: 0.25, t2: 0.25, point: vec2(2, 0) },
    ]);
    expect(meetings(base, line(vec2(0, 1), vec2(8, 1)))).toEqual([]);
    expect(meetings(base, line(vec2(6, 0), vec2(20, 0)))).toMatchObject([
      { kind: "overlap", from: { t1: 0.75 }, to: { t1: 1 } },
    ]);
    expect(points(meetings(base, line(vec2(8, 0), vec2(20, 0))))).toEqual([vec2(8, 0)]);
  });

  it("a line and a circle: two, one, none", () => {
    const circle = arcAround(vec2(0, 0), 5, 0.3, 2 * Math.PI);
    expect(points(meetings(line(vec2(-9, 3), vec2(9, 3)), circle))).toEqual([near(-4, 3), near(4, 3)]);
    const [touch, ...more] = points(meetings(line(vec2(-9, 5), vec2(9, 5)), circle));
    expect(more).toEqual([]);
    expect(touch?.x).toBeCloseTo(0, 4);
    expect(meetings(line(vec2(-9, 5.001), vec2(9, 5.001)), circle)).toEqual([]);
  });

  it("two circles: two, one, none, the same", () => {
    const circle = arcAround(vec2(0, 0), 5, 0.3, 2 * Math.PI);
    const pair = points(meetings(circle, arcAround(vec2(6, 0), 5, 1, 2 * Math.PI)));
    expect(pair).toEqual([near(3, 4), near(3, -4)]);
    expect(points(meetings(circle, arcAround(vec2(8, 0), 3, 1, 2 * Math.PI)))).toHaveLength(1);
    expect(meetings(circle, arcAround(vec2(8, 0), 2.999, 1, 2 * Math.PI))).toEqual([]);
    expect(meetings(circle, arcAround(vec2(0, 0), 4.999, 1, 2 * Math.PI))).toEqual([]);
    expect(meetings(arcAround(vec2(0, 0), 5, 0, 2), arcAround(vec2(0, 0), 5, 1, 3))).toMatchObject([
      { kind: "overlap", from: { t1: expect.closeTo(0.5, 9) }, to: { t1: 1 } },
    ]);
  });

  it("two cubics that cross nine times", () => {
    // y(t) of one and x(t) of the other swing three times each.
    const a = cubic(vec2(0, 0), vec2(1 / 3, 6.4), vec2(2 / 3, -5.4), vec2(1, 1));
    const b = cubic(vec2(0, 0), vec2(6.4, 1 / 3), vec2(-5.4, 2 / 3), vec2(1, 1));
    const found = points(meetings(a, b));
    expect(found).toHaveLength(9);
    expect(found).toContainEqual(near(0.5, 0.5));
  });
});

describe("meetings where libraries stumble", () => {
  const wave = cubic(vec2(0, 0), vec2(30, 40), vec2(70, -40), vec2(100, 0));

  it("a shared end is one point, smooth or not", () => {
    const smooth = cubic(vec2(100, 0), vec2(130, 40), vec2(170, 0), vec2(200, 10));
    const corner = cubic(vec2(100, 0), vec2(60, 60), vec2(30, 60), vec2(0, 80));
    expect(meetings(wave, smooth)).toEqual([{ kind: "point", t1: 1, t2: 0, point: vec2(100, 0) }]);
    expect(meetings(wave, corner)).toEqual([{ kind: "point", t1: 1, t2: 0, point: vec2(100, 0) }]);
    const folded = cubic(vec2(100, 0), vec2(70, -40), vec2(20, -40), vec2(0, -30));
    expect(meetings(wave, folded)[0]).toMatchObject({ kind: "point", t1: 1, t2: 0 });
  });

  it("identical, reversed and partly shared curves are overlaps", () => {
    expect(meetings(wave, wave)).toMatchObject([{ kind: "overlap", from: { t1: 0 }, to: { t1: 1 } }]);
    expect(meetings(wave, reverseSegment(wave))).toMatchObject([{ kind: "overlap" }]);
    expect(meetings(splitSegment(wave, 0, 0.6), splitSegment(wave, 0.4, 1))).toMatchObject([
      { kind: "overlap" },
    ]);
  });

  it("a touch is one point", () => {
    const hill = cubic(vec2(0, 0), vec2(10, 20), vec2(20, 20), vec2(30, 0));
    expect(points(meetings(hill, line(vec2(0, 15), vec2(30, 15))))).toEqual([near(15, 15)]);
    const bowl = cubic(vec2(0, 30), vec2(10, 10), vec2(20, 10), vec2(30, 30));
    const [touch, ...more] = points(meetings(hill, bowl));
    expect(more).toEqual([]);
    expect(touch?.x).toBeCloseTo(15, 3);
    expect(meetings(hill, line(vec2(0, 15.0001), vec2(30, 15.0001)))).toEqual([]);
  });

  it("cusps, doubled-back lines and handles of no length", () => {
    const cusp = cubic(vec2(0, 0), vec2(10, 10), vec2(0, 10), vec2(10, 0));
    expect(points(meetings(cusp, line(vec2(5, 0), vec2(5, 7.5))))).toEqual([near(5, 7.5)]);
    const doubled = cubic(vec2(0, 0), vec2(20, 0), vec2(-10, 0), vec2(10, 0));
    expect(points(meetings(doubled, line(vec2(5, -1), vec2(5, 1))))).toEqual([
      near(5, 0),
      near(5, 0),
      near(5, 0),
    ]);
    expect(meetings(doubled, line(vec2(0, 0), vec2(10, 0)))).toMatchObject([{ kind: "overlap" }]);
    const bare = cubic(vec2(0, 0), vec2(0, 0), vec2(10, 10), vec2(10, 10));
    const other = cubic(vec2(0, 10), vec2(0, 10), vec2(10, 0), vec2(10, 0));
    expect(points(meetings(bare, other))).toEqual([near(5, 5)]);
  });
});

/** Ends on the other curve count as contacts but not as crossings of polylines. */
const endsClear = (a: Segment, b: Segment): boolean =>
  [a.from, a.to].every((p) => nearestOnSegment(b, p).distance > 1e-3) &&
  [b.from, b.to].every((p) => nearestOnSegment(a, p).distance > 1e-3);

describe("meetings of any two segments", () => {
  it("lie on both, and are as many as the crossings of dense polylines", () => {
    fc.assert(
      fc.property(anySegment, anySegment, (a, b) => {
        fc.pre(endsClear(a, b));
        const found = meetings(a, b);
        for (const p of points(found)) {
          expect(nearestOnSegment(a, p).distance).toBeLessThan(2e-9);
          expect(nearestOnSegment(b, p).distance).toBeLessThan(2e-9);
        }
        const seen = polylineCrossings(a, b, 120);
        // A polyline may miss a pair of crossings, or find one, where curves all but touch; parity cannot differ.
        if (found.length !== seen) expect(polylineCrossings(a, b, 1500)).toBe(found.length);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("do not depend on the order of the two", () => {
    fc.assert(
      fc.property(anySegment, anySegment, (a, b) => {
        expect(meetings(b, a)).toHaveLength(meetings(a, b).length);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe("partedAtJoint", () => {
  it("says so of a corner and of a smooth joint, not of a fold", () => {
    const east = line(vec2(0, 0), vec2(10, 0));
    const north = cubic(vec2(10, 0), vec2(10, 3), vec2(12, 6), vec2(10, 9));
    expect(partedAtJoint(east, north, vec2(10, 0))).toBe(true);
    expect(partedAtJoint(east, arcBetween(vec2(10, 0), vec2(15, 5), Math.PI / 2), vec2(10, 0))).toBe(true);
    expect(partedAtJoint(east, cubic(vec2(10, 0), vec2(5, 0), vec2(5, 5), vec2(0, 5)), vec2(10, 0))).toBe(
      false,
    );
  });

  it("never hides a second meeting", () => {
    fc.assert(
      fc.property(anySegment, anyCubic, (a, c) => {
        const b = cubic(a.to, c.control1, c.control2, c.to);
        if (!partedAtJoint(a, b, a.to)) return;
        for (let i = 1; i <= 60; i++) {
          const p = pointAt(b, i / 60);
          const { distance, t } = nearestOnSegment(a, p);
          expect(distance > 1e-9 || t === 1).toBe(true);
        }
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});

describe("selfCrossing", () => {
  it("finds the node of a symmetric loop on its axis", () => {
    const loop = cubic(vec2(0, 0), vec2(20, 20), vec2(-10, 20), vec2(10, 0));
    const found = selfCrossing(loop);
    expect(found?.point.x).toBeCloseTo(5, 12);
    expect((found?.t1 ?? 0) + (found?.t2 ?? 0)).toBeCloseTo(1, 12);
  });

  it("calls neither a cusp nor an S nor a closed loop a crossing, but a doubled-back line one", () => {
    expect(selfCrossing(cubic(vec2(0, 0), vec2(10, 10), vec2(0, 10), vec2(10, 0)))).toBeUndefined();
    expect(selfCrossing(cubic(vec2(0, 0), vec2(30, 40), vec2(70, -40), vec2(100, 0)))).toBeUndefined();
    expect(selfCrossing(cubic(vec2(0, 0), vec2(20, 20), vec2(-20, 20), vec2(0, 0)))).toBeUndefined();
    expect(selfCrossing(cubic(vec2(0, 0), vec2(20, 0), vec2(-10, 0), vec2(10, 0)))).toBeDefined();
    expect(selfCrossing(cubic(vec2(0, 0), vec2(0, 0), vec2(10, 10), vec2(10, 10)))).toBeUndefined();
    expect(selfCrossing(arcBetween(vec2(0, 0), vec2(1, 0), 5))).toBeUndefined();
  });

  it("agrees with the two halves of a curve meeting away from their joint", () => {
    fc.assert(
      fc.property(anyCubic, (curve) => {
        const found = selfCrossing(curve);
        if (found === undefined) return;
        const a = pointAt(curve, found.t1);
        const b = pointAt(curve, found.t2);
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1e-9);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
});

it("degenerate cubics never give a number that is not one", () => {
  const corner = fc.constantFrom(vec2(0, 0), vec2(10, 0), vec2(10, 10), vec2(5, 5), vec2(0, 1e-12));
  const degenerate = fc.tuple(corner, corner, corner, corner).map(([a, b, c, d]) => cubic(a, b, c, d));
  fc.assert(
    fc.property(degenerate, fc.oneof(degenerate, anySegment), (a, b) => {
      let found: Meeting[] = [];
      try {
        found = meetings(a, b);
      } catch (error) {
        expect(error).toMatchObject({ code: "intersection-unresolved" });
      }
      for (const meeting of found) {
        const contact = meeting.kind === "point" ? meeting : meeting.from;
        expect([contact.t1, contact.t2].every((t) => t >= 0 && t <= 1)).toBe(true);
        expect(nearestOnSegment(b, contact.point).distance).toBeLessThan(2e-9);
      }
    }),
    { seed: SEED, numRuns: 150 },
  );
});
