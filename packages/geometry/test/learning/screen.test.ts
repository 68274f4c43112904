import { describe, expect, test } from "vitest";
import { Chance } from "../../../../tests/reference/random/chance.js";
import { figureOf } from "../../src/learning/figures.js";
import type { JobRecord, JobWeighing } from "../../src/learning/job-record.js";
import { learnShop } from "../../src/learning/learn-shop.js";
import type { LeftOut } from "../../src/learning/screen.js";
import { describeIssue } from "../../src/units/describe-issue.js";
import { record, type SimulatedJob, simulateJobs, type TrueShop, weighed } from "./jobs.js";
import { present } from "./present.js";

const SHOP: TrueShop = { model: "fraction", forging: 0.015, welding: 0.015, scatter: 0.1 };
const FORGING = "losses.scalePerHeat";

const recordsOf = (jobs: readonly SimulatedJob[]): JobRecord[] => jobs.map((job) => job.record);

function learnt(records: readonly JobRecord[]) {
  const { figures, leftOut } = learnShop(records, present());
  return {
    estimate: figures.find(({ path }) => path === FORGING)?.estimate,
    left: leftOut.filter(({ of }) => of === FORGING),
  };
}

/** The record with one weighing changed. */
const changed = (
  job: JobRecord,
  stage: JobWeighing["stage"],
  change: (weighing: JobWeighing) => JobWeighing,
): JobRecord => ({
  ...job,
  weighings: job.weighings.map((one) => (one.stage === stage ? change(one) : one)),
});

const words = (left: readonly LeftOut[]): string[] => left.map(({ issue }) => describeIssue(issue, "mm"));

/** A billet of 760 g, nine heats of 1.2 %: 681.7 g. */
const good = record({
  weighings: [weighed("billet", 760), weighed("forged", 682, { heats: 9 })],
});

const forged = (steel: number, heats = 9): JobRecord =>
  record({ weighings: [weighed("billet", 760), weighed("forged", steel, { heats })] });

describe("a record that cannot be", () => {
  test.each<[string, JobRecord, string, string]>([
    [
      "whose mass rose",
      forged(788),
      "mass-rose",
      "the mass rose from 760 g (dressed billet) to 788 g (forged blade)",
    ],
    [
      "that lost nothing",
      forged(760),
      "nothing-lost",
      "nothing was lost from 760 g (dressed billet) to 760 g (forged blade): scale was weighed with it",
    ],
    [
      "that rose within what a scale may slip",
      forged(770),
      "nothing-lost",
      "nothing was lost from 760 g (dressed billet) to 770 g (forged blade): scale was weighed with it",
    ],
    [
      "that lost more than any fire takes",
      forged(200),
      "lost-too-much",
      "from 760 g (dressed billet) to 200 g (forged blade) is 13.8 % a heat, more than any fire takes",
    ],
    [
      "without heats",
      forged(682, 0),
      "no-heats",
      "the heats between dressed billet and forged blade are not written down",
    ],
  ])("%s is left out with the reason", (_, bad, code, text) => {
    const { left, estimate } = learnt([bad]);
    expect(left.map(({ issue }) => issue.code)).toEqual([code]);
    expect(words(left)).toEqual([text]);
    expect(estimate?.jobs).toBe(0);
  });

  test("is one whose mass rose by more than this shop's own limit at its gates", () => {
    const base = present();
    const codes = (massRise: number) =>
      learnShop([forged(777)], { ...base, shop: { ...base.shop, gates: { massRise } } }).leftOut.map(
        ({ issue }) => issue.code,
      );
    // 2.2 % more.
    expect(codes(0.01)).toEqual(["mass-rose"]);
    expect(codes(0.03)).toEqual(["nothing-lost"]);
  });

  test("names its file and its day", () => {
    const { left } = learnt([good, forged(788)]);
    expect(left).toMatchObject([{ of: FORGING, file: "a.record.yaml", on: "2026-11-28" }]);
  });
});

