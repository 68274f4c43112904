import { describe, expect, test } from "vitest";
import { Chance } from "../../../../tests/reference/random/chance.js";
import { estimate, joinNormal, SCATTER_JOBS } from "../../src/learning/estimate.js";
import { NORMAL_LIMIT } from "../../src/learning/student.js";
import { normal } from "./jobs.js";

const OWN = { value: 0.012, low: 0.006, high: 0.02 };
const exact = (values: readonly number[]) => values.map((value) => ({ value, error: 0 }));

/** A shop whose doubt and whose scatter between jobs both are 1. */
const UNIT = { value: 0, low: -NORMAL_LIMIT * Math.SQRT2, high: NORMAL_LIMIT * Math.SQRT2 };

describe("the shop's own figure", () => {
  test("stays exactly with no job and with one, however far off that one is", () => {
    for (const jobs of [[], [0.03], [0.0001]]) {
      const { value, low, high, ownWeight } = estimate(OWN, exact(jobs), "ratio");
      expect({ value, low, high }).toEqual(OWN);
      expect(ownWeight).toBe(1);
    }
  });

  test("stays where it has no band: nothing says how far it may be off", () => {
    const sure = { value: 0.012, low: 0.012, high: 0.012 };
    expect(estimate(sure, exact([0.02, 0.021, 0.02]), "ratio")).toMatchObject(sure);
  });

  test("weighs less with every job that agrees with the others, and hardly at all with thirty", () => {
    const weights = [2, 3, 4, 5, 8, 10, 30].map(
      (jobs) => estimate(OWN, exact(Array(jobs).fill(0.018)), "ratio").ownWeight,
    );
    for (const [i, weight] of weights.entries()) if (i > 0) expect(weight).toBeLessThan(weights[i - 1] ?? 0);
    expect(weights[0]).toBeGreaterThan(0.4);
    expect(weights[5]).toBeLessThan(0.05);
    expect(weights[6]).toBeLessThan(0.005);
  });

  test("weighs more where jobs lie far apart", () => {
    const near = estimate(OWN, exact([0.017, 0.018, 0.019]), "ratio");
    const far = estimate(OWN, exact([0.009, 0.018, 0.036]), "ratio");
    expect(far.ownWeight).toBeGreaterThan(near.ownWeight);
    expect(far.high / far.low).toBeGreaterThan(near.high / near.low);
  });
});

/**
 * Normal mean of known variance σ², conjugate prior N(μ₀, τ²), n readings: posterior mean
 * (μ₀/τ² + n ȳ/σ²)/(1/τ² + n/σ²) and variance 1/(1/τ² + n/σ²). Source: a standard textbook result, from memory.
 */
test("with a known scatter the answer is the textbook's conjugate one", () => {
  const chance = new Chance(11);
  for (let round = 0; round < 50; round++) {
    const [mean, tau, sigma] = [chance.between(-5, 5), chance.between(0.1, 3), chance.between(0.1, 3)];
    const jobs = Array.from({ length: 1 + Math.floor(chance.between(0, 12)) }, () => chance.between(-8, 8));
    const average = jobs.reduce((sum, one) => sum + one, 0) / jobs.length;
    const precision = 1 / tau ** 2 + jobs.length / sigma ** 2;
    const expected = (mean / tau ** 2 + (jobs.length * average) / sigma ** 2) / precision;
    const got = joinNormal({ centre: mean, deviation: tau }, exact(jobs), sigma ** 2);
    expect(got.centre).toBeCloseTo(expected, 12);
    expect(got.deviation).toBeCloseTo(1 / Math.sqrt(precision), 12);
  }
});

/**
 * A second method: the whole model summed over a grid of means and variances, prior normal and scaled inverse chi-square, no
 * formula of the first one used. Doubt and scatter are 1 here.
 */
function bySumming(jobs: readonly number[]) {
  let weights = 0;
  let means = 0;
  const points: { readonly mean: number; readonly variance: number; readonly weight: number }[] = [];
  for (let i = -150; i <= 200; i++) {
    for (let k = -45; k <= 60; k++) {
      const [mean, variance] = [0.05 * i, Math.exp(0.1 * k)];
      // One over the variance from the logarithmic grid cancels one of the prior's own.
      let log = -(mean ** 2) / 2 - (SCATTER_JOBS / 2) * (Math.log(variance) + 1 / variance);
      for (const job of jobs) log -= (Math.log(variance) + (job - mean) ** 2 / variance) / 2;
      const weight = Math.exp(log);
      weights += weight;
      means += weight * mean;
      points.push({ mean, variance, weight });
    }
  }
  const below = (limit: number): number =>
    points.reduce(
      (sum, { mean, variance, weight }) => sum + weight * normalBelow((limit - mean) / Math.sqrt(variance)),
      0,
    ) / weights;
  return { mean: means / weights, below };
}

/** Normal distribution; Abramowitz and Stegun 7.1.26, within 1.5e-7. */
function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const tail =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    Math.exp(-x * x);
  return z < 0 ? tail / 2 : 1 - tail / 2;
}

