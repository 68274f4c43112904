import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import { ledgerBodies } from "../../../src/blade/ledger-bodies.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES, DEFAULT_SHOP } from "../../../src/stock/defaults.js";
import { extraHeats } from "../../../src/stock/gates/extra-heats.js";
import {
  GATE_STAGES,
  type GateRoute,
  gateBodies,
  neededVolume,
  stageGrowth,
  stageNeed,
} from "../../../src/stock/gates/stage-need.js";
import { ledgerRow } from "../../../src/stock/ledger.js";
import { planStock } from "../../../src/stock/plan.js";
import { RUNS } from "../../blade/similar-fixtures.js";
import { HARVEST, shopWith } from "../fixtures.js";
import { forgeForwards } from "../forward.js";

const SEED = 20261125;
const FORGING = { heats: 9, weldingHeats: 3 };
const STACK = { bars: 5, width: 50.8, thickness: 6.35 };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const route = (changes: Partial<GateRoute> = {}): GateRoute => ({
  losses: DEFAULT_LOSSES,
  limits: DEFAULT_LIMITS,
  forging: FORGING,
  stack: STACK,
  ...changes,
});
const volumeAt = (given: GateRoute, stage: (typeof GATE_STAGES)[number], side: "low" | "value" | "high") =>
  neededVolume(HARVEST, given, stage, side) ?? Number.NaN;

