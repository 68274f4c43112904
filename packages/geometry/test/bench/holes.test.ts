import { drillSizes } from "@scantling/geometry/units";
import { describe, expect, test } from "vitest";
import { handleDrill, holeLean, holeSetUps } from "../../src/bench/holes.js";
import { drillAtLeast, drillAtMost, nearestDrills } from "../../src/bench/nearest-drill.js";
import { chopper } from "./bench-knives.js";

const INCH_DRILLS = drillSizes(["number", "letter", "fraction"]);

describe("the drill for a pin", () => {
  // Published values, 10a: 1/8 in pin, #30 leaves 0.089 mm; 3/16 in pin, #12 (4.801 mm).
  test.each([
    [3.175, "#30", 0.089],
    [4.7625, "#12", 0.038],
  ])("of %s mm is %s", (pin, name, clearance) => {
    const choice = handleDrill(INCH_DRILLS, pin);
    expect(choice?.drill.name).toBe(name);
    expect(choice?.clearance).toBeCloseTo(clearance, 3);
  });

  test("is never one that presses", () => {
    for (let pin = 2; pin < 8; pin += 0.05) {
      expect(handleDrill(drillSizes(), pin)?.clearance).toBeGreaterThanOrEqual(0.02 - 1e-9);
      expect(handleDrill(drillSizes(), pin)?.clearance).toBeLessThan(0.1 + 1e-9);
    }
  });

  test("is none where all are too small", () => {
    expect(handleDrill([{ name: "4 mm", diameter: 4 }], 4)).toBeUndefined();
  });
});

test("the nearest, the next larger, the next smaller", () => {
  const drills = drillSizes(["metric"]);
  expect(nearestDrills(drills, 4.44)[0]?.name).toBe("4.4 mm");
  expect(drillAtLeast(drills, 4.44)?.name).toBe("4.5 mm");
  expect(drillAtMost(drills, 4.46)?.name).toBe("4.4 mm");
  // Itself, though it is a rounded number.
  expect(drillAtLeast(drills, 0.1 * 3 + 4)?.name).toBe("4.3 mm");
  expect(drillAtLeast(drills, 11)).toBeUndefined();
  expect(drillAtMost(drills, 0.5)).toBeUndefined();
});

describe("whether drilling needs a shim", () => {
  test("by the lean and what lies on the tang", () => {
    // 0.35° and 8 mm: 0.0489 a side, 0.098 between the two.
    const { shift, mismatch, needsShim } = holeLean((0.35 * Math.PI) / 180, 8, 0.1);
    expect(shift).toBeCloseTo(0.04887, 5);
    expect(mismatch).toBeCloseTo(0.09774, 5);
    expect(needsShim).toBe(false);
    expect(holeLean((0.35 * Math.PI) / 180, 8, 0.05).needsShim).toBe(true);
    expect(holeLean(0, 8, 0).needsShim).toBe(false);
  });

  test("of a knife's own tang: two axes square to two faces part by the mismatch", () => {
    const [pin] = holeSetUps(chopper(), drillSizes());
    const lean = pin?.lean;
    // From 5 to 3 over 120: 1 in 120 a face.
    expect(Math.tan(lean?.lean ?? 0)).toBeCloseTo(1 / 120, 12);
    const along = (side: 1 | -1): number => side * 8 * Math.tan(lean?.lean ?? 0);
    expect(lean?.mismatch).toBeCloseTo(along(1) - along(-1), 12);
    expect(lean?.needsShim).toBe(true);
  });
});

describe("a knife's holes", () => {
  const holes = holeSetUps(chopper(), drillSizes());

  test("with the pin's own size where it differs", () => {
    expect(holes.map(({ path, pin }) => [path, pin])).toEqual([
      ["tang.holes[0]", 4],
      ["tang.holes[1]", 4],
      ["tang.holes[2]", undefined],
    ]);
    expect(holes[0]?.steel).toEqual({ drill: expect.objectContaining({ name: "6 mm" }), clearance: 2 });
    expect(holes[1]?.steel).toMatchObject({ drill: { name: "4 mm" }, clearance: 0 });
    expect(holes[0]?.handle?.drill.name).toBe("#21");
  });

  test("drilled before the handle are a quarter to a half larger", () => {
    // 4 mm: from 5 to 6.
    expect(holes[1]?.before).toMatchObject({ least: 5, most: 6, drill: { drill: { name: "5 mm" } } });
  });

  test("without drills say sizes only", () => {
    const [hole] = holeSetUps(chopper(), []);
    expect(hole?.steel).toBeUndefined();
    expect(hole?.before).toEqual({ least: 5, most: 6 });
    expect(hole?.lean?.clearance).toBe(0.05);
  });
});
