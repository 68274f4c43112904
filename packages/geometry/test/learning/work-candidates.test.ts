import { describe, expect, test } from "vitest";
import type { Candidate } from "../../src/learning/candidate.js";
import type { JobDrawn, JobSize } from "../../src/learning/job-record.js";
import { learnShop } from "../../src/learning/learn-shop.js";
import { grindingCandidates, hoursCandidates, spreadCandidates } from "../../src/learning/work-candidates.js";
import { spreadOfPass } from "../../src/stock/forge/spread-share.js";
import { squeezed } from "../../src/stock/simulation/flat-step.js";
import { describeIssue } from "../../src/units/describe-issue.js";
import { record } from "./jobs.js";
import { present } from "./present.js";

const ON = "2026-11-28";

const valuesOf = (candidates: readonly Candidate[]): (number | undefined)[] =>
  candidates.map(({ compute, readings }) => {
    const outcome = compute(readings.map(({ value }) => value));
    return "value" in outcome ? outcome.value : undefined;
  });

describe("spread", () => {
  const drawn = (share: number, more: Partial<JobDrawn> = {}): JobDrawn => {
    const { width } = spreadOfPass(40, 30, 20, share);
    return {
      from: { height: 40, thickness: 30 },
      to: { height: width, thickness: 20 },
      welding: false,
      fullers: false,
      on: ON,
      ...more,
    };
  };

  test("undoes the spread of a pass, and a squeeze that conserves the steel", () => {
    for (const share of [0, 0.14, 0.3, 0.45, 0.85]) {
      expect(valuesOf(spreadCandidates(record({ drawn: [drawn(share)] })))[0]).toBeCloseTo(share, 12);
      const piece = squeezed(0.6, share).apply({ width: 38, height: 24, length: 120 });
      const to = { height: piece.width, thickness: piece.height };
      const one = drawn(0, { from: { height: 38, thickness: 24 }, to });
      expect(valuesOf(spreadCandidates(record({ drawn: [one] })))[0]).toBeCloseTo(share, 12);
    }
  });

  test("at welding heat is the weld's, else that of forging; fullers are left aside", () => {
    const candidates = spreadCandidates(
      record({ drawn: [drawn(0.3, { welding: true }), drawn(0.4), drawn(0.8, { fullers: true })] }),
    );
    expect(candidates.map(({ of }) => of)).toEqual([
      "limits.weldSpreadShare",
      "limits.forge.bevelSpreadShare",
    ]);
  });

  test("of nothing is a figure like another, and learnt away from", () => {
    const base = present();
    const limits = { ...base.shop.limits, weldSpreadShare: 0 };
    const shop = { ...base, shop: { ...base.shop, limits } };
    const records = ["a", "b", "c"].map((file) => record({ drawn: [drawn(0.2, { welding: true })] }, file));
    const [figure] = learnShop(records, shop).figures;
    expect(figure?.path).toBe("limits.weldSpreadShare");
    expect(figure?.own).toEqual({ value: 0, low: -0.15, high: 0.15 });
    expect(figure?.isNew).toBe(false);
    expect(figure?.estimate.value).toBeGreaterThan(0.1);
    expect(figure?.estimate.value).toBeLessThan(0.2);
  });

  test("of more than all the thinning is no steel's", () => {
    const bad = record({ drawn: [drawn(0.4, { to: { height: 84, thickness: 20 } })] });
    const { leftOut } = learnShop([bad], present());
    expect(leftOut.map(({ issue }) => issue.code)).toEqual(["swapped-digits"]);
    expect(describeIssue(leftOut[0]?.issue ?? { code: "", path: "", text: "" }, "mm")).toBe(
      "from 40 mm × 30 mm to 84 mm × 20 mm no steel is drawn: more than all of the thinning went into height, or height was lost; two digits changed places? 48 mm (height after) would fit",
    );
  });
});

