/** Jobs of a shop whose losses are known, weighed on a scale of whole grams: forged forwards, heat by heat. */
import { Chance } from "../../../../tests/reference/random/chance.js";
import type { JobPlan, JobRecord, JobWeighing } from "../../src/learning/job-record.js";
import type { LedgerBodies } from "../../src/stock/blade-states.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../src/stock/defaults.js";
import type { LossSpec } from "../../src/stock/shop.js";
import { exactly, HARVEST } from "../stock/fixtures.js";
import { forgeForwards } from "../stock/forward.js";

export const WRITTEN: JobRecord["written"] = {
  mass: {
    unit: 1,
    mixUps: [
      { times: 28.349523125, words: "ounces written as grams" },
      { times: 1 / 28.349523125, words: "grams written as ounces" },
      { times: 1000, words: "kilograms written as grams" },
    ],
  },
  length: {
    unit: 1,
    mixUps: [{ times: 25.4, words: "inches written as millimetres" }],
  },
};

export const record = (parts: Partial<JobRecord>, file = "a.record.yaml"): JobRecord => ({
  file,
  weighings: [],
  sizes: [],
  drawn: [],
  hours: [],
  written: WRITTEN,
  ...parts,
});

export const weighed = (
  stage: JobWeighing["stage"],
  steel: number,
  heats: Pick<JobWeighing, "heats" | "weldingHeats"> = {},
): JobWeighing => ({ stage, steel, ...heats, on: "2026-11-28" });

/** Standard normal, by the sum of twelve even numbers less six: close enough in the middle, and never wild. */
export function normal(chance: Chance): number {
  let sum = -6;
  for (let i = 0; i < 12; i++) sum += chance.unit();
  return sum;
}

export interface TrueShop {
  readonly model: "fraction" | "skin";
  /** Middle of the jobs, per forging heat and per welding heat. */
  readonly forging: number;
  readonly welding: number;
  /** Standard deviation between jobs, as a share. */
  readonly scatter: number;
}

/** Other losses than scale are as the shop reckons, so that what a weld loses can be told. */
export function lossesOf(shop: TrueShop, forging = shop.forging, welding = shop.welding): LossSpec {
  const [share, skin] = shop.model === "fraction" ? [forging, 0] : [0, forging];
  const [weldShare, weldSkin] = shop.model === "fraction" ? [welding, 0] : [0, welding];
  return {
    ...DEFAULT_LOSSES,
    scaleModel: shop.model,
    scalePerHeat: exactly(share),
    skinPerHeat: exactly(skin),
    scalePerWeldingHeat: exactly(weldShare),
    skinPerWeldingHeat: exactly(weldSkin),
  };
}

export interface SimulatedJob {
  readonly record: JobRecord;
  /** What this job really lost a heat. */
  readonly forging: number;
  readonly welding: number;
}

/** One job: bars, heats and blade drawn by lot; masses to whole grams unless `exact`. */
export function simulateJob(shop: TrueShop, seed: number, file: string, exact = false): SimulatedJob {
  const chance = new Chance(seed);
  const forging = shop.forging * Math.exp(shop.scatter * normal(chance));
  const welding = shop.welding * Math.exp(shop.scatter * normal(chance));
  const stack = {
    bars: chance.pick(3, 4, 5),
    width: chance.pick(38.1, 40, 50),
    thickness: chance.pick(5, 6, 6.35),
  };
  const heats = Math.round(chance.between(5, 12));
  const weldingHeats = Math.round(chance.between(2, 4));
  const bodies: LedgerBodies = { ...HARVEST, forgedSurface: chance.between(40_000, 60_000) };
  const run = forgeForwards({
    ...stack,
    length: chance.between(110, 190),
    losses: lossesOf(shop, forging, welding),
    side: "value",
    heats,
    weldingHeats,
    reduction: DEFAULT_LIMITS.minWeldReduction,
    spread: DEFAULT_LIMITS.weldSpreadShare,
    forgedSurface: bodies.forgedSurface,
  });
  const shown = (volume: number): number => {
    const mass = volume * bodies.density;
    return exact ? mass : Math.round(mass);
  };
  const { density, forgedSurface } = bodies;
  const plan: JobPlan = { stack, density, forgedSurface, finished: 480, flatsKept: false };
  return {
    forging,
    welding,
    record: record(
      {
        plan,
        weighings: [
          weighed("cut", shown(run.barsAsCut)),
          weighed("billet", shown(run.cropped), { weldingHeats }),
          weighed("forged", shown(run.forged), { heats }),
        ],
      },
      file,
    ),
  };
}

/** Jobs of one shop, every one with its own seed. */
export const simulateJobs = (shop: TrueShop, jobs: number, seed: number): SimulatedJob[] =>
  Array.from({ length: jobs }, (_, i) => simulateJob(shop, seed * 1000 + i, `job-${i}.record.yaml`));
