import { Bezier } from "bezier-js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pathLength, segmentLength } from "../../src/plane/length.js";
import { arcAround, type Cubic, cubic, line } from "../../src/plane/segment.js";
import { splitSegment } from "../../src/plane/split.js";
import { vec2 } from "../../src/plane/vec2.js";
import { anyCubic, between, SEED } from "./arbitraries.js";

const bezierLength = (c: Cubic): number => new Bezier([c.from, c.control1, c.control2, c.to]).length();

describe("segmentLength of cubics", () => {
  it("is exactly 2 for (0,0) (0,1) (1,1) (1,0): the speed is 3(1 − 2t + 2t²), by closed form", () => {
    expect(segmentLength(cubic(vec2(0, 0), vec2(0, 1), vec2(1, 1), vec2(1, 0)))).toBeCloseTo(2, 14);
  });

  it("is √5/2 + asinh(2)/4 for y = x² raised to a cubic, by closed form", () => {
    const parabola = cubic(vec2(0, 0), vec2(1 / 3, 0), vec2(2 / 3, 1 / 3), vec2(1, 1));
    expect(segmentLength(parabola)).toBeCloseTo(Math.sqrt(5) / 2 + Math.asinh(2) / 4, 13);
  });

  it("agrees with Simpson's rule on 200 000 intervals for two more", () => {
    // Values computed so to 1e-9; no publication.
    expect(segmentLength(cubic(vec2(0, 0), vec2(1, 2), vec2(3, 3), vec2(4, 0)))).toBeCloseTo(5.8299272246, 9);
    const long = cubic(vec2(100, 25), vec2(10, 90), vec2(110, 100), vec2(150, 195));
    expect(segmentLength(long)).toBeCloseTo(213.8620631265, 9);
  });

  it("is 1.5710166981 for the quarter circle with handles 4/3(√2 − 1)", () => {
    // Constant: comment in the source of librsvg and many others; the length by Simpson as above.
    const k = (4 / 3) * (Math.SQRT2 - 1);
    expect(k).toBeCloseTo(0.5522847498307935, 15);
    expect(segmentLength(cubic(vec2(1, 0), vec2(1, k), vec2(k, 1), vec2(0, 1)))).toBeCloseTo(1.5710166981, 9);
  });

  it("is right at a cusp, where 24 Gauss points alone are not", () => {
    // B′ = 30·((1−2t)², (1−2t)) up to order: x = 10(3t − 6t² + 4t³), y = 30t(1 − t); length by substitution s = 1 − 2t:
    // 2·∫₀¹ 15·s·√(1 + s²) ds = 10·(2√2 − 1).
    const cusp = cubic(vec2(0, 0), vec2(10, 10), vec2(0, 10), vec2(10, 0));
    const exact = 10 * (2 * Math.SQRT2 - 1);
    expect(segmentLength(cusp)).toBeCloseTo(exact, 11);
    expect(Math.abs(bezierLength(cusp) / exact - 1)).toBeGreaterThan(1e-5);
  });

  it("counts a doubled-back line there and back", () => {
    // x = 60t(1−t)² − 30t²(1−t) + 10t³: turns where 10·(10t² − 10t + 2)·… = 0, at t = (1 ± √(1/5))/2.
    const doubled = cubic(vec2(0, 0), vec2(20, 0), vec2(-10, 0), vec2(10, 0));
    const x = (t: number): number => 60 * t * (1 - t) ** 2 - 30 * t * t * (1 - t) + 10 * t ** 3;
    const turn = [1 / 2 - 1 / Math.sqrt(20), 1 / 2 + 1 / Math.sqrt(20)];
    const peak = x(turn[0] ?? 0);
    const dip = x(turn[1] ?? 0);
    expect(segmentLength(doubled)).toBeCloseTo(peak + (peak - dip) + (10 - dip), 10);
  });

  it("bears handles of no length and a single point", () => {
    expect(segmentLength(cubic(vec2(0, 0), vec2(0, 0), vec2(3, 4), vec2(3, 4)))).toBeCloseTo(5, 12);
    expect(segmentLength(cubic(vec2(1, 1), vec2(1, 1), vec2(1, 1), vec2(1, 1)))).toBe(0);
  });

  it("adds up over any split", () => {
    fc.assert(
      fc.property(anyCubic, between(0.01, 0.99), (curve, t) => {
        const whole = segmentLength(curve);
        const parts = segmentLength(splitSegment(curve, 0, t)) + segmentLength(splitSegment(curve, t, 1));
        expect(Math.abs(parts - whole)).toBeLessThan(1e-10 * (whole + 1));
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});

it("pathLength adds lines and arcs in closed form", () => {
  const half = arcAround(vec2(0, 0), 2, 0, Math.PI);
  const path = { closed: true, segments: [half, line(half.to, half.from)] };
  expect(pathLength(path)).toBeCloseTo(2 * Math.PI + 4, 12);
});
