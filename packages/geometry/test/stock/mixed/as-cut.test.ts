import { describe, expect, test } from "vitest";
import { ledgerBodies } from "../../../src/index.js";
import { mixedCardStack } from "../../../src/stock/forge/mixed-card.js";
import { stackAsCut } from "../../../src/stock/mixed/as-cut.js";
import { makeMixedChain, traceMixed } from "../../../src/stock/mixed/mixed-chain.js";
import { planMixed } from "../../../src/stock/mixed/plan-mixed.js";
import type { PatternWeldedSpec } from "../../../src/stock/mixed/spec.js";
import { exactly, NO_LOSSES, plainBodies, shopWith } from "../fixtures.js";
import { BOWIE_STACK, petty, pettyStack } from "./stacks.js";

const FORGING = { heats: 0, weldingHeats: 0 };
/** 10 bars of 4 mm × 40 mm, cut in four, nothing lost but what the yield says: sums of the head. */
const PLAIN: PatternWeldedSpec = {
  kind: "pattern-welded",
  layers: Array.from({ length: 10 }, (_, i) => ({ steel: { name: i % 2 ? "15N20" : "1084" }, thickness: 4 })),
  width: 40,
  restacks: [{ pieces: 4, bar: { width: 40, thickness: 10 } }],
  yields: [exactly(0.8), exactly(0.9)],
  lastBar: { width: 40, thickness: 12 },
};

describe("what lies on the anvil of the bars as cut", () => {
  const shop = shopWith({ losses: NO_LOSSES, kerf: 2 });
  const of = (forged: number, stack = PLAIN) => {
    const chain = makeMixedChain(plainBodies(forged), shop, FORGING, stack, "value");
    return (length: number) => stackAsCut(chain, chain, length);
  };
  // The blade takes 24 cm³, which is 50 mm of the last bar.
  const asCut = of(24_000);

  test("by hand: bars of 100 mm become 320 mm to cut, four of 80 mm, a last bar of 240 mm", () => {
    const { welds, lastBar, needed } = asCut(100);
    // 10 · 4 · 40 · 100 = 160 cm³, 128 after the first weld, 115.2 after the second.
    expect(welds.map((weld) => weld.in)).toEqual([160_000, 128_000]);
    expect(welds[1]?.out).toBeCloseTo(115_200, 8);
    expect(welds.map(({ pieceLength }) => pieceLength)).toEqual([100, 80]);
    expect(welds.map(({ barLength }) => barLength)).toEqual([100, 320]);
    expect(lastBar.length).toBeCloseTo(240, 9);
    expect(lastBar.dressedLength).toBeCloseTo(240, 9);
    expect(needed.usual).toBeCloseTo(50, 9);
  });

  test("a bar of 240 mm holds four blades of 50 mm, for a fifth 258 mm with four cuts of 2 mm are wanted", () => {
    expect(asCut(100).blades.usual).toBe(4);
    const five = (5 * 50 + 4 * 2) / 2.4;
    expect(asCut(five).blades.usual).toBe(5);
    expect(asCut(five - 0.001).blades.usual).toBe(4);
  });

  test("grooves of a tenth shorten the bar once it is pressed flat", () => {
    const { lastBar, needed } = of(24_000, { ...PLAIN, grooves: { share: 0.1 } })(100);
    expect(lastBar.length).toBeCloseTo(240, 9);
    expect(lastBar.dressedLength).toBeCloseTo(216, 9);
    expect(needed.usual).toBeCloseTo(50, 9);
  });

  test("bars that are as long as needed make what is needed, by the shop's own losses too", () => {
    const { yields: _yields, ...byLosses } = BOWIE_STACK;
    for (const stack of [BOWIE_STACK, byLosses, pettyStack(3, 4)]) {
      const chain = makeMixedChain(
        plainBodies(60_000),
        shopWith({}),
        { heats: 9, weldingHeats: 3 },
        stack,
        "value",
      );
      const trace = traceMixed(chain);
      const { welds, lastBar, needed, blades } = stackAsCut(chain, chain, trace.length);
      trace.stages.forEach((stage, i) => {
        expect(welds[i]?.pieceLength).toBeCloseTo(stage.pieceLength, 8);
        expect(welds[i]?.barLength).toBeCloseTo(stage.barLength, 8);
      });
      expect(lastBar.length).toBeCloseTo(trace.lastBarLength, 8);
      expect(lastBar.dressedLength).toBeCloseTo(needed.usual, 8);
      expect(blades).toEqual({ usual: 1, high: 1 });
    }
  });

  test("a stack that no length feeds holds no blade", () => {
    const eaten = shopWith({ losses: { ...NO_LOSSES, weldDressingPerSide: exactly(30) } });
    const chain = makeMixedChain(plainBodies(24_000), eaten, FORGING, pettyStack(3, 3), "value");
    expect(stackAsCut(chain, chain, Number.POSITIVE_INFINITY).blades.usual).toBe(0);
  });
});

describe("of a plan", () => {
  const knife = petty();
  const bodies = ledgerBodies(knife);
  const shop = shopWith({ rack: [] });
  const stack = { ...BOWIE_STACK, grooves: { share: 0.08 } };
  const plan = planMixed(knife, bodies, shop, stack);

  test("the last bar is the one that the forge card starts from", () => {
    const card = mixedCardStack(plan, bodies, shop, knife.forging);
    expect(plan.asCut.lastBar.dressedLength).toBeCloseTo(card.cutLength, 9);
    expect(plan.asCut.lastBar.dressedLength).toBeGreaterThan(plan.asCut.needed.usual);
    expect(plan.asCut.welds[0]?.pieceLength).toBeCloseTo(plan.cutLength, 9);
  });
});
