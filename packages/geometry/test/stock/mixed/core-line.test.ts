import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Knife } from "../../../src/index.js";
import {
  bandBudget,
  coreBudget,
  coreForLine,
  coreLinesAt,
  coreShare,
  flatCoreLine,
} from "../../../src/stock/mixed/core-line.js";
import { coreReport } from "../../../src/stock/mixed/core-report.js";
import { petty, pettyStack } from "./stacks.js";

const IN = 25.4;
const near = (wanted: number, share: number) => (value: number) => Math.abs(value / wanted - 1) <= share;
const knife = petty();

/** What the hand check says of a core and cladding, inches: core and line at the heel. */
const HAND = [
  { core: 0.14, cladding: 1 / 8, thickness: 1.18, line: 13.0 },
  { core: 0.1, cladding: 1 / 8, thickness: 0.9, line: 9.1 },
  { core: 0.14, cladding: 3 / 16, thickness: 0.87, line: 8.7 },
];

const reportOf = (core: number, cladding: number) =>
  coreReport(
    { knife, stack: pettyStack(core * IN, cladding * IN), cleaning: 0.2, keptByScale: 1, centring: 0.125 },
    { x: 0, low: 7, high: 11 },
  );

describe("the petty by hand", () => {
  test.each(HAND)("core $core in, cladding $cladding in: $thickness mm, line at $line mm", (hand) => {
    const heel = reportOf(hand.core, hand.cladding).stations[0];
    expect(heel?.forged).toBeCloseTo(3.4, 9);
    // Tolerances of the orders: 0.01 mm of thickness, 2 % of the line.
    expect(Math.abs((heel?.thinning.core ?? 0) - hand.thickness)).toBeLessThan(0.01);
    expect(heel?.thinning.lines.right ?? 0).toSatisfy(near(hand.line, 0.02));
    expect(heel?.thinning.lines.left).toBe(heel?.thinning.lines.right);
  });

  test("a core of 0.895 mm everywhere: 9.0, 10.2, 10.3 mm at 0, 75, 130", () => {
    const heights = [0, 75, 130].map((x) => coreLinesAt(knife, x, 0.895).right ?? Number.NaN);
    for (const [i, hand] of [9.0, 10.2, 10.3].entries()) expect(heights[i]).toSatisfy(near(hand, 0.02));
  });

  test("a core that thins with the forging, 0.90 mm at the heel: 9.1, 8.2, 5.4 mm", () => {
    const share = coreShare(2.54, 3.175, 0.2);
    const heights = [0, 75, 130].map((x) => {
      const forged = knife.body("forged").slab.thicknessAt(x);
      return coreLinesAt(knife, x, forged * share).right ?? Number.NaN;
    });
    for (const [i, hand] of [9.1, 8.2, 5.4].entries()) expect(heights[i]).toSatisfy(near(hand, 0.02));
  });

  test("± 2 mm on both sides leaves 0.07 mm off the middle; ± 4 is what can be held", () => {
    const { asked } = reportOf(0.1, 1 / 8);
    expect(Math.abs((asked?.budget ?? 0) - 0.07)).toBeLessThan(0.005);
    expect(asked?.neededBand).toBe(4);
  });
});

/** The same section by small steps up from the edge: no root is solved for. */
function heightBySteps(body: ReturnType<Knife["body"]>, x: number, half: number): number | undefined {
  const spine = body.spineDistanceAt(x);
  const section = body.sectionAt(x);
  const step = 1e-4;
  for (let v = 0; v <= spine; v += step) if (section.valueAt(v) >= half) return v;
  return undefined;
}

