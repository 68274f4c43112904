import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EdgeElement } from "../../src/blade/edge-element.js";
import { EdgeRun } from "../../src/blade/edge-run.js";
import { arcAround, arcBetween, cubic, line, type Segment } from "../../src/plane/segment.js";
import { expectWithin } from "../numeric/close.js";
import { along, distanceField, halving } from "./independent-parts.js";
import { between, SEED } from "./random-knives.js";

/** Samples a piece in the search that the kernel is held against. */
const FINE = 200;

const p = (x: number, y: number): { x: number; y: number } => ({ x, y });

describe("the distance to the edge run by hand", () => {
  it("goes on beyond heel and tip along the end tangents", () => {
    const run = new EdgeRun([line(p(0, 0), p(30, 0)), line(p(30, 0), p(60, 40))]);
    expectWithin(run.nearest(-12, 5), 5, 1e-14);
    // Beyond the tip: distance to the line through (30, 0) with slope 4/3, 10 along and 7 off it.
    expectWithin(run.nearest(60 + 6 - 5.6, 40 + 8 + 4.2), 7, 1e-13);
  });

  it("at a left turn takes the nearer facet, on the bisector both", () => {
    const run = new EdgeRun([line(p(0, 0), p(30, 0)), line(p(30, 0), p(30 + 40, 40))]);
    expectWithin(run.nearest(20, 8), 8, 1e-14);
    expectWithin(run.nearest(50, 23), 3 / Math.SQRT2, 1e-13);
    // The bisector leans back by 22.5° from upright.
    const lean = Math.tan(Math.PI / 8);
    expectWithin(run.nearest(30 - 12 * lean, 12), 12, 1e-13);
  });

  it("at a right turn takes the corner itself within its fan", () => {
    const run = new EdgeRun([line(p(0, 0), p(30, 0)), line(p(30, 0), p(70, -40))]);
    expectWithin(run.nearest(33, 9), Math.hypot(3, 9), 1e-13);
    expectWithin(run.nearest(29, 9), 9, 1e-13);
    expectWithin(run.nearest(30 + 9, 3), 12 / Math.SQRT2, 1e-13);
  });

  it("of an arc: the radius less the way to the centre; at the centre the radius", () => {
    const run = new EdgeRun([arcAround(p(0, 25), 25, -Math.PI / 2, Math.PI / 2)]);
    expectWithin(run.nearest(9, 25 - 12), 25 - 15, 1e-13);
    expectWithin(run.nearest(0, 25), 25, 1e-13);
  });

  it("leaves no gap where neighbours turn by as little as a drawing's noise", () => {
    for (const turn of [1e-14, 1e-12, 1e-11, 1e-10, 5e-10, 9e-10, 1.1e-9, 1e-8, 1e-7]) {
      for (const side of [1, -1]) {
        const next = p(50 + 50 * Math.cos(side * turn), 50 * Math.sin(side * turn));
        const run = new EdgeRun([line(p(0, 0), p(50, 0)), line(p(50, 0), next)]);
        for (const v of [1, 60, 900]) {
          for (let i = -60; i <= 60; i++) {
            const x = 50 + (i * turn * v) / 40;
            expectWithin(
              run.nearest(x, v),
              v,
              1e-5 * turn * v * v + 1e-12,
              `turn ${side * turn} at ${x}, ${v}`,
            );
          }
        }
      }
    }
  });

  it("points its normal in the direction in which the distance grows", () => {
    const run = new EdgeRun([line(p(0, 0), p(40, 0)), cubic(p(40, 0), p(60, 0), p(80, 10), p(90, 25))]);
    for (const [x, y] of [
      [20, 9],
      [55, 12],
      [70, 20],
      [80, 21],
    ] as const) {
      const n = run.normalAt(x, y);
      expectWithin(Math.hypot(n.x, n.y), 1, 1e-12);
      const step = 1e-5;
      const dx = (run.nearest(x + step, y) - run.nearest(x - step, y)) / (2 * step);
      const dy = (run.nearest(x, y + step) - run.nearest(x, y - step)) / (2 * step);
      expectWithin(n.x, dx, 1e-7);
      expectWithin(n.y, dy, 1e-7);
    }
  });
});

