import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { nestFromBars, piecesFromBar, piecesFromBars, type StockLength } from "../../src/stock/nesting.js";
import { planStock } from "../../src/stock/plan.js";
import { groupRack } from "../../src/stock/rack-groups.js";
import type { RackBar } from "../../src/stock/shop.js";
import { NO_LIMITS, NO_LOSSES, plainBodies, shopWith } from "./fixtures.js";

const SEED = 20261129;

describe("which entries of the rack are one stock", () => {
  const flat: RackBar = { name: "6 x 40", width: 40, thickness: 6, steel: "52100", pricePerKg: 9 };
  const groupsOf = (...bars: readonly RackBar[]) =>
    groupRack(bars).map(({ lengths }) => lengths.map(({ barIndex }) => barIndex));

  test("same section either way round, same steel by any name, same price", () => {
    const turned = { ...flat, width: 6, thickness: 40, length: 300 };
    expect(groupsOf({ ...flat, length: 1000 }, turned, { ...flat, steel: "100Cr6", length: 210 })).toEqual([
      [0, 1, 2],
    ]);
  });

  test("another section, steel or price, or one that is not stated, is another stock", () => {
    const { steel: _, ...noSteel } = flat;
    const { pricePerKg: __, ...noPrice } = flat;
    const others = [
      { ...flat, width: 41 },
      { ...flat, steel: "1084" },
      { ...flat, pricePerKg: 8 },
    ];
    expect(groupsOf(flat, ...others, noSteel, noPrice)).toEqual([[0], [1], [2], [3], [4], [5]]);
  });

  test("6.35 mm written as 1/4 in is 6.35 mm", () => {
    expect(groupsOf({ ...flat, thickness: 6.35 }, { ...flat, thickness: 0.25 * 25.400000000000002 })).toEqual(
      [[0, 1]],
    );
  });
});

describe("equal pieces from bars of several lengths, by hand", () => {
  const bar = (barIndex: number, length: number, count = 1): StockLength => ({ barIndex, length, count });

  test("one bar is used up before the next is cut", () => {
    expect(nestFromBars([bar(0, 600, 2)], 5, 150, 1.5)).toEqual([
      { barIndex: 0, length: 600, pieces: 3, remainder: 145.5 },
      { barIndex: 0, length: 600, pieces: 2, remainder: 297 },
    ]);
    expect(nestFromBars([bar(0, 600)], 5, 150, 1.5)).toBeUndefined();
    // Two pieces and one cut: the second ends with the bar, or leaves less than another cut.
    expect(nestFromBars([bar(0, 301.5)], 2, 150, 1.5)?.[0]?.remainder).toBe(0);
    expect(nestFromBars([bar(0, 302)], 2, 150, 1.5)?.[0]?.remainder).toBe(0);
    expect(nestFromBars([bar(0, 301.4)], 2, 150, 1.5)).toBeUndefined();
  });

  test("a leftover goes before a whole bar, and two short ones before a long one", () => {
    expect(
      nestFromBars([bar(0, 1000), bar(1, 160), bar(2, 170)], 2, 150, 1.5)?.map((c) => c.barIndex),
    ).toEqual([1, 2]);
  });

  test("a bar as long as needed gives what the others do not hold, and says nothing of what it leaves", () => {
    expect(nestFromBars([{ barIndex: 0 }, bar(1, 320)], 3, 150, 1.5)).toEqual([
      { barIndex: 1, length: 320, pieces: 2, remainder: 17 },
      { barIndex: 0, pieces: 1 },
    ]);
    expect(piecesFromBars([{ barIndex: 0 }, bar(1, 320)], 150, 1.5)).toBe(Number.POSITIVE_INFINITY);
  });
});

/** Every way to spread the pieces over the bars one by one. */
function* allWays(bars: readonly number[], pieces: number, piece: number, kerf: number): Generator<number[]> {
  if (bars.length === 0) {
    if (pieces === 0) yield [];
    return;
  }
  const [length = 0, ...others] = bars;
  for (let n = 0; n <= pieces && n * piece + Math.max(0, n - 1) * kerf <= length; n++)
    for (const rest of allWays(others, pieces - n, piece, kerf)) yield [n, ...rest];
}

