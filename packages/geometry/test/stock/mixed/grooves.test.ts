import { describe, expect, test } from "vitest";
import { afterGrooves, beforeGrooves, grooveArea } from "../../../src/stock/mixed/grooves.js";
import type { GrooveSpec } from "../../../src/stock/mixed/spec.js";

const BAR = { width: 38.1, thickness: 12.7 };

describe("area of a groove", () => {
  test("closed forms: half circle, vee, slot", () => {
    expect(grooveArea("round", 3, 6)).toBeCloseTo((Math.PI * 9) / 2, 12);
    expect(grooveArea("vee", 3, 6)).toBe(9);
    expect(grooveArea("square", 3, 6)).toBe(18);
  });

  test("a shallow round one against strips", () => {
    const [depth, width] = [1.2, 7];
    const radius = width ** 2 / (8 * depth) + depth / 2;
    const strips = 20_000;
    let sum = 0;
    for (let i = 0; i < strips; i++) {
      const z = (width * (i + 0.5)) / strips - width / 2;
      sum += ((Math.sqrt(radius ** 2 - z ** 2) - (radius - depth)) * width) / strips;
    }
    expect(grooveArea("round", depth, width)).toBeCloseTo(sum, 6);
  });
});

describe("what grooves take", () => {
  test("a share divides: 70.3 cm³ with 8 % ground off were 76.4", () => {
    expect(beforeGrooves(70_300, { share: 0.08 }, BAR) / 1000).toBeCloseTo(76.4, 1);
  });

  test("by count and by pitch alike: 20 grooves on two faces of a bar of 10 pitches", () => {
    const size = { form: "vee", depth: 2, width: 5 } as const;
    const length = 150;
    const volume = BAR.width * BAR.thickness * length;
    const byCount = volume - afterGrooves(volume, { ...size, count: 20 }, BAR);
    const byPitch = volume - afterGrooves(volume, { ...size, pitch: length / 10, faces: 2 }, BAR);
    expect(byCount).toBeCloseTo(20 * 5 * BAR.width, 9);
    expect(byPitch).toBeCloseTo(byCount, 9);
  });

  test.each<GrooveSpec | undefined>([
    undefined,
    { share: 0.11 },
    { form: "round", depth: 2, width: 6, count: 14 },
    { form: "square", depth: 2, width: 6, pitch: 13, faces: 1 },
  ])("%o: undone", (grooves) => {
    expect(afterGrooves(beforeGrooves(70_300, grooves, BAR), grooves, BAR)).toBeCloseTo(70_300, 8);
  });

  test("grooves that meet through the bar leave nothing", () => {
    const through = { form: "square", depth: 7, width: 6, pitch: 6, faces: 2 } as const;
    expect(beforeGrooves(70_300, through, BAR)).toBe(Number.POSITIVE_INFINITY);
  });
});