/** A run of 1 to 5 pieces with corners either way, every piece going forward in x. */
const anyRun: fc.Arbitrary<Segment[]> = fc
  .array(
    fc.record({
      kind: fc.constantFrom("line" as const, "arc" as const, "cubic" as const),
      dx: between(8, 60),
      slope: between(-0.35, 1),
      bend: between(-0.9, 1.1),
      out: between(-0.3, 0.6),
      back: between(-0.3, 1),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((pieces) => {
    let pen = p(0, 0);
    return pieces.map(({ kind, dx, slope, bend, out, back }): Segment => {
      const from = pen;
      pen = p(from.x + dx, from.y + slope * dx);
      if (kind === "line") return line(from, pen);
      // A bow that stays clear of the vertical at both its ends.
      if (kind === "arc") return arcBetween(from, pen, Math.abs(bend) < 0.02 ? 0.02 : bend);
      return cubic(
        from,
        p(from.x + dx / 3, from.y + (out * dx) / 3),
        p(pen.x - dx / 3, pen.y - (back * dx) / 3),
        pen,
      );
    });
  });

const ends = (run: readonly Segment[]): readonly [number, number] => [
  (run[0] as Segment).from.x,
  (run[run.length - 1] as Segment).to.x,
];

/** Height of a run that goes forward in x. */
function heightOn(run: readonly Segment[], x: number): number {
  const s = run.find((piece) => x >= piece.from.x && x <= piece.to.x) as Segment;
  return along(
    s,
    halving((t) => along(s, t).p.x - x, 0, 1),
  ).p.y;
}

describe("the distance to any run", () => {
  it("agrees with a search over all candidates", () => {
    fc.assert(
      fc.property(
        anyRun,
        fc.array(fc.tuple(between(-0.15, 1.15), between(0.001, 1)), { minLength: 12, maxLength: 12 }),
        (run, places) => {
          const [from, to] = ends(run);
          const field = distanceField(run, FINE);
          const edges = new EdgeRun(run);
          for (const [u, v] of places) {
            const x = from + u * (to - from);
            const y = heightOn(run, Math.min(to, Math.max(from, x))) + v * 60;
            expectWithin(edges.nearest(x, y), field(x, y).distance, 1e-9, `at ${x}, ${y}`);
          }
        },
      ),
      { seed: SEED, numRuns: 400, endOnFailure: true },
    );
  });

  it("agrees with dense samples of the curve", () => {
    fc.assert(
      fc.property(anyRun, between(0.02, 0.98), between(0.5, 50), (run, u, v) => {
        const [from, to] = ends(run);
        const x = from + u * (to - from);
        const y = heightOn(run, x) + v;
        let nearest = Number.POSITIVE_INFINITY;
        let spacing = 0;
        for (const s of run) {
          let before = s.from;
          for (let i = 1; i <= 300; i++) {
            const q = along(s, i / 300).p;
            nearest = Math.min(nearest, Math.hypot(q.x - x, q.y - y));
            spacing = Math.max(spacing, Math.hypot(q.x - before.x, q.y - before.y));
            before = q;
          }
        }
        const found = new EdgeRun(run).nearest(x, y);
        // The prolongations may be nearer; otherwise at most half a spacing is between a sample and the foot.
        expect(found).toBeLessThanOrEqual(nearest + 1e-12);
        const { piece } = distanceField(run, FINE)(x, y);
        if (piece >= 0 && piece < run.length) {
          expect(found).toBeGreaterThanOrEqual(nearest - spacing ** 2 * (1 / found + 1));
        }
      }),
      { seed: SEED, numRuns: 200, endOnFailure: true },
    );
  });
});

interface Stretch {
  readonly element: EdgeElement;
  readonly y0: number;
  readonly v0: number;
  readonly y1: number;
  readonly v1: number;
}

function stretches(edges: EdgeRun, x: number, y0: number, y1: number): Stretch[] {
  const found: Stretch[] = [];
  edges.walk(x, y0, y1, (e, a, va, _fa, b, vb) => {
    found.push({ element: edges.elements[e] as EdgeElement, y0: a, v0: va, y1: b, v1: vb });
  });
  return found;
}

/** Everything that is promised of the stretches of a station. */
function checkWalk(run: readonly Segment[], x: number, y0: number, y1: number): void {
  const edges = new EdgeRun(run);
  const field = distanceField(run, FINE);
  const found = stretches(edges, x, y0, y1);
  expect(found.length).toBeGreaterThan(0);
  let y = y0;
  for (const { element, y0: a, v0, y1: b, v1 } of found) {
    expectWithin(a, y, 1e-12, "stretches follow one another");
    y = b;
    if (b - a < 1e-9) continue;
    expectWithin(v0, field(x, a).distance, 1e-8, `distance at ${x}, ${a}`);
    expectWithin(v1, field(x, b).distance, 1e-8, `distance at ${x}, ${b}`);
    let before = v0;
    for (let k = 1; k < 12; k++) {
      const here = a + ((b - a) * k) / 12;
      const v = element.distance(x, here, Number.NaN);
      expectWithin(v, field(x, here).distance, 1e-8, `its own element is the nearest at ${x}, ${here}`);
      expect((v - before) * Math.sign(v1 - v0)).toBeGreaterThan(-1e-9);
      before = v;
    }
  }
  expectWithin(y, y1, 1e-12, "stretches reach the top");
}

describe("walking up a station", () => {
  it("gives stretches without gaps, each with its own nearest element and a distance that runs one way", () => {
    fc.assert(
      fc.property(anyRun, between(0.001, 0.999), between(1, 60), (run, u, height) => {
        const [from, to] = ends(run);
        const x = from + u * (to - from);
        const y0 = heightOn(run, x);
        checkWalk(run, x, y0, y0 + height);
      }),
      { seed: SEED, numRuns: 500, endOnFailure: true },
    );
  });

  it("starts above the edge as well", () => {
    fc.assert(
      fc.property(anyRun, between(0.001, 0.999), between(0, 30), between(1, 30), (run, u, from, height) => {
        const [a, b] = ends(run);
        const x = a + u * (b - a);
        const y0 = heightOn(run, x) + from;
        checkWalk(run, x, y0, y0 + height);
      }),
      { seed: SEED, numRuns: 200, endOnFailure: true },
    );
  });

  it("passes a ridge, a fan and a round end", () => {
    const tanto = [line(p(0, 0), p(120, 0)), line(p(120, 0), p(150, 30))];
    for (const x of [100, 110, 119.9, 120.1, 130, 149]) checkWalk(tanto, x, Math.max(0, x - 120), 60);
    const notch = [line(p(0, 0), p(60, 6)), line(p(60, 6), p(120, 0))];
    for (const x of [55, 59.9, 60, 60.1, 62, 70]) checkWalk(notch, x, heightOn(notch, x), 50);
    const round = [line(p(0, 0), p(100, 0)), arcAround(p(100, 12), 12, -Math.PI / 2, Math.PI / 2)];
    for (const x of [99, 100.5, 104, 110, 111.9]) checkWalk(round, x, heightOn(round, x), 28);
  });

  it("passes under a prolongation that crosses the station", () => {
    // A front that leans forward more gently than the edge arrives: steel below the prolonged edge.
    const run = [line(p(0, 0), p(80, 0)), line(p(80, 0), p(100, 30))];
    for (const x of [100.5, 103, 108]) checkWalk(run, x, 30 + (x - 100) * 0.5, 60);
  });
});
