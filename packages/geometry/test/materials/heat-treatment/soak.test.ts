import { expect, test } from "vitest";
import { soakByThickness } from "../../../src/materials/heat-treatment/soak.js";

test("soaks by thickness only where a source counts so", () => {
  // A kiln supplier's page on 1095: 1.5 min a mm. Distributors' sheets on O1: 30 min an inch.
  expect(soakByThickness("1095", 4).map(({ minutes }) => minutes)).toEqual([6]);
  expect(soakByThickness("O1", 25.4)[0]?.minutes).toBeCloseTo(30, 2);
  expect(soakByThickness("5160", 4)).toEqual([]);
});
