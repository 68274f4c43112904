import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import { ledgerBodies } from "../../../src/blade/ledger-bodies.js";
import { SIMILAR_CHANGES } from "../../../src/blade/similar-knife.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES, DEFAULT_SHOP } from "../../../src/stock/defaults.js";
import { extraHeats } from "../../../src/stock/gates/extra-heats.js";
import { handlingBarFindings, steelFindings } from "../../../src/stock/gates/gate-findings.js";
import { largestSimilar } from "../../../src/stock/gates/largest-similar.js";
import { mixedNeed } from "../../../src/stock/gates/mixed-need.js";
import { type GateRoute, neededVolume, stageGrowth, stageNeed } from "../../../src/stock/gates/stage-need.js";
import { weighIn } from "../../../src/stock/gates/weigh-in.js";
import { makeMixedChain } from "../../../src/stock/mixed/mixed-chain.js";
import { simulateStack } from "../../../src/stock/mixed/simulate.js";
import { type MixedStackSpec, type PatternWeldedSpec, stackBars } from "../../../src/stock/mixed/spec.js";
import { RUNS } from "../../blade/similar-fixtures.js";
import { exactly, HARVEST, NO_LOSSES, plainBodies } from "../fixtures.js";
import { BOWIE_STACK, pettyStack } from "../mixed/stacks.js";

const SEED = 20261126;
const KERF = 1.5;
const SIDES = ["low", "value", "high"] as const;
type Side = (typeof SIDES)[number];

const routeOf = (stack: MixedStackSpec, changes: Partial<GateRoute> = {}): GateRoute => ({
  losses: DEFAULT_LOSSES,
  limits: DEFAULT_LIMITS,
  forging: { heats: 9, weldingHeats: 3 },
  mixed: { stack, kerf: KERF },
  ...changes,
});

/** Grams of a millimetre of all bars, each by the density written beside it, summed here apart from the library. */
const gramsPerLength = (stack: MixedStackSpec): number =>
  stackBars(stack).reduce(
    (sum, { steel, thickness }) => sum + thickness * stack.width * (steel.density ?? Number.NaN),
    0,
  );

/** Bars that weigh so much, welded and forged forwards. */
function forwards(bodies: typeof HARVEST, route: GateRoute, grams: number, side: Side = "value") {
  const { mixed, losses, limits, forging } = route;
  if (mixed === undefined) throw new Error("no stack");
  const chain = makeMixedChain(bodies, { losses, limits, kerf: mixed.kerf }, forging, mixed.stack, side);
  return simulateStack(chain, grams / gramsPerLength(mixed.stack));
}

/** Bars of two steels of very unlike density, so that one taken for the other shows. */
const LIGHT = { name: "light", density: 0.0072 };
const HEAVY = { name: "heavy", density: 0.0088 };
const BOWIE: PatternWeldedSpec = {
  ...BOWIE_STACK,
  layers: BOWIE_STACK.layers.map(({ thickness }, i) => ({ steel: i % 2 === 0 ? LIGHT : HEAVY, thickness })),
};
const CLAD: MixedStackSpec = {
  ...pettyStack(3.556, 3.175),
  core: { steel: HEAVY, thickness: 7 },
  cladding: { steel: LIGHT, thickness: 8 },
  width: 45,
};
/** Without yields: cleaning, welding scale, dressing, crops and saw cuts of every weld. */
const { yields: _yields, ...BY_LOSSES } = BOWIE;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const banded = (most: number) =>
  number(0, most).map((value) => ({ low: value / 2, value, high: 1.5 * value }));
const stacks: fc.Arbitrary<MixedStackSpec> = fc
  .record({
    thicknesses: fc.array(number(2, 6), { minLength: 2, maxLength: 9 }),
    width: number(30, 60),
    restacks: fc.array(fc.record({ pieces: fc.integer({ min: 2, max: 5 }) }), { maxLength: 2 }),
    kept: fc.option(number(0.6, 0.95), { nil: undefined }),
    grooves: fc.option(fc.record({ share: number(0, 0.2) }), { nil: undefined }),
  })
  .map(({ thicknesses, width, restacks, kept, grooves }) => ({
    kind: "pattern-welded" as const,
    layers: thicknesses.map((thickness, i) => ({ steel: i % 2 === 0 ? LIGHT : HEAVY, thickness })),
    width,
    restacks,
    ...(kept === undefined ? {} : { yields: [{ low: kept + 0.05, value: kept, high: kept - 0.1 }] }),
    ...(grooves === undefined ? {} : { grooves }),
  }));

