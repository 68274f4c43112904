import { describe, expect, test } from "vitest";
import { estimate, type Sample } from "../../src/learning/estimate.js";
import { ownFigure } from "../../src/learning/figures.js";
import { holdOut } from "../../src/learning/held-out.js";
import type { JobRecord } from "../../src/learning/job-record.js";
import { learnShop } from "../../src/learning/learn-shop.js";
import { exactly } from "../stock/fixtures.js";
import { record, simulateJobs, weighed } from "./jobs.js";
import { present } from "./present.js";

const FORGING = "losses.scalePerHeat";

const jobs = (losses: readonly number[], steel = "1084", prefix = "a"): JobRecord[] =>
  losses.map((loss, index) =>
    record(
      {
        steel,
        weighings: [weighed("billet", 1000), weighed("forged", 1000 * (1 - loss) ** 8, { heats: 8 })],
      },
      `${prefix}${index}.record.yaml`,
    ),
  );

const estimateOf = (records: readonly JobRecord[], shop = present()) =>
  learnShop(records, shop).figures.find(({ path }) => path === FORGING)?.estimate;

describe("learning again", () => {
  const records = jobs([0.016, 0.018, 0.017, 0.019]);
  const once = estimateOf(records);
  const { value = 0, low = 0, high = 0 } = once ?? {};
  const base = present();
  const written = {
    ...base,
    shop: { ...base.shop, losses: { ...base.shop.losses, scalePerHeat: { value, low, high } } },
  };

  test("from the same records, with what stood there before, changes nothing", () => {
    const before = { [FORGING]: base.shop.losses.scalePerHeat };
    expect(estimateOf(records, { ...written, before })).toEqual(once);
  });

  test("without it would count the same records twice", () => {
    const twice = estimateOf(records, written);
    expect(twice?.value).toBeGreaterThan(value * 1.005);
  });
});

describe("what a shop uses", () => {
  const { records, skins } = {
    records: simulateJobs({ model: "fraction", forging: 0.015, welding: 0.02, scatter: 0.1 }, 4, 1),
    skins: simulateJobs({ model: "skin", forging: 0.05, welding: 0.12, scatter: 0.1 }, 4, 1),
  };
  const paths = (which: typeof records, model: "fraction" | "skin") =>
    learnShop(
      which.map((job) => job.record),
      present(model),
    ).figures.map(({ path }) => path);

  test("is learnt: shares where scale is a share, skins where it is a skin", () => {
    expect(paths(records, "fraction")).toEqual([FORGING, "losses.scalePerWeldingHeat"]);
    expect(paths(skins, "skin")).toEqual(["losses.skinPerHeat", "losses.skinPerWeldingHeat"]);
  });

  test("is not learnt where the shop has switched it off with 0", () => {
    const base = present();
    const off = {
      ...base,
      shop: { ...base.shop, losses: { ...base.shop.losses, scalePerHeat: exactly(0) } },
    };
    expect(learnShop(jobs([0.01, 0.012, 0.011]), off).figures).toEqual([]);
  });
});

test("a loss of the shop file without a band gets that of the published default, in proportion", () => {
  const base = present();
  const shop = {
    ...base,
    shop: { ...base.shop, losses: { ...base.shop.losses, scalePerHeat: exactly(0.024) } },
  };
  expect(ownFigure(FORGING, shop)).toEqual({ value: 0.024, low: 0.012, high: 0.04 });
});

describe("steels", () => {
  const plain = jobs([0.012, 0.0125, 0.0115], "1084", "a");
  const spring = jobs([0.018, 0.0185, 0.0175], "5160", "b");

  test("are told apart where each has jobs enough", () => {
    const [figure] = learnShop([...plain, ...spring], present()).figures;
    expect(figure?.bySteel.map(({ steel, jobs: n }) => [steel, n])).toEqual([
      ["1084", 3],
      ["5160", 3],
    ]);
    expect(figure?.bySteel.map(({ value }) => Math.round(value * 1e4))).toEqual([120, 180]);
  });

  test("are not where one has too few, or records do not say", () => {
    expect(learnShop([...plain, ...spring.slice(0, 2)], present()).figures[0]?.bySteel).toEqual([]);
    const unsaid = plain.map(({ steel: _steel, ...rest }) => rest);
    expect(learnShop(unsaid, present()).figures[0]?.bySteel).toEqual([]);
  });
});

describe("holding out one job after the other", () => {
  const own = { value: 0.012, low: 0.006, high: 0.02 };
  const exact = (values: readonly number[]) => values.map((value) => ({ value, error: 0 }));
  const foretell = (others: readonly Sample[]) => estimate(own, others, "ratio");

  test("needs three", () => {
    expect(holdOut(foretell, exact([0.01, 0.02]), "ratio")).toBeUndefined();
    expect(holdOut(foretell, exact([0.012, 0.013, 0.012]), "ratio")).toEqual({ jobs: 3, within: 3 });
  });

  test("finds the one that the others did not foretell", () => {
    expect(holdOut(foretell, exact([0.012, 0.013, 0.011, 0.012, 0.06]), "ratio")).toEqual({
      jobs: 5,
      within: 4,
    });
  });
});

describe("the two ways of counting scale", () => {
  /** Jobs of one fire, whose blades and billets have very different surfaces. */
  const jobsOf = (model: "fraction" | "skin") =>
    simulateJobs(
      { model, forging: model === "skin" ? 0.05 : 0.015, welding: 0.02, scatter: 0.03 },
      12,
      7,
    ).map((job) => job.record);

  test.each(["fraction", "skin"] as const)(
    "jobs that lose by %s lie nearest together counted so",
    (model) => {
      const other = model === "skin" ? "fraction" : "skin";
      const used = learnShop(jobsOf(model), present(model)).models;
      expect(used).toMatchObject({ other, jobs: 12 });
      expect(used?.otherApart).toBeGreaterThan(1.5 * (used?.apart ?? 0));
      const wrong = learnShop(jobsOf(model), present(other)).models;
      expect(wrong?.other).toBe(model);
      expect(wrong?.otherApart).toBeLessThan((wrong?.apart ?? 0) / 1.5);
    },
  );

  test("are not compared over less than five jobs", () => {
    expect(learnShop(jobsOf("skin").slice(0, 4), present("skin")).models).toBeUndefined();
  });
});

test("no records say nothing", () => {
  expect(learnShop([], present())).toEqual({ figures: [], leftOut: [], models: undefined });
});
