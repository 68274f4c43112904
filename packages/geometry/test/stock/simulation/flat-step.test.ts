import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  burnt,
  burntOff,
  type FlatPiece,
  type FlatStep,
  flatVolume,
  pieceSurface,
  squeezed,
  trimmed,
} from "../../../src/stock/simulation/flat-step.js";
import { skinOfHeats, solveStraight } from "../../../src/stock/simulation/heats.js";
import { number, SEED } from "./arbitraries.js";

/** Relative: a few roundings of a double. */
const ROUNDING = 1e-12;
const piece: fc.Arbitrary<FlatPiece> = fc.record({
  width: number(10, 120),
  height: number(2, 90),
  length: number(40, 600),
});
const relative = (a: number, b: number): number => Math.abs(a / b - 1);

function expectSame(a: FlatPiece, b: FlatPiece): void {
  for (const side of ["width", "height", "length"] as const)
    expect(relative(a[side], b[side]), side).toBeLessThan(ROUNDING);
}

const undone = ({ apply, undo }: FlatStep, before: FlatPiece): FlatPiece => undo(apply(before));

describe("squeezing", () => {
  test("by hand: 40 x 18 x 100 to 9 high, a quarter of the thinning into width", () => {
    // 2^0.25 wider, 2^0.75 longer.
    const after = squeezed(0.5, 0.25).apply({ width: 40, height: 18, length: 100 });
    expect(after.height).toBe(9);
    expect(after.width).toBeCloseTo(40 * 1.189_207, 4);
    expect(after.length).toBeCloseTo(100 * 1.681_793, 4);
  });

  test("keeps every grain of steel, whatever the squeeze and its spread", () => {
    fc.assert(
      fc.property(piece, number(0.05, 3), number(0, 1), (before, kept, spread) => {
        const after = squeezed(kept, spread).apply(before);
        expect(relative(flatVolume(after), flatVolume(before))).toBeLessThan(ROUNDING);
        expect(relative(after.height, kept * before.height)).toBeLessThan(ROUNDING);
      }),
      { seed: SEED },
    );
  });

  test("in many passes is the same as in one", () => {
    fc.assert(
      fc.property(
        piece,
        number(0.1, 1),
        number(0, 1),
        fc.integer({ min: 1, max: 12 }),
        (before, kept, spread, passes) => {
          const pass = squeezed(kept ** (1 / passes), spread);
          let after = before;
          for (let i = 0; i < passes; i++) after = pass.apply(after);
          expectSame(after, squeezed(kept, spread).apply(before));
        },
      ),
      { seed: SEED },
    );
  });
});

describe("every step undone gives the piece back", () => {
  test.each<[string, (share: number, before: FlatPiece) => FlatStep]>([
    ["a squeeze", (share) => squeezed(0.1 + share, share)],
    ["bars cleaned", (share, { height }) => trimmed({ height: share * height * 0.9 })],
    ["a billet dressed", (share, { width }) => trimmed({ width: share * width * 0.9 })],
    ["ends cropped", (share, { length }) => trimmed({ length: share * length * 0.9 })],
    ["a heat, as a share", (share) => burnt(0.9 * share)],
    ["a heat, as a skin", (share, before) => burntOff(0.9 * share * flatVolume(before))],
  ])("%s", (_, stepOf) => {
    fc.assert(
      fc.property(piece, number(0, 1), (before, share) => {
        expectSame(undone(stepOf(share, before), before), before);
      }),
      { seed: SEED },
    );
  });

  test("a heat takes its share, or its skin, and nothing else of the section", () => {
    const before = { width: 40, height: 10, length: 100 };
    expect(flatVolume(burnt(0.02).apply(before))).toBeCloseTo(0.98 * 40_000, 8);
    expect(flatVolume(burntOff(432).apply(before))).toBeCloseTo(40_000 - 432, 8);
    expect(burntOff(432).apply(before)).toMatchObject({ width: 40, height: 10 });
    // 2 · (400 + 1000 + 4000)
    expect(pieceSurface(before)).toBe(10_800);
  });
});

describe("skin heat by heat", () => {
  test("two heats of 0.1 mm while the surface goes from 100 to 200 mm² take 12.5 and 17.5", () => {
    expect(skinOfHeats(0.1, 2, [100, 200])).toEqual([12.5, 17.5]);
    expect(skinOfHeats(0.1, 0, [100, 200])).toEqual([]);
  });

  test("cut into ever finer slices of a heat it is the same steel: the surface goes evenly", () => {
    const slices = 5000;
    let fine = 0;
    for (let i = 0; i < slices; i++) fine += (0.04 / slices) * 9 * (9000 + (2000 * (i + 0.5)) / slices);
    const sum = skinOfHeats(0.04, 9, [9000, 11_000]).reduce((a, b) => a + b, 0);
    expect(relative(sum, fine)).toBeLessThan(1e-11);
  });

  test("solving finds where a straight line has a value, and says where it never rises", () => {
    expect(solveStraight((x) => 0.97 * x - 3, 500, [1, 2])).toBeCloseTo(503 / 0.97, 10);
    expect(solveStraight((x) => 7 - x, 3, [1, 2])).toBe(Number.POSITIVE_INFINITY);
  });
});
