import { describe, expect, it } from "vitest";
import { readShopFile } from "../../src/file/index.js";
import { sheetUnits } from "../../src/models/sheet-units.js";
import { inShort, shopProblems } from "./files.js";

const read = (text: string) => readShopFile(text, "shop.yaml");

describe("how a shop file has sheets written", () => {
  it("is read, and is no part of the shop", () => {
    const file = read("sheets: { units: own, inches: decimals }\n");
    expect(file.sheets).toEqual({ units: "own", inches: "decimals" });
    expect(file.shop).toEqual({});
    expect(read("kerf: 2\n")).not.toHaveProperty("sheets");
  });

  it.each([
    ["", "in"],
    ["sheets: {}\n", "in"],
    ["sheets: { units: both, inches: fractions }\n", "in"],
    ["sheets: { units: own }\n", { main: "in", both: false, inches: "fractions" }],
    ["sheets: { inches: decimals }\n", { main: "in", both: true, inches: "decimals" }],
  ])("%j gives %j", (text, units) => {
    expect(sheetUnits({ units: "in", shopPlaces: read(`${text}kerf: 2\n`) })).toEqual(units);
  });

  it("is both, in fractions, without a shop file", () => {
    expect(sheetUnits({ units: "mm", shopPlaces: undefined })).toBe("mm");
  });

  it.each([
    ["sheets: own", "1:9 wrong-type | sheets needs a group of keys"],
    [
      "sheets: { units: mm }",
      '1:18 unknown-word | sheets.units: "mm" is not known here; it needs both or own, for the units of the sheets',
    ],
    [
      "sheets: { inches: decimal }",
      '1:19 unknown-word | sheets.inches: "decimal" is not known here; did you mean decimals?',
    ],
    [
      "sheets: { inch: decimals }",
      "1:11 unknown-key | sheets.inch is not a key here; the keys are units, inches",
    ],
    [
      "sheets: { units: 4 }",
      '1:18 unknown-word | sheets.units: "4" is not known here; it needs both or own, for the units of the sheets',
    ],
  ])("%s is a mistake", (text, problem) => {
    expect(inShort(shopProblems(text))).toEqual([problem]);
  });
});
