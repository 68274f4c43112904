import { drillSizes } from "@scantling/geometry/units";
import { describe, expect, test } from "vitest";
import { readShopFile } from "../../src/file/shop-file.js";
import { inShort, shopProblems } from "./files.js";

const shopOf = (text: string) => readShopFile(text, "shop.yaml").shop;

describe("bench tools of a shop file", () => {
  test("drills by set, by name, by size", () => {
    expect(shopOf('drills: ["#30", F, 1/8 in, 4, "4.1 mm", no. 12]').drills).toEqual([
      { name: "1/8 in", diameter: 3.175 },
      { name: "#30", diameter: expect.closeTo(3.2639, 9) },
      { name: "4 mm", diameter: 4 },
      { name: "4.1 mm", diameter: 4.1 },
      { name: "#12", diameter: expect.closeTo(4.8006, 9) },
      { name: "F", diameter: expect.closeTo(6.5278, 9) },
    ]);
    expect(shopOf("drills: [number, Letter]").drills).toHaveLength(86);
    expect(shopOf("drills: []").drills).toEqual([]);
  });

  test("a size that is in a set too is listed once", () => {
    const { drills } = shopOf("drills: [fraction, 1/8 in, fraction]");
    expect(drills).toHaveLength(drillSizes(["fraction"]).length);
  });

  test("bare sizes are in the file's units", () => {
    expect(shopOf("units: in\ndrills: [1/4, 0.161]").drills).toEqual([
      { name: "0.161 in", diameter: expect.closeTo(4.0894, 9) },
      { name: "1/4 in", diameter: expect.closeTo(6.35, 9) },
    ]);
  });

  test("wheels, wedges, lever, oil", () => {
    const shop = shopOf(`
wheels: [200, 10 in]
wedges: [11 deg, 20 deg]
jigLever: 150
quenchTank: { depth: 400, litres: 15, temperature: 55 }
`);
    expect(shop).toMatchObject({
      wheels: [200, 254],
      jigLever: 150,
      quenchTank: { depth: 400, litres: 15, temperature: 55 },
    });
    expect(shop.wedges?.map((angle) => (angle * 180) / Math.PI)).toEqual([
      expect.closeTo(11, 9),
      expect.closeTo(20, 9),
    ]);
  });

  test.each([
    ["drills: [metrik]", "1:10 unknown-drill"],
    ['drills: ["#61"]', "1:10 unknown-drill"],
    ["drills: [0]", "1:10 out-of-range"],
    ["drills: [60]", "1:10 out-of-range"],
    ["drills: number", "1:9 wrong-type"],
    ["wedges: [95 deg]", "1:10 out-of-range"],
    ["wheels: [0]", "1:10 out-of-range"],
    ["jigLever: -3", "1:11 out-of-range"],
    ["quenchTank: { litres: -1 }", "1:23 out-of-range"],
    ["quenchTank: { temperature: 800 }", "1:28 out-of-range"],
  ])("%s", (text, problem) => {
    expect(inShort(shopProblems(text))[0]).toContain(problem);
  });
});
