import { describe, expect, test } from "vitest";
import { hardeningSlenderness } from "../../src/bench/hardening-findings.js";
import { hardnessAnswer } from "../../src/bench/hardness.js";
import { makeKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { AS_QUENCHED } from "../../src/materials/heat-treatment/as-quenched.js";
import { hardnessAfter, TEMPER_TABLES } from "../../src/materials/heat-treatment/tempering.js";

const SPEC: KnifeSpec = {
  steel: { name: "O1" },
  blade: {
    // A bar with a square end: the same section from heel to tip.
    outline: {
      runs: {
        edge: "M 0 0 L 200 0",
        front: "L 200 30",
        spine: "L 0 30",
        tangTop: "L -100 30",
        butt: "L -100 6",
        tangBottom: "L 0 6",
      },
    },
    thickness: [{ at: { kind: "heel" }, is: 3 }],
    bevel: { form: "flat", height: "full", edgeThickness: 0.6 },
    edgeAngle: 0.3,
  },
  tang: { form: "full" },
};
const KNIFE = makeKnife(SPEC);

const asked = (low: number, high = low) => ({ low, high, path: "order.asks.hardness" });
const codes = (steel: string, low: number, high = low) =>
  hardnessAnswer(KNIFE, steel, asked(low, high)).findings.map(({ code, severity }) => `${severity} ${code}`);

describe("a hardness that was asked for", () => {
  test("is told the temper of each source that reaches it", () => {
    const { tempers, aim } = hardnessAnswer(KNIFE, "O1", asked(59, 61));
    expect(aim).toBe(60);
    // 61 at 232 °C, 59 at 260 °C; 60 at 260 °C.
    expect(tempers.map(({ temperature }) => temperature)).toEqual([expect.closeTo(246.1, 1), 260]);
    expect(codes("O1", 59, 61)).toEqual([]);
  });

  test("stops beyond the scatter of the tables, warns within it, or where one end can be had", () => {
    expect(codes("O1", 66)).toEqual(["stop hardness-out-of-reach"]);
    expect(codes("O1", 64.5)).toEqual(["warn hardness-out-of-reach"]);
    expect(codes("O1", 62, 68)).toEqual(["warn hardness-out-of-reach"]);
    // Softer than the hottest usual temper leaves it: 56 at 316 °C, 57 by the other table.
    expect(codes("O1", 50)).toEqual(["stop hardness-out-of-reach"]);
  });

  test("of a steel without a table goes by the hardness as quenched less the temper", () => {
    expect(hardnessAnswer(KNIFE, "1084", asked(60)).reach).toMatchObject({ high: 63 });
    expect(codes("1084", 64)).toEqual(["warn hardness-out-of-reach"]);
    // It can be had, but at what temper no table tells.
    expect(codes("1084", 63)).toEqual(["note hardness-not-known"]);
    // Nothing is told of how soft it can be made.
    expect(codes("1084", 40)).toEqual(["note hardness-not-known"]);
  });

  test("of a steel of which nothing is known is no more than a note", () => {
    expect(codes("unheard of", 60)).toEqual(["note hardness-not-known"]);
  });

  test("that no table has a temper for is told so, and what to do", () => {
    // The only row of 80CrV2: 60 to 61 after 425 °F.
    const { findings, tempers } = hardnessAnswer(KNIFE, "80CrV2", asked(58, 60));
    expect(tempers.map(({ temperature }) => temperature)).toEqual([undefined]);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["hardness-not-known", "note"]]);
    expect(findings[0]?.text).toMatch(/sheet that came with the bar\. .* temper again/u);
    // O1's tables have one for 60, and 80CrV2's for what its row says.
    expect(codes("O1", 60)).toEqual([]);
    expect(codes("80CrV2", 60, 61)).toEqual([]);
  });
});

describe("the tables behind it", () => {
  test("no table is harder than its steel as quenched", () => {
    for (const { steel, points } of TEMPER_TABLES) {
      const quenched = AS_QUENCHED.find((row) => row.steel === steel);
      if (quenched === undefined) continue;
      for (const { high } of points) expect(high, steel).toBeLessThanOrEqual(quenched.hardness);
    }
  });

  test("between two rows straight; nothing beyond them and across a gap", () => {
    const points = [
      { temperature: 150, low: 64, high: 65 },
      { temperature: 200, low: 60, high: 61 },
      { temperature: 300, low: 50, high: 52 },
    ];
    expect(hardnessAfter(points, 100)).toBeUndefined();
    expect(hardnessAfter(points, 150)).toEqual({ low: 64, high: 65 });
    expect(hardnessAfter(points, 175)).toEqual({ low: 62, high: 63 });
    expect(hardnessAfter(points, 250)).toBeUndefined();
    expect(hardnessAfter(points, 301)).toBeUndefined();
    expect(hardnessAfter([], 300)).toBeUndefined();
  });

  test("a recipe's own figure is its row's, in whichever unit either was written", () => {
    const points = [
      { temperature: (425 - 32) / 1.8, low: 60, high: 61 },
      { temperature: (600 - 32) / 1.8, low: 52, high: 54 },
    ];
    expect(hardnessAfter(points, ((425 - 32) * 5) / 9)).toEqual({ low: 60, high: 61 });
    expect(hardnessAfter(points, 218)).toEqual({ low: 60, high: 61 });
    expect(hardnessAfter(points, 316)).toEqual({ low: 52, high: 54 });
  });

  test("a steel with two rows far apart is not called soft between them: D2", () => {
    expect(hardnessAnswer(KNIFE, "D2", { low: 53, high: 55, path: "order.asks.hardness" })).toMatchObject({
      tempers: [{ temperature: expect.closeTo(537, 0) as number }],
      findings: [],
    });
  });
});

describe("length over mean thickness", () => {
  test("of one section all along: its area over its height", () => {
    // Ready to harden 3.2 mm at the spine and 0.8 mm at the edge, straight between: 2 mm on the mean.
    expect(hardeningSlenderness(KNIFE)).toBeCloseTo(200 / 2, 6);
  });
});
