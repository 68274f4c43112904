import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { GeometryError } from "../../../src/errors/errors.js";
import {
  MOST_SHIMS,
  nearestStop,
  type StopChoice,
  type StopSet,
  stopNotAbove,
  stopNotBelow,
} from "../../../src/stock/forge/stop-blocks.js";

const SEED = 20261127;
/** Heights are compared to this, mm: far below what a stop is made to, far above rounding. */
const SAME = 1e-6;

interface Tried {
  readonly off: number;
  readonly pieces: number;
}

/** Every post with every choice of shims, one by one. */
function everyStop(height: number, { blocks, shims }: StopSet): Tried[] {
  return blocks.flatMap((block) =>
    Array.from({ length: 2 ** shims.length }, (_, mask) => {
      const used = shims.filter((_shim, i) => ((mask >> i) & 1) === 1);
      return { off: used.reduce((sum, shim) => sum + shim, block) - height, pieces: used.length };
    }),
  );
}

/** Distance, pieces, whether it is under: what the choice is made by, in this order. */
const rank = ({ off, pieces }: Tried): readonly [number, number, number] => [
  Math.round(Math.abs(off) / SAME),
  pieces,
  off < -SAME ? 1 : 0,
];
const compare = (a: Tried, b: Tried): number => {
  const [first, second] = [rank(a), rank(b)];
  return first[0] - second[0] || first[1] - second[1] || first[2] - second[2];
};
const best = (tried: readonly Tried[]): Tried | undefined => [...tried].sort(compare)[0];
const found = ({ shims, error }: StopChoice): Tried => ({ off: error, pieces: shims.length });

/** What the choice says of itself is so, and all of it is in the shop. */
function expectHonest(choice: StopChoice, height: number, set: StopSet): void {
  expect(set.blocks).toContain(choice.block);
  const left = [...set.shims];
  for (const shim of choice.shims) {
    expect(left).toContain(shim);
    left.splice(left.indexOf(shim), 1);
  }
  const sum = choice.shims.reduce((total, shim) => total + shim, choice.block);
  expect(Math.abs(choice.height - sum)).toBeLessThan(SAME / 100);
  expect(choice.error).toBe(choice.height - height);
}

// Sizes in tenths make many sums the same, sizes in 64ths of an inch make them differ by rounding only.
const tenths = (most: number) => fc.integer({ min: 1, max: most }).map((n) => n / 10);
const sixtyFourths = (most: number) => fc.integer({ min: 1, max: most }).map((n) => (n * 25.4) / 64);
const any = (most: number) => fc.double({ min: 0.05, max: most / 10, noNaN: true });
const sets = [tenths, sixtyFourths, any].map((size) =>
  fc.record({
    blocks: fc.array(size(400), { minLength: 1, maxLength: 4 }),
    shims: fc.array(size(40), { maxLength: 7 }),
  }),
);
const set: fc.Arbitrary<StopSet> = fc.oneof(...sets);
const height = fc.oneof(tenths(500), sixtyFourths(130), any(500));

