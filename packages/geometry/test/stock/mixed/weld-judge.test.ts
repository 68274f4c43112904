import { describe, expect, test } from "vitest";
import { type Finding, type KnifeSpec, ledgerBodies, makeKnife } from "../../../src/index.js";
import { lastBarFigures, lastBarFindings } from "../../../src/stock/mixed/last-bar-findings.js";
import { makeMixedChain } from "../../../src/stock/mixed/mixed-chain.js";
import { withDefaultMixedLimits } from "../../../src/stock/mixed/mixed-limits.js";
import { planMixed } from "../../../src/stock/mixed/plan-mixed.js";
import type { CladSpec, MixedStackSpec, PatternWeldedSpec } from "../../../src/stock/mixed/spec.js";
import { makeReachStations } from "../../../src/stock/reach.js";
import { searchStacks } from "../../../src/stock/search.js";
import type { ShopSpec } from "../../../src/stock/shop.js";
import { exactly, NO_LIMITS, shopWith } from "../fixtures.js";

/** An invented chef's knife, 210 mm. */
const CHEF: KnifeSpec = {
  steel: { name: "1095" },
  blade: {
    outline: { family: "chefs", edgeLength: 210, heelHeight: 48 },
    ricasso: 8,
    thickness: [
      { at: { kind: "heel" }, is: 3 },
      { at: { kind: "distance", mm: 120 }, is: 2.2 },
      { at: { kind: "tip" }, is: 1.2 },
    ],
    bevel: { form: "flat", height: "full", edgeThickness: 0.3 },
    edgeAngle: 0.3,
  },
  tang: { form: "hidden", length: 100, heights: { front: 16, middle: 13, butt: 9 } },
};
const knife = makeKnife(CHEF);
const bodies = ledgerBodies(knife);

/** 3 of core between two of 5, 40 wide: 13 high, 12.6 to 12 where 0.1 to 0.25 is cleaned off each face of a joint. */
const CLAD: CladSpec = {
  kind: "clad",
  core: { steel: { name: "1095" }, thickness: 3 },
  cladding: { steel: { name: "1020" }, thickness: 5 },
  width: 40,
};

const layered = (width: number, changes: Partial<PatternWeldedSpec> = {}): PatternWeldedSpec => ({
  kind: "pattern-welded",
  layers: ["1084", "15N20", "1084", "15N20", "1084"].map((name) => ({ steel: { name }, thickness: 4 })),
  width,
  restacks: [],
  ...changes,
});

const plan = (stack: MixedStackSpec, changes: Partial<ShopSpec> = {}) =>
  planMixed(knife, bodies, shopWith({ rack: [], ...changes }), stack);
const of = (findings: readonly Finding[], code: string): Finding[] =>
  findings.filter((finding) => finding.code === code);
const numberOf = (finding: Finding | undefined, name: string): number => {
  const value = finding?.values?.[name];
  return typeof value === "object" ? value.value : Number.NaN;
};

describe("what has to fit the forge are the bars as they are to be cut, longer by their weld", () => {
  const { cutLength, shortestLength } = plan(CLAD);
  // 30 % squeezed, 70 % of that into length.
  const welded = cutLength * 0.7 ** -0.7;

  test("the fixture: the saw's step and the high losses make it longer than is needed", () => {
    expect(cutLength).toBe(115);
    expect(shortestLength.nominal).toBeLessThan(90);
    expect(welded).toBeCloseTo(147.6, 1);
  });

  test.each([
    [89.5, true],
    [114, true],
    [120, true],
    [welded - 0.01, true],
    [welded + 0.01, false],
  ])("a forge of %d mm: stop %s, as for a stack of one steel", (forgeLength, stops) => {
    const press = { forgeLength };
    const found = of(plan(CLAD, { press }).findings, "longer-than-forge");
    expect(found.map(({ severity }) => severity)).toEqual(stops ? ["stop"] : []);
    if (stops) expect(numberOf(found[0], "long")).toBe(148);
    // Three bars of the mean thickness are the same stack to the search.
    const rack = [{ name: "13/3 x 40", width: 40, thickness: 13 / 3 }];
    const limits = { ...shopWith({}).limits, maxBars: 3 };
    const one = searchStacks(bodies, shopWith({ rack, press, limits }), knife.forging);
    expect(one.feasible.some(({ bars, layers }) => bars === 3 && layers === "flat")).toBe(!stops);
  });

  test("a billet before it is cut again is as long as it gets where least is lost, spare included: a warning", () => {
    const stack = layered(40, { restacks: [{ pieces: 4 }] });
    const { asCut } = plan(stack);
    const usual = asCut.welds[1]?.barLength ?? Number.NaN;
    const [found] = of(plan(stack, { press: { forgeLength: usual + 1 } }).findings, "longer-than-forge");
    expect(found).toMatchObject({ severity: "warn", path: "stack.restacks[0]" });
    expect(numberOf(found, "long")).toBeGreaterThan(usual + 1);
    const long = numberOf(found, "long");
    expect(of(plan(stack, { press: { forgeLength: long } }).findings, "longer-than-forge")).toEqual([]);
  });
});

