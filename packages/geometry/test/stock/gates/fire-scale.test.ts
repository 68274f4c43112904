import { describe, expect, test } from "vitest";
import { FIRE_SCALE, scaleThatGains } from "../../../src/stock/gates/fire-scale.js";

describe("fire scale by its stoichiometry", () => {
  // Fe 55.845, O 15.999 (IUPAC); shares of iron and scale per gram of iron as handbooks of oxides print them.
  test.each([
    ["wustite", 0.7773, 1.2865],
    ["magnetite", 0.7236, 1.382],
    ["haematite", 0.6994, 1.4297],
  ] as const)("%s", (name, ironShare, perIron) => {
    expect(FIRE_SCALE[name].ironShare).toBeCloseTo(ironShare, 4);
    expect(FIRE_SCALE[name].perIron).toBeCloseTo(perIron, 4);
  });

  test("the oxygen of the scale is what was gained", () => {
    const scale = scaleThatGains(5);
    expect(scale * (1 - FIRE_SCALE.wustite.ironShare)).toBeCloseTo(5, 12);
    // 1 g of iron takes up 0.2865 g of oxygen.
    expect(scaleThatGains(0.2865)).toBeCloseTo(1.2865, 3);
  });
});
