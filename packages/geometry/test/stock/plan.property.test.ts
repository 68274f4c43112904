import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LedgerBodies } from "../../src/stock/blade-states.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../src/stock/defaults.js";
import { planStock, type StockPlan } from "../../src/stock/plan.js";
import { isNoBetter } from "../../src/stock/ranking.js";
import type { Banded, RackBar, ShopSpec } from "../../src/stock/shop.js";
import { planExhaustively } from "./exhaustive.js";
import { HARVEST, shopWith } from "./fixtures.js";
import { forgeForwards } from "./forward.js";

const SEED = 20261125;
const FORGING = { heats: 9, weldingHeats: 3 };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const bar: fc.Arbitrary<RackBar> = fc
  .record(
    {
      name: fc.constant("bar"),
      width: fc.integer({ min: 20, max: 80 }),
      thickness: fc.integer({ min: 3, max: 14 }),
      length: fc.integer({ min: 150, max: 1500 }),
      count: fc.integer({ min: 1, max: 4 }),
      pricePerKg: fc.integer({ min: 4, max: 20 }),
    },
    { requiredKeys: ["name", "width", "thickness"] },
  )
  .map(({ count, ...rest }) =>
    count === undefined || rest.length === undefined ? rest : { ...rest, count },
  );

/** Bars of several sections, some of them in several lengths that stand apart on the rack, some entered on edge. */
const rack: fc.Arbitrary<RackBar[]> = fc
  .array(fc.record({ first: bar, others: fc.array(fc.integer({ min: 80, max: 900 }), { maxLength: 3 }) }), {
    minLength: 1,
    maxLength: 8,
  })
  .map((stocks) => [
    ...stocks.map(({ first }) => first),
    ...stocks.flatMap(({ first: { count: _, ...first }, others }) =>
      others.map((length, i) =>
        i === 1 ? { ...first, width: first.thickness, thickness: first.width, length } : { ...first, length },
      ),
    ),
  ]);

const shop: fc.Arbitrary<ShopSpec> = fc
  .record({
    rack,
    scaleModel: fc.constantFrom("fraction" as const, "skin" as const),
    opening: fc.option(number(30, 120), { nil: undefined }),
    forgeLength: fc.option(number(150, 500), { nil: undefined }),
    minWeldReduction: number(0.1, 0.5),
    weldSpreadShare: number(0, 0.5),
    minBilletLength: number(0, 120),
    mostNarrowing: number(0, 0.6),
    cutStep: fc.constantFrom(1, 2.5, 5, 6.35, 10),
    kerf: number(0, 3),
  })
  .map(({ rack: bars, scaleModel, opening, forgeLength, cutStep, kerf, ...limits }) =>
    shopWith({
      rack: bars,
      losses: { ...DEFAULT_LOSSES, scaleModel },
      press: {
        ...(opening === undefined ? {} : { opening }),
        ...(forgeLength === undefined ? {} : { forgeLength }),
      },
      limits: { ...DEFAULT_LIMITS, ...limits },
      cutStep,
      kerf,
    }),
  );

const knife: fc.Arbitrary<LedgerBodies> = fc
  .record({ size: number(0.3, 1.3), tall: number(0.4, 1.1) })
  .map(({ size, tall }) => ({
    ...HARVEST,
    finished: HARVEST.finished * size,
    faceGrinding: HARVEST.faceGrinding * size,
    bevelGrinding: HARVEST.bevelGrinding * size,
    profileTrimming: HARVEST.profileTrimming * size,
    forgedSurface: HARVEST.forgedSurface * size,
    readySurface: HARVEST.readySurface * size,
    stations: HARVEST.stations.map((station) => ({
      ...station,
      height: station.height * tall,
      area: station.area * tall,
    })),
  }));

const keyOf = (plan: StockPlan): string => `${plan.barIndex}/${plan.bars}/${plan.layers}`;
const numbersOf = ({ waste, cost, joints, heats, reach, narrowing }: StockPlan) => ({
  waste,
  cost: cost ?? Number.POSITIVE_INFINITY,
  joints,
  heats,
  reach: reach.wholeShare,
  narrowing: narrowing?.share ?? 0,
});

test("fifty random racks: the same plans in the same order as an exhaustive search done forwards", () => {
  let plans = 0;
  let fromSeveral = 0;
  let narrowed = 0;
  let beforeMoreWelds = 0;
  fc.assert(
    fc.property(knife, shop, (bodies, shopSpec) => {
      const found = planStock(bodies, shopSpec, FORGING).plans;
      const wanted = planExhaustively(bodies, shopSpec, FORGING);
      expect(found.map((plan) => `${keyOf(plan)} ${plan.cutLength.toFixed(6)}`)).toEqual(
        wanted.map((plan) => `${plan.key} ${plan.cutLength.toFixed(6)}`),
      );
      plans += found.length;
      narrowed += found.filter(({ narrowing }) => narrowing !== undefined).length;
      beforeMoreWelds += found.filter(({ why }) => why.some(({ code }) => code === "welded-instead")).length;
      fromSeveral += found.filter(
        ({ cuts = [] }) => new Set(cuts.map((cut) => cut.barIndex)).size > 1,
      ).length;
    }),
    { seed: SEED, numRuns: 50, endOnFailure: true },
  );
  // The racks must not all have been refused, and leftovers must have been called on.
  expect(plans).toBeGreaterThan(50);
  expect(fromSeveral).toBeGreaterThan(5);
  expect(narrowed).toBeGreaterThan(5);
  expect(beforeMoreWelds).toBeGreaterThan(2);
});