describe("what a stage needs, done forwards, is what the next one needs", () => {
  const arbitrary = fc.record({
    scaleModel: fc.constantFrom("fraction" as const, "skin" as const),
    side: fc.constantFrom("low" as const, "value" as const, "high" as const),
    bars: fc.integer({ min: 1, max: 9 }),
    width: number(30, 70),
    thickness: number(4, 10),
    heats: fc.integer({ min: 0, max: 14 }),
    weldingHeats: fc.integer({ min: 0, max: 5 }),
  });

  test("from the saw to the finished blade, any stack, either way of counting scale", () => {
    fc.assert(
      fc.property(arbitrary, ({ scaleModel, side, bars, width, thickness, heats, weldingHeats }) => {
        const losses = { ...DEFAULT_LOSSES, scaleModel };
        const given = route({
          losses,
          forging: { heats, weldingHeats },
          stack: { bars, width, thickness },
        });
        const cut = volumeAt(given, "cut", side);
        const forwards = forgeForwards({
          bars,
          width,
          thickness,
          length: cut / (bars * width * thickness),
          losses,
          side,
          heats,
          weldingHeats,
          reduction: DEFAULT_LIMITS.minWeldReduction,
          spread: DEFAULT_LIMITS.weldSpreadShare,
          forgedSurface: HARVEST.forgedSurface,
        });
        expect(Math.abs(volumeAt(given, "billet", side) / forwards.cropped - 1)).toBeLessThan(1e-10);
        expect(Math.abs(volumeAt(given, "forged", side) / forwards.forged - 1)).toBeLessThan(1e-10);
        // Ground and drilled, then through the fire of hardening, then finish ground and sharpened.
        const { drilling, bevelGrinding, tangGrinding, faceGrinding, profileTrimming } = HARVEST;
        const ready =
          forwards.forged - drilling - bevelGrinding - tangGrinding - faceGrinding - profileTrimming;
        expect(Math.abs(volumeAt(given, "ready", side) / ready - 1)).toBeLessThan(1e-10);
        const scaled =
          scaleModel === "skin"
            ? ready - losses.skinHeatTreatment[side] * HARVEST.readySurface
            : ready * (1 - losses.heatTreatmentScale[side]);
        const finished = scaled - HARVEST.finishGrinding - HARVEST.sharpening;
        expect(Math.abs(finished / HARVEST.finished - 1)).toBeLessThan(1e-9);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("closed form, one solid bar, shares: every gram divided by what each fire leaves", () => {
    const solid: GateRoute = { losses: DEFAULT_LOSSES, limits: DEFAULT_LIMITS, forging: FORGING };
    const ground = 140 + 6900 + 23_500 + 5300;
    const forged = (62_000 + 160 + 4700) / (1 - 0.005) + ground;
    expect(volumeAt(solid, "forged", "value")).toBeCloseTo(forged, 8);
    expect(volumeAt(solid, "billet", "value")).toBeCloseTo(forged / 0.988 ** 9, 8);
    expect(volumeAt(solid, "cut", "value")).toBeCloseTo(forged / 0.988 ** 9, 8);
  });
});

describe("bands and order", () => {
  test("low, usual and high losses ask for ever more; every stage for more than the one after it", () => {
    const masses = GATE_STAGES.map((stage) => {
      const need = stageNeed(HARVEST, route(), stage);
      expect(need).toBeDefined();
      const { low, value, high } = need ?? { low: 0, value: 0, high: 0 };
      if (stage === "finished") expect([low, high]).toEqual([value, value]);
      else expect(low < value && value < high, stage).toBe(true);
      return value;
    });
    expect(masses).toEqual([...masses].sort((a, b) => b - a));
  });

  test("a plan's own bars are enough on the high side of every loss, and its ledger has the same masses", () => {
    const shop = shopWith({});
    const { plans } = planStock(HARVEST, shop, FORGING);
    expect(plans.length).toBeGreaterThan(0);
    for (const plan of plans) {
      const given = route({ losses: shop.losses, limits: shop.limits, stack: plan });
      const need = stageNeed(HARVEST, given, "cut");
      expect(plan.mass).toBeGreaterThanOrEqual((need?.high ?? Number.NaN) * (1 - 1e-12));
      expect(need?.value).toBeCloseTo(plan.mass - ledgerRow(plan.ledger, "spare").mass, 8);
      expect(stageNeed(HARVEST, given, "billet")?.value).toBeCloseTo(
        ledgerRow(plan.ledger, "dressed-billet").mass,
        8,
      );
    }
  });

  test("skin of a section that is not known cannot be told before the blade is forged", () => {
    const { stack: _stack, ...unknown } = route({ losses: { ...DEFAULT_LOSSES, scaleModel: "skin" } });
    expect(stageNeed(HARVEST, unknown, "billet")).toBeUndefined();
    expect(stageNeed(HARVEST, unknown, "forged")).toBeDefined();
  });

  test("a gram more in the finished blade is as many more at a stage as the fires divide by", () => {
    const { stack: _stack, ...solid } = route();
    expect(stageGrowth(HARVEST, solid, "finished")).toBe(1);
    expect(stageGrowth(HARVEST, solid, "ready")).toBeCloseTo(1 / 0.995, 12);
    expect(stageGrowth(HARVEST, solid, "billet")).toBeCloseTo(1 / 0.995 / 0.988 ** 9, 12);
  });
});

test("the quick bodies need as much as the whole ledger, at every stage", () => {
  const knife = makeKnife(RUNS);
  const whole = ledgerBodies(knife);
  for (const scaleModel of ["fraction", "skin"] as const) {
    const given = route({ losses: { ...DEFAULT_SHOP.losses, scaleModel } });
    for (const stage of GATE_STAGES) {
      const quick = stageNeed(gateBodies(knife, stage, scaleModel), given, stage)?.value;
      expect(Math.abs((quick ?? 0) - (stageNeed(whole, given, stage)?.value ?? 1)), stage).toBeLessThan(1e-6);
    }
  }
});

describe("heats that the spare steel pays for", () => {
  test("the last one that is paid for is, the next is not", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("cut" as const, "billet" as const, "forged" as const),
        number(1, 1.2),
        (stage, factor) => {
          const need = volumeAt(route(), stage, "value");
          const mass = factor * need * HARVEST.density;
          const count = extraHeats(HARVEST, route(), stage, mass)?.count ?? Number.NaN;
          const after = (heats: number): number =>
            stage === "forged"
              ? need / 0.988 ** heats
              : volumeAt(route({ forging: { ...FORGING, heats: FORGING.heats + heats } }), stage, "value");
          expect(after(count) * HARVEST.density).toBeLessThanOrEqual(mass * (1 + 1e-12));
          expect(after(count + 1) * HARVEST.density).toBeGreaterThan(mass * (1 - 1e-12));
        },
      ),
      { seed: SEED, numRuns: 60 },
    );
  });

  test("none where the steel is short, and none to be told of at the grinder", () => {
    const need = volumeAt(route(), "billet", "value") * HARVEST.density;
    expect(extraHeats(HARVEST, route(), "billet", 0.9 * need)?.count).toBe(0);
    expect(extraHeats(HARVEST, route(), "ready", need)).toBeUndefined();
  });
});
