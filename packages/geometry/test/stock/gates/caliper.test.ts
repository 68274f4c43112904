import { describe, expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import type { KnifeSpec } from "../../../src/blade/spec.js";
import { answerReading, withReading } from "../../../src/stock/gates/caliper.js";
import { LANDMARKS } from "../../blade/similar-fixtures.js";

// Finished 4.6 mm at the heel, 3.6 at 120, 2.2 at the tip; 0.5 mm a face to grind, 0.1 mm of it after hardening.
const ALLOWED: KnifeSpec = {
  ...LANDMARKS,
  allowances: { face: 0.5, afterHardening: 0.1, tang: "parallel" },
};
const knife = makeKnife(ALLOWED);

describe("what is left to take off each face", () => {
  test("forged: the face allowance and what comes off after hardening, at every place", () => {
    for (const [x, finished] of [
      [0, 4.6],
      [60, 4.1],
      [225, 2.2],
    ] as const) {
      const { target, left } = answerReading(knife, "forged", { x, thickness: finished + 1.2 });
      expect(target).toBeCloseTo(finished + 1.2, 12);
      expect(left.inAll).toBeCloseTo(0.6, 12);
      expect(left.beforeHardening).toBeCloseTo(0.5, 12);
      expect(left.afterHardening).toBeCloseTo(0.1, 12);
    }
  });

  test("ready to harden: only what is ground afterwards, and what is over", () => {
    const asMeant = answerReading(knife, "ready", { x: 0, thickness: 4.8 });
    expect(asMeant.target).toBeCloseTo(4.8, 12);
    expect(asMeant.left.afterHardening).toBeCloseTo(0.1, 12);
    expect(asMeant.left.beforeHardening).toBeCloseTo(0, 12);
    expect(asMeant.findings).toEqual([]);
    expect(answerReading(knife, "ready", { x: 0, thickness: 5 }).left.beforeHardening).toBeCloseTo(0.1, 12);
  });

  test("a tang forged parallel still has its taper on", () => {
    // Half way down the tang: 4.6 at the front, 2.4 at the butt.
    const { finished, target, left } = answerReading(knife, "forged", { x: -10 - 64, thickness: 5.8 });
    expect(finished).toBeCloseTo(3.5, 12);
    expect(target).toBeCloseTo(5.8, 12);
    expect(left.inAll).toBeCloseTo(1.15, 12);
  });

  test("flats left from the hammer are forged to size", () => {
    const forged = makeKnife({ ...ALLOWED, finish: { flats: "forged" } });
    const answer = answerReading(forged, "forged", { x: 0, thickness: 4.6 });
    expect(answer.kept).toBe(true);
    expect(answer.target).toBe(4.6);
    expect(answer.left.inAll).toBe(0);
  });
});

describe("readings that are wrong", () => {
  const codeOf = (stage: "forged" | "ready" | "finished", thickness: number) =>
    answerReading(knife, stage, { x: 0, thickness }).findings.map(({ code, severity }) => [code, severity]);

  test.each([
    ["forged", 5.8, []],
    ["forged", 6.4, []],
    ["forged", 5.7, [["reading-under-target", "note"]]],
    ["forged", 4.78, [["reading-thin-for-hardening", "warn"]]],
    ["ready", 4.78, [["reading-thin-for-hardening", "warn"]]],
    // 4.8 mm is 0.18898 in: the card says 0.189 in, and 0.1885 in still reads so; 4.79 mm is no thinner than a caliper errs.
    ["ready", 0.1885 * 25.4, []],
    ["ready", 4.55, [["reading-under-finished", "note"]]],
    ["finished", 4.55, [["reading-under-finished", "note"]]],
    ["finished", 4.49, [["reading-under-finished", "warn"]]],
    ["finished", 4.6, []],
  ] as const)("%s at %d mm", (stage, thickness, expected) => {
    expect(codeOf(stage, thickness)).toEqual(expected);
  });
});

describe("readings that are slips", () => {
  // 5.8 mm is meant at the heel of the forging.
  test.each([
    [11.61, true],
    [11.59, false],
    [2.91, false],
    [2.89, true],
  ])("%d mm where 5.8 is meant: %s", (thickness, questioned) => {
    const answer = answerReading(knife, "forged", { x: 0, thickness });
    expect(answer.questioned).toBe(questioned);
    const found = answer.findings.map(({ code }) => code);
    if (questioned) expect(found).toEqual(["reading-questioned"]);
    else expect(found).not.toContain("reading-questioned");
  });

  test("what is meant is that of the stage", () => {
    expect(answerReading(knife, "forged", { x: 225, thickness: 6 }).questioned).toBe(false);
    expect(answerReading(knife, "finished", { x: 225, thickness: 6 }).questioned).toBe(true);
  });
});

describe("the blade as it becomes", () => {
  test.each([0, 60, 120, 200, 225])(
    "leads the thickness through a reading at %d mm and keeps the others",
    (x) => {
      const { spine } = makeKnife(withReading(knife, { x, thickness: 2.3 })).laws;
      expect(spine.valueAt(x)).toBeCloseTo(2.3, 12);
      for (const other of [0, 120, 225].filter((place) => place !== x))
        expect(spine.valueAt(other)).toBeCloseTo(knife.laws.spine.valueAt(other), 12);
    },
  );

  test("a law of one value keeps it on both sides", () => {
    const even = makeKnife({
      ...ALLOWED,
      blade: { ...ALLOWED.blade, thickness: [{ at: { kind: "heel" }, is: 4 }] },
    });
    const { spine } = makeKnife(withReading(even, { x: 100, thickness: 3 })).laws;
    expect([0, 100, 225].map((x) => spine.valueAt(x))).toEqual([4, 3, 4]);
  });

  test("in the tang its own law is led through it", () => {
    const thin = makeKnife(withReading(knife, { x: -74, thickness: 3 }));
    const thickness = (x: number) => thin.body("finished").slab.thicknessAt(x);
    expect(thickness(-74)).toBeCloseTo(3, 12);
    expect(thickness(-138)).toBeCloseTo(2.4, 12);
    expect(thickness(-10.000001)).toBeCloseTo(4.6, 5);
  });
});