describe("the press has to open for the stack where least is cleaned off", () => {
  test.each([
    [12.19, true],
    [12.2, true],
    [12.59, true],
    [12.6, false],
  ])("an opening of %d mm: stop %s", (opening, stops) => {
    expect(of(plan(CLAD, { press: { opening } }).findings, "too-tall-for-press")).toHaveLength(stops ? 1 : 0);
  });

  test("too slender and squeezed too little are judged on their own bad sides", () => {
    const limits = { ...NO_LIMITS, reach: shopWith({}).limits.reach };
    const ratio = (maxSlenderness: number) =>
      of(plan(CLAD, { limits: { ...limits, maxSlenderness } }).findings, "too-slender").length;
    // 12.6 high and 40 wide.
    expect([ratio(0.3149), ratio(0.3151)]).toEqual([1, 0]);
    const down = { ...CLAD, lastBar: { width: 41, thickness: 7 } };
    const least = (minWeldReduction: number) =>
      of(plan(down, { limits: { ...limits, minWeldReduction } }).findings, "weld-reduction-too-small").length;
    // 12 to 7 where most is cleaned off: 41.7 %.
    expect([least(0.4168), least(0.4165)]).toEqual([1, 0]);
  });
});

describe("the way from the stack to a bar that the file gives", () => {
  // 20 high, 0.2 off each face of four joints: 18.4; on the high side 18.
  test.each([
    [40, { width: 120, thickness: 12 }, "stop"],
    [25, { width: 80, thickness: 9 }, "stop"],
    // A larger section than the stack's own cannot be drawn at all.
    [40, { width: 38, thickness: 20 }, "stop"],
    [40, { width: 44, thickness: 12 }, undefined],
  ])("stack %d wide to %o: %s", (width, lastBar, severity) => {
    const found = of(plan(layered(width, { lastBar })).findings, "bar-out-of-reach");
    expect(found.map((finding) => finding.severity)).toEqual(severity === undefined ? [] : [severity]);
    if (severity !== undefined) expect(found[0]?.path).toBe("stack.lastBar");
  });

  test("the share is ln(w₁/w₀)/ln(h₀/t₁), most cleaned off: refused above the limit, warned of above flat dies", () => {
    const cleaning = exactly(0.25);
    const at = (share: number) => {
      const lastBar = { width: 40 * (18 / 12) ** share, thickness: 12 };
      return plan(layered(40, { lastBar, cleaning })).findings.filter(({ code }) => code.startsWith("bar-"));
    };
    expect(at(0.599)).toEqual([]);
    expect(at(0.601).map(({ code, severity }) => [code, severity])).toEqual([["bar-only-just", "warn"]]);
    expect(at(0.849).map(({ code }) => code)).toEqual(["bar-only-just"]);
    const [stopped] = at(0.851);
    expect(stopped).toMatchObject({ code: "bar-out-of-reach", severity: "stop" });
    expect(numberOf(stopped, "share")).toBeCloseTo(0.851, 9);
    // The shop's own cleaning leaves 18 on its high side too.
    const lastBar = { width: 40 * (18 / 12) ** 0.849, thickness: 12 };
    expect(of(plan(layered(40, { lastBar })).findings, "bar-out-of-reach")).toEqual([]);
    const more = { width: 40 * (18 / 12) ** 0.851, thickness: 12 };
    expect(of(plan(layered(40, { lastBar: more })).findings, "bar-out-of-reach")).toHaveLength(1);
  });

  test("of a restack too: 25 × 18.4 is no bar of 90 × 12", () => {
    const stack = (width: number, thickness: number) =>
      layered(25, { restacks: [{ pieces: 4, bar: { width, thickness } }] });
    expect(of(plan(stack(90, 12)).findings, "bar-out-of-reach")).toMatchObject([
      { severity: "stop", path: "stack.restacks[0].bar" },
    ]);
    expect(of(plan(stack(26, 8)).findings, "bar-out-of-reach")).toEqual([]);
  });

  test("a billet drawn by the rule of the house is never out of reach", () => {
    const stack = layered(40, { restacks: [{ pieces: 4 }, { pieces: 3 }] });
    expect(plan(stack).findings.filter(({ code }) => code.startsWith("bar-"))).toEqual([]);
  });
});

