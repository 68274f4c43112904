import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { GeometryError } from "../../../src/errors/errors.js";
import { edgeSqueezeFindings, upsetRule } from "../../../src/stock/forge/edge-squeeze.js";
import { dieContact, flowStress, longestBite, pressLoad } from "../../../src/stock/forge/press-load.js";
import { pressLoadFindings } from "../../../src/stock/forge/press-load-findings.js";
import { GREATEST_BITE_RATIO, spreadOfPass, spreadShare } from "../../../src/stock/forge/spread-share.js";
import { describeIssue } from "../../../src/units/describe-issue.js";

const SEED = 20261127;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("spread on flat dies, the recalled curve of Tomlinson and Stringer", () => {
  // The curve itself is from memory, unconfirmed; its values are worked out by hand.
  test.each([
    [0.25, 0.2266],
    [0.5, 0.3065],
    [0.75, 0.3796],
    [1, 0.446],
    [1.5, 0.5585],
    [2, 0.644],
    [10 / 3, 0.74],
  ])("bite over width %d", (ratio, share) => {
    expect(Math.abs(spreadShare(ratio * 40, 40) - share)).toBeLessThan(5.1e-5);
  });

  test("40 wide from 10 to 8 high with a bite of 20", () => {
    const { width, lengthening } = spreadOfPass(40, 10, 8, spreadShare(20, 40));
    expect(Math.abs(width - 42.8315)).toBeLessThan(5e-5);
    expect(Math.abs(lengthening - 1.167366)).toBeLessThan(5e-7);
    expect((width / 40) * lengthening).toBeCloseTo(1.25, 14);
  });

  test("is refused beyond its top, and without a bite", () => {
    expect(spreadShare(100, 30)).toBeCloseTo(0.74, 12);
    for (const bite of [30 * GREATEST_BITE_RATIO + 1e-6, 0, -5, Number.NaN])
      expect(() => spreadShare(bite, 30)).toThrow(GeometryError);
  });

  test("volume is conserved whatever the share", () => {
    fc.assert(
      fc.property(
        number(5, 90),
        number(2, 60),
        number(0.2, 1),
        number(0, 1),
        (width, before, part, share) => {
          const after = before * part;
          const spread = spreadOfPass(width, before, after, share);
          const volume = (spread.width * after * spread.lengthening) / (width * before);
          expect(Math.abs(volume - 1)).toBeLessThan(1e-12);
        },
      ),
      { seed: SEED },
    );
  });
});

