import { describe, expect, it } from "vitest";
import { readShopFile } from "../../src/file/index.js";
import { inShort, projectFile, shopProblems } from "./files.js";

describe("the demo's shop file", () => {
  const file = readShopFile(projectFile("examples/market-garden/shop.yaml"), "shop.yaml");
  const rack = file.shop.rack ?? [];

  it("holds twelve flat bars in inch and metric sizes, named by their size", () => {
    expect(rack.map(({ name }) => name)).toEqual([
      "3/16 x 1 in",
      "1/4 x 1 in",
      "1/4 x 1 1/4 in",
      "1/4 x 1 1/2 in",
      "1/4 x 2 in",
      "3/8 x 1 1/2 in",
      "3 x 30 mm",
      "5 x 25 mm",
      "5 x 40 mm",
      "6 x 30 mm",
      "6 x 40 mm",
      "8 x 40 mm",
    ]);
    expect(rack[3]).toEqual({
      name: "1/4 x 1 1/2 in",
      width: 38.1,
      thickness: 6.35,
      length: 1219.2,
      count: 2,
      steel: "1084",
      pricePerKg: 8.6,
    });
  });

  it("has no bar that is as tall as the blade", () => {
    for (const { width, thickness } of rack) {
      expect(width).toBeLessThan(92 * 0.6);
      expect(thickness).toBeLessThanOrEqual(10);
    }
  });

  it("gives press, saw, losses and tolerances", () => {
    expect(file.shop).toMatchObject({
      currency: "EUR",
      cutStep: 5,
      kerf: 1.5,
      press: { opening: 75, forgeLength: 450 },
      losses: {
        scaleModel: "fraction",
        scalePerHeat: { value: 0.012, low: 0.012 - 0.006, high: 0.012 + 0.008 },
        cropPerEnd: { value: 8, low: 5, high: 12 },
      },
    });
    expect(file.shop.losses).not.toHaveProperty("scale");
    expect(file.tolerances).toEqual({
      forgedThickness: 0.2,
      groundThickness: 0.1,
      outline: 0.5,
      density: 0.005,
    });
    expect(file.allowances).toEqual({});
  });
});

describe("readShopFile", () => {
  it("gives only what the file gives", () => {
    const file = readShopFile("kerf: 2\n", "shop.yaml");
    expect(file).toMatchObject({ units: "mm", allowances: {}, tolerances: {} });
    expect(file.shop).toEqual({ kerf: 2 });
  });

  it("takes bars as short text, in the text's units or the file's", () => {
    const bars = (units: string, ...texts: string[]): unknown =>
      readShopFile(`units: ${units}\nrack: ${JSON.stringify(texts)}\n`, "shop.yaml").shop.rack;
    expect(bars("mm", "1/4 x 1 1/2 in", '1/4" × 1-1/2"', "6 x 40 mm", "40x6", "6 mm x 1 1/2 in")).toEqual([
      { name: "1/4 x 1 1/2 in", width: 38.1, thickness: 6.35 },
      { name: "1/4 x 1 1/2 in", width: 38.1, thickness: 6.35 },
      { name: "6 x 40 mm", width: 40, thickness: 6 },
      { name: "6 x 40 mm", width: 40, thickness: 6 },
      { name: "0.236 x 1 1/2 in", width: 38.1, thickness: 6 },
    ]);
    expect(bars("in", "¼ x 1½", "0.25 x 1.5", "6 x 40 mm")).toEqual([
      { name: "1/4 x 1 1/2 in", width: 38.1, thickness: 6.35 },
      { name: "1/4 x 1 1/2 in", width: 38.1, thickness: 6.35 },
      { name: "6 x 40 mm", width: 40, thickness: 6 },
    ]);
  });

  it("takes bars by width and thickness, and with a name of their own", () => {
    const { rack } = readShopFile(
      "units: in\nrack: [{ name: old spring, width: 2, thickness: 1/4 }, { width: 40 mm, thickness: 6 mm }]\n",
      "shop.yaml",
    ).shop;
    expect(rack).toEqual([
      { name: "old spring", width: 50.8, thickness: 6.35 },
      { name: "0.236 x 1.575 in", width: 40, thickness: 6 },
    ]);
  });

  it("takes limits and allowances, whole or in part", () => {
    const file = readShopFile(
      "limits: { maxBars: 8, minWeldReduction: 30 %, mostNarrowing: 25 %, reach: { easy: 25 % } }\nallowances: { face: 0.4, tang: parallel }\n",
      "shop.yaml",
    );
    expect(file.shop.limits).toEqual({
      maxBars: 8,
      minWeldReduction: 0.3,
      mostNarrowing: 0.25,
      reach: { easy: 0.25 },
    });
    expect(file.allowances).toEqual({ face: 0.4, tang: "parallel" });
  });

  it("knows where everything stands", () => {
    const file = readShopFile(
      "units: mm\nrack:\n  - 6 x 40 mm\n  - { size: 5 x 25 mm, price: 3 }\n",
      "shop.yaml",
    );
    expect(file.positionOf("rack[0]")).toEqual({ line: 3, column: 5 });
    expect(file.positionOf("rack[1].price")).toEqual({ line: 4, column: 31 });
  });
});