describe("grinding", () => {
  const size = (stage: JobSize["stage"], x: number, thickness: number): JobSize => ({
    stage,
    x,
    thickness,
    on: ON,
  });

  test("takes half of what a place got thinner off each face, place by place", () => {
    const sizes = [
      size("forged", 0, 5.8),
      size("forged", 135, 4.8),
      size("ready", 0.5, 4.9),
      size("ready", 135, 3.8),
      size("finished", 135, 3.6),
    ];
    const candidates = grindingCandidates(record({ sizes }));
    expect(candidates.map(({ of }) => of)).toEqual([
      "allowances.face",
      "allowances.face",
      "allowances.afterHardening",
    ]);
    expect(valuesOf(candidates).map((value) => Number(value?.toFixed(6)))).toEqual([0.45, 0.5, 0.1]);
  });

  test("counts a reading once: two later ones beside one earlier are told by the nearest alone", () => {
    const taken = (sizes: readonly JobSize[]) =>
      valuesOf(grindingCandidates(record({ sizes }))).map((value) => Number(value?.toFixed(6)));
    const before = size("forged", 10, 5.8);
    const [near, far] = [size("ready", 9, 4.9), size("ready", 11.5, 4.7)];
    expect(taken([before, near, far])).toEqual([0.45]);
    expect(taken([before, far, near])).toEqual([0.45]);
    // Each has its own: 13 is nearer to 11.5 than 10 is.
    expect(taken([before, size("forged", 13, 5.7), near, far])).toEqual([0.45, 0.5]);
    // A nearer one takes the first away; the second is still at the same place.
    expect(taken([size("forged", 10, 5.8), size("forged", 8, 5.6), near, size("ready", 10, 5)])).toEqual([
      0.35, 0.4,
    ]);
  });

  test("does not compare places that are not the same, nor the tang, nor flats left from the hammer", () => {
    expect(grindingCandidates(record({ sizes: [size("forged", 0, 5.8), size("ready", 3, 4.9)] }))).toEqual(
      [],
    );
    expect(
      grindingCandidates(record({ sizes: [size("forged", -40, 5.8), size("ready", -40, 4.9)] })),
    ).toEqual([]);
    const plan = { flatsKept: true };
    expect(
      grindingCandidates(record({ plan, sizes: [size("forged", 0, 5.8), size("ready", 0, 4.9)] })),
    ).toEqual([]);
  });

  test("that made a place thicker is left out", () => {
    const bad = record({ sizes: [size("forged", 0, 4.9), size("ready", 0, 5.8)] });
    const { leftOut } = learnShop([bad], present());
    expect(describeIssue(leftOut[0]?.issue ?? { code: "", path: "", text: "" }, "mm")).toContain(
      "at the heel 5.8 mm (ready to harden) is no thinner than 4.9 mm (forged blade)",
    );
  });

  test("of one job is one figure, however many places were read", () => {
    const job = (file: string, taken: readonly number[]) =>
      record(
        {
          sizes: taken.flatMap((each, i) => [size("forged", 40 * i, 4 + 2 * each), size("ready", 40 * i, 4)]),
        },
        file,
      );
    const { figures } = learnShop([job("a", [0.6, 0.7, 0.8]), job("b", [0.9])], present());
    expect(figures[0]?.jobs.map(({ value }) => Number(value.toFixed(9)))).toEqual([0.7, 0.9]);
    expect(figures[0]?.estimate.jobs).toBe(2);
  });
});

describe("hours", () => {
  const job = (file: string, ...hours: readonly (readonly ["forge" | "etch", number])[]) =>
    record({ hours: hours.map(([task, each]) => ({ task, hours: each, on: ON })) }, file);

  test("of a task are those of all its entries together", () => {
    expect(valuesOf(hoursCandidates(job("a", ["forge", 2], ["etch", 1], ["forge", 1.5])))).toEqual([3.5, 1]);
  });

  test("of a task that was done several times are those of each time", () => {
    const twice = { ...job("a", ["forge", 6]), timesDone: { forge: 3 } };
    expect(valuesOf(hoursCandidates(twice))).toEqual([2]);
  });

  test("move the shop's own by as much as jobs agree; one job moves nothing", () => {
    const one = learnShop([job("a", ["forge", 4.5])], present()).figures[0];
    expect(one?.estimate.value).toBe(3);
    const many = learnShop(
      ["a", "b", "c", "d", "e", "f", "g", "h", "i", "j"].map((file) => job(file, ["forge", 4.5])),
      present(),
    ).figures[0];
    expect(many?.path).toBe("work.hours.forge");
    expect(Math.abs((many?.estimate.value ?? 0) / 4.5 - 1)).toBeLessThan(0.05);
  });

  test("in minutes are named", () => {
    const { leftOut } = learnShop([job("a", ["forge", 200]), job("b", ["forge", 3])], present());
    expect(leftOut.map(({ file, issue }) => [file, issue.code])).toEqual([["a", "wrong-unit"]]);
    expect(describeIssue(leftOut[0]?.issue ?? { code: "", path: "", text: "" }, "mm")).toBe(
      "200 hours is far from what the shop reckons with, 3 hours; minutes written as hours? 3.33 (forging) would fit",
    );
  });

  test("of a task that the shop has none of come from the jobs alone, once there are two", () => {
    const one = learnShop([job("a", ["etch", 2])], present()).figures[0];
    const two = learnShop([job("a", ["etch", 2]), job("b", ["etch", 2.5])], present()).figures[0];
    expect([one?.isNew, one?.estimate.ownWeight, two?.isNew]).toEqual([true, 1, true]);
    expect(two?.estimate.value).toBeGreaterThan(2);
    expect(two?.estimate.value).toBeLessThan(2.5);
  });

  test("that the shop switched off with 0 are not proposed anew", () => {
    const shop = { ...present(), hours: { etch: { value: 0, low: 0, high: 0 } } };
    const records = [job("a", ["etch", 2]), job("b", ["etch", 2.5])];
    expect(learnShop(records, shop)).toMatchObject({ figures: [], leftOut: [] });
  });

  test.each([0, Number.NaN])("of %d in one job are left out, and harm no other", (none) => {
    for (const task of ["forge", "etch"] as const) {
      const good = [job("a", [task, 2]), job("b", [task, 2.5])];
      const bad = { ...job("c", [task, none]), timesDone: { [task]: 2 } };
      const { figures, leftOut } = learnShop([...good, bad], present());
      expect(figures).toEqual(learnShop(good, present()).figures);
      expect(leftOut.map(({ file, on, issue }) => [file, on, issue.code, issue.text])).toEqual([
        ["c", ON, "no-hours", "no hours are written down"],
      ]);
      // By itself too.
      expect(learnShop([bad], present()).leftOut.map(({ issue }) => issue.code)).toEqual(["no-hours"]);
    }
  });
});
