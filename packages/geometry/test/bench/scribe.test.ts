import { drillSizes } from "@scantling/geometry/units";
import { describe, expect, test } from "vitest";
import { edgeLines, scribeSetUp } from "../../src/bench/scribe.js";
import { scribingDrills } from "../../src/bench/scribe-drill.js";
import { randomKnives } from "../blade/random-knives.js";
import { chopper, withBevel } from "./bench-knives.js";

const DRILLS = drillSizes();

describe("lines that centre an edge", () => {
  test("lie half an edge beside the middle, whatever the thickness", () => {
    for (const [thickness, edge] of [
      [3.1, 0.7],
      [6, 1.2],
      [2, 2],
    ] as const) {
      const lines = edgeLines(thickness, edge / 2, edge / 2);
      expect((lines.lower + lines.upper) / 2).toBeCloseTo(thickness / 2, 12);
      expect(lines.upper - lines.lower).toBeCloseTo(edge, 12);
      // One setting from both faces.
      expect(lines.leftDown).toBeCloseTo((thickness - edge) / 2, 12);
      expect(lines.rightDown).toBeCloseTo(lines.leftDown, 12);
    }
  });

  test("of an apex off the middle reach as the model says", () => {
    // T = 4, p = 0.5: a = 1; from a − e(1 + p)/2 to a + e(1 − p)/2.
    const { lower, upper } = edgeLines(4, 1 + 0.2, 0.6 - 1);
    expect(lower).toBeCloseTo(2 + 1 - 0.6, 12);
    expect(upper).toBeCloseTo(2 + 1 + 0.2, 12);
    expect(edgeLines(4, -1.2, 2)).toMatchObject({ lower: 0, upper: 0.8, leftDown: 0, rightDown: 3.2 });
  });
});

describe("a knife's own lines", () => {
  test("with the centre plane level hold all along a tapered blade", () => {
    // Edge for hardening: 0.6 + 2 × 0.1 = 0.8 (over the least, 0.7); rests 5.2 thick: (5.2 − 0.8) / 2.
    const { stations, oneSetting, level } = scribeSetUp(chopper(), DRILLS);
    expect(oneSetting).toBe(true);
    for (const { edge, leftDown, rightDown } of stations) {
      expect(edge).toBeCloseTo(0.8, 9);
      expect(leftDown).toBeCloseTo(2.2, 9);
      expect(rightDown).toBeCloseTo(2.2, 9);
    }
    expect(level.centre).toBeCloseTo(2.6, 12);
  });

  test("of a single bevel differ by face", () => {
    const { stations, oneSetting } = scribeSetUp(withBevel({ apex: 1 }), []);
    expect(oneSetting).toBe(false);
    // The apex on the right face at the heel: nothing to take off there but what is left for grinding.
    expect(stations[0]?.rightDown).toBeCloseTo(0, 6);
    expect(stations[0]?.edge).toBeCloseTo(0.8, 6);
  });

  test("leave the edge of the ready-to-harden blade, of many", () => {
    for (const { knife } of randomKnives(60)) {
      const { e, least } = { e: knife.laws.edgeThickness, least: knife.allowances.minEdge };
      for (const { x, edge, lower, upper } of scribeSetUp(knife, []).stations) {
        const wanted = Math.max(e.valueAt(x) + 2 * knife.allowances.afterHardening, least);
        expect(edge).toBeCloseTo(wanted, 6);
        expect(upper - lower).toBeCloseTo(edge, 9);
      }
    }
  });
});

describe("a drill on the plate", () => {
  test("scribes at half its diameter: nearest first", () => {
    const [first, second, third] = scribingDrills(DRILLS, 2.2);
    // 4.4 mm is a metric drill; #17 is 0.1730 in = 4.3942 mm; 11/64 in = 4.365625 mm.
    expect(first).toMatchObject({ drill: { name: "4.4 mm" }, height: 2.2, error: 0 });
    expect(second?.drill.name).toBe("#17");
    expect(second?.error).toBeCloseTo((0.173 * 25.4) / 2 - 2.2, 12);
    expect(third?.drill.name).toBe("11/64 in");
  });

  test("is none at the plate, and none from an empty drawer", () => {
    expect(scribingDrills(DRILLS, 0)).toEqual([]);
    expect(scribingDrills([], 2)).toEqual([]);
  });
});
