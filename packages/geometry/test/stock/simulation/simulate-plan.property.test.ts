import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LedgerBodies, LedgerRowName } from "../../../src/stock/blade-states.js";
import { LEDGER_TOTALS, makeLedger } from "../../../src/stock/ledger.js";
import { type LossSide, lossesAt } from "../../../src/stock/loss-side.js";
import { planStock } from "../../../src/stock/plan.js";
import type { StockForging } from "../../../src/stock/search.js";
import type { ShopSpec } from "../../../src/stock/shop.js";
import { flatVolume } from "../../../src/stock/simulation/flat-step.js";
import { type ForgeStep, forgeForward } from "../../../src/stock/simulation/forge-forward.js";
import {
  type ForgeRun,
  type SimulatedPlan,
  simulatePlan,
} from "../../../src/stock/simulation/simulate-plan.js";
import { makeSteelChain, traceStack } from "../../../src/stock/steel-chain.js";
import { HARVEST, shopWith } from "../fixtures.js";
import { bodies, forging, losses, number, SEED, shop } from "./arbitraries.js";

/** Of the bars as cut, or of the finished blade. */
const EXACT = 1e-12;
const SIDES = ["low", "value", "high"] as const satisfies readonly LossSide[];

interface Case {
  readonly bodies: LedgerBodies;
  readonly shop: ShopSpec;
  readonly forging: StockForging;
  readonly plan: SimulatedPlan;
  readonly side: LossSide;
  readonly run: ForgeRun;
}

/** Every plan of random knives and racks, at every side of the bands. */
function forEveryPlan(runs: number, check: (one: Case) => void): void {
  let plans = 0;
  fc.assert(
    fc.property(bodies, shop, forging, (blade, shopSpec, heats) => {
      for (const plan of planStock(blade, shopSpec, heats).plans) {
        plans++;
        for (const side of SIDES) {
          const run = simulatePlan(blade, shopSpec, heats, plan, side);
          check({ bodies: blade, shop: shopSpec, forging: heats, plan, side, run });
        }
      }
    }),
    { seed: SEED, numRuns: runs, endOnFailure: true },
  );
  // The racks must not all have been refused.
  expect(plans).toBeGreaterThan(2 * runs);
}

const lostIn = (steps: readonly ForgeStep[], name: string): number =>
  steps.filter(({ step }) => step === name).reduce((sum, { lostVolume }) => sum + lostVolume, 0);

describe("a plan forged forwards", () => {
  test("can always be turned into the blade, on every side of every band", () => {
    forEveryPlan(200, ({ run }) => expect(run.failures).toEqual([]));
  });

  test("ends at the finished blade and leaves exactly the ledger's spare; every row takes what the ledger says", () => {
    forEveryPlan(80, ({ bodies: blade, shop: shopSpec, forging: heats, plan, side, run }) => {
      const chain = makeSteelChain(blade, shopSpec.losses, shopSpec.limits, heats, side);
      const ledger = makeLedger(blade, chain, plan);
      const cut = plan.bars * plan.width * plan.thickness * plan.cutLength;
      expect(Math.abs(run.finishedVolume / blade.finished - 1)).toBeLessThan(EXACT);
      for (const { row, volume } of ledger) {
        if (LEDGER_TOTALS.includes(row)) continue;
        // A length may be short of what is needed by the last digits of a double; the ledger then says 0.
        const found = row === "spare" ? Math.max(0, run.spareVolume) : lostIn(run.steps, row);
        expect(Math.abs(found - volume), row).toBeLessThan(EXACT * cut);
      }
      const total = (name: LedgerRowName): number => ledger.find(({ row }) => row === name)?.volume ?? 0;
      const after = (name: string): number => run.steps.findLast(({ step }) => step === name)?.volume ?? 0;
      const near = (a: number, b: number): void => expect(Math.abs(a / b - 1)).toBeLessThan(EXACT * 10);
      near(after("drilling"), total("ready-to-harden"));
      const billet = run.steps.findLast(({ section }) => section !== undefined);
      near(billet?.volume ?? 0, total("dressed-billet"));
      near(run.steps[0]?.volume ?? 0, total("bars-as-cut"));
    });
  });

  test("goes step by step from piece to piece: nothing is lost but what the step says, squeezes lose nothing", () => {
    forEveryPlan(60, ({ run, plan }) => {
      run.steps.forEach(({ step, volume, lostVolume, section, mass }, i) => {
        if (section !== undefined && step !== "spare")
          expect(Math.abs(flatVolume(section) / volume - 1)).toBeLessThan(EXACT);
        expect(mass).toBeGreaterThan(0);
        const before = run.steps[i - 1];
        if (before === undefined) return;
        expect(Math.abs(before.volume - lostVolume - volume)).toBeLessThan(EXACT * before.volume);
        if (step === "weld-squeeze") {
          expect(lostVolume).toBe(0);
          expect(Math.abs(volume / before.volume - 1)).toBeLessThan(EXACT);
          // Lower, and no narrower or shorter.
          expect(section?.height).toBeLessThanOrEqual(before.section?.height ?? 0);
          expect(section?.width).toBeGreaterThanOrEqual(before.section?.width ?? 0);
        }
      });
      expect(run.steps[0]?.section).toEqual({
        width: plan.width,
        height: plan.bars * plan.thickness,
        length: plan.cutLength,
      });
    });
  });

  test("of the high side leaves the least and of the low side the most", () => {
    let low = 0;
    forEveryPlan(60, ({ run, side, plan }) => {
      const hair = EXACT * plan.cutLength;
      if (side === "low") low = run.usedLength;
      else expect(run.usedLength).toBeGreaterThanOrEqual(low - hair);
      // What is over at the finish has been through all losses: no more than what was over at the bars.
      if (run.spareMass > 0) expect(run.overAtFinish).toBeLessThanOrEqual(run.spareMass * (1 + 1e-9));
    });
  });
});

