import { cubic, pathLength, signedArea, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Drawing, lettering, polyline, rectangle, strokes } from "../../src/drawing.js";
import { toDxf } from "../../src/dxf/to-dxf.js";
import { patternSheet } from "../../src/sheets/pattern-sheet.js";
import { harvestKnife } from "../fixtures.js";
import { randomModel } from "../random-model.js";
import { numberOf, pathOf, readEntities, readGroups, textOf } from "../read-dxf.js";

const pattern = patternSheet(harvestKnife());
const layersIn = (dxf: string): string[] => [...new Set(readEntities(dxf).map(({ layer }) => layer))].sort();

const drawingOf = (items: Drawing["items"], title = "rule"): Drawing => ({
  width: 100,
  height: 100,
  origin: vec2(10, 10),
  title,
  description: "",
  items,
});

describe("toDxf", () => {
  const dxf = toDxf(pattern);

  it("says title, unit and chord error at its head, and that it is release 12", () => {
    const groups = readGroups(dxf);
    expect(groups[0]).toEqual([999, "MG-14 Tall harvest knife for a market garden: true-size pattern"]);
    expect(groups[1]?.[1]).toMatch(/^Lengths in mm\. .* within 0\.005 mm/);
    expect(toDxf(pattern, { chordError: 0.02 })).toContain("within 0.02 mm");
    const version = groups.findIndex(([code, value]) => code === 9 && value === "$ACADVER");
    expect(groups[version + 1]).toEqual([1, "AC1009"]);
    expect(groups.at(-1)).toEqual([0, "EOF"]);
  });

  it("is the same every time, and plain ASCII", () => {
    expect(toDxf(patternSheet(harvestKnife()))).toBe(dxf);
    expect(dxf).toMatch(/^[\x20-\x7e\n]*$/);
  });

  it("holds the outline in the knife's own coordinates, wherever the page puts it", () => {
    const outline = readEntities(dxf).filter(({ layer, type }) => layer === "OUTLINE" && type === "POLYLINE");
    expect(outline).toHaveLength(1);
    const [only] = outline;
    if (only === undefined) throw new Error("no outline");
    const path = pathOf(only);
    const model = harvestKnife().outline;
    expect(path.segments[0]?.from).toEqual({ x: 0, y: 0 });
    expect(Math.abs(signedArea(path) - signedArea(model))).toBeLessThan(1e-5 * pathLength(model));
    expect(toDxf({ ...pattern, origin: vec2(0, 0), correction: { across: 1.01, up: 1.02 } })).toBe(dxf);
  });

  it("holds the holes as circles", () => {
    const circles = readEntities(dxf).filter(({ type }) => type === "CIRCLE");
    const found = circles.map((circle) => [10, 20, 40].map((code) => numberOf(circle, code)));
    expect(found).toEqual(
      harvestKnife().holes.map(({ centre, diameter }) => [centre.x, centre.y, diameter / 2]),
    );
  });

  it("declares every layer that it uses, and its line type", () => {
    const groups = readGroups(dxf);
    const named = (type: string): string[] =>
      groups.flatMap(([code, value], index) =>
        code === 0 && value === type ? [groups[index + 1]?.[1] ?? ""] : [],
      );
    const layers = named("LAYER");
    for (const layer of layersIn(dxf)) expect(layers).toContain(layer);
    const types = named("LTYPE");
    expect(types).toEqual(["CONTINUOUS", "HIDDEN", "CENTRE", "PHANTOM"]);
    const centre = groups.findIndex(([code, value]) => code === 2 && value === "CENTRE");
    const dashes = groups.slice(centre, centre + 10).filter(([code]) => code === 49);
    expect(dashes.map(([, value]) => Number(value))).toEqual([6, -0.75, 0.125, -0.75]);
  });

  it("leaves the paper out, and has a line of 100 mm to measure below all else", () => {
    expect(layersIn(dxf)).not.toContain("FRAME");
    const texts = readEntities(dxf).filter(({ type }) => type === "TEXT");
    const words = texts.map(textOf).join("\n");
    expect(words).not.toMatch(/PRINT AT|Order|Paper|in the table/);
    expect(words).toContain("225 mm");
    const [check, ...others] = readEntities(dxf).filter(
      ({ layer, type }) => layer === "CHECK" && type === "LINE",
    );
    if (check === undefined) throw new Error("no line to measure");
    expect(others).toEqual([]);
    expect(numberOf(check, 11) - numberOf(check, 10)).toBe(100);
    const lowest = readEntities(dxf)
      .filter((each) => each.layer !== "CHECK")
      .flatMap(({ groups }) => groups.flatMap(([code, value]) => (code === 20 ? [Number(value)] : [])));
    expect(numberOf(check, 20)).toBeLessThan(Math.min(...lowest) - 5);
  });

  it("holds the whole page where that is asked for", () => {
    const page = toDxf(pattern, { content: "page" });
    expect(layersIn(page)).toContain("FRAME");
    expect(page).toContain("PRINT AT 100 %. NO FIT TO PAGE.");
    // The page has check bars of its own: eight strokes at the least.
    expect(readEntities(page).filter(({ layer }) => layer === "CHECK").length).toBeGreaterThan(8);
  });

  it("holds nothing but the knife's lines for a cutter", () => {
    const geometry = toDxf(pattern, { content: "geometry" });
    expect(layersIn(geometry)).toEqual(["BEVEL", "CENTRE", "OUTLINE", "THIN"]);
    expect(readEntities(geometry).some(({ type }) => type === "TEXT")).toBe(false);
    // Station marks are part of the knife; the lines that lead to labels are not.
    const marks = readEntities(geometry).filter(({ layer }) => layer === "THIN");
    expect(marks).toHaveLength(2 * harvestKnife().stations.length);
  });

  it("holds only the roles that are asked for", () => {
    expect(layersIn(toDxf(pattern, { roles: ["outline"] }))).toEqual(["OUTLINE"]);
    expect(layersIn(toDxf(pattern, { roles: ["bevel", "text"] }))).toEqual(["BEVEL", "TEXT"]);
  });

  it("cuts off what a group hides, and leaves out white areas", () => {
    const clip = { minX: 0, minY: 0, maxX: 10, maxY: 10 };
    const inside = [
      strokes("outline", [[vec2(-5, 5), vec2(50, 5)]]),
      lettering("in", vec2(1, 1), { height: 2.5 }),
      lettering("out", vec2(30, 1), { height: 2.5 }),
      { kind: "circle", role: "outline", centre: vec2(5, 5), radius: 2 } as const,
      { ...rectangle("thin", vec2(1, 1), vec2(2, 2)), fill: "white" } as const,
    ];
    const found = readEntities(
      toDxf(drawingOf([{ kind: "group", clip, items: inside }]), { content: "page" }),
    );
    expect(found.map(({ type }) => type)).toEqual(["LINE", "TEXT", "CIRCLE"]);
    expect([10, 11].map((code) => numberOf(found[0] as (typeof found)[number], code))).toEqual([0, 10]);
  });

  it("survives hostile names: every pair of lines stays a pair", () => {
    const hostile = "x\n  0\nEOF\r\u0000%%u \\U+0041";
    const found = readEntities(
      toDxf(drawingOf([lettering(hostile, vec2(0, 0), { height: 2.5 })], hostile), { content: "page" }),
    );
    expect(found.map(textOf)).toEqual(["x 0 EOF % %u \\U+005CU+0041"]);
  });

  it("writes an empty drawing, and refuses a chord error that it cannot keep and coordinates that are none", () => {
    expect(readEntities(toDxf(drawingOf([])))).toEqual([]);
    expect(() => toDxf(pattern, { chordError: 0 })).toThrow(/chord error/);
    const broken = drawingOf([strokes("outline", [[vec2(0, 0), vec2(Number.NaN, 5)]])]);
    expect(() => toDxf(broken)).toThrow(/finite/);
  });

  it("writes any knife, its outline within perimeter × chord error", () => {
    fc.assert(
      fc.property(randomModel, (model) => {
        const file = toDxf(patternSheet(model), { chordError: 0.01 });
        const outline = readEntities(file).find(
          ({ layer, type }) => layer === "OUTLINE" && type === "POLYLINE",
        );
        if (outline === undefined) throw new Error("no outline");
        const gap = Math.abs(signedArea(pathOf(outline)) - signedArea(model.outline));
        expect(gap).toBeLessThan(0.01 * pathLength(model.outline));
      }),
      { seed: 901, numRuns: 40 },
    );
  });

  it("takes more chords for a smaller error", () => {
    const curve = { segments: [cubic(vec2(0, 0), vec2(50, 40), vec2(90, 40), vec2(120, 0))], closed: false };
    const one = drawingOf([{ kind: "path", role: "outline", paths: [curve] }]);
    const count = (chordError: number): number =>
      readEntities(toDxf(one, { chordError, content: "geometry" }))[0]?.vertices.length ?? 0;
    expect(count(0.001)).toBeGreaterThan(2 * count(0.01));
    expect(
      readEntities(toDxf(drawingOf([{ kind: "path", role: "outline", paths: [polyline([])] }]))),
    ).toEqual([]);
  });
});
