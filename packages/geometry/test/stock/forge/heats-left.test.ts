import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../../src/stock/defaults.js";
import { heatsLeft } from "../../../src/stock/forge/heats-left.js";
import { preCurve, sweepOfStretch } from "../../../src/stock/forge/pre-curve.js";
import { makeSteelChain } from "../../../src/stock/steel-chain.js";
import { exactly, HARVEST, NO_LIMITS, NO_LOSSES, plainBodies } from "../fixtures.js";

const SEED = 20261127;
const DENSITY = 0.00785;

describe("heats left", () => {
  test("by a share, by hand: 2 % of 100 cm³ each; 90 cm³ needed bear five heats and no sixth", () => {
    const losses = { ...NO_LOSSES, scalePerHeat: exactly(0.02) };
    const chain = makeSteelChain(
      plainBodies(90_000),
      losses,
      NO_LIMITS,
      { heats: 3, weldingHeats: 0 },
      "value",
    );
    const left = heatsLeft(chain, { bars: 1, width: 40, thickness: 10, cutLength: 250 }, DENSITY);
    // 100·0.98⁵ = 90.39, 100·0.98⁶ = 88.58.
    expect(left.more).toBe(2);
    expect(left.perHeat.billet).toBeCloseTo(0.02 * 785, 9);
    expect(left.perHeat.forged).toBeCloseTo(0.02 * 0.9 * 785, 9);
    expect(left.overForged).toBeCloseTo((100_000 * 0.98 ** 3 - 90_000) * DENSITY, 9);
  });

  test("by a skin, by hand: half of 0.1 mm off both pieces' surfaces each", () => {
    const losses = { ...NO_LOSSES, scaleModel: "skin" as const, skinPerHeat: exactly(0.1) };
    const bodies = { ...plainBodies(90_000), forgedSurface: 35_000 };
    const chain = makeSteelChain(bodies, losses, NO_LIMITS, { heats: 2, weldingHeats: 0 }, "value");
    const left = heatsLeft(chain, { bars: 1, width: 40, thickness: 10, cutLength: 250 }, DENSITY);
    // Billet 2(400 + 10·250 + 40·250) = 25 800 mm²; a heat takes 0.1·(25 800 + 35 000)/2 = 3040 mm³ of the 10 000 over.
    expect(left.more).toBe(1);
    expect(left.perHeat.billet).toBeCloseTo(0.1 * 25_800 * DENSITY, 9);
    expect(left.overForged).toBeCloseTo((10_000 - 2 * 3040) * DENSITY, 9);
  });

  test("with as many heats more the steel still does, with one more it does not", () => {
    const cut = fc.record({
      bars: fc.integer({ min: 1, max: 6 }),
      width: fc.double({ min: 35, max: 60, noNaN: true }),
      thickness: fc.double({ min: 5, max: 10, noNaN: true }),
      cutLength: fc.double({ min: 100, max: 400, noNaN: true }),
    });
    const model = fc.constantFrom("fraction" as const, "skin" as const);
    fc.assert(
      fc.property(cut, model, (stack, scaleModel) => {
        const losses = { ...DEFAULT_LOSSES, scaleModel };
        const chainOf = (heats: number) =>
          makeSteelChain(HARVEST, losses, DEFAULT_LIMITS, { heats, weldingHeats: 3 }, "value");
        const { more } = heatsLeft(chainOf(9), stack, DENSITY);
        fc.pre(9 + more >= 0);
        const over = (heats: number): number => heatsLeft(chainOf(heats), stack, DENSITY).overForged;
        expect(over(9 + more)).toBeGreaterThan(-1e-6);
        expect(over(10 + more)).toBeLessThan(0);
        // What is over tells the same as the number of heats.
        expect(over(9) >= -1e-9).toBe(more >= 0);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("without scale the steel lasts for ever, or not at all", () => {
    const forging = { heats: 3, weldingHeats: 0 };
    for (const scaleModel of ["fraction", "skin"] as const) {
      const chain = makeSteelChain(
        plainBodies(90_000),
        { ...NO_LOSSES, scaleModel },
        NO_LIMITS,
        forging,
        "value",
      );
      const stack = { bars: 1, width: 40, thickness: 10, cutLength: 250 };
      expect(heatsLeft(chain, stack, DENSITY).more).toBe(Number.POSITIVE_INFINITY);
      expect(heatsLeft(chain, { ...stack, cutLength: 200 }, DENSITY).more).toBe(Number.NEGATIVE_INFINITY);
    }
  });
});

describe("bending down before the bevels", () => {
  test("the same curvature over another length", () => {
    expect(preCurve({ sweep: 8, length: 200 }, 200)).toBe(8);
    expect(preCurve({ sweep: 8, length: 200 }, 100)).toBe(2);
  });

  test("3 % over 50 mm height and 250 mm length is about 19 mm", () => {
    expect(sweepOfStretch(0.03, 250, 50)).toBeCloseTo(18.75, 9);
    // The bent strip itself: neutral line at the spine, radius h/ε; its end stands off by R(1 − cos(L/R)).
    const radius = 50 / 0.03;
    const exact = radius * (1 - Math.cos(250 / radius));
    expect(Math.abs(sweepOfStretch(0.03, 250, 50) / exact - 1)).toBeLessThan(0.002);
  });
});