describe("the nearest stop", () => {
  test("is the one that trying everything finds", () => {
    fc.assert(
      fc.property(height, set, (wanted, owned) => {
        const choice = nearestStop(wanted, owned);
        expectHonest(choice, wanted, owned);
        expect(rank(found(choice))).toEqual(rank(best(everyStop(wanted, owned)) ?? { off: 0, pieces: -1 }));
      }),
      { seed: SEED, numRuns: 400 },
    );
  });

  test("not below, and not above, are the ones that trying everything finds", () => {
    fc.assert(
      fc.property(height, set, (wanted, owned) => {
        const all = everyStop(wanted, owned);
        const sides = [
          [stopNotBelow(wanted, owned), all.filter(({ off }) => off > -SAME)],
          [stopNotAbove(wanted, owned), all.filter(({ off }) => off < SAME)],
        ] as const;
        for (const [choice, allowed] of sides) {
          const truth = best(allowed);
          expect(choice === undefined).toBe(truth === undefined);
          if (choice === undefined || truth === undefined) continue;
          expectHonest(choice, wanted, owned);
          expect(rank(found(choice))).toEqual(rank(truth));
        }
      }),
      { seed: SEED, numRuns: 400 },
    );
  });

  test("among 30 posts and 15 shims, a million stops, is the one that trying everything finds", () => {
    const blocks = Array.from({ length: 30 }, (_, i) => 3 + 1.27 * i);
    const shims = Array.from({ length: 15 }, (_, i) => 0.05 + 0.0371 * i * i);
    // Sum and number of every choice of shims, each from the choice without its thickest.
    let choices: readonly (readonly [number, number])[] = [[0, 0]];
    for (const shim of shims)
      choices = [...choices, ...choices.map(([sum, used]) => [sum + shim, used + 1] as const)];
    expect(choices).toHaveLength(2 ** 15);
    for (const wanted of [7.444, 33.3333]) {
      let nearest: Tried = { off: Number.POSITIVE_INFINITY, pieces: 0 };
      for (const block of blocks)
        for (const [sum, pieces] of choices) {
          const off = block + sum - wanted;
          if (Math.abs(off) < Math.abs(nearest.off) - SAME) nearest = { off, pieces };
        }
      expect(Math.abs(nearestStop(wanted, { blocks, shims }).error)).toBeCloseTo(Math.abs(nearest.off), 5);
    }
  });

  test("of equally near ones takes the fewest pieces, then the one that is not under", () => {
    expect(nearestStop(7.5, { blocks: [6, 7], shims: [1, 0.5, 0.5] })).toEqual({
      block: 7,
      shims: [0.5],
      height: 7.5,
      error: 0,
    });
    expect(nearestStop(8, { blocks: [6, 8], shims: [2] }).shims).toEqual([]);
    expect(nearestStop(8, { blocks: [7, 9], shims: [] }).block).toBe(9);
    expect(nearestStop(8, { blocks: [9, 7], shims: [] }).block).toBe(9);
    // 0.1 + 0.2 is not 0.3 in binary; on a post it is the same height, with one shim more.
    expect(nearestStop(6.3, { blocks: [6], shims: [0.1, 0.2, 0.3] }).shims).toEqual([0.3]);
  });

  test("a sum that few thick shims make is not made of more thinner ones", () => {
    const crumbs = [0.016, 0.008, 0.004, 0.002, 0.001];
    const shims = [10, 4.5, 4, 3.5, 2, ...crumbs];
    expect(nearestStop(18, { blocks: [6], shims })).toMatchObject({ shims: [10, 2], error: 0 });
  });

  test("a shim owned twice can be used twice", () => {
    expect(nearestStop(7, { blocks: [6], shims: [0.5, 0.5] }).shims).toEqual([0.5, 0.5]);
    expect(nearestStop(7, { blocks: [6], shims: [0.5] }).error).toBe(-0.5);
  });

  test("one more shim or post never makes it worse", () => {
    fc.assert(
      fc.property(height, set, any(40), (wanted, owned, more) => {
        const before = Math.abs(nearestStop(wanted, owned).error);
        const shimmed = nearestStop(wanted, { ...owned, shims: [...owned.shims, more] });
        const posted = nearestStop(wanted, { ...owned, blocks: [...owned.blocks, more] });
        expect(Math.abs(shimmed.error)).toBeLessThanOrEqual(before + SAME);
        expect(Math.abs(posted.error)).toBeLessThanOrEqual(before + SAME);
      }),
      { seed: SEED },
    );
  });

  test("needs a post, and at most so many shims", () => {
    expect(() => nearestStop(6, { blocks: [], shims: [1] })).toThrow(GeometryError);
    expect(stopNotBelow(6, { blocks: [], shims: [1] })).toBeUndefined();
    const shims = Array.from({ length: MOST_SHIMS }, (_, i) => 0.1 * 1.1 ** i);
    expect(nearestStop(12, { blocks: [6], shims }).error).toBeCloseTo(0, 3);
    expect(() => nearestStop(12, { blocks: [6], shims: [...shims, 1] })).toThrow(/at most 32/);
  });
});