describe("a slip of the hand, with one other record beside it, is named", () => {
  test.each<[string, JobRecord, string, string]>([
    [
      "the point of the forged mass",
      forged(6820),
      "slipped-digit",
      "the mass rose from 760 g (dressed billet) to 6820 g (forged blade); the point slipped? 7600 g (dressed billet) or 682 g (forged blade) would fit",
    ],
    [
      "a digit of the forged mass left out",
      forged(68),
      "slipped-digit",
      "from 760 g (dressed billet) to 68 g (forged blade) is 23.5 % a heat, more than any fire takes; the point slipped? 76 g (dressed billet) or 680 g (forged blade) would fit",
    ],
    [
      "ounces without their unit",
      forged(24.05),
      "wrong-unit",
      "from 760 g (dressed billet) to 24.1 g (forged blade) is 31.9 % a heat, more than any fire takes; ounces written as grams? 681.8 g (forged blade) would fit",
    ],
    [
      "two digits of the forged mass",
      forged(268),
      "swapped-digits",
      "from 760 g (dressed billet) to 268 g (forged blade) is 10.9 % a heat, more than any fire takes; two digits changed places? 628 g (forged blade) would fit",
    ],
    [
      "heats ten times as many",
      forged(682, 90),
      "slipped-digit",
      "0.1 % is far from what the shop reckons with, 1.2 %; the point slipped? 9 (heats) would fit",
    ],
  ])("%s", (_, bad, code, text) => {
    const { left } = learnt([good, { ...bad, file: "b.record.yaml" }]);
    expect(left.map(({ issue, file }) => [issue.code, file])).toEqual([[code, "b.record.yaml"]]);
    expect(words(left)).toEqual([text]);
  });

  test("of one number, where the other weighings of the record tell which", () => {
    const bad = record({
      weighings: [
        weighed("cut", 905),
        weighed("billet", 760),
        weighed("forged", 6820, { heats: 9 }),
        weighed("ready", 560),
      ],
    });
    expect(words(learnt([bad]).left)).toEqual([
      "the mass rose from 760 g (dressed billet) to 6820 g (forged blade); the point slipped? 682 g (forged blade) would fit",
    ]);
  });
});

test("which of two numbers slipped is told by masses that only fall, but for what this shop grants", () => {
  // Either the billet was 90 g or the blade 82 g; in the first case the finished blade rose by a fortieth.
  const bad = record({
    weighings: [weighed("billet", 900), weighed("forged", 82, { heats: 9 }), weighed("finished", 84)],
  });
  const base = present();
  const said = (massRise: number) =>
    words(learnShop([bad], { ...base, shop: { ...base.shop, gates: { massRise } } }).leftOut)[0];
  expect(said(0.01)).toContain("the point slipped? 820 g (forged blade) would fit");
  expect(said(0.05)).toContain("the point slipped? 90 g (dressed billet) or 820 g (forged blade) would fit");
});

describe("a mass that was doubted and weighed again", () => {
  test("is no slip, but steel does not grow for that", () => {
    const bad = record({
      weighings: [
        { ...weighed("billet", 760), confirmed: true },
        { ...weighed("forged", 6820, { heats: 9 }), confirmed: true },
      ],
    });
    expect(learnt([bad]).left.map(({ issue }) => issue.code)).toEqual(["mass-rose"]);
  });
});

/** What is slipped, how many different ways of it, and what it is called where it can be told. */
const SLIPS: readonly [string, (job: JobRecord) => JobRecord][] = [
  ["forged mass × 10", (job) => changed(job, "forged", (one) => ({ ...one, steel: one.steel * 10 }))],
  [
    "forged mass ÷ 10",
    (job) => changed(job, "forged", (one) => ({ ...one, steel: Math.round(one.steel / 10) })),
  ],
  ["billet × 10", (job) => changed(job, "billet", (one) => ({ ...one, steel: one.steel * 10 }))],
  ["billet ÷ 10", (job) => changed(job, "billet", (one) => ({ ...one, steel: Math.round(one.steel / 10) }))],
  ["ounces as grams", (job) => changed(job, "forged", (one) => ({ ...one, steel: one.steel / 28.3495 }))],
  ["heats × 10", (job) => changed(job, "forged", (one) => ({ ...one, heats: (one.heats ?? 0) * 10 }))],
];

