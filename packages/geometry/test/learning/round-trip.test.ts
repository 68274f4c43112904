import { describe, expect, test } from "vitest";
import { ledgerBodies } from "../../src/blade/ledger-bodies.js";
import type { JobPlan } from "../../src/learning/job-record.js";
import { scaleCandidates } from "../../src/learning/scale-candidates.js";
import { DEFAULT_LIMITS } from "../../src/stock/defaults.js";
import { lossesAt } from "../../src/stock/loss-side.js";
import { forgeForward } from "../../src/stock/simulation/forge-forward.js";
import { makeSteelChain, traceStack } from "../../src/stock/steel-chain.js";
import { randomKnives } from "../blade/random-knives.js";
import { lossesOf, record, simulateJob, type TrueShop, weighed } from "./jobs.js";

const SHOPS: readonly TrueShop[] = [
  { model: "fraction", forging: 0.006, welding: 0.03, scatter: 0.2 },
  { model: "fraction", forging: 0.021, welding: 0.01, scatter: 0.2 },
  { model: "skin", forging: 0.02, welding: 0.2, scatter: 0.2 },
  { model: "skin", forging: 0.09, welding: 0.05, scatter: 0.2 },
];

/** What each candidate of a record comes to, by figure. */
function learnt(job: ReturnType<typeof record>, shop: TrueShop): ReadonlyMap<string, number> {
  const candidates = scaleCandidates(job, { losses: lossesOf(shop), limits: DEFAULT_LIMITS });
  return new Map(
    candidates.flatMap(({ of, compute, readings }) => {
      const outcome = compute(readings.map(({ value }) => value));
      return "value" in outcome ? [[of as string, outcome.value] as const] : [];
    }),
  );
}

describe.each(SHOPS)("$model, $forging and $welding a heat", (shop) => {
  const [forging, welding] =
    shop.model === "fraction"
      ? ["losses.scalePerHeat", "losses.scalePerWeldingHeat"]
      : ["losses.skinPerHeat", "losses.skinPerWeldingHeat"];

  test("bars forged forwards by a second method, weighed without error, give each job's own losses back", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const job = simulateJob(shop, seed, "a.record.yaml", true);
      const found = learnt(job.record, shop);
      expect(Math.abs((found.get(forging) ?? 0) / job.forging - 1)).toBeLessThan(1e-10);
      expect(Math.abs((found.get(welding) ?? 0) / job.welding - 1)).toBeLessThan(1e-9);
    }
  });

  test("so do the masses of the ledger, and those of a plan forged forwards, for whole knives", () => {
    const stack = { bars: 4, width: 50, thickness: 6 };
    const forgingSpec = { heats: 7, weldingHeats: 3 };
    const losses = lossesOf(shop);
    for (const { knife } of randomKnives(3, 5)) {
      const bodies = ledgerBodies(knife);
      const chain = makeSteelChain(bodies, losses, DEFAULT_LIMITS, forgingSpec, "value");
      const trace = traceStack(chain, stack.bars, stack.width, stack.thickness);
      const { density, forgedSurface } = bodies;
      const plan: JobPlan = { stack, density, forgedSurface, flatsKept: false };
      const cut = stack.bars * stack.width * stack.thickness * trace.length;
      const grams = [cut, trace.dressed, chain.forged].map((volume) => volume * bodies.density);
      const steps = forgeForward(
        { bodies, losses: lossesAt(losses, "value"), forging: forgingSpec, limits: DEFAULT_LIMITS },
        stack,
        trace.length,
      );
      const at = (name: string): number => steps.findLast(({ step }) => step === name)?.mass ?? 0;
      for (const [bars, billet, forged] of [
        grams,
        [cut * bodies.density, at("cropping"), at("forging-scale")],
      ]) {
        const weighings = [
          weighed("cut", bars ?? 0),
          weighed("billet", billet ?? 0, { weldingHeats: 3 }),
          weighed("forged", forged ?? 0, { heats: 7 }),
        ];
        const found = learnt(record({ plan, weighings }), shop);
        expect(Math.abs((found.get(forging) ?? 0) / shop.forging - 1)).toBeLessThan(1e-9);
        expect(Math.abs((found.get(welding) ?? 0) / shop.welding - 1)).toBeLessThan(1e-8);
      }
    }
  });
});

test("a solid bar is its own billet: bars and forged blade tell of forging, and of no weld", () => {
  const shop: TrueShop = { model: "fraction", forging: 0.015, welding: 0.02, scatter: 0 };
  const plan: JobPlan = { stack: { bars: 1, width: 40, thickness: 10 }, flatsKept: false };
  const weighings = [weighed("cut", 500), weighed("forged", 500 * 0.985 ** 6, { heats: 6 })];
  const found = learnt(record({ plan, weighings }), shop);
  expect([...found.keys()]).toEqual(["losses.scalePerHeat"]);
  expect(found.get("losses.scalePerHeat")).toBeCloseTo(0.015, 12);
});

test("between the bars of a stack and the forged blade, with the billet not weighed, nothing is told", () => {
  const shop: TrueShop = { model: "fraction", forging: 0.015, welding: 0.02, scatter: 0 };
  const plan: JobPlan = { stack: { bars: 3, width: 40, thickness: 10 }, flatsKept: false };
  const weighings = [weighed("cut", 900), weighed("forged", 600, { heats: 9 })];
  expect(learnt(record({ plan, weighings }), shop).size).toBe(0);
});
