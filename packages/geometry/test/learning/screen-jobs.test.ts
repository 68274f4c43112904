import { describe, expect, test } from "vitest";
import { Chance } from "../../../../tests/reference/random/chance.js";
import type { Candidate } from "../../src/learning/candidate.js";
import type { Sample } from "../../src/learning/estimate.js";
import { hoursAnew, withBand } from "../../src/learning/figures.js";
import type { JobRecord } from "../../src/learning/job-record.js";
import { learnShop } from "../../src/learning/learn-shop.js";
import { jobsOf } from "../../src/learning/learnt-job.js";
import { HANDFUL, isFar, median, middleOfJobs } from "../../src/learning/outliers.js";
import { screen } from "../../src/learning/screen.js";
import { grindingCandidates, hoursCandidates } from "../../src/learning/work-candidates.js";
import { describeIssue } from "../../src/units/describe-issue.js";
import { normal, record } from "./jobs.js";
import { present } from "./present.js";

const FACE = "allowances.face";
const OWN = withBand(FACE, 0.5);

/** A job of which so much came off each face, place by place. */
const ground = (file: string, taken: readonly number[]): JobRecord =>
  record(
    {
      sizes: taken.flatMap((each, i) => [
        { stage: "forged" as const, x: 10 * i, thickness: 4 + 2 * each, on: "2026-11-28" },
        { stage: "ready" as const, x: 10 * i, thickness: 4, on: "2026-11-30" },
      ]),
    },
    file,
  );

const leftOutOf = (records: readonly JobRecord[]) => learnShop(records, present()).leftOut;

describe("a record of many places", () => {
  const near = Array.from({ length: 10 }, (_, i) => 0.398 + 0.0005 * i);

  test("is one job among five, and does not outvote the others", () => {
    const others = [0.55, 0.62, 0.3, 0.66].map((each, i) => ground(`${i}.record.yaml`, [each]));
    expect(leftOutOf([ground("a.record.yaml", near), ...others])).toEqual([]);
  });

  /** Share of good jobs that lose a reading, where jobs lie 25 % apart and places of one job 3 %. */
  function lost(places: readonly number[]): number {
    const RUNS = 300;
    const chance = new Chance(41);
    let count = 0;
    for (let run = 0; run < RUNS; run++) {
      const records = places.map((many, i) => {
        const middle = 0.5 * Math.exp(0.25 * normal(chance));
        const each = Array.from({ length: many }, () => middle * Math.exp(0.03 * normal(chance)));
        return ground(`${i}.record.yaml`, each);
      });
      count += new Set(leftOutOf(records).map(({ file }) => file)).size;
    }
    return count / (RUNS * places.length);
  }

  test.each([
    [[1, 1, 1, 1, 1]],
    [[8, 1, 1, 1, 1, 1]],
    [[10, 1, 1, 1, 1]],
    [[1, 2, 3, 4, 5, 6]],
    [[12, 12, 1, 1, 1, 1, 1]],
  ])("costs fewer than 3 good jobs of 100, with %j places a job", (places) => {
    expect(lost(places)).toBeLessThan(0.03);
  });
});

describe("what is kept", () => {
  /** Jobs of a very wild shop: one place to three each. */
  const wild = (chance: Chance): JobRecord[] =>
    Array.from({ length: Math.floor(chance.between(2, 10)) }, (_, i) => {
      const off = chance.unit() < 0.3 ? chance.between(-2.5, 2.5) : 0;
      const places = Math.floor(chance.between(1, 4));
      const taken = Array.from({ length: places }, () => 0.5 * Math.exp(off + 0.3 * normal(chance)));
      return ground(`${i}.record.yaml`, taken);
    });
  const candidatesOf = (records: readonly JobRecord[]): Candidate[] => records.flatMap(grindingCandidates);
  const anew = (jobs: readonly Sample[]) => withBand(FACE, median(jobs.map(({ value }) => value)));

  test("of a handful is not far from the others that are kept", () => {
    const chance = new Chance(6);
    let odd = 0;
    for (let run = 0; run < 1000; run++) {
      const { kept, leftOut } = screen(FACE, OWN, candidatesOf(wild(chance)));
      odd += leftOut.length;
      const jobs = jobsOf(kept);
      if (jobs.length < HANDFUL) continue;
      const middle = middleOfJobs(OWN, jobs, "ratio");
      const far = kept.filter(({ candidate, value }) => isFar({ value, error: candidate.error }, middle));
      expect(far).toEqual([]);
    }
    expect(odd).toBeGreaterThan(500);
  });

  test.each([
    ["that the shop has", OWN],
    ["that is new", anew],
  ])("comes out the same where what was left out had never been there: a figure %s", (_, own) => {
    const chance = new Chance(66);
    for (let run = 0; run < 1000; run++) {
      const { kept } = screen(FACE, own, candidatesOf(wild(chance)));
      const again = screen(
        FACE,
        own,
        kept.map(({ candidate }) => candidate),
      );
      expect(again.kept).toEqual(kept);
      expect(again.leftOut).toEqual([]);
    }
  });

  test("does not depend on the order of the records", () => {
    const chance = new Chance(67);
    for (let run = 0; run < 300; run++) {
      const records = wild(chance);
      const names = (which: readonly JobRecord[]) =>
        screen(FACE, OWN, candidatesOf(which))
          .kept.map(({ candidate, value }) => `${candidate.file} ${value}`)
          .sort();
      expect(names([...records].reverse())).toEqual(names(records));
    }
  });

  test("of six faces that were once let in and thrown out by turns is what lies together", () => {
    const faces = [0.506, 0.792, 0.512, 1.421, 0.482, 0.112];
    const records = faces.map((each, i) => ground(`${i}.record.yaml`, [each]));
    const { kept } = screen(FACE, OWN, candidatesOf(records));
    const values = kept.map(({ value }) => value);
    // Few are left after the two wildest; then only a slip speaks against one of them.
    expect(values.map((value) => Number(value.toFixed(3)))).toEqual([0.506, 0.792, 0.512, 0.482]);
    expect(leftOutOf(records)).toHaveLength(2);
  });
});

describe("hours that the shop has none of", () => {
  const etched = (hours: number, i: number): JobRecord =>
    record({ hours: [{ task: "etch", hours, on: "2026-11-28" }] }, `${i}.record.yaml`);

  test("a few of them are held against their own middle, and that is said", () => {
    const [left, ...more] = leftOutOf([2, 2.5, 120].map(etched));
    expect(more).toEqual([]);
    expect(left?.issue.code).toBe("wrong-unit");
    expect(left && describeIssue(left.issue, "mm")).toBe(
      "120 hours is far from the middle of the jobs, 2.25 hours; minutes written as hours? 2 (etching) would fit",
    );
  });

  test("the slip moves nothing", () => {
    const own = (jobs: readonly Sample[]) => hoursAnew(median(jobs.map(({ value }) => value)));
    const { kept } = screen("work.hours.etch", own, [2, 2.5, 120].map(etched).flatMap(hoursCandidates));
    expect(kept.map(({ value }) => value)).toEqual([2, 2.5]);
    const estimateOf = (hours: readonly number[]) =>
      learnShop(hours.map(etched), present()).figures[0]?.estimate;
    expect(estimateOf([2, 2.5, 120])).toEqual(estimateOf([2, 2.5]));
  });
});
