import { describe, expect, it } from "vitest";
import { swedgeSetUp } from "../../src/bench/swedge-set-up.js";
import type { Knife } from "../../src/blade/knife.js";
import type { SwedgeSpec } from "../../src/blade/spec.js";
import { chopper } from "./bench-knives.js";

const DEGREE = Math.PI / 180;

/** The chopper, 5 mm thick at the heel and 2 mm at the tip 200 mm ahead, with a swedge half way. */
const swedged = (change: Partial<SwedgeSpec> = {}): Knife =>
  chopper((spec) => ({
    ...spec,
    blade: {
      ...spec.blade,
      swedge: {
        from: { kind: "distance", mm: 80 },
        to: { kind: "distance", mm: 120 },
        angle: 25 * DEGREE,
        thickness: [{ at: { kind: "heel" }, is: 1.5 }],
        ...change,
      },
    },
  }));

describe("a swedge to grind", () => {
  it("has its ends, its angle, and strips as wide as half of what comes off over the tangent", () => {
    const found = swedgeSetUp(swedged());
    expect(found?.from).toBe(80);
    expect(found?.to).toBe(120);
    expect(found?.angle).toBeCloseTo(25 * DEGREE, 12);
    expect(found?.stations.map(({ x }) => x)).toEqual([80, 90, 100, 110, 120]);
    // Ready to harden there are 0.1 mm more on each face: 5 − 3·0.4 + 0.2 = 4.0 mm at 80, 5 − 3·0.6 + 0.2 = 3.4 mm at 120.
    const [first, , middle, , last] = found?.stations ?? [];
    expect([first?.before, middle?.before, last?.before]).toEqual([
      expect.closeTo(4, 6),
      expect.closeTo(3.7, 6),
      expect.closeTo(3.4, 6),
    ]);
    expect(first?.left).toBe(1.5);
    // (4.0 − 1.5)/2/tan 25° = 1.25/0.46631, (3.7 − 1.5)/2 = 1.1, (3.4 − 1.5)/2 = 0.95.
    expect(first?.strip).toBeCloseTo(2.6806, 4);
    expect(middle?.strip).toBeCloseTo(2.359, 4);
    expect(last?.strip).toBeCloseTo(2.0373, 4);
  });

  it("that runs down into the bevels ends where it meets them", () => {
    // At 3° the planes fall by 1.25 mm only 23.9 mm down; the bevel line lies 20 mm down, and the faces fall away below it.
    const [first] = swedgeSetUp(swedged({ angle: 3 * DEGREE }))?.stations ?? [];
    const flat = 1.25 / Math.tan(3 * DEGREE);
    expect(first?.strip).toBeLessThan(flat);
    expect(first?.strip).toBeGreaterThan(20);
    // Where the plane and the bevel are as thick as one another: 0.75 + d·tan 3° and 2 − (d − 20)·rise/30.
    const rise = 2 - 0.7 / 2;
    expect(first?.strip).toBeCloseTo((2 - 0.75 + (20 * rise) / 30) / (Math.tan(3 * DEGREE) + rise / 30), 1);
  });

  it("is none without one, or where it takes nothing off", () => {
    expect(swedgeSetUp(chopper())).toBeUndefined();
    expect(swedgeSetUp(swedged({ thickness: [{ at: { kind: "heel" }, is: 5 }] }))).toBeUndefined();
  });
});