describe("mistakes in a shop file", () => {
  it.each([
    [
      "rack: [1 x 2 x 3]",
      '1:8 bar-size | rack[1st]: "1 x 2 x 3" is not a bar size; write it 1/4 x 1 1/2 in or 6 x 40 mm; a bar\'s length goes under length',
    ],
    [
      "rack: [flat]",
      '1:8 bar-size | rack[1st]: "flat" is not a bar size; write it 1/4 x 1 1/2 in or 6 x 40 mm',
    ],
    [
      "rack: [1/4 x 1]",
      '1:8 quantity-fraction-without-unit | rack[1st]: "1/4" has no unit in a file in mm; write 1/4 in, or a decimal number of mm',
    ],
    [
      "rack: [6 x 40 g]",
      '1:8 quantity-unit-wrong-kind | rack[1st]: "6 g" is a mass; a length belongs here, for example 190 mm, 7 1/2 in or 3/16"',
    ],
    ["rack: [0 x 40]", '1:8 out-of-range | rack[1st]: "0" must be more than 0'],
    [
      "rack: [4]",
      "1:8 wrong-type | rack[1st] needs a bar, such as 1/4 x 1 1/2 in, or { size: 6 x 40 mm, length: 1000 }",
    ],
    [
      "rack: [{ width: 40 }]",
      "1:8 bar-size | rack[1st] needs its size, such as size: 6 x 40 mm, or width and thickness",
    ],
    [
      "rack: [{ size: 6 x 40, width: 40 }]",
      "1:8 bar-size | rack[1st] has its size twice; give size, or width and thickness",
    ],
    [
      "rack: [{ width: 6, thickness: 40 }]",
      "1:8 bar-size | rack[1st] is thicker than wide; swap width and thickness",
    ],
    [
      "rack: [{ size: 6 x 40, count: 2 }]",
      "1:8 bar-size | rack[1st] has a count without a length; give the length of one",
    ],
    [
      "rack: [{ size: 6 x 40, prize: 2 }]",
      "1:24 unknown-key | rack[1st].prize is not a key here; did you mean price?",
    ],
    ["rack: [{ size: 6 x 40, price: -2 }]", '1:31 out-of-range | rack[1st].price: "-2" must be 0 or more'],
    ["rack: 6 x 40", "1:7 wrong-type | rack needs a list of bars, such as - 1/4 x 1 1/2 in"],
    [
      "losses: { scalePerHeat: 1.2 }",
      '1:25 out-of-range | losses.scalePerHeat: "1.2" must be less than 100 %',
    ],
    [
      "losses: { scalePerHeat: 1 % ± 2 % }",
      '1:25 tolerance-out-of-range | losses.scalePerHeat: "1 % ± 2 %" reaches beyond what is possible; give a closer tolerance',
    ],
    [
      "losses: { scale: skn }",
      '1:18 unknown-word | losses.scale: "skn" is not known here; did you mean skin?',
    ],
    [
      "limits: { reach: { easy: 0.5, flatDies: 0.3 } }",
      "1:18 limits-swapped | limits.reach must rise from easy to flatDies to fullers",
    ],
    [
      "press: { opening: 75 ± 1 }",
      '1:19 tolerance-not-taken | press.opening: "75 ± 1" has a tolerance; none can be given here',
    ],
    ["blade: {}", "1:1 unknown-key | blade belongs in the knife file, not in this file"],
  ])("%s", (text, problem) => {
    expect(inShort(shopProblems(text))).toEqual([problem]);
  });
});
