import { describe, expect, test } from "vitest";
import { type DensityMark, findMaterial, MATERIALS } from "../../src/materials/materials.js";

// Every row against the published values that it was taken from, g/cm³, with how each figure is known. Sources: Metals
// Handbook vol. 1, 8th ed. 1961, p. 52 (ASM); Machinery's Handbook, 21st ed. 1979, p. 2270; Bolz & Tuve, 2nd ed. 1973,
// all as transcribed; mill and distributor sheets as the rows say; wood database values as transcribed, air-dry.
type Row = readonly [name: string, gPerCm3: number];

const PUBLISHED: Readonly<Record<DensityMark, readonly Row[]>> = {
  "looked up": [
    ["D2", 7.695],
    ["CPM 10V", 7.418],
    ["G10", 1.8],
    ["FR4", 1.85],
    ["desert ironwood", 1.21],
  ],
  "secondary copy": [
    ["carbon steel", 7.85],
    ["1020", 7.86],
    ["pure iron", 7.874],
    ["low-carbon Cr-Mo steel", 7.86],
    ["W1", 7.8],
    ["W2", 7.85],
    ["5160", 7.85],
    ["52100", 7.81],
    ["O1", 7.81],
    ["440 stainless", 7.7],
    ["304", 7.9],
    ["316", 8.0],
    ["17-4PH", 7.8],
    ["M2", 8.16],
    ["wrought iron", 7.85],
    ["cartridge brass", 8.53],
    ["brass", 8.5],
    ["naval brass", 8.44],
    ["red brass", 8.75],
    ["copper", 8.96],
    ["phosphor bronze", 8.8],
    ["bronze", 8.78],
    ["nickel silver", 8.7],
    ["nickel", 8.9],
    ["nickel-copper alloy", 8.84],
    ["silver", 10.49],
    ["titanium", 4.507],
    ["leather", 0.94],
    ["African blackwood", 1.27],
    ["lignum vitae", 1.26],
    ["leadwood", 1.22],
    ["Macassar ebony", 1.12],
    ["African ebony", 1.03],
    ["Ceylon ebony", 0.915],
    ["ipe", 1.1],
    ["cocobolo", 1.095],
    ["mopane", 1.075],
    ["katalox", 1.05],
    ["marblewood", 1.005],
    ["olive", 0.98],
    ["granadillo", 0.925],
    ["Osage orange", 0.855],
    ["Brazilian rosewood", 0.835],
    ["East Indian rosewood", 0.83],
    ["hard maple", 0.705],
    ["red oak", 0.7],
    ["European beech", 0.71],
    ["European ash", 0.68],
    ["English oak", 0.675],
    ["English walnut", 0.64],
    ["koa", 0.625],
    ["soft maple", 0.61],
    ["black walnut", 0.61],
    ["Honduran mahogany", 0.545],
  ],
  computed: [],
  "from memory": [
    ["1075", 7.85],
    ["1080", 7.85],
    ["1084", 7.85],
    ["1095", 7.85],
    ["80CrV2", 7.85],
    ["15N20", 7.85],
    ["L6", 7.85],
    ["A2", 7.86],
    ["410", 7.72],
    ["AEB-L", 7.7],
    ["12C27", 7.7],
    ["14C28N", 7.7],
    ["S30V", 7.47],
    ["S35VN", 7.47],
    ["M390", 7.54],
    ["Elmax", 7.6],
    ["154CM", 7.7],
    ["titanium 6Al-4V", 4.43],
    ["aluminium 6061", 2.7],
    ["canvas phenolic", 1.36],
    ["paper phenolic", 1.37],
    ["carbon fibre", 1.55],
    ["epoxy", 1.15],
    ["stabilised wood", 1.05],
    ["bone", 1.85],
    ["white oak", 0.755],
    ["cherry", 0.56],
    ["bocote", 0.85],
    ["ziricote", 0.805],
    ["snakewood", 1.21],
    ["boxwood", 0.975],
    ["purpleheart", 0.905],
    ["wenge", 0.87],
  ],
};

describe("the table of materials", () => {
  const rows = (Object.keys(PUBLISHED) as DensityMark[]).flatMap((mark) =>
    PUBLISHED[mark].map(([name, value]) => [name, value, mark] as const),
  );

  test.each(rows)("%s: %s g/cm³, %s", (name, value, mark) => {
    const row = findMaterial(name);
    expect(row?.density).toBeCloseTo(value / 1000, 12);
    expect(row?.mark).toBe(mark);
  });

  test("has no row beside the published ones", () => {
    expect(MATERIALS.map(({ name }) => name).sort()).toEqual(rows.map(([name]) => name).sort());
  });

  test("gives no density where none was found", () => {
    expect(findMaterial("MagnaCut")).toBeUndefined();
    expect(findMaterial("CPM MagnaCut")).toBeUndefined();
  });
});
