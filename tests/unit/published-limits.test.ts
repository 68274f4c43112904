// Limits that somebody has published, each with its source: the program trips at that very number.
import {
  FINDING_LIMITS,
  type HoleSpec,
  hardnessAnswer,
  type KnifeSpec,
  makeKnife,
  STOCK_LIMITS,
} from "@scantling/geometry";
import { describe, expect, test } from "vitest";

const HAIR = 1e-6;

/** A full tang with a level top at y = 30, 24 mm high in front. */
const knifeWith = (holes: readonly HoleSpec[]): KnifeSpec => ({
  steel: { name: "1095" },
  blade: {
    outline: { family: "drop-point", edgeLength: 120, heelHeight: 30 },
    ricasso: 12,
    thickness: [{ at: { kind: "heel" }, is: 4 }],
    bevel: { form: "flat", height: 24, edgeThickness: 0.6 },
    edgeAngle: 0.3,
  },
  tang: { form: "full", length: 110, heights: { front: 24, middle: 22, butt: 26 }, holes },
});
const pin = (x: number, y: number, diameter: number): HoleSpec => ({ kind: "pin", at: { x, y }, diameter });
const codes = (...holes: readonly HoleSpec[]): string[] =>
  makeKnife(knifeWith(holes)).findings.map(({ code }) => code);

describe("Indian Boiler Regulations, regulation 184: rivet centre to edge of plate not less than 1.5 diameters", () => {
  test.each([3, 4, 5, 6])("%d mm", (diameter) => {
    const at = (times: number) => codes(pin(-40, 30 - times * diameter, diameter));
    expect(at(1.5 - HAIR)).toContain("hole-too-near-edge");
    expect(at(1.5 + HAIR)).not.toContain("hole-too-near-edge");
  });
});

// A handbook page on riveted joints of aircraft: two diameters to the edge, four from rivet to rivet.
describe("aircraft riveting: 2 diameters to the edge, 4 diameters pitch", () => {
  test.each([3.5, 4, 5])("%d mm", (diameter) => {
    const edge = (times: number) => codes(pin(-40, 30 - times * diameter, diameter));
    expect(edge(2 - HAIR)).toContain("hole-near-edge");
    expect(edge(2 + HAIR)).not.toContain("hole-near-edge");
    const pitch = (times: number) => codes(pin(-40, 19, diameter), pin(-40 - times * diameter, 19, diameter));
    expect(pitch(4 - HAIR)).toContain("holes-pitch");
    expect(pitch(4 + HAIR)).not.toContain("holes-pitch");
  });
});

test("Forging Industry Association: a bar upset in one blow is at most three diameters long unsupported", () => {
  expect(STOCK_LIMITS.maxSlenderness.value).toBe(3);
});

test("ISO 8442-9:2018, ceramic kitchen knives: at most 0.46 mm thick 1 mm above the edge", () => {
  expect(FINDING_LIMITS.kitchenWedge.value).toBe(0.46);
});

// A bladesmith's data page on 1095, which draws on published handbooks: 63 to 64 HRC after 177 °C, 65 after 149 °C.
test("1095: what a temper at 175 °C leaves lies between the two rows beside it", () => {
  const knife = makeKnife(knifeWith([]));
  const { reach } = hardnessAnswer(knife, "1095", { low: 64, high: 64, path: "" });
  expect(reach?.high).toBeGreaterThanOrEqual(64);
  expect(reach?.high).toBeLessThan(65);
});