describe("bars that do not become the blade", () => {
  const short = (changes: Partial<SimulatedPlan>, press: ShopSpec["press"] = {}) => {
    const bar = { name: "60 x 8", width: 60, thickness: 8 };
    const plan: SimulatedPlan = {
      bars: 4,
      width: 60,
      thickness: 8,
      cutLength: 160,
      layers: "flat",
      bar,
      ...changes,
    };
    return simulatePlan(BLADE, shopWith({ press, rack: [bar] }), { heats: 9, weldingHeats: 3 }, plan, "high");
  };
  const BLADE = {
    ...HARVEST,
    stations: HARVEST.stations.map((s) => ({ ...s, height: 0.6 * s.height, area: 0.6 * s.area })),
  };
  const codes = (run: ForgeRun): string[] => run.failures.map(({ code }) => code);

  test("are told: too short, too thin, too low, too tall for the press, too long for the forge, not on the rack", () => {
    expect(codes(short({}))).toEqual([]);
    expect(codes(short({ cutLength: 60 }))).toContain("not-fed");
    expect(codes(short({ cutLength: 8 }))).toEqual(["lost-to-scale"]);
    expect(codes(short({ bars: 1, thickness: 1, cutLength: 4000 }))).toEqual(["too-thin"]);
    expect(codes(short({ width: 12, cutLength: 900 }))).toEqual(["out-of-reach"]);
    expect(codes(short({}, { opening: 30 }))).toEqual(["too-tall-for-press"]);
    expect(codes(short({}, { forgeLength: 130 }))).toEqual(["longer-than-forge"]);
    const bar = { name: "60 x 8", width: 60, thickness: 8, length: 250, count: 1 };
    expect(codes(short({ bar }))).toEqual(["bar-too-short"]);
  });
});

describe("invariants of what is needed", () => {
  const stack = fc.record({
    bars: fc.integer({ min: 1, max: 10 }),
    width: number(30, 80),
    thickness: number(4, 12),
  });
  const lossKeys = [
    "scalePerHeat",
    "scalePerWeldingHeat",
    "skinPerHeat",
    "skinPerWeldingHeat",
    "heatTreatmentScale",
    "skinHeatTreatment",
    "cropPerEnd",
    "weldDressingPerSide",
    "cleaningPerFace",
  ] as const;

  /** Length needed, found by forging forwards; and the planner's own. */
  function needed(
    blade: LedgerBodies,
    shopSpec: ShopSpec,
    heats: StockForging,
    bars: typeof STACK,
  ): number[] {
    const bar = { name: "bar", width: bars.width, thickness: bars.thickness };
    const run = simulatePlan(
      blade,
      shopSpec,
      heats,
      { ...bars, bar, layers: "flat", cutLength: 200 },
      "value",
    );
    const chain = makeSteelChain(blade, shopSpec.losses, shopSpec.limits, heats, "value");
    return [run.usedLength, traceStack(chain, bars.bars, bars.width, bars.thickness).length];
  }
  const STACK = { bars: 1, width: 40, thickness: 6 };

  test.each(lossKeys)("more %s never needs less bar", (key) => {
    let compared = 0;
    fc.assert(
      fc.property(bodies, losses, forging, stack, number(1, 3), (blade, lossSpec, heats, bars, factor) => {
        const { low, value, high } = lossSpec[key];
        const more = { low: low * factor, value: value * factor, high: high * factor };
        const before = needed(blade, shopWith({ losses: lossSpec }), heats, bars);
        const after = needed(blade, shopWith({ losses: { ...lossSpec, [key]: more } }), heats, bars);
        before.forEach((length, i) => {
          if (!Number.isFinite(length)) return;
          compared++;
          expect(after[i]).toBeGreaterThanOrEqual(length * (1 - EXACT));
        });
      }),
      { seed: SEED, numRuns: 80, endOnFailure: true },
    );
    expect(compared).toBeGreaterThan(80);
  });

  test.each(["heats", "weldingHeats"] as const)("more %s never need less bar", (key) => {
    fc.assert(
      fc.property(
        bodies,
        losses,
        forging,
        stack,
        fc.integer({ min: 1, max: 5 }),
        (blade, lossSpec, heats, bars, more) => {
          const shopSpec = shopWith({ losses: lossSpec });
          const before = needed(blade, shopSpec, heats, bars);
          const after = needed(blade, shopSpec, { ...heats, [key]: heats[key] + more }, bars);
          before.forEach((length, i) => {
            if (Number.isFinite(length)) expect(after[i]).toBeGreaterThanOrEqual(length * (1 - EXACT));
          });
        },
      ),
      { seed: SEED, numRuns: 150, endOnFailure: true },
    );
  });

  test("the piece after any heat is lighter than before it, and longer bars never end lighter", () => {
    fc.assert(
      fc.property(
        bodies,
        losses,
        forging,
        stack,
        number(100, 400),
        (blade, lossSpec, heats, bars, length) => {
          const { limits } = shopWith({});
          const setting = { bodies: blade, losses: lossesAt(lossSpec, "value"), forging: heats, limits };
          const steps = forgeForward(setting, bars, length);
          const longer = forgeForward(setting, bars, length + 1);
          for (const { lostVolume, heat } of steps)
            if (heat !== undefined) expect(lostVolume).toBeGreaterThanOrEqual(0);
          const all = steps.every(({ volume }) => volume > 0);
          if (all) expect(longer.at(-1)?.volume).toBeGreaterThan(steps.at(-1)?.volume ?? 0);
        },
      ),
      { seed: SEED, numRuns: 150, endOnFailure: true },
    );
  });
});