describe("the core line on the true section", () => {
  const forms = {
    flat: knife,
    convex: petty({ form: "convex", crown: { share: 0.06 } }),
    hollow: petty({ form: "hollow", height: 12, wheelRadius: 300 }),
    "part-height flat": petty({ height: 14 }),
  } as const;

  test.each(Object.entries(forms))("%s: as by small steps", (_, built) => {
    for (const x of [1, 40, 75, 120]) {
      for (const core of [0.3, 0.6, 0.9, 1.1]) {
        const wanted = heightBySteps(built.body("finished"), x, core / 2);
        const found = coreLinesAt(built, x, core).right;
        if (wanted === undefined) expect(found).toBeUndefined();
        else expect(Math.abs((found ?? Number.NaN) - wanted)).toBeLessThan(2e-4);
      }
    }
  });

  test("flat, above the sharpening bevel: y = b(c − e)/(Tb − e)", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 2.2, noNaN: true }), (core) => {
        const line = flatCoreLine(core, { edge: 0.25, bevelLine: 2.4, height: 30 });
        expect(Math.abs((coreLinesAt(knife, 0, core).right ?? 0) - line)).toBeLessThan(1e-8);
      }),
      { seed: 2605, numRuns: 100 },
    );
  });

  test("convex comes lower, hollow higher than flat: the same core is reached sooner or later", () => {
    const at = (built: Knife) => coreLinesAt(built, 20, 0.9).right ?? Number.NaN;
    const hollow = petty({ form: "hollow", wheelRadius: 800 });
    expect(at(forms.convex)).toBeLessThan(at(knife));
    expect(at(hollow)).toBeGreaterThan(at(knife));
  });

  test("a core thicker than the blade goes up to the spine; one thinner than the edge stays on the sharpening bevel", () => {
    expect(coreLinesAt(knife, 145, 1.2).right).toBeUndefined();
    expect(coreLinesAt(knife, 0, 0.2).right).toBeCloseTo(0.1 / Math.tan((14 * Math.PI) / 180), 9);
  });

  test("off the middle by d: left and right differ by 4·d·b/(Tb − e)", () => {
    const { right = 0, left = 0 } = coreLinesAt(knife, 0, 0.9, 0.05);
    expect(right - left).toBeCloseTo((4 * 0.05 * 30) / (2.4 - 0.25), 6);
  });
});

describe("how far off the middle", () => {
  test("(c − e)/2 and c/2", () => {
    expect(coreBudget(knife, 0, 0.9)).toEqual({ edge: expect.closeTo(0.325, 12), apex: 0.45 });
  });

  test("at the budget of the edge the core line of one face is at the unsharpened edge", () => {
    const { edge } = coreBudget(knife, 60, 0.8);
    const body = knife.body("unsharpened");
    const face = body.sectionAt(60).valueAt(0);
    expect(0.8 / 2 - edge).toBeCloseTo(face, 12);
  });

  test.each(["flat", "convex", "hollow"] as const)(
    "%s: at the band's budget a line stands on a limit",
    (form) => {
      const built = petty({
        form,
        ...(form === "convex" ? { crown: { share: 0.05 } } : {}),
        ...(form === "hollow" ? { wheelRadius: 800 } : {}),
      });
      const core = coreForLine(built, 30, 9);
      const band = { low: 7.5, high: 11.5 };
      const budget = bandBudget(built, 30, core, band);
      const lines = [budget, -budget].flatMap((off) => {
        const { right, left } = coreLinesAt(built, 30, core, off);
        return [right ?? Number.NaN, left ?? Number.NaN];
      });
      expect(Math.min(...lines)).toBeGreaterThanOrEqual(band.low - 1e-6);
      expect(Math.max(...lines)).toBeLessThanOrEqual(band.high + 1e-6);
      const room = Math.min(Math.min(...lines) - band.low, band.high - Math.max(...lines));
      expect(room).toBeCloseTo(0, 6);
    },
  );

  test("with the apex off the middle the core has less room on that side", () => {
    const built = petty({ apex: 0.1 });
    const middle = coreBudget(knife, 0, 0.9);
    const off = coreBudget(built, 0, 0.9);
    // The apex lies at 0.1·T/2 = 0.12 mm.
    expect(off.apex).toBeCloseTo(0.45 - 0.12, 12);
    expect(off.edge).toBeLessThan(middle.edge);
  });
});

describe("scale off the cladding alone", () => {
  test("raises the core's share by what scale keeps, and its line with it", () => {
    const stack = pettyStack(2.54, 3.175);
    const kept = 0.988 ** 9 * 0.985 ** 3;
    const input = { knife, stack, cleaning: 0.2, keptByScale: kept, centring: 0.1 };
    const heel = coreReport(input).stations[0];
    expect(heel?.lessScale.core).toBeCloseTo((heel?.thinning.core ?? 0) / kept, 12);
    expect(heel?.lessScale.lines.right ?? 0).toBeGreaterThan(heel?.thinning.lines.right ?? 0);
  });
});