describe("what a stack of two steels needs at the saw", () => {
  test("welded and forged forwards it is the dressed last bar and the forged blade, on every side of the losses", () => {
    let told = 0;
    const losses = fc.record({
      scaleModel: fc.constantFrom("fraction" as const, "skin" as const),
      scalePerHeat: banded(0.02),
      scalePerWeldingHeat: banded(0.02),
      cropPerEnd: banded(8),
      cleaningPerFace: banded(0.2),
    });
    fc.assert(
      fc.property(losses, stacks, fc.constantFrom(...SIDES), (given, stack, side) => {
        const route = routeOf(stack, { losses: { ...DEFAULT_LOSSES, ...given } });
        const need = stageNeed(HARVEST, route, "cut");
        fc.pre(need !== undefined);
        const done = forwards(HARVEST, route, need?.[side] ?? Number.NaN, side);
        const [billet, forged] = (["billet", "forged"] as const).map(
          (stage) => (stageNeed(HARVEST, route, stage)?.[side] ?? Number.NaN) / HARVEST.density,
        );
        // Skins of several welds may lose nine tenths: the last digits are those of what went in.
        const digits = (1e-12 * done.barsAsCut) / done.forged;
        expect(Math.abs(done.dressed / (billet ?? 0) - 1)).toBeLessThan(digits);
        expect(Math.abs(done.forged / (forged ?? 0) - 1)).toBeLessThan(digits);
        mixedNeed(HARVEST, route)?.welds.forEach((weld, i) => {
          const out = (done.welds[i]?.out ?? Number.NaN) * HARVEST.density;
          expect(Math.abs(weld[side] / out - 1)).toBeLessThan(digits);
        });
        told++;
      }),
      { seed: SEED, numRuns: 200 },
    );
    expect(told).toBeGreaterThan(150);
  });

  test("the bowie by hand: 60.8 cm³ forged takes 124.4 cm³ of bars, 976 g at 7.85 g/cm³", () => {
    const density = 0.00785;
    const layers = BOWIE.layers.map(({ steel, thickness }) => ({ steel: { ...steel, density }, thickness }));
    const losses = { ...NO_LOSSES, scalePerHeat: exactly(0.012) };
    const forging = { heats: 12, weldingHeats: 3 };
    const route = routeOf({ ...BOWIE, layers }, { losses, forging });
    const bodies = { ...plainBodies(60_800), density };
    const [cut, billet] = (["cut", "billet"] as const).map((stage) => stageNeed(bodies, route, stage)?.value);
    expect(Math.abs((cut ?? 0) / 976 - 1)).toBeLessThan(0.001);
    expect(Math.abs((billet ?? 0) / (70.3 * 7.85) - 1)).toBeLessThan(0.001);
  });

  test("each steel by its own density; all of them are the whole", () => {
    const need = mixedNeed(HARVEST, routeOf(BOWIE));
    const cut = stageNeed(HARVEST, routeOf(BOWIE), "cut");
    const [light, heavy] = need?.steels ?? [];
    for (const side of SIDES) {
      const length = need?.length[side] ?? Number.NaN;
      // 7 bars of 1/8 in and 6 of 1.57 mm, 44.45 mm wide.
      expect(light?.need[side]).toBeCloseTo(7 * 3.175 * 44.45 * length * 0.0072, 8);
      expect(heavy?.need[side]).toBeCloseTo(6 * 1.57 * 44.45 * length * 0.0088, 8);
      expect((light?.need[side] ?? 0) + (heavy?.need[side] ?? 0)).toBeCloseTo(cut?.[side] ?? 0, 8);
    }
    expect([light?.pieces, heavy?.pieces]).toEqual([7, 6]);
  });

  test.each([
    ["of given yields", BOWIE],
    ["by the shop's losses", BY_LOSSES],
    ["a core with cladding", CLAD],
  ] as const)("%s: a gram less is short and forges too little, a gram more is enough", (_, stack) => {
    const route = routeOf(stack);
    const need = stageNeed(HARVEST, route, "cut") ?? { low: 0, value: 0, high: 0 };
    const forged = neededVolume(HARVEST, route, "forged", "value") ?? Number.NaN;
    const none = { plus: 0, minus: 0 };
    const verdict = (grams: number) =>
      weighIn("cut", grams, need, stageGrowth(HARVEST, route, "cut"), { sizes: none, density: none }).verdict;
    expect(verdict(need.value - 1)).toBe("short");
    expect(forwards(HARVEST, route, need.value - 1).forged).toBeLessThan(forged);
    expect(verdict(need.value + 1)).toBe("enough-at-usual-losses");
    expect(forwards(HARVEST, route, need.value + 1).forged).toBeGreaterThan(forged);
    expect(verdict(need.high + 1)).toBe("enough");
    const high = neededVolume(HARVEST, route, "forged", "high") ?? Number.NaN;
    expect(forwards(HARVEST, route, need.high + 1, "high").forged).toBeGreaterThan(high);
    // What welds lose is far more than one solid bar loses.
    const { mixed: _mixed, ...solid } = route;
    expect(need.value / (stageNeed(HARVEST, solid, "cut")?.value ?? 0)).toBeGreaterThan(1.2);
  });

  test("growth: a gram more of the finished blade takes so many grams of bars", () => {
    const route = routeOf(BY_LOSSES);
    const heavier = { ...HARVEST, finished: HARVEST.finished + 1 / HARVEST.density };
    const [one, more] = [HARVEST, heavier].map((each) => stageNeed(each, route, "cut")?.value ?? Number.NaN);
    expect(stageGrowth(HARVEST, route, "cut")).toBeCloseTo((more ?? 0) - (one ?? 0), 8);
  });

  test("undefined where the welds burn all of it, and without a stack of two steels", () => {
    const thin = { ...BOWIE, layers: BOWIE.layers.map((bar) => ({ ...bar, thickness: 0.3 })) };
    const { yields: _kept, ...burnt } = thin;
    expect(stageNeed(HARVEST, routeOf(burnt), "cut")).toBeUndefined();
    expect(mixedNeed(HARVEST, routeOf(burnt))).toBeUndefined();
    const { mixed: _mixed, ...solid } = routeOf(BOWIE);
    expect(mixedNeed(HARVEST, solid)).toBeUndefined();
  });
});

