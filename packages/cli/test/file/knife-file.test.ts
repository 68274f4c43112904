import { describe, expect, it } from "vitest";
import { type KnifeFile, readKnifeFile } from "../../src/file/index.js";
import { HARVEST, SMALL, smallWith } from "./files.js";

const DEGREE = Math.PI / 180;
const INCH = 25.4;
const read = (text: string): KnifeFile => readKnifeFile(text, "orders/harvest.knife.yaml");

describe("the demo's knife file", () => {
  const file = read(HARVEST);

  it("gives the spec, number for number", () => {
    expect(file.units).toBe("mm");
    expect(file.spec).toEqual({
      steel: { name: "1084" },
      blade: {
        outline: { family: "vegetable", edgeLength: 225, heelHeight: 92, straightEdge: 150, tipHeight: 80 },
        ricasso: 10,
        thickness: [
          { at: { kind: "heel" }, is: 4.6 },
          { at: { kind: "fraction", share: 0.6 }, is: 3.6 },
          { at: { kind: "tip" }, is: 2.2 },
        ],
        between: "straight",
        flankTaper: 0.3,
        plunge: { at: 0, length: 0 },
        bevel: { form: "flat", height: 48, edgeThickness: 0.5 },
        edgeAngle: 16 * DEGREE,
      },
      tang: {
        form: "full",
        length: 128,
        heights: { front: 28, middle: 25, butt: 30 },
        buttThickness: 2.4,
        holes: [
          { kind: "pin", at: { x: -26, y: 76 }, diameter: 4 },
          { kind: "pin", at: { x: -84, y: 76 }, diameter: 4 },
          { kind: "thong", at: { x: -116, y: 76 }, diameter: 6 },
        ],
      },
      handle: {
        slabs: { material: { name: "European ash" }, thickness: 8, edgeRadius: 6 },
        pins: { material: { name: "brass" } },
      },
      finish: { flats: "forged", bevels: "ground" },
      allowances: {
        face: 0.5,
        outline: 1.5,
        tip: 3,
        butt: 3,
        forgedEdge: 1.6,
        forgedBevel: "line",
        afterHardening: 0.1,
        minEdge: 0.6,
        tang: "tapered",
      },
      forging: { heats: 9, weldingHeats: 3 },
    });
    expect(file.tolerances).toEqual([]);
  });

  it("gives the order and what was asked", () => {
    expect(file.order).toEqual({
      code: "MG-14",
      title: "Tall harvest knife for a market garden",
      asks: [
        { name: "mass", test: { kind: "below", limit: 600 }, should: false, path: "order.asks.mass" },
        {
          name: "balance",
          test: { kind: "between", low: 45, high: 65 },
          should: false,
          path: "order.asks.balance",
        },
        {
          name: "overallLength",
          test: { kind: "below", limit: 370 },
          should: false,
          path: "order.asks.overallLength",
        },
      ],
    });
  });

  it("knows where everything stands", () => {
    const lineOf = (start: string): number =>
      HARVEST.split("\n").findIndex((line) => line.trimStart().startsWith(start)) + 1;
    expect(file.positionOf("blade.ricasso")).toEqual({ line: lineOf("ricasso:"), column: 12 });
    expect(file.positionOf("blade.thickness[1].is")).toEqual({ line: lineOf("- { at: 60 %"), column: 23 });
    expect(file.positionOf("blade.thickness")).toEqual({ line: lineOf("thickness:"), column: 3 });
    expect(file.positionOf("tang.holes[1].at.y")).toEqual({
      line: lineOf("- { kind: pin, at: [-84"),
      column: 30,
    });
    expect(file.positionOf("order.asks.mass")).toEqual({ line: lineOf("mass:"), column: 11 });
    expect(file.positionOf("blade.outline.spineBreak")).toBeUndefined();
  });
});

