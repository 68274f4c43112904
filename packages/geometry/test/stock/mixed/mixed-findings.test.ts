import { describe, expect, test } from "vitest";
import { type Finding, ledgerBodies, SpecError } from "../../../src/index.js";
import { HARDENING_RANGES, hardeningGap, hardeningOf } from "../../../src/materials/hardening.js";
import { findMaterial } from "../../../src/materials/materials.js";
import { checkMixedStack } from "../../../src/stock/mixed/check-stack.js";
import { coreLinesAt, coreShare } from "../../../src/stock/mixed/core-line.js";
import { planMixed } from "../../../src/stock/mixed/plan-mixed.js";
import type { CladSpec, MixedStackSpec, PatternWeldedSpec } from "../../../src/stock/mixed/spec.js";
import { layerFindings, steelPairFindings } from "../../../src/stock/mixed/steel-findings.js";
import type { RackBar, ShopSpec } from "../../../src/stock/shop.js";
import { exactly, shopWith } from "../fixtures.js";
import { BOWIE_STACK, petty, pettyStack } from "./stacks.js";

const IN = 25.4;
const knife = petty();
const bodies = ledgerBodies(knife);
const BAND = { x: 0, low: 7, high: 11 };

const flat = (thickness: number, steel: string, width = 1.25 * IN): RackBar => ({
  name: `${steel} ${thickness}`,
  width,
  thickness,
  steel,
});

const codes = (findings: readonly Finding[]): string[] => findings.map(({ code }) => code);
const plan = (stack: MixedStackSpec, changes: Partial<ShopSpec> = {}, asked?: typeof BAND) =>
  planMixed(knife, bodies, shopWith({ rack: [], ...changes }), stack, asked);
const numberOf = (finding: Finding | undefined, name: string): number => {
  const value = finding?.values?.[name];
  return typeof value === "object" ? value.value : Number.NaN;
};

describe("a core line outside what is asked", () => {
  const proposed = pettyStack(0.14 * IN, IN / 8);
  const rack = [
    flat(0.14 * IN, "1095"),
    flat(0.1 * IN, "1095"),
    flat(IN / 8, "1020"),
    flat((3 * IN) / 16, "1020"),
  ];

  test("stops, with the core and the cladding that would do, and those of the rack that come nearest", () => {
    const finding = plan(proposed, { rack }, BAND).findings.find(({ code }) => code === "core-line-misses");
    expect(finding?.severity).toBe("stop");
    expect(numberOf(finding, "line")).toBeCloseTo(13, 1);
    expect(finding?.values).toMatchObject({ coreBar: `1095 ${0.1 * IN}` });
    expect(numberOf(finding, "coreLine")).toBeCloseTo(9.1, 1);
    expect(finding?.values).toMatchObject({ claddingBar: `1020 ${(3 * IN) / 16}` });
    expect(numberOf(finding, "claddingLine")).toBeCloseTo(8.7, 1);
  });

  test("the sizes that it names put the line into the middle", () => {
    const finding = plan(proposed, {}, BAND).findings.find(({ code }) => code === "core-line-misses");
    const lineWith = (core: number, cladding: number) =>
      coreLinesAt(knife, 0, 3.4 * coreShare(core, cladding, 0.2)).right ?? Number.NaN;
    // Named to a hundredth of a millimetre.
    expect(Math.abs(lineWith(numberOf(finding, "core"), IN / 8) - 9)).toBeLessThan(0.05);
    expect(Math.abs(lineWith(0.14 * IN, numberOf(finding, "cladding")) - 9)).toBeLessThan(0.05);
  });

  test("warns only where it is wished for", () => {
    const { findings } = planMixed(knife, bodies, shopWith({ rack: [] }), proposed, {
      ...BAND,
      wished: true,
    });
    expect(findings.find(({ code }) => code === "core-line-misses")?.severity).toBe("warn");
  });
});

