import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  heightAtAngle,
  highestHollow,
  leverShim,
  ownedWheels,
  smallestRadius,
} from "../../src/bench/face-arc.js";
import { between, SEED } from "../blade/random-knives.js";
import { convexArc, flatBevelAngle, hollowArc } from "./closed-forms.js";

// Published values: the project's table of closed forms (wheel hollow over a chord of 30 mm).
test.each([
  [101.6, 1.113384],
  [127, 0.888938],
  [152.4, 0.739985],
  [177.8, 0.633863],
  [457.2, 0.246129],
])("a wheel of %s mm radius hollows %s mm over 30 mm", (radius, depth) => {
  expect(hollowArc({ height: 30, rise: 0 }, radius).depth).toBeCloseTo(depth, 6);
});

test("a primary bevel of 3.0 over 0.4 and 25 high stands at 2.9767°", () => {
  expect((flatBevelAngle(3, 0.4, 25) * 180) / Math.PI).toBeCloseTo(2.9767, 4);
});

test("a 6 mm spine with a 15 mm bevel stands at about 10°", () => {
  expect((flatBevelAngle(6, 0.5, 15) * 180) / Math.PI).toBeCloseTo(10.4, 1);
});

describe("a jig", () => {
  test("set to an angle leaves the wanted edge", () => {
    fc.assert(
      fc.property(between(1.5, 8), between(0.2, 1.2), between(8, 60), (thickness, edge, height) => {
        const alpha = flatBevelAngle(thickness, edge, height);
        // What is left between two planes that lean by alpha and leave the flats at this height.
        expect(thickness - 2 * height * Math.tan(alpha)).toBeCloseTo(edge, 9);
        expect(heightAtAngle((thickness - edge) / 2, alpha)).toBeCloseTo(height, 9);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("droops on a thinner place: b = (t − e)/(2 tan α)", () => {
    const alpha = flatBevelAngle(4, 0.5, 30);
    expect(heightAtAngle((2.25 - 0.5) / 2, alpha)).toBeCloseTo(15, 9);
    expect(heightAtAngle(1, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  test("is lifted by the sine of its angle", () => {
    expect(leverShim(100, Math.PI / 6)).toBeCloseTo(50, 12);
    expect(leverShim(100, 0)).toBe(0);
  });
});

describe("a convex face", () => {
  test("without a shoulder arrives at twice the flat angle with a bulge of nearly (t − e)/8", () => {
    const chord = { height: 25, rise: 1.3 };
    const c = Math.hypot(25, 1.3);
    const radius = (c * c) / 2.6;
    const crown = radius - Math.sqrt(radius * radius - (c * c) / 4);
    const arc = convexArc(chord, crown);
    expect(arc.radius).toBeCloseTo(radius, 9);
    expect(arc.atLine).toBeCloseTo(0, 12);
    expect(arc.atEdge).toBeCloseTo(2 * Math.atan(1.3 / 25), 12);
    expect(crown).toBeCloseTo(2.6 / 8, 3);
  });

  test("of hardly any bulge is flat", () => {
    const arc = convexArc({ height: 20, rise: 1 }, 1e-9);
    expect(arc.atEdge).toBeCloseTo(Math.atan(1 / 20), 8);
    expect(arc.atLine).toBeCloseTo(Math.atan(1 / 20), 8);
  });
});

describe("a hollow face", () => {
  test("of the smallest wheel arrives at the edge level, of a smaller one beyond", () => {
    fc.assert(
      fc.property(between(8, 40), between(0.5, 3), (height, rise) => {
        const radius = smallestRadius([{ height, rise }]) ?? Number.NaN;
        expect(hollowArc({ height, rise }, radius).atEdge).toBeCloseTo(0, 9);
        expect(hollowArc({ height, rise }, 1.1 * radius).atEdge).toBeGreaterThan(0);
        // And the highest bevel of that wheel is this one.
        expect(highestHollow(rise, radius)).toBeCloseTo(height, 9);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("of a huge wheel is flat", () => {
    const arc = hollowArc({ height: 20, rise: 1 }, 1e7);
    expect(arc.depth).toBeLessThan(1e-5);
    expect(arc.atEdge).toBeCloseTo(Math.atan(1 / 20), 5);
  });

  test("that does not rise sets no wheel", () => {
    expect(smallestRadius([{ height: 20, rise: 0 }])).toBeUndefined();
  });

  test("is offered the wheels that fit, the nearest first", () => {
    const wheels = ownedWheels([200, 300, 254, 350], 130, { height: 18, rise: 1.3 }, 125.3);
    expect(wheels.map(({ diameter, fits }) => [diameter, fits])).toEqual([
      [254, true],
      [300, true],
      [350, true],
      [200, false],
    ]);
    expect(wheels[0]?.error).toBe(-3);
  });
});