describe("readKnifeFile", () => {
  it("takes the same file as JSON", () => {
    const json = JSON.stringify(
      {
        scantling: 1,
        units: "mm",
        steel: "1084",
        blade: {
          outline: { family: "vegetable", edgeLength: 225, heelHeight: 92 },
          thickness: [{ at: "heel", is: 4.6 }],
          bevel: { form: "flat", height: 48, edgeThickness: 0.5 },
          edgeAngle: "16 deg",
        },
        tang: { form: "full", length: 128 },
      },
      null,
      "\t",
    );
    const file = readKnifeFile(json, "knife.json");
    expect(file.spec).toEqual(read(SMALL).spec);
    expect(file.positionOf("steel")).toEqual({ line: 4, column: 11 });
  });

  it("takes line ends of other systems and a byte order mark's absence alike", () => {
    expect(read(SMALL.replaceAll("\n", "\r\n")).spec).toEqual(read(SMALL).spec);
  });

  it("names the order after the file where it has no title", () => {
    expect(read(SMALL).order).toEqual({ code: "", title: "harvest", asks: [] });
  });

  it("takes bare numbers in the file's units, wherever the units stand", () => {
    const inches = smallWith({
      2: "",
      5: "  outline: { family: vegetable, edgeLength: 8 7/8, heelHeight: 3-5/8 }",
      7: "    - { at: heel, is: 3/16 }",
      8: "  bevel: { form: flat, height: 1.875, edgeThickness: 0.5 mm }",
      12: "  length: 5\nunits: in",
    });
    expect(read(inches).spec.blade).toMatchObject({
      outline: { edgeLength: 225.425, heelHeight: 92.075 },
      thickness: [{ is: 4.7625 }],
      bevel: { height: 47.625, edgeThickness: 0.5 },
    });
    expect(read(inches).spec.tang.length).toBe(5 * INCH);
  });

  it("takes a name as it is written, even where it looks like a number", () => {
    expect(read(smallWith({ 3: "steel: 1084" })).spec.steel).toEqual({ name: "1084" });
    const numbered = read(`${SMALL}order: { code: 0014, title: 4.60 }\n`);
    expect(numbered.order).toMatchObject({ code: "0014", title: "4.60" });
  });

  it("takes an included angle by half", () => {
    const angle = read(smallWith({ 9: "  edgeAngle: { included: 32 ± 2 deg }" }));
    expect(angle.spec.blade.edgeAngle).toBe(16 * DEGREE);
    expect(angle.tolerances).toEqual([{ path: "blade.edgeAngle", plus: DEGREE, minus: DEGREE }]);
  });

  it("takes laws as one value, by stations, or a bevel as full", () => {
    const text = smallWith({
      8: `  flankTaper: [{ at: heel, is: 0.3 }, { at: 120, is: 0.2 }, { at: 8 in, is: 0 }]
  bevel:
    form: convex
    height: full
    edgeThickness: [{ at: heel, is: 0.5 }, { at: tip, is: 0.3 }]
    crown: 20 %`,
      12: "  length: 128\n  thickness: [{ at: handle, is: 4.6 }, { at: 50 %, is: 4 }, { at: butt, is: 2.4 }]",
    });
    const { blade, tang } = read(text).spec;
    expect(blade.flankTaper).toEqual([
      { at: { kind: "heel" }, is: 0.3 },
      { at: { kind: "distance", mm: 120 }, is: 0.2 },
      { at: { kind: "distance", mm: 203.2 }, is: 0 },
    ]);
    expect(blade.bevel).toEqual({
      form: "convex",
      height: "full",
      edgeThickness: [
        { at: { kind: "heel" }, is: 0.5 },
        { at: { kind: "tip" }, is: 0.3 },
      ],
      crown: { share: 0.2 },
    });
    expect(tang.thickness).toEqual([
      { at: { kind: "handle" }, is: 4.6 },
      { at: { kind: "fraction", share: 0.5 }, is: 4 },
      { at: { kind: "butt" }, is: 2.4 },
    ]);
    const crowns = (crown: string): unknown =>
      read(smallWith({ 8: `  bevel: { form: convex, height: 48, edgeThickness: 0.5, crown: ${crown} }` }))
        .spec.blade.bevel.crown;
    expect(crowns("0.2")).toEqual({ mm: 0.2 });
    expect(crowns("[{ at: heel, is: 10 % }]")).toEqual({
      share: [{ at: { kind: "heel" }, is: 0.1 }],
    });
  });

  it("takes runs as they are", () => {
    const text = smallWith({ 5: '  outline: { runs: { edge: "M0 0 L200 0", spine: "L-10 40" } }' });
    expect(read(text).spec.blade.outline).toEqual({ runs: { edge: "M0 0 L200 0", spine: "L-10 40" } });
  });

  it("takes materials with a density, and parts by mass and place", () => {
    const text = `${smallWith({ 3: "steel: { name: house mix, density: 7.83 g/cm3 ± 1 % }" })}handle:
  parts:
    - { name: guard, mass: 1 lb 2 oz, at: [-5, 80] }
blade2: 1
`.replace("blade2: 1\n", "");
    const file = read(text);
    expect(file.spec.steel).toEqual({ name: "house mix", density: 0.00783 });
    expect(file.spec.handle?.parts).toEqual([{ name: "guard", mass: 510.29141625, at: { x: -5, y: 80 } }]);
    expect(file.tolerances).toEqual([{ path: "steel.density", plus: 0.0000783, minus: 0.0000783 }]);
  });

  it("lists tolerances by their path in the spec", () => {
    const text = smallWith({
      5: "  outline: { family: vegetable, edgeLength: 225 ± 1, heelHeight: 92 +1/-0.5 mm }",
      7: "    - { at: heel, is: 4.6 ± 0.2 }\n    - { at: tip, is: 2.2 }",
      12: "  length: 128\n  holes: [{ kind: pin, at: [-26 ± 0.5, 76], diameter: 4, pin: 3.9 }]",
    });
    const file = read(text);
    expect(file.tolerances).toEqual([
      { path: "blade.outline.edgeLength", plus: 1, minus: 1 },
      { path: "blade.outline.heelHeight", plus: 1, minus: 0.5 },
      { path: "blade.thickness[0].is", plus: 0.2, minus: 0.2 },
      { path: "tang.holes[0].at.x", plus: 0.5, minus: 0.5 },
    ]);
    for (const { path } of file.tolerances) expect(file.positionOf(path), path).toBeDefined();
  });

  it("takes asks of every form", () => {
    const { asks } = read(`${SMALL}order:
  asks:
    thickness: { about: 4.6 ± 0.2, should: true }
    heelHeight: { above: 3 1/2 in }
    balance: { between: [-5, 5] }
    mass: { about: 1 lb ± 5 % }
`).order;
    expect(asks).toEqual([
      {
        name: "mass",
        test: { kind: "about", value: 453.59237, plus: 453.59237 * 0.05, minus: 453.59237 * 0.05 },
        should: false,
        path: "order.asks.mass",
      },
      {
        name: "balance",
        test: { kind: "between", low: -5, high: 5 },
        should: false,
        path: "order.asks.balance",
      },
      {
        name: "heelHeight",
        test: { kind: "above", limit: 88.9 },
        should: false,
        path: "order.asks.heelHeight",
      },
      {
        name: "thickness",
        test: { kind: "about", value: 4.6, plus: 0.2, minus: 0.2 },
        should: true,
        path: "order.asks.thickness",
      },
    ]);
  });
});
