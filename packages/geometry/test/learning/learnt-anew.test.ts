import { describe, expect, test } from "vitest";
import { Chance } from "../../../../tests/reference/random/chance.js";
import { estimateAnew } from "../../src/learning/estimate.js";
import type { JobRecord } from "../../src/learning/job-record.js";
import { type LearntShop, learnShop } from "../../src/learning/learn-shop.js";
import { normal, record } from "./jobs.js";
import { present } from "./present.js";

const etched = (hours: number, i: number): JobRecord =>
  record({ hours: [{ task: "etch", hours, on: "2026-11-28" }] }, `${i}.record.yaml`);

const figureOf = (hours: readonly number[]): LearntShop["figures"][number] | undefined =>
  learnShop(hours.map(etched), present()).figures[0];

/** Hours of a task that the shop has no figure of. */
describe("the band of a new figure", () => {
  const SHOPS = 2000;

  /** Share of shops whose next job lies within. */
  function held(jobs: number, spread: number): number {
    const chance = new Chance(800 + jobs);
    let within = 0;
    for (let shop = 0; shop < SHOPS; shop++) {
      const hours = (): number => 2 * Math.exp(spread * normal(chance));
      const { low = 0, high = 0 } = figureOf(Array.from({ length: jobs }, hours))?.estimate ?? {};
      const next = hours();
      if (next >= low && next <= high) within++;
    }
    return within / SHOPS;
  }

  // Two standard errors of 2000 draws are 1 %.
  test.each([2, 3, 4, 5, 10, 20])(
    "holds the next job 95 times of 100 where %d jobs lie 50 % apart",
    (jobs) => {
      expect(held(jobs, 0.5)).toBeGreaterThan(0.93);
      expect(held(jobs, 0.5)).toBeLessThan(0.99);
    },
  );

  test.each([2, 5, 10])(
    "holds it oftener where %d jobs lie 25 % apart, as nothing said beforehand",
    (jobs) => {
      expect(held(jobs, 0.25)).toBeGreaterThan(0.95);
    },
  );

  test("narrows to what many jobs show", () => {
    const chance = new Chance(9);
    const hours = Array.from({ length: 200 }, () => 2 * Math.exp(0.15 * normal(chance)));
    const { low = 0, high = 0 } = figureOf(hours)?.estimate ?? {};
    // 1.96 standard deviations either way.
    expect(Math.abs(Math.log(high / low) / 2 / (1.96 * 0.15) - 1)).toBeLessThan(0.15);
  });
});

test("the figure is the jobs' own mean by ratio, wherever the band that stands in lies", () => {
  const jobs = [1, 2, 4, 8].map((value) => ({ value, error: 0 }));
  const told = [0.5, 3, 40].map((value) =>
    estimateAnew({ value, low: value / 2, high: value * 2 }, jobs, "ratio"),
  );
  for (const { value, low, high, ownWeight } of told) {
    expect(value).toBeCloseTo(Math.sqrt(8), 9);
    expect(low).toBeCloseTo(told[0]?.low ?? 0, 9);
    expect(high).toBeCloseTo(told[0]?.high ?? 0, 9);
    expect(ownWeight).toBe(0);
  }
});

test("each job is foretold from the others alone: as if its record had not been there", () => {
  const chance = new Chance(10);
  let [outside, judged] = [0, 0];
  for (let shop = 0; shop < 300; shop++) {
    const hours = Array.from({ length: 4 }, () => 2 * Math.exp(0.6 * normal(chance)));
    const figure = figureOf(hours);
    const rests = hours.map((_, i) => figureOf(hours.toSpliced(i, 1)));
    // What is left out counts nowhere, nor is it foretold.
    if (figure?.jobs.length !== 4 || rests.some((rest) => rest?.jobs.length !== 3)) continue;
    const within = hours.filter((each, i) => {
      const { low = 0, high = 0 } = rests[i]?.estimate ?? {};
      return each >= low && each <= high;
    }).length;
    expect(figure.heldOut).toEqual({ jobs: 4, within });
    [outside, judged] = [outside + 4 - within, judged + 1];
  }
  expect(judged).toBeGreaterThan(100);
  expect(outside).toBeGreaterThan(10);
});