describe("what always holds", () => {
  test("no plan of the front is better in nothing than another", () => {
    fc.assert(
      fc.property(knife, shop, (bodies, shopSpec) => {
        const numbers = planStock(bodies, shopSpec, FORGING).plans.map(numbersOf);
        numbers.forEach((a, i) => {
          numbers.forEach((b, j) => {
            if (i !== j) expect(isNoBetter(b, a, shopSpec.limits.reach)).toBe(false);
          });
        });
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  test("stock is never lighter than the blade, and one cutting step less does not feed it or cannot be held", () => {
    fc.assert(
      fc.property(knife, shop, (bodies, shopSpec) => {
        for (const plan of planStock(bodies, shopSpec, FORGING).plans) {
          expect(plan.waste).toBeGreaterThan(0);
          const forged = (length: number): number =>
            forgeForwards({
              bars: plan.bars,
              width: plan.width,
              thickness: plan.thickness,
              length,
              losses: shopSpec.losses,
              side: "high",
              ...FORGING,
              reduction: shopSpec.limits.minWeldReduction,
              spread: shopSpec.limits.weldSpreadShare,
              forgedSurface: bodies.forgedSurface,
            }).forged;
          const needed = plan.ledgerHigh.find(({ row }) => row === "forged-blade")?.volume ?? 0;
          expect(forged(plan.cutLength) / needed).toBeGreaterThan(1 - 1e-9);
          const shorter = plan.cutLength - shopSpec.cutStep;
          expect(forged(shorter) < needed || shorter < shopSpec.limits.minBilletLength).toBe(true);
        }
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  test("more of any one loss never needs less bar", () => {
    const keys = Object.keys(DEFAULT_LOSSES).filter((key) => key !== "scaleModel");
    fc.assert(
      fc.property(
        fc.constantFrom(...keys),
        fc.constantFrom("fraction" as const, "skin" as const),
        number(1, 2),
        fc.integer({ min: 1, max: 6 }),
        (key, scaleModel, factor, bars) => {
          const losses = { ...DEFAULT_LOSSES, scaleModel };
          const band = losses[key as keyof typeof losses] as Banded;
          const more: Banded = {
            low: band.low * factor,
            value: band.value * factor,
            high: band.high * factor,
          };
          const lengthWith = (changed: typeof losses): number => {
            const only = shopWith({
              rack: [{ name: "60 x 8", width: 60, thickness: 8 }],
              losses: changed,
              limits: {
                ...DEFAULT_LIMITS,
                maxBars: bars,
                minBilletLength: 0,
                reach: { ...DEFAULT_LIMITS.reach, fullers: 1 },
              },
            });
            const plan = planStock(HARVEST, only, FORGING).plans.find((p) => p.bars === bars);
            return plan?.shortestLength.high ?? Number.NaN;
          };
          const [before, after] = [lengthWith(losses), lengthWith({ ...losses, [key]: more })];
          fc.pre(Number.isFinite(before) && Number.isFinite(after));
          expect(after).toBeGreaterThanOrEqual(before - 1e-9);
        },
      ),
      { seed: SEED, numRuns: 200, endOnFailure: true },
    );
  });

  test("a cutting step that is a multiple of another never gives a shorter bar", () => {
    fc.assert(
      fc.property(knife, fc.integer({ min: 2, max: 6 }), (bodies, times) => {
        const best = (cutStep: number) =>
          new Map(
            planStock(bodies, shopWith({ cutStep }), FORGING).plans.map((plan) => [
              keyOf(plan),
              plan.cutLength,
            ]),
          );
        const fine = best(2.5);
        for (const [key, length] of best(2.5 * times)) {
          const finer = fine.get(key);
          if (finer !== undefined) expect(length).toBeGreaterThanOrEqual(finer);
        }
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});

test("a rack of a hundred bars, 2300 stacks, is searched well within 50 ms", () => {
  const rack: RackBar[] = Array.from({ length: 100 }, (_, i) => ({
    name: `bar ${i}`,
    width: 20 + (i % 10) * 6,
    thickness: 3 + Math.floor(i / 10),
    pricePerKg: 5 + (i % 7),
  }));
  const stations = Array.from({ length: 201 }, (_, i) => ({
    x: i * 1.1,
    height: 95 - i * 0.06,
    area: 440 - i,
    thickness: 5.8 - i * 0.01,
  }));
  const bodies = { ...HARVEST, stations };
  const times = Array.from({ length: 7 }, () => {
    const start = performance.now();
    const report = planStock(bodies, shopWith({ rack }), FORGING);
    expect(report.considered).toBe(2300);
    return performance.now() - start;
  });
  expect(Math.min(...times)).toBeLessThan(50);
});
