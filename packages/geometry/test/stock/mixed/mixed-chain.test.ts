import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DEFAULT_SHOP } from "../../../src/stock/defaults.js";
import { LEDGER_TOTALS } from "../../../src/stock/ledger.js";
import { makeMixedChain, traceMixed } from "../../../src/stock/mixed/mixed-chain.js";
import { mixedLedger } from "../../../src/stock/mixed/mixed-ledger.js";
import { simulateStack } from "../../../src/stock/mixed/simulate.js";
import type { GrooveSpec, MixedStackSpec, PatternWeldedSpec } from "../../../src/stock/mixed/spec.js";
import { reachShare } from "../../../src/stock/reach.js";
import type { Banded, LossSpec } from "../../../src/stock/shop.js";
import { makeSteelChain, traceStack } from "../../../src/stock/steel-chain.js";
import { exactly, HARVEST, NO_LOSSES, plainBodies, shopWith } from "../fixtures.js";
import { forgeForwards } from "../forward.js";
import { BOWIE_STACK, pettyStack } from "./stacks.js";

const near = (wanted: number, share: number) => (value: number) => Math.abs(value / wanted - 1) <= share;

describe("the bowie by hand", () => {
  // As forged 60.8 cm³; twelve heats at 1.2 %, grooves 8 %, three welds that keep 85 % each.
  const shop = shopWith({ losses: { ...NO_LOSSES, scalePerHeat: exactly(0.012) } });
  const bodies = plainBodies(60_800);
  const chain = makeMixedChain(bodies, shop, { heats: 12, weldingHeats: 3 }, BOWIE_STACK, "value");
  const trace = traceMixed(chain);

  test("60.8 → 70.3 → 76.4 → 124.4 cm³, 976 g", () => {
    expect(trace.dressed / 1000).toSatisfy(near(70.3, 0.001));
    expect((trace.dressed + trace.grooves) / 1000).toSatisfy(near(76.4, 0.001));
    expect((trace.stages[0]?.in ?? 0) / 1000).toSatisfy(near(124.4, 0.001));
    expect((trace.stages[0]?.in ?? 0) * 0.00785).toSatisfy(near(976, 0.001));
  });

  test("the first stack, 31.65 × 44.45 mm, is 88.4 mm long", () => {
    expect(chain.stages[0]?.height).toBeCloseTo(31.65, 2);
    expect(chain.stages[0]?.width).toBeCloseTo(44.45, 9);
    expect(trace.length).toSatisfy(near(88.4, 0.001));
  });

  test("yield 39 % of a finished 381 g", () => {
    expect(381 / ((trace.stages[0]?.in ?? 0) * 0.00785)).toBeCloseTo(0.39, 2);
  });

  test("s = 0.33 from 38.1 × 12.7", () => {
    // Forged 53.8 high with a mean thickness of 4.467, as by hand.
    const { width, thickness } = chain.lastBar;
    expect(Math.abs(reachShare(53.8, 4.467, width, thickness) - 0.33)).toBeLessThan(0.02);
  });
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const share = (most: number) => number(0, most).map(exactly);

const losses: fc.Arbitrary<LossSpec> = fc.record({
  scaleModel: fc.constantFrom("fraction" as const, "skin" as const),
  scalePerHeat: share(0.03),
  scalePerWeldingHeat: share(0.04),
  skinPerHeat: number(0, 0.05).map(exactly),
  skinPerWeldingHeat: number(0, 0.1).map(exactly),
  heatTreatmentScale: share(0.01),
  skinHeatTreatment: number(0, 0.02).map(exactly),
  cropPerEnd: number(0, 12).map(exactly),
  weldDressingPerSide: number(0, 2).map(exactly),
  cleaningPerFace: number(0, 0.25).map(exactly),
});

const grooves: fc.Arbitrary<GrooveSpec> = fc.oneof(
  fc.record({ share: number(0, 0.2) }),
  fc.record({
    form: fc.constantFrom("round" as const, "vee" as const, "square" as const),
    depth: number(0.5, 2),
    width: number(4, 8),
    count: fc.integer({ min: 1, max: 30 }),
  }),
  fc.record({
    form: fc.constantFrom("round" as const, "vee" as const),
    depth: number(0.5, 2),
    width: number(4, 8),
    pitch: number(8, 20),
    faces: fc.constantFrom(1 as const, 2 as const),
  }),
);

const stack: fc.Arbitrary<PatternWeldedSpec> = fc
  .record({
    layers: fc.array(
      number(1.2, 6).map((thickness) => ({ steel: { name: "1084" }, thickness })),
      { minLength: 2, maxLength: 13 },
    ),
    width: number(25, 60),
    restacks: fc.array(fc.record({ pieces: fc.integer({ min: 2, max: 6 }) }), { maxLength: 3 }),
    yields: fc.option(
      number(0.6, 1).map((value) => [exactly(value)]),
      { nil: undefined },
    ),
    grooves: fc.option(grooves, { nil: undefined }),
    lastBar: fc.option(fc.record({ width: number(25, 50), thickness: number(8, 16) }), { nil: undefined }),
  })
  .map(({ yields, grooves: ground, lastBar, ...given }) => ({
    kind: "pattern-welded" as const,
    ...given,
    ...(yields === undefined ? {} : { yields }),
    ...(ground === undefined ? {} : { grooves: ground }),
    ...(lastBar === undefined ? {} : { lastBar }),
  }));

const SEED = 2605;

describe("any stack", () => {
  const planned = fc.tuple(losses, stack, fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 4 }));
  const make = (lossSpec: LossSpec, spec: MixedStackSpec, heats: number, weldingHeats: number) => {
    const shop = shopWith({ losses: lossSpec });
    return makeMixedChain(HARVEST, shop, { heats, weldingHeats }, spec, "value");
  };

  test("forged forwards from its bars it gives the forged blade, to the last digits", () => {
    let told = 0;
    fc.assert(
      fc.property(planned, ([lossSpec, spec, heats, weldingHeats]) => {
        const chain = make(lossSpec, spec, heats, weldingHeats);
        const trace = traceMixed(chain);
        fc.pre(Number.isFinite(trace.length));
        const forwards = simulateStack(chain, trace.length);
        // Skins of a whole sheaf of welds lose up to nine tenths: the last digits are those of what went in.
        const digits = 1e-12 * Math.max(1, forwards.barsAsCut / chain.chain.forged);
        expect(Math.abs(forwards.forged / chain.chain.forged - 1)).toBeLessThan(digits);
        trace.stages.forEach((stage, i) => {
          expect(Math.abs((forwards.welds[i]?.in ?? 0) / stage.in - 1)).toBeLessThan(1e-11);
        });
        told++;
      }),
      { seed: SEED, numRuns: 300 },
    );
    expect(told).toBeGreaterThan(200);
  });

  test("what goes into a weld is what comes out and every loss; so is the whole ledger", () => {
    fc.assert(
      fc.property(planned, ([lossSpec, spec, heats, weldingHeats]) => {
        const chain = make(lossSpec, spec, heats, weldingHeats);
        const trace = traceMixed(chain);
        fc.pre(Number.isFinite(trace.length));
        for (const stage of trace.stages) {
          const { out, cropping, dressing, scale, cleaning, byYield } = stage;
          const sum = out + cropping + dressing + scale + cleaning + byYield;
          expect(Math.abs(sum / stage.in - 1)).toBeLessThan(1e-12);
        }
        const ledger = mixedLedger(HARVEST, chain, trace.length * 1.07);
        const volume = (name: string) => ledger.find(({ row }) => row === name)?.volume ?? Number.NaN;
        const added = ledger
          .filter(({ row }) => !LEDGER_TOTALS.includes(row) || row === "finished-blade")
          .reduce((sum, row) => sum + row.volume, 0);
        expect(ledger).toHaveLength(19);
        expect(Math.abs(added / volume("bars-as-cut") - 1)).toBeLessThan(1e-12);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("more of any one loss never needs less bar", () => {
    const keys = Object.keys(NO_LOSSES).filter((key) => key !== "scaleModel") as Exclude<
      keyof LossSpec,
      "scaleModel"
    >[];
    fc.assert(
      fc.property(
        planned,
        fc.constantFrom(...keys),
        number(1, 2),
        ([lossSpec, given, ...heats], key, times) => {
          // Sections that follow from the losses would move with them.
          const spec: PatternWeldedSpec = {
            ...given,
            restacks: given.restacks.map(({ pieces }) => ({
              pieces,
              bar: { width: given.width, thickness: 7 },
            })),
            lastBar: { width: 30, thickness: 10 },
          };
          const { value }: Banded = lossSpec[key];
          const more = { ...lossSpec, [key]: exactly(value * times) };
          const [before, after] = [lossSpec, more].map(
            (each) => traceMixed(make(each, spec, ...heats)).length,
          ) as [number, number];
          expect(after).toBeGreaterThanOrEqual(before * (1 - 1e-12));
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe("a core with cladding of like bars is a stack of three bars of one steel", () => {
  const spec = { ...pettyStack(4, 4), cleaning: exactly(0.2) };
  const { losses: book, limits } = DEFAULT_SHOP;
  const forging = { heats: 9, weldingHeats: 3 };

  test.each(["fraction", "skin"] as const)(
    "scale by %s: as the planner has it, and forwards heat by heat",
    (scaleModel) => {
      const lossSpec = { ...book, scaleModel };
      const shop = shopWith({ losses: lossSpec });
      const length = traceMixed(makeMixedChain(HARVEST, shop, forging, spec, "value")).length;
      const plain = makeSteelChain(HARVEST, lossSpec, limits, forging, "value");
      expect(length).toBeCloseTo(traceStack(plain, 3, spec.width, 4).length, 9);
      const forwards = forgeForwards({
        bars: 3,
        width: spec.width,
        thickness: 4,
        length,
        losses: lossSpec,
        side: "value",
        ...forging,
        reduction: limits.minWeldReduction,
        spread: limits.weldSpreadShare,
        forgedSurface: HARVEST.forgedSurface,
      });
      expect(Math.abs(forwards.forged / plain.forged - 1)).toBeLessThan(1e-9);
    },
  );
});

describe("a restack", () => {
  test("without a section is drawn so that the new stack is as high as the first one, joints cleaned", () => {
    const shop = shopWith({ losses: { ...NO_LOSSES, cleaningPerFace: exactly(0.2) } });
    const chain = makeMixedChain(HARVEST, shop, { heats: 0, weldingHeats: 0 }, BOWIE_STACK, "value");
    const cleaned = 31.645 - 12 * 0.4;
    expect(chain.stages.map(({ height }) => height)).toEqual([
      expect.closeTo(31.645, 9),
      expect.closeTo(cleaned, 9),
      expect.closeTo(cleaned, 9),
    ]);
  });

  test("loses the saw's cuts between its pieces: three of 1.5 mm through a bar of 40 × 7", () => {
    const shop = shopWith({ losses: NO_LOSSES, kerf: 1.5 });
    const spec: PatternWeldedSpec = {
      kind: "pattern-welded",
      layers: [3, 4].map((thickness) => ({ steel: { name: "1084" }, thickness })),
      width: 40,
      restacks: [{ pieces: 4, bar: { width: 40, thickness: 7 } }],
    };
    const chain = makeMixedChain(plainBodies(50_000), shop, { heats: 0, weldingHeats: 0 }, spec, "value");
    expect(traceMixed(chain).stages[1]?.cropping).toBeCloseTo(3 * 1.5 * 40 * 7, 9);
    expect(traceMixed(chain).stages[0]?.cropping).toBe(0);
  });

  test("that burns away has no length", () => {
    const shop = shopWith({ losses: { ...NO_LOSSES, weldDressingPerSide: exactly(30) } });
    const chain = makeMixedChain(HARVEST, shop, { heats: 1, weldingHeats: 1 }, pettyStack(3, 3), "value");
    expect(traceMixed(chain).length).toBe(Number.POSITIVE_INFINITY);
  });
});
