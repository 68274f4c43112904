import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import { ledgerBodies } from "../../../src/blade/ledger-bodies.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../../src/stock/defaults.js";
import { dressedFromBars } from "../../../src/stock/forge/billet-forward.js";
import { forgedProfile } from "../../../src/stock/forge/forged-profile.js";
import { billetEaten, billetLengthBehind, billetMarks } from "../../../src/stock/forge/marks.js";
import type { LossSide } from "../../../src/stock/loss-side.js";
import { makeSteelChain, traceStack } from "../../../src/stock/steel-chain.js";
import { HARVEST } from "../fixtures.js";
import { forgeForwards } from "../forward.js";
import { FULL, HIDDEN } from "./forge-knife.js";

const SEED = 20261127;
const FORGING = { heats: 9, weldingHeats: 3 };
const SIDES = ["low", "value", "high"] as const;
const MODELS = ["fraction", "skin"] as const;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const hidden = makeKnife(HIDDEN);
const full = makeKnife(FULL);
const PROFILES = [hidden, full].map((knife) => ({
  knife,
  bodies: ledgerBodies(knife),
  profile: forgedProfile(knife),
}));

const stack = fc.record({
  bars: fc.integer({ min: 1, max: 7 }),
  width: number(25, 60),
  thickness: number(5, 12),
  cutLength: number(120, 400),
});
const setting = fc.record({
  model: fc.constantFrom(...MODELS),
  side: fc.constantFrom<LossSide>(...SIDES),
  which: fc.integer({ min: 0, max: 1 }),
});

describe("the forged blade as sections", () => {
  test.each(PROFILES)("holds what the bodies hold: $knife.spec.tang.form tang", ({ bodies, profile }) => {
    const { stations } = profile;
    let volume = 0;
    for (let i = 1; i < stations.length; i++) {
      const a = stations[i - 1];
      const b = stations[i];
      if (a === undefined || b === undefined) continue;
      volume += ((b.x - a.x) * (a.area + b.area)) / 2;
    }
    const forged =
      bodies.finished +
      bodies.sharpening +
      bodies.finishGrinding +
      bodies.drilling +
      bodies.bevelGrinding +
      bodies.tangGrinding +
      bodies.faceGrinding +
      bodies.profileTrimming;
    // Areas are taken as straight over each millimetre.
    expect(Math.abs(volume / forged - 1)).toBeLessThan(2e-5);
  });

  test("reaches over both ends by their allowances", () => {
    const { stations } = forgedProfile(hidden);
    expect(stations[0]?.x).toBeCloseTo(-12 - 90 - hidden.allowances.butt, 9);
    expect(stations.at(-1)?.x).toBeCloseTo(120 + hidden.allowances.tip, 9);
  });

  test("hidden tang: the shoulder is the handle front, and steps on both sides", () => {
    const { shoulder, handleFront, steps } = forgedProfile(hidden);
    expect(handleFront).toBe(-12);
    expect(shoulder).toBeCloseTo(-12, 6);
    // 30 high less 14, drawn in evenly.
    expect(steps.spineSide).toBeCloseTo(8, 6);
    expect(steps.edgeSide).toBeCloseTo(8, 6);
  });

  test("full tang at the spine's level: the step is at the heel, on the edge's side alone", () => {
    const { shoulder, handleFront, steps } = forgedProfile(full);
    expect(handleFront).toBe(-10);
    expect(shoulder).toBeCloseTo(0, 6);
    expect(steps.spineSide).toBe(0);
    expect(steps.edgeSide).toBeCloseTo(70 - 24, 6);
  });
});