describe("against the whole model summed over a grid", () => {
  // Jobs up to what a shop's own band allows, which lies at ± 2.8.
  test.each([
    [2, 0.7, 0.2],
    [2, 1.5, 1],
    [3, 0, 0.7],
    [3, 1, 0.5],
    [5, 1.5, 1],
    [5, 2.5, 0.3],
    [10, 0.7, 0.1],
    [10, 2.5, 0.3],
    [20, 3, 1],
  ])(
    "%d jobs at %d, %d apart: the figure within a sixth of the doubt, the band holds about 95 %%",
    (n, off, apart) => {
      const chance = new Chance(n * 100 + off);
      const jobs = Array.from({ length: n }, () => off + apart * normal(chance));
      const { mean, below } = bySumming(jobs);
      const { value, low, high } = estimate(UNIT, exact(jobs), "difference");
      expect(Math.abs(value - mean)).toBeLessThan(n < 5 ? 0.16 : 0.05);
      const held = below(high) - below(low);
      expect(held).toBeGreaterThan(n < 5 ? 0.925 : 0.93);
      expect(held).toBeLessThan(n < 5 ? 0.975 : 0.96);
    },
  );
});

describe("the band", () => {
  const SHOPS = 4000;
  /** Share of shops whose next job, not the mean of them, lies within the band. */
  function heldOf(n: number, scatterOf: (chance: Chance) => number): number {
    const chance = new Chance(700 + n);
    let held = 0;
    for (let shop = 0; shop < SHOPS; shop++) {
      const [truth, scatter] = [normal(chance), scatterOf(chance)];
      const jobs = Array.from({ length: n }, () => truth + scatter * normal(chance));
      const { low, high } = estimate(UNIT, exact(jobs), "difference");
      const next = truth + scatter * normal(chance);
      if (next >= low && next <= high) held++;
    }
    return held / SHOPS;
  }
  /** A scatter as unsure as three jobs leave it: one over the root of a third of a chi-square of three. */
  const unsure = (chance: Chance): number =>
    1 / Math.sqrt((normal(chance) ** 2 + normal(chance) ** 2 + normal(chance) ** 2) / SCATTER_JOBS);

  // Three standard errors of 4000 draws are 1 %.
  test.each([2, 3, 5, 10, 30])("holds the next job 95 times of 100 after %d jobs", (n) => {
    expect(Math.abs(heldOf(n, unsure) - 0.95)).toBeLessThan(0.015);
  });

  test.each([2, 3, 5, 10, 30])(
    "holds it oftener where jobs lie as near as the own band says, after %d",
    (n) => {
      const held = heldOf(n, () => 1);
      expect(held).toBeGreaterThan(0.94);
      expect(held).toBeLessThan(0.995);
    },
  );

  test("does not count the scale's own error as one job differing from the next", () => {
    const chance = new Chance(3);
    const readings = Array.from({ length: 60 }, () => ({ value: 5 + 0.3 * normal(chance), error: 0.3 }));
    const own = { value: 5, low: 4.4, high: 5.6 };
    // Between jobs there is none: what is left is what the own band adds, and chance.
    expect(estimate(own, readings, "difference").scatter).toBeLessThan(0.15);
    expect(estimate(own, exact(readings.map(({ value }) => value)), "difference").scatter).toBeGreaterThan(
      0.25,
    );
  });
});

test("a reading that the scale hardly tells counts for less", () => {
  const readings = [
    { value: 1, error: 0 },
    { value: 1, error: 0 },
    { value: 5, error: 20 },
  ];
  const two = estimate(UNIT, exact([1, 1]), "difference").value;
  expect(Math.abs(estimate(UNIT, readings, "difference").value - two)).toBeLessThan(0.2);
});

test("the order of the jobs moves nothing, to the last digit", () => {
  const jobs = exact([0.011, 0.019, 0.0151, 0.0163, 0.0142, 0.0171]);
  const turned = [...jobs.slice(3), ...jobs.slice(0, 3)].reverse();
  expect(estimate(OWN, turned, "ratio")).toEqual(estimate(OWN, jobs, "ratio"));
});

test("units move nothing: hours and minutes come to the same", () => {
  const hours = estimate({ value: 3, low: 1.5, high: 6 }, exact([4, 4.5, 5]), "ratio");
  const minutes = estimate({ value: 180, low: 90, high: 360 }, exact([240, 270, 300]), "ratio");
  expect(minutes.value / 60).toBeCloseTo(hours.value, 12);
  expect(minutes.high / 60).toBeCloseTo(hours.high, 12);
});

test("a reading that the scale hardly tells does not make the others seem alike", () => {
  const others = exact([4.4, 4.8, 5.2, 5.6]);
  const coarse = { value: 5, error: 3 };
  const own = { value: 5, low: 4, high: 6 };
  const without = estimate(own, others, "difference").apart ?? 0;
  const with1 = estimate(own, [...others, coarse], "difference").apart ?? 0;
  // Deviation of the four: the root of 0.8/3.
  expect(without).toBeCloseTo(Math.sqrt(0.8 / 3), 12);
  expect(Math.abs(with1 / without - 1)).toBeLessThan(0.1);
});