describe("a core line inside what is asked", () => {
  test("± 2 mm: warns that the core has to lie within 0.07 mm, and names ± 4", () => {
    const { findings } = plan(pettyStack(0.1 * IN, IN / 8), {}, BAND);
    const touchy = findings.find(({ code }) => code === "core-line-touchy");
    expect(touchy?.severity).toBe("warn");
    expect(numberOf(touchy, "budget")).toBeCloseTo(0.07, 2);
    expect(numberOf(touchy, "band")).toBe(4);
    expect(codes(findings)).not.toContain("core-line-misses");
  });

  test("± 4 mm is not warned of, nor ± 2 in a shop that holds 0.05 mm", () => {
    const stack = pettyStack(0.1 * IN, IN / 8);
    expect(codes(plan(stack, {}, { x: 0, low: 5, high: 13 }).findings)).not.toContain("core-line-touchy");
    const limits = { ...shopWith({}).limits, mixed: { coreCentring: 0.05 } };
    expect(codes(plan(stack, { limits }, BAND).findings)).not.toContain("core-line-touchy");
  });

  test("is noted where scale off the cladding alone would bring it out", () => {
    // 9 heats at 1.2 % and 3 at 1.5 % leave 86 %: a core of 1.05 mm instead of 0.90, and 30·0.80/2.15 = 11.15 mm.
    const { findings } = plan(pettyStack(0.1 * IN, IN / 8), {}, BAND);
    const scaled = numberOf(
      findings.find(({ code }) => code === "core-line-scale"),
      "scaled",
    );
    expect(Math.abs(scaled - 11.15)).toBeLessThan(0.06);
  });
});

describe("a core that leaves the edge", () => {
  test.each([
    // Of 3.4 mm forged; the edge is 0.25 mm before sharpening.
    [0.1, "core-at-edge", "core-at-edge"],
    [0.6, "core-near-edge", "core-near-edge"],
    [1.6, "none", undefined],
  ])("%d mm between two of 2 mm: %s", (core, _, code) => {
    const found = codes(plan({ ...pettyStack(core, 2), cleaning: exactly(0) }).findings);
    if (code === undefined) expect(found.filter((each) => each.startsWith("core"))).toEqual([]);
    else expect(found).toContain(code);
  });
});

describe("steels that go together", () => {
  const pair = (core: string, cladding: string): CladSpec => ({
    ...pettyStack(2.5, 3),
    core: { steel: { name: core }, thickness: 2.5 },
    cladding: { steel: { name: cladding }, thickness: 3 },
  });

  test.each([
    ["1095", "1020", []],
    ["1095", "5160", ["hardening-apart"]],
    ["1095", "304", ["stainless-cladding"]],
    ["AEB-L", "304", []],
    ["1020", "1095", ["edge-stays-soft"]],
    ["1095", "M390", ["hardening-not-known"]],
  ])("core %s, cladding %s: %o", (core, cladding, wanted) => {
    expect(codes(steelPairFindings(pair(core, cladding)))).toEqual(wanted);
  });

  test("15 °C apart are within what an oven holds, 27 °C are not", () => {
    // 815 °C against 830 to 845 °C, and against 788 °C.
    expect(codes(steelPairFindings(pair("1080", "80CrV2")))).toEqual([]);
    expect(codes(steelPairFindings(pair("1080", "W2")))).toEqual(["hardening-apart"]);
  });

  test("1084 and 15N20 overlap", () => {
    expect(steelPairFindings(BOWIE_STACK)).toEqual([]);
  });

  test("every steel of the table is a material, its range is a range, and its source is named", () => {
    for (const { steel, low, high, source } of HARDENING_RANGES) {
      expect(findMaterial(steel)?.kind, steel).toBe("steel");
      expect((low === undefined) === (high === undefined), steel).toBe(true);
      if (low !== undefined && high !== undefined) expect(high, steel).toBeGreaterThanOrEqual(low);
      expect(source.length, steel).toBeGreaterThan(10);
    }
  });

  test("a gap is the same from both sides", () => {
    const [a, b] = [hardeningOf("1095"), hardeningOf("D2")];
    if (a === undefined || b === undefined) throw new Error("the table has both");
    // 1475 °F and 1850 °F at the least.
    expect(hardeningGap(a, b)).toBeCloseTo(375 / 1.8, 9);
    expect(hardeningGap(b, a)).toBeCloseTo(375 / 1.8, 9);
  });
});

