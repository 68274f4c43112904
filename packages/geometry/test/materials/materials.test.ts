import { describe, expect, test } from "vitest";
import { findMaterial, isSameMaterial, MATERIALS, suggestMaterials } from "../../src/materials/materials.js";

const density = (name: string): number => (findMaterial(name)?.density ?? Number.NaN) * 1000;

describe("densities, g/cm³", () => {
  test.each([
    // Metals Handbook vol. 1, 8th ed., ASM 1961, p. 52, as transcribed.
    ["M2", 8.16],
    ["cartridge brass", 8.53],
    ["brass", 8.5],
    ["copper", 8.96],
    ["316", 8.0],
    // Mill data sheets: TLS D2 issue 8, 2003; issue 7 for 10V.
    ["D2", 7.695],
    ["CPM 10V", 7.418],
    // European section tables.
    ["carbon steel", 7.85],
    // Laminate maker's chart.
    ["G10", 1.8],
    // Wood database, desert ironwood and European ash.
    ["desert ironwood", 1.21],
    ["European ash", 0.68],
    // From memory, unconfirmed.
    ["1084", 7.85],
  ])("%s", (name, expected) => {
    expect(density(name)).toBeCloseTo(expected, 9);
  });

  test("0.278 lb/in³ is D2's figure: 27.6799 g/cm³ to the lb/in³", () => {
    expect(density("D2")).toBeCloseTo(0.278 * 27.6799, 2);
  });

  test("every row says where its figure comes from, and rows from memory say so", () => {
    for (const row of MATERIALS) {
      expect(row.source.length, row.name).toBeGreaterThan(10);
      expect(row.source.startsWith("from memory"), row.name).toBe(row.mark === "from memory");
      expect(row.density, row.name).toBeGreaterThan(0.0004);
      expect(row.density, row.name).toBeLessThan(0.011);
      if (row.low !== undefined && row.high !== undefined) {
        expect(row.low, row.name).toBeLessThanOrEqual(row.density);
        expect(row.high, row.name).toBeGreaterThanOrEqual(row.density);
      }
    }
    expect(findMaterial("1084")?.mark).toBe("from memory");
  });

  test("no name stands for two rows", () => {
    const names = MATERIALS.flatMap(({ name, aliases }) => [name, ...aliases]);
    const plain = names.map((name) => name.toLowerCase().replace(/[^a-z0-9]/g, ""));
    expect(new Set(plain).size).toBe(plain.length);
  });
});

describe("names", () => {
  test.each(["80CrV2", "80 crv2", "80-CRV-2", " 80crv2 ", "1.2235"])("%s is one steel", (name) => {
    expect(findMaterial(name)?.name).toBe("80CrV2");
  });

  test("an unknown name finds nothing and suggests the nearest", () => {
    expect(findMaterial("1048")).toBeUndefined();
    expect(suggestMaterials("1048")[0]).toBe("1084");
    expect(suggestMaterials("eurpean ash")[0]).toBe("European ash");
    expect(suggestMaterials("blackwod")[0]).toBe("African blackwood");
    expect(suggestMaterials("qqqqqqqqqq")).toEqual([]);
    expect(suggestMaterials("")).toEqual([]);
  });

  test("suggests no more than two, near ones in proportion to the length, and for a blade only steels", () => {
    expect(suggestMaterials("5106", 2, "steel")).toEqual(["5160"]);
    expect(suggestMaterials("52010", 2, "steel")).toEqual(["52100"]);
    expect(suggestMaterials("80CrV3", 2, "steel")).toEqual(["80CrV2"]);
    expect(suggestMaterials("coper")).toEqual(["copper"]);
    expect(suggestMaterials("coper", 2, "steel")).toEqual([]);
    for (const name of ["9999", "zz", "x9", "15"])
      expect(suggestMaterials(name, 2, "steel"), name).toEqual([]);
    for (const { name } of MATERIALS) {
      const near = suggestMaterials(`${name}x`);
      expect(near.length, name).toBeLessThanOrEqual(2);
      if (name.length >= 3) expect(near, name).toContain(name);
    }
  });

  test("aliases are the same steel", () => {
    expect(isSameMaterial("52100", "100Cr6")).toBe(true);
    expect(isSameMaterial("my own melt", "My Own Melt")).toBe(true);
    expect(isSameMaterial("1084", "1095")).toBe(false);
    expect(isSameMaterial("unknown a", "unknown b")).toBe(false);
  });
});