describe("with what is in hand at the saw", () => {
  const knife = makeKnife(RUNS);
  const route = routeOf(BY_LOSSES, { losses: DEFAULT_SHOP.losses });
  const need = stageNeed(ledgerBodies(knife), route, "cut")?.value ?? Number.NaN;

  test("the largest similar knives: the bars forged forwards are just their forged blades", () => {
    const inHand = 0.96 * need;
    let found = 0;
    for (const change of SIMILAR_CHANGES) {
      const one = largestSimilar({ knife, route, stage: "cut", mass: inHand, least: 0.5 }, change);
      if (!one.possible) continue;
      found++;
      const bodies = ledgerBodies(makeKnife(one.spec));
      const forged = neededVolume(bodies, route, "forged", "value") ?? Number.NaN;
      // The solver's own aim, 1e-6 g of some 700.
      expect(Math.abs(forwards(bodies, route, inHand).forged / forged - 1), change).toBeLessThan(1e-8);
    }
    expect(found).toBeGreaterThanOrEqual(2);
  });

  test("extra heats: so many still leave the forged blade, one more does not", () => {
    const bodies = ledgerBodies(knife);
    const inHand = 1.05 * need;
    const count = extraHeats(bodies, route, "cut", inHand)?.count ?? Number.NaN;
    const forged = neededVolume(bodies, route, "forged", "value") ?? Number.NaN;
    const after = (heats: number): number =>
      forwards(
        bodies,
        { ...route, forging: { ...route.forging, heats: route.forging.heats + heats } },
        inHand,
      ).forged;
    expect(count).toBeGreaterThan(0);
    expect(after(count)).toBeGreaterThanOrEqual(forged);
    expect(after(count + 1)).toBeLessThan(forged);
  });
});

describe("findings", () => {
  const codes = (route: GateRoute, tare: boolean): string[] =>
    handlingBarFindings("billet", route, tare).map(({ code, severity }) => `${code} ${severity}`);

  test("a handling bar is asked for as of any stack; a yield holds the ends, the shop's crop may not", () => {
    const losses = { ...DEFAULT_LOSSES, cropPerEnd: exactly(2) };
    expect(codes(routeOf(BOWIE, { losses }), false)).toEqual(["tare-missing warn"]);
    expect(codes(routeOf(BOWIE, { losses }), true)).toEqual([]);
    expect(codes(routeOf(BY_LOSSES, { losses }), true)).toEqual(["handling-weld-left-in note"]);
  });

  test("steel that is short at the saw: all bars longer, and whose losses they are", () => {
    const band = { sizes: { plus: 0, minus: 0 }, density: { plus: 0, minus: 0 } };
    const short = weighIn("cut", 900, { low: 990, value: 1070, high: 1180 }, 2, band);
    const [stop] = steelFindings(short, DEFAULT_LOSSES, BOWIE);
    expect(stop?.severity).toBe("stop");
    expect(stop?.text).toContain("Cut all bars of the stack longer");
    expect(stop?.basis).toContain("yields of the welds as the knife file has them");
    expect(steelFindings(short, DEFAULT_LOSSES, CLAD)[0]?.basis).toContain("cleaning of the joints");
    expect(steelFindings(short, DEFAULT_LOSSES)[0]?.basis).not.toContain("knife file");
  });
});