describe("bars forwards to the dressed billet", () => {
  test("undoes the trace: the length that feeds the blade comes out as the length that it needs", () => {
    fc.assert(
      fc.property(stack, setting, (given, { model, side }) => {
        const losses = { ...DEFAULT_LOSSES, scaleModel: model };
        const chain = makeSteelChain(HARVEST, losses, DEFAULT_LIMITS, FORGING, side);
        const trace = traceStack(chain, given.bars, given.width, given.thickness);
        fc.pre(Number.isFinite(trace.length));
        const made = dressedFromBars(chain, { ...given, cutLength: trace.length });
        expect(Math.abs(made.length / trace.dressedLength - 1)).toBeLessThan(1e-12);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test("agrees with forging heat by heat", () => {
    for (const model of MODELS) {
      for (const side of SIDES) {
        const losses = { ...DEFAULT_LOSSES, scaleModel: model };
        const chain = makeSteelChain(HARVEST, losses, DEFAULT_LIMITS, FORGING, side);
        const forwards = forgeForwards({
          bars: 3,
          width: 50,
          thickness: 6.35,
          length: 180,
          losses,
          side,
          heats: 9,
          weldingHeats: 3,
          reduction: DEFAULT_LIMITS.minWeldReduction,
          spread: DEFAULT_LIMITS.weldSpreadShare,
          forgedSurface: HARVEST.forgedSurface,
        });
        const made = dressedFromBars(chain, { bars: 3, width: 50, thickness: 6.35, cutLength: 180 });
        expect(Math.abs(made.volume / forwards.cropped - 1)).toBeLessThan(1e-9);
      }
    }
  });
});

describe("marks on the billet", () => {
  test("handle and blade eat what the forged blade needs, to 10⁻¹²; the rest is spare", () => {
    fc.assert(
      fc.property(stack, setting, (given, { model, side, which }) => {
        const { knife, bodies, profile } = PROFILES[which] as (typeof PROFILES)[number];
        const losses = { ...DEFAULT_LOSSES, scaleModel: model };
        const chain = makeSteelChain(bodies, losses, DEFAULT_LIMITS, knife.forging, side);
        const needed = traceStack(chain, given.bars, given.width, given.thickness).dressedLength;
        fc.pre(Number.isFinite(needed) && needed > 0);
        const marks = billetMarks(chain, profile, given);
        expect(Math.abs((marks.tang + marks.blade) / needed - 1)).toBeLessThan(1e-12);
        expect(Math.abs(marks.needed + marks.spare - marks.available)).toBeLessThan(1e-12 * needed);
        expect(marks.tang).toBeGreaterThan(0);
        expect(marks.blade).toBeGreaterThan(0);
        expect(marks.handleFront).toBeLessThanOrEqual(marks.tang);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("every part grows by its own scale: forged heat by heat, each part comes out at its volume", () => {
    const { knife, bodies, profile } = PROFILES[0] as (typeof PROFILES)[number];
    const given = { bars: 1, width: 32, thickness: 7, cutLength: 200 };
    const { stations, shoulder } = profile;
    const of = (along: (station: (typeof stations)[number]) => number, upTo: number): number =>
      stations.slice(1).reduce((sum, b, i) => {
        const a = stations[i];
        return a === undefined || b.x > upTo ? sum : sum + ((b.x - a.x) * (along(a) + along(b))) / 2;
      }, 0);
    const volumeShare = of((s) => s.area, shoulder) / of((s) => s.area, 1e9);
    const girth = (s: (typeof stations)[number]): number => 2 * s.height + (2 * s.area) / s.height;
    const girthShare = of(girth, shoulder) / of(girth, 1e9);
    for (const model of MODELS) {
      const losses = { ...DEFAULT_LOSSES, scaleModel: model };
      const chain = makeSteelChain(bodies, losses, DEFAULT_LIMITS, knife.forging, "value");
      const { tang } = billetMarks(chain, profile, given);
      const section = given.width * given.thickness;
      let volume = tang * section;
      if (model === "fraction") for (let k = 0; k < chain.heats; k++) volume *= 1 - chain.losses.forgingScale;
      else {
        // One end face of the billet belongs to the handle.
        const before = section + 2 * (given.width + given.thickness) * tang;
        const after = chain.forgedSurface * girthShare;
        for (let k = 0; k < chain.heats; k++)
          volume -= chain.losses.forgingScale * (before + ((after - before) * (k + 0.5)) / chain.heats);
      }
      expect(Math.abs(volume / (chain.forged * volumeShare) - 1), model).toBeLessThan(1e-6);
    }
  });

  test("by a skin, a thin handle eats more than its share of the volume, a thick one less", () => {
    const bodies = { ...HARVEST, forgedSurface: 40_000 };
    const losses = { ...DEFAULT_LOSSES, scaleModel: "skin" as const };
    const chain = makeSteelChain(bodies, losses, DEFAULT_LIMITS, FORGING, "value");
    const given = { bars: 1, width: 32, thickness: 12, cutLength: 200 };
    const shareOf = (handle: number, blade: number): number => {
      const stations = [-100, 0, 0, 100].map((x, i) => {
        const thickness = i < 2 ? handle : blade;
        return { x, height: 30, area: 30 * thickness, thickness };
      });
      const [behind, ahead] = [stations[1], stations[2]];
      if (behind === undefined || ahead === undefined) throw new Error("four stations");
      const steps = { spineSide: 0, edgeSide: 0 };
      const profile = { stations, handleFront: 0, shoulder: 0, behind, ahead, steps };
      const { tang, needed } = billetMarks(chain, profile, given);
      return tang / billetLengthBehind(stations, 0, needed);
    };
    expect(shareOf(2, 8)).toBeGreaterThan(1.05);
    expect(shareOf(5, 5)).toBeCloseTo(1, 9);
    expect(shareOf(8, 2)).toBeLessThan(0.99);
  });

  test("nothing is eaten at the butt, all at the point, more the farther forward", () => {
    const { knife, bodies, profile } = PROFILES[1] as (typeof PROFILES)[number];
    const chain = makeSteelChain(bodies, DEFAULT_LOSSES, DEFAULT_LIMITS, knife.forging, "value");
    const given = { bars: 2, width: 50, thickness: 6, cutLength: 200 };
    const first = profile.stations[0]?.x ?? 0;
    const last = profile.stations.at(-1)?.x ?? 0;
    const eaten = Array.from({ length: 21 }, (_, i) =>
      billetEaten(chain, profile, given, first + ((last - first) * i) / 20),
    );
    expect(eaten[0]).toBe(0);
    expect(eaten.at(-1)).toBeCloseTo(billetMarks(chain, profile, given).needed, 9);
    for (let i = 1; i < eaten.length; i++) expect(eaten[i]).toBeGreaterThan(eaten[i - 1] as number);
  });
});