describe("load of a squeeze", () => {
  test("by hand: 40 by 40 on 10 high at 100 MPa is 368 kN", () => {
    // 1.15 · 100 · 1600 · (1 + 40/40)
    expect(pressLoad({ length: 40, width: 40, height: 10 }, 100)).toBeCloseTo(368_000, 6);
    // The smaller side counts: 1.15 · 80 · 50 · 20 · (1 + 20/20)
    expect(pressLoad({ length: 50, width: 20, height: 5 }, 80)).toBeCloseTo(184_000, 6);
    expect(pressLoad({ length: 20, width: 50, height: 5 }, 80)).toBeCloseTo(184_000, 6);
  });

  test("a die touches no more than the piece is wide", () => {
    expect(dieContact({ length: 50, width: 80 }, { width: 40, height: 10 }).width).toBe(40);
    expect(dieContact({ length: 50, width: 30 }, { width: 40, height: 10 }).width).toBe(30);
  });

  test("the longest bite asks for exactly the force", () => {
    fc.assert(
      fc.property(
        number(10, 3000),
        number(5, 90),
        number(2, 80),
        number(50, 200),
        (kn, width, height, stress) => {
          const bite = longestBite(kn * 1000, { width, height }, stress);
          expect(pressLoad({ length: bite, width, height }, stress) / (kn * 1000)).toBeCloseTo(1, 10);
        },
      ),
      { seed: SEED },
    );
  });

  test("flow stress: its points, between them, and not beyond", () => {
    expect(flowStress(850)).toEqual({ low: 120, high: 200 });
    expect(flowStress(1000)).toEqual({ low: 60, high: 150 });
    expect(flowStress(1200)).toEqual({ low: 50, high: 80 });
    expect(flowStress(925)).toEqual({ low: 90, high: 175 });
    for (const celsius of [849.9, 1200.1, Number.NaN])
      expect(() => flowStress(celsius)).toThrow(GeometryError);
  });

  const codes = (length: number, forceKn?: number, celsius = 1000): string[] =>
    pressLoadFindings(
      { length, width: 40, height: 10 },
      celsius,
      forceKn === undefined ? {} : { forceKn },
      "press",
    ).map(({ code, severity }) => `${code} ${severity}`);

  // 40 by 40 on 10 high at 1000 °C: 60 to 150 MPa is 220.8 to 552 kN.
  test.each([
    [220, ["press-too-weak warn"]],
    [221, ["press-near-limit note"]],
    [551, ["press-near-limit note"]],
    [552.001, []],
  ])("held against a press of %d kN", (force, expected) => {
    expect(codes(40, force)).toEqual(expected);
  });

  test("without a force nothing is said, outside the known heat that nothing is known", () => {
    expect(codes(40)).toEqual([]);
    expect(codes(40, 100, 800)).toEqual(["press-load-unknown note"]);
  });

  test("a bite under a third of the height is noted", () => {
    expect(codes(3.3)).toEqual(["bite-too-short note"]);
    expect(codes(3.34)).toEqual([]);
  });

  test("the bite it offers is one that surely goes: of the steel at its hardest", () => {
    const contact = { length: 80, width: 40, height: 10 };
    const [finding] = pressLoadFindings(contact, 1000, { forceKn: 300 }, "press");
    const bite = longestBite(300_000, contact, flowStress(1000).high);
    expect(finding?.values).toMatchObject({ bite: { quantity: "length", value: bite } });
    expect(pressLoad({ ...contact, length: bite }, flowStress(1000).high)).toBeCloseTo(300_000, 3);
    expect(finding?.basis).toMatch(/from memory, unconfirmed/);
  });

  test("tells no more digits than figures from memory have, and which squeeze it is", () => {
    const contact = { length: 60, width: 45, height: 14.06 };
    const said = (units: "mm" | "in"): readonly string[] =>
      pressLoadFindings(contact, 1180, { forceKn: 220 }, "press", { name: "weld", pass: 3 }).map((finding) =>
        describeIssue(finding, units),
      );
    // 1.15 σ · 60 · 45 · (1 + 45/56.24) with 52 and 86 MPa is 290.6 and 480.7 kN.
    expect(said("mm")).toEqual([
      "Weld, pass 3: this squeeze asks for about 290 to 480 kN at 1180 °C; the press has 220 kN. It will stall: take bites of 32 mm, or press hotter.",
    ]);
    expect(said("in")[0]).toMatch(/bites of 1 1\/4", or/u);
  });
});

describe("upsetting", () => {
  // Forging Industry Association, design rules for parts made by upset forgings: three rules for one blow.
  test.each([
    ["three diameters", { length: 60, diameter: 20 }, { allowed: true, rule: 1 }],
    [
      "three half inches, which are not whole in mm",
      { length: 38.1, diameter: 12.7 },
      { allowed: true, rule: 1 },
    ],
    ["more than three, in the open", { length: 60.1, diameter: 20 }, { allowed: false, rule: 2 }],
    [
      "more than three, the die too wide",
      { length: 80, diameter: 20, upsetDiameter: 30.1, beyondDie: 0 },
      { allowed: false, rule: 2 },
    ],
    [
      "more than three, the die narrow, little out of it",
      { length: 80, diameter: 20, upsetDiameter: 30, beyondDie: 30 },
      { allowed: true, rule: 3 },
    ],
    [
      "more than three, the die narrow, too much out of it",
      { length: 80, diameter: 20, upsetDiameter: 30, beyondDie: 30.1 },
      { allowed: false, rule: 3 },
    ],
    [
      "more than three, what stands out not known",
      { length: 80, diameter: 20, upsetDiameter: 25 },
      { allowed: false, rule: 3 },
    ],
  ])("%s", (_, upset, verdict) => {
    expect(upsetRule(upset)).toEqual(verdict);
  });

  const onEdge = (width: number, limit?: number) =>
    edgeSqueezeFindings({ width, thickness: 10 }, "press", limit);

  test.each([
    [25, undefined],
    [25.1, "on-edge-tall note"],
    [30, "on-edge-tall note"],
    [30.1, "on-edge-too-tall warn"],
  ])("on edge, %d wide and 10 thick", (width, expected) => {
    const [finding] = onEdge(width);
    expect(finding && `${finding.code} ${finding.severity}`).toBe(expected);
  });

  test("says how tall it may be and whose limit it is", () => {
    const [fia] = onEdge(40);
    expect(fia?.values).toMatchObject({ tallest: { quantity: "length", value: 30 } });
    expect(fia?.basis).toMatch(/Forging Industry Association/);
    const [own] = onEdge(40, 2);
    expect(own?.values).toMatchObject({ tallest: { quantity: "length", value: 20 } });
    expect(own?.basis).toBe("the shop's own limit");
    expect(onEdge(20, 2)).toEqual([]);
    expect(onEdge(40, 5)[0]?.basis).toMatch(/from memory, unconfirmed/);
  });
});