describe("welds and bars", () => {
  const clad = pettyStack(0.1 * IN, IN / 8);

  test("joints squeezed too little stop, a little more than that warn", () => {
    const thin = { ...pettyStack(1.6, 1.6), cleaning: exactly(0) };
    // 4.8 mm of stack, 3.4 mm of blade: 29 % of squeeze.
    expect(codes(plan(thin).findings)).toContain("weld-reduction-too-small");
    const more = { ...pettyStack(2, 2), cleaning: exactly(0) };
    expect(codes(plan(more).findings)).toContain("weld-reduction-low");
    expect(codes(plan({ ...pettyStack(3, 3), cleaning: exactly(0) }).findings)).not.toContain(
      "weld-reduction-low",
    );
  });

  test("a press or a forge too small stops", () => {
    const press = { opening: 8, forgeLength: 50 };
    const found = codes(plan(clad, { press }).findings);
    expect(found).toContain("too-tall-for-press");
    expect(found).toContain("longer-than-forge");
  });

  test("a last bar thinner than the blade stops, one too low is out of reach", () => {
    const stack = (width: number, thickness: number) => ({ ...clad, lastBar: { width, thickness } });
    expect(codes(plan(stack(32, 3.3)).findings)).toContain("too-thin");
    expect(codes(plan(stack(10, 4)).findings)).toContain("out-of-reach");
    expect(codes(plan(stack(32, 6)).findings)).not.toContain("out-of-reach");
  });

  test("grooves deeper than a third of the bar warn", () => {
    const grooved = (depth: number): PatternWeldedSpec => ({
      ...BOWIE_STACK,
      grooves: { form: "round", depth, width: 12, pitch: 20, faces: 2 },
    });
    expect(codes(plan(grooved(4.2)).findings)).not.toContain("grooves-deep");
    expect(codes(plan(grooved(4.3)).findings)).toContain("grooves-deep");
  });

  test("more grooves than lie side by side on both faces of the last bar are warned of", () => {
    const grooved = (count: number) =>
      plan({ ...BOWIE_STACK, grooves: { form: "vee", depth: 3, width: 6, count } });
    const fits = (count: number): boolean => Math.ceil(count / 2) * 6 <= grooved(count).lastBar.length;
    // Every groove makes the bar a little longer: five on each face come to 30 mm, six to 36.
    let most = 1;
    while (fits(most + 1)) most++;
    expect(most).toBe(10);
    expect(codes(grooved(most).findings)).not.toContain("grooves-too-many");
    const { findings, lastBar } = grooved(most + 1);
    const found = findings.find(({ code }) => code === "grooves-too-many");
    expect(found).toMatchObject({ severity: "warn", path: "stack.grooves.count" });
    expect(numberOf(found, "room")).toBe(2 * Math.floor(lastBar.length / 6));
  });

  test("bars that the rack lacks are to be bought, too few of them are warned of", () => {
    const rack = [{ ...flat(0.1 * IN, "1095"), length: 60 }];
    const { findings, bars } = plan(clad, { rack });
    expect(codes(findings).filter((code) => code.startsWith("stack-bar"))).toEqual([
      "stack-bar-missing",
      "stack-bar-short",
    ]);
    expect(bars.map(({ steel, pieces, enough }) => [steel, pieces, enough])).toEqual([
      ["1020", 2, false],
      ["1095", 1, false],
    ]);
  });

  test("of two entries the one that holds all pieces is taken, then the cheaper", () => {
    const rack = [
      { ...flat(IN / 8, "1020"), name: "short", length: 60, pricePerKg: 1 },
      { ...flat(IN / 8, "mild steel"), name: "dear", pricePerKg: 9 },
      { ...flat(IN / 8, "1020"), name: "cheap", pricePerKg: 4 },
    ];
    expect(plan(clad, { rack }).bars[0]?.bar?.name).toBe("cheap");
  });

  test("mass and price count each steel by itself, the saw's cuts included", () => {
    const rack = [
      { ...flat(IN / 8, "1020"), pricePerKg: 4 },
      { ...flat(0.1 * IN, "1095"), pricePerKg: 11 },
    ];
    const { bars, cutLength, mass, cost } = plan(clad, { rack, kerf: 2 });
    const section = (thickness: number) => thickness * 1.25 * IN;
    const soft = 2 * section(IN / 8) * 0.00786;
    const hard = section(0.1 * IN) * 0.00785;
    expect(mass).toBeCloseTo((soft + hard) * cutLength, 9);
    expect(cost).toBeCloseTo(((soft * 4 + hard * 11) * (cutLength + 2)) / 1000, 9);
    expect(bars).toHaveLength(2);
  });

  test("a stack of other density than the knife's is noted with its own", () => {
    const light: CladSpec = { ...clad, cladding: { steel: { name: "AEB-L" }, thickness: IN / 8 } };
    const finding = plan(light).findings.find(({ code }) => code === "stack-density");
    // Two of 3.175 at 7.7 and one of 2.54 at 7.85.
    expect(finding?.values).toMatchObject({ stack: ((6.35 * 7.7 + 2.54 * 7.85) / 8.89).toFixed(2) });
  });
});

