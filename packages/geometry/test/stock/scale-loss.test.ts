import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  afterFractionLoss,
  afterSkinLoss,
  beforeFractionLoss,
  beforeSkinLoss,
  flatSurface,
  skinLoss,
} from "../../src/stock/scale-loss.js";

const SEED = 20261125;
const relative = (a: number, b: number): number => Math.abs(a / b - 1);

describe("fraction", () => {
  test("100 g with 8 % loss is 108.6957 g of bar, not 108 g", () => {
    expect(beforeFractionLoss(100, 0.08, 1)).toBeCloseTo(108.6957, 4);
    expect(beforeFractionLoss(100, 0.08, 1)).not.toBeCloseTo(108, 1);
  });

  test("losses of several heats multiply: 0.988 ten times keeps 0.88628", () => {
    expect(afterFractionLoss(1, 0.012, 10)).toBeCloseTo(0.88628, 5);
  });

  test("forwards and backwards undo each other", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.nat(30),
        (volume, loss, heats) =>
          relative(afterFractionLoss(beforeFractionLoss(volume, loss, heats), loss, heats), volume) < 1e-13,
      ),
      { seed: SEED },
    );
  });
});

describe("skin", () => {
  test("surface of a flat piece: 40 x 10 x 100 has 10 800 mm²", () => {
    expect(flatSurface(40, 10, 100)).toBe(2 * (400 + 1000 + 4000));
  });

  /**
   * One heat of 0.04 mm: a 40 mm square billet loses about 0.4 %, a 6 mm bar about 1.5 %, a 3 mm blade about 2.8 %
   * (surface over volume, 2δ(1/t + 1/h); ends left out, so long pieces).
   */
  test.each([
    [40, 40, 0.004],
    [38, 6, 0.0154],
    [45, 3, 0.0284],
  ])("%d x %d loses a share of %d", (height, thickness, share) => {
    const length = 100_000;
    const before = height * thickness * length;
    const surface = flatSurface(height, thickness, length);
    expect(skinLoss(0.04, 1, surface, surface) / before).toBeCloseTo(share, 3);
    expect(skinLoss(0.04, 1, surface, surface) / before).toBeCloseTo(
      2 * 0.04 * (1 / thickness + 1 / height),
      5,
    );
  });

  test("even change of surface: two heats from 100 to 200 mm² at 0.1 mm take 30 mm³", () => {
    // 0.1 · (125 + 175)
    expect(skinLoss(0.1, 2, 100, 200)).toBeCloseTo(30, 12);
  });

  test("forwards and backwards undo each other", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e3, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.double({ min: 10, max: 80, noNaN: true }),
        fc.double({ min: 3, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.nat(12),
        (after, surface, width, thickness, depth, heats) => {
          const before = beforeSkinLoss(after, surface, width, thickness, depth, heats);
          return (
            before >= after &&
            relative(afterSkinLoss(before, surface, width, thickness, depth, heats), after) < 1e-11
          );
        },
      ),
      { seed: SEED },
    );
  });

  test("a section that burns away whatever its length has no beginning", () => {
    // 0.5 mm a heat off both faces, seven heats: more than the 6 mm there are.
    expect(beforeSkinLoss(1000, 500, 40, 6, 0.5, 13)).toBe(Number.POSITIVE_INFINITY);
  });
});