test("300 random sets of bars: least length opened, then the longest leftover, against every way there is", () => {
  const stock = fc.array(
    fc.record({ length: fc.integer({ min: 40, max: 400 }), count: fc.integer({ min: 1, max: 2 }) }),
    {
      minLength: 1,
      maxLength: 4,
    },
  );
  let nested = 0;
  fc.assert(
    fc.property(
      stock,
      fc.integer({ min: 1, max: 6 }),
      fc.integer({ min: 40, max: 130 }),
      fc.constantFrom(0, 1.5, 2),
      (stocks, pieces, piece, kerf) => {
        const bars = stocks.map((one, barIndex) => ({ barIndex, ...one }));
        const single = stocks.flatMap(({ length, count }) => Array<number>(count).fill(length));
        let best: readonly [opened: number, left: number] | undefined;
        for (const way of allWays(single, pieces, piece, kerf)) {
          const opened = single.reduce((sum, length, i) => sum + (way[i] === 0 ? 0 : length), 0);
          const left = Math.max(
            ...single.map((length, i) =>
              way[i] === 0 ? -1 : Math.max(0, length - (way[i] ?? 0) * (piece + kerf)),
            ),
          );
          if (best === undefined || opened < best[0] || (opened === best[0] && left > best[1]))
            best = [opened, left];
        }
        const found = nestFromBars(bars, pieces, piece, kerf);
        expect(found === undefined).toBe(best === undefined);
        if (found === undefined || best === undefined) return;
        nested++;
        expect(found.reduce((sum, cut) => sum + cut.pieces, 0)).toBe(pieces);
        expect(found.reduce((sum, cut) => sum + (cut.length ?? 0), 0)).toBe(best[0]);
        expect(Math.max(...found.map(({ remainder = 0 }) => remainder))).toBeCloseTo(best[1], 9);
        for (const { barIndex, count } of bars)
          expect(found.filter((cut) => cut.barIndex === barIndex).length).toBeLessThanOrEqual(count);
      },
    ),
    { seed: SEED, numRuns: 300 },
  );
  expect(nested).toBeGreaterThan(100);
});

test("the pieces of one stack come from two bars where neither holds them all", () => {
  const flat = { name: "50 x 6", width: 50, thickness: 6 };
  const tall = plainBodies(60_000, [{ x: 0, height: 80, area: 200, thickness: 3 }]);
  const planOf = (rack: readonly RackBar[]) =>
    planStock(tall, shopWith({ rack, losses: NO_LOSSES, limits: { ...NO_LIMITS, maxBars: 2 } }), {
      heats: 9,
      weldingHeats: 3,
    });
  // 60 000 mm³ as two bars of 50 × 6 are two pieces of 100 mm.
  const rack = [
    { ...flat, length: 120 },
    { ...flat, length: 105 },
  ];
  expect(planOf(rack.slice(0, 1)).plans).toEqual([]);
  const [plan] = planOf(rack).plans;
  expect(plan?.cuts).toEqual([
    { barIndex: 1, length: 105, pieces: 1, remainder: 3.5 },
    { barIndex: 0, length: 120, pieces: 1, remainder: 18.5 },
  ]);
  // Alone it is refused: shown are the pieces wanted and those to be had, whichever of the two ways is shown.
  const [refused] = planOf([{ ...flat, length: 120 }]).rejected.filter((r) => r.reason === "bar-too-short");
  const { bars, cutLength = 0, value, limit } = refused?.example ?? {};
  expect([value?.value, limit?.value]).toEqual([bars, piecesFromBar(120, cutLength, 1.5)]);
});

test("two bars of 181 mm give two pieces of 175, and not 352 mm of bar: pieces are told", () => {
  const flat = { name: "50 x 6", width: 50, thickness: 6 };
  const tall = plainBodies(3 * 175 * 300, [{ x: 0, height: 80, area: 200, thickness: 3 }]);
  const limits = { ...NO_LIMITS, maxBars: 3, minBilletLength: 175, maxSlenderness: 1e9 };
  const press = { forgeLength: 180 };
  const shop = shopWith({ rack: [{ ...flat, length: 181, count: 2 }], losses: NO_LOSSES, limits, press });
  const { plans, rejected } = planStock(tall, shop, { heats: 9, weldingHeats: 3 });
  expect(plans).toEqual([]);
  expect(rejected.find(({ reason }) => reason === "bar-too-short")?.example).toMatchObject({
    bars: 3,
    cutLength: 175,
    value: { quantity: "count", value: 3 },
    limit: { quantity: "count", value: 2 },
  });
});