describe.each([3, 5, 10])("of %d records one with a slip", (jobs) => {
  test.each(SLIPS)("(%s) moves the answer no further than leaving it out", (_, slip) => {
    for (let seed = 1; seed <= 40; seed++) {
      const records = recordsOf(simulateJobs(SHOP, jobs, 900 + seed));
      const chance = new Chance(seed);
      const at = Math.floor(chance.between(0, jobs));
      const with1 = learnt(records.map((one, index) => (index === at ? slip(one) : one)));
      const without = learnt(records.filter((_one, index) => index !== at));
      expect(with1.estimate).toEqual(without.estimate);
      expect(with1.left).toHaveLength(1);
    }
  });
});

test.each([5, 8, 10])("of %d records one with a hundred read for another moves nothing either", (jobs) => {
  for (let seed = 1; seed <= 40; seed++) {
    const records = recordsOf(simulateJobs(SHOP, jobs, 900 + seed));
    const slipped = records.map((one, index) =>
      index === 0 ? changed(one, "forged", ({ steel, ...rest }) => ({ ...rest, steel: steel - 300 })) : one,
    );
    expect(learnt(slipped).estimate).toEqual(learnt(records.slice(1)).estimate);
  }
});

describe("a handful of records", () => {
  const losses = [0.0145, 0.015, 0.0155, 0.0148, 0.0152, 0.05];
  const records = losses.map((loss, index) =>
    record(
      {
        weighings: [
          weighed("billet", 1000),
          weighed("forged", Math.round(1000 * (1 - loss) ** 8), { heats: 8 }),
        ],
      },
      `${index}.record.yaml`,
    ),
  );

  test("outvotes one that is possible, but far from all the others", () => {
    const { left, estimate } = learnt(records);
    expect(left.map(({ file, issue }) => [file, issue.code])).toEqual([["5.record.yaml", "far-off"]]);
    expect(words(left)).toEqual(["5 % is far from the other jobs, which lie about 1.5 %"]);
    expect(estimate).toEqual(learnt(records.slice(0, 5)).estimate);
  });

  test("but four of them do not: it counts, and the band says how unsure that is", () => {
    const few = learnt([...records.slice(0, 3), ...records.slice(5)]);
    expect(few.left).toEqual([]);
    expect((few.estimate?.high ?? 0) / (few.estimate?.low ?? 1)).toBeGreaterThan(5);
  });

  test("that are nearly alike do not make one of them odd that differs as jobs do", () => {
    const alike = [0.015, 0.015, 0.015, 0.015, 0.015, 0.0185].map((loss, index) =>
      record(
        { weighings: [weighed("billet", 1000), weighed("forged", 1000 * (1 - loss) ** 8, { heats: 8 })] },
        `${index}.record.yaml`,
      ),
    );
    expect(learnt(alike).left).toEqual([]);
  });

  test("that all differ from what the shop reckons with outvote the shop", () => {
    const other = [0.038, 0.042, 0.04, 0.041, 0.039].map((loss, index) =>
      record(
        {
          weighings: [
            weighed("billet", 1000),
            weighed("forged", Math.round(1000 * (1 - loss) ** 8), { heats: 8 }),
          ],
        },
        `${index}.record.yaml`,
      ),
    );
    const { left, estimate } = learnt(other);
    expect(left).toEqual([]);
    expect(estimate?.value).toBeGreaterThan(0.032);
    expect(estimate?.high).toBeGreaterThan(0.04);
  });
});

test("figures are called by what they are", () => {
  expect(figureOf("work.hours.forge").words).toBe("hours of forging");
});