describe("the last bar against the blade, as a bar of one steel in the search", () => {
  const greatest = Math.max(...bodies.stations.filter(({ x }) => x >= 0).map(({ height }) => height));
  const solid = (width: number, thickness: number) => {
    const rack = [{ name: "bar", width, thickness }];
    return searchStacks(
      bodies,
      shopWith({ rack, limits: { ...shopWith({}).limits, maxBars: 1 } }),
      knife.forging,
    );
  };
  const codes = (width: number, thickness: number) =>
    plan(layered(60, { lastBar: { width, thickness } })).findings.flatMap(({ code, severity }) =>
      code === "narrowed-on-edge" || code === "too-high" ? [`${code}: ${severity}`] : [],
    );

  test.each([
    ["a tenth goes in light blows", greatest / 0.91, []],
    ["more where it buckles is warned of", greatest / 0.88, ["narrowed-on-edge: warn"]],
    ["up to three tenths", greatest / 0.71, ["narrowed-on-edge: warn"]],
    ["more is refused", greatest / 0.69, ["too-high: stop"]],
  ])("%s", (_, width, wanted) => {
    expect(codes(width, 6)).toEqual(wanted);
    expect(solid(width, 6).rejected.some(({ reason }) => reason === "too-high")).toBe(
      wanted[0]?.startsWith("too-high") === true,
    );
  });

  test("a reach within 3 % of the height is warned of, whatever its class, with both heights", () => {
    // 50 × 6 to a mean of 6/1.1: 50·1.1^0.85 = 54.22 is the most to be had.
    const most = 50 * 1.1 ** 0.85;
    const found = (height: number) => {
      const stack = layered(40, { lastBar: { width: 50, thickness: 6 } });
      const shop = shopWith({ rack: [] });
      const usual = makeMixedChain(bodies, shop, knife.forging, stack, "value");
      const stations = makeReachStations([{ x: 0, height, area: (height * 6) / 1.1, thickness: 5.5 }]);
      const sides = { low: usual, nominal: usual, high: usual };
      const figures = lastBarFigures(sides, stack, stations, 100, shop.limits);
      expect(figures[0].reachClass).toBe("flat dies");
      return lastBarFindings(figures, shop, stack, withDefaultMixedLimits());
    };
    expect(found(most / 1.031)).toEqual([]);
    const [tight] = found(most / 1.029);
    expect(tight).toMatchObject({ code: "reach-only-just", severity: "warn", path: "stack.lastBar" });
    expect(numberOf(tight, "need")).toBeCloseTo(most / 1.029, 9);
    expect(numberOf(tight, "reachable")).toBeCloseTo(most, 9);
  });

  test("what the last weld leaves is judged with the dressing and cleaning of every side", () => {
    const thickest = Math.max(...bodies.stations.map((s) => s.thickness ?? 0));
    const stack = (height: number): CladSpec => ({
      ...CLAD,
      width: 60,
      cladding: { ...CLAD.cladding, thickness: (height - 3) / 2 },
      cleaning: { value: 0.2, low: 0.2, high: 0.5 },
    });
    const limits = { ...NO_LIMITS, minWeldReduction: 0.3, weldSpreadShare: 0.3 };
    const found = (height: number) => of(plan(stack(height), { limits }).findings, "too-thin").length;
    // 0.7 times the height less two joints' cleaning on both faces.
    expect(found(thickest / 0.7 + 0.8 + 0.1)).toBe(1);
    expect(found(thickest / 0.7 + 2 + 0.1)).toBe(0);
  });
});

describe("a stack without welding heats", () => {
  const cold = makeKnife({ ...CHEF, forging: { heats: 9, weldingHeats: 0 } });

  test("is warned of with its joints", () => {
    const { findings, heats } = planMixed(cold, ledgerBodies(cold), shopWith({ rack: [] }), CLAD);
    expect(heats).toBe(9);
    const [found] = of(findings, "no-welding-heat");
    expect(found).toMatchObject({ severity: "warn", path: "forging.weldingHeats" });
    expect([numberOf(found, "joints"), numberOf(found, "heats")]).toEqual([2, 0]);
    expect(of(plan(CLAD).findings, "no-welding-heat")).toEqual([]);
  });
});
