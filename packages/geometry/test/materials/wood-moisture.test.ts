import { describe, expect, test } from "vitest";
import { materialDensity } from "../../src/materials/material-density.js";
import { woodDensity, woodDensityAt } from "../../src/materials/wood-moisture.js";

describe("wood at a moisture", () => {
  // Published check: Wood Handbook ch. 4, as quoted on a university forestry page (secondary copy).
  test("G 0.4 at 12 % is 448 kg/m³, 27.968 lb/ft³", () => {
    const density = woodDensity(0.4, 0.12);
    expect(density * 1e6).toBeCloseTo(448, 9);
    // In lb/ft³ with water at 62.43, as that page has it: printed with the rest cut off.
    expect(Math.floor((density / 0.001) * 62.43 * 1000) / 1000).toBe(27.968);
  });

  test("the density given comes back at its own moisture, and from any other", () => {
    for (const density of [0.0004, 0.00068, 0.0009, 0.00127]) {
      expect(woodDensityAt(density, 0.12)).toBeCloseTo(density, 15);
      for (const moisture of [0, 0.06, 0.2, 0.35, 0.8]) {
        expect(woodDensityAt(woodDensityAt(density, moisture), 0.12, moisture)).toBeCloseTo(density, 12);
      }
    }
  });

  // Specific gravities green and at 12 % of the Wood Handbook, chapter 5; from memory, unconfirmed.
  test.each([
    ["black walnut", 0.51, 0.55],
    ["sugar maple", 0.56, 0.63],
    ["white oak", 0.6, 0.68],
    ["white ash", 0.55, 0.6],
  ])("%s: green and air-dry specific gravity belong together within 4 %%", (_name, green, airDry) => {
    const dry = woodDensity(airDry, 0.12);
    expect(Math.abs(woodDensityAt(dry, 0.5) / 1.5 / (green / 1000) - 1)).toBeLessThan(0.04);
  });

  test("African blackwood, basic 1.08 and 1.27 g/cm³ air-dry by suppliers' pages: within 5 %", () => {
    expect(Math.abs(woodDensityAt(0.00127, 0.3) / 1.3 / 0.00108 - 1)).toBeLessThan(0.05);
  });

  test("drier wood is lighter, by less than the water it lost: it shrinks", () => {
    const dry = woodDensityAt(0.00068, 0.06);
    expect(dry).toBeLessThan(0.00068);
    expect(dry).toBeGreaterThan((0.00068 * 1.06) / 1.12);
  });
});

describe("density of a named material", () => {
  test("a wood of the table at its moisture; the figure given holds over all", () => {
    expect(materialDensity({ name: "European ash" })).toBe(0.00068);
    expect(materialDensity({ name: "European ash", moisture: 0.07 })).toBe(woodDensityAt(0.00068, 0.07));
    expect(materialDensity({ name: "European ash", moisture: 0.07, density: 0.0007 })).toBe(0.0007);
  });

  test("other materials have no moisture, unknown ones no density", () => {
    expect(materialDensity({ name: "brass", moisture: 0.07 })).toBe(0.0085);
    expect(materialDensity({ name: "moon rock" })).toBeUndefined();
    expect(materialDensity({ name: "moon rock", moisture: 0.1 })).toBeUndefined();
  });
});