describe("layers", () => {
  const least = { value: 0.02, basis: "the shop's own limit" };

  test("nominal and distinct count are both told", () => {
    const [note] = layerFindings({ nominal: 208, distinct: 193, thickness: 0.05 }, least);
    expect(note).toMatchObject({ code: "layers-nominal", severity: "note" });
    expect(numberOf(note, "distinct")).toBe(193);
  });

  test("too thin at the face they are warned of, toward the tip only noted", () => {
    const layers = { nominal: 30, distinct: 30 };
    expect(codes(layerFindings({ ...layers, thickness: 0.019 }, least))).toEqual(["layers-too-thin"]);
    expect(codes(layerFindings({ ...layers, thickness: 0.03, thinFrom: 90 }, least))).toEqual([
      "layers-thin-at-tip",
    ]);
    expect(layerFindings({ ...layers, thickness: 0.021 }, least)).toEqual([]);
  });

  test("of the planned blade: thickest forged section over the layers", () => {
    const { layers } = plan(BOWIE_STACK);
    expect(layers?.thickness).toBeCloseTo(3.4 / 193, 9);
  });
});

describe("a stack that cannot be", () => {
  const clad = pettyStack(2.5, 3);
  const cases: readonly (readonly [string, MixedStackSpec])[] = [
    ["bar-lost-to-cleaning", { ...clad, core: { ...clad.core, thickness: 0.4 } }],
    ["unknown-material", { ...clad, core: { steel: { name: "1o95" }, thickness: 3 } }],
    ["length-not-positive", { ...clad, width: 0 }],
    ["one-layer", { ...BOWIE_STACK, layers: BOWIE_STACK.layers.slice(0, 1) }],
    ["not-a-count", { ...BOWIE_STACK, restacks: [{ pieces: 1 }] }],
    ["yields-and-welds", { ...BOWIE_STACK, yields: [exactly(0.8), exactly(0.9)] }],
    ["share-out-of-range", { ...BOWIE_STACK, yields: [exactly(1.2)] }],
    ["groove-too-deep", { ...BOWIE_STACK, grooves: { form: "round", depth: 4, width: 6, count: 9 } }],
    ["grooves-overlap", { ...BOWIE_STACK, grooves: { form: "vee", depth: 2, width: 6, pitch: 5, faces: 2 } }],
    ...[-3, 0, 1.5, Number.NaN, Number.POSITIVE_INFINITY].map(
      (count) =>
        [
          "not-a-count",
          { ...BOWIE_STACK, grooves: { form: "vee", depth: 2, width: 6, count } } as const,
        ] as const,
    ),
    ...[Number.NaN, -8, Number.POSITIVE_INFINITY].map(
      (pitch) =>
        [
          "length-not-positive",
          { ...BOWIE_STACK, grooves: { form: "vee", depth: 2, width: 6, pitch, faces: 2 } } as const,
        ] as const,
    ),
    ["length-negative", { ...clad, cleaning: { value: 0.2, low: -0.1, high: 0.3 } }],
  ];

  test.each(cases)("%s", (code, stack) => {
    expect(checkMixedStack(stack, 0.2).map((issue) => issue.code)).toContain(code);
    expect(() => plan(stack)).toThrow(SpecError);
  });

  test("those of the orders can", () => {
    expect(checkMixedStack(BOWIE_STACK, 0.25)).toEqual([]);
    expect(checkMixedStack(clad, 0.25)).toEqual([]);
  });
});

describe("the plan", () => {
  test("is cut to the saw's step on the high side of every loss, and no step less would do", () => {
    const { cutLength, shortestLength, ledger, ledgerHigh } = plan(pettyStack(2.54, 3.175), { cutStep: 1 });
    expect(shortestLength.high).toBeGreaterThan(shortestLength.nominal);
    expect(cutLength).toBe(Math.ceil(Math.max(75, shortestLength.high)));
    expect(ledger).toHaveLength(19);
    expect(ledger.at(-1)?.volume).toBe(ledgerHigh.at(-1)?.volume);
    const spare = ledgerHigh.find(({ row }) => row === "spare")?.volume ?? Number.NaN;
    expect(spare).toBeCloseTo((cutLength - shortestLength.high) * 1.25 * IN * 8.89, 6);
  });

  test("a yield with a band is taken at its lower end on the high side", () => {
    const yields = [{ value: 0.85, low: 0.9, high: 0.8 }];
    const { shortestLength } = plan(
      { ...BOWIE_STACK, yields },
      { losses: { ...shopWith({}).losses, scalePerHeat: exactly(0.012), heatTreatmentScale: exactly(0) } },
    );
    expect(shortestLength.high / shortestLength.nominal).toBeCloseTo((0.85 / 0.8) ** 3, 9);
  });
});
