import { outlineFromLandmarks, pathBounds, type TangSpec } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkLayout, flattenItems, type PatternModel, patternSheet, toSvg } from "../../src/index.js";
import { boningKnife, fixtures, harvestKnife, slicer } from "../fixtures.js";
import { randomModel } from "../random-model.js";
import {
  attributeOf,
  boundsOfPoints,
  byId,
  pointsOfPathData,
  readSvg,
  type SvgElement,
} from "../read-svg.js";

const written = async (model: PatternModel): Promise<SvgElement[]> =>
  readSvg(await toSvg(patternSheet(model)));
const words = (elements: readonly SvgElement[]): string[] =>
  elements.filter(({ tag }) => tag === "text").map(({ text }) => text);

/** Ends of a straight path in the file, in steps of 10⁻⁵ mm, so that they compare as whole numbers. */
function endsInSteps(elements: readonly SvgElement[], id: string): { dx: number; dy: number } {
  const numbers = attributeOf(byId(elements, id), "d")
    .match(/-?[\d.]+/g)
    ?.map((n) => Math.round(Number(n) * 1e5));
  expect(numbers).toHaveLength(4);
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = numbers ?? [];
  return { dx: Math.abs(x2 - x1), dy: Math.abs(y2 - y1) };
}

describe.each(Object.entries(fixtures))("pattern sheet of the %s", (_, make) => {
  it("draws the outline at true size, where the model has it", async () => {
    const model = make();
    const drawing = patternSheet(model);
    const d = attributeOf(byId(await written(model), "outline"), "d");
    const drawn = boundsOfPoints(pointsOfPathData(d, 4000));
    const wanted = pathBounds(model.outline);
    const tolerance = 1e-5; // mm: the step to which coordinates are written
    expect(Math.abs(drawn.minX - drawing.origin.x - wanted.minX)).toBeLessThan(tolerance);
    expect(Math.abs(drawn.maxX - drawing.origin.x - wanted.maxX)).toBeLessThan(tolerance);
    expect(Math.abs(drawing.height - drawn.maxY - drawing.origin.y - wanted.minY)).toBeLessThan(tolerance);
    expect(Math.abs(drawing.height - drawn.minY - drawing.origin.y - wanted.maxY)).toBeLessThan(tolerance);
    expect(drawn.maxX - drawn.minX).toBeCloseTo(model.overallLength, 5);
  });

  it("has holes where the model has them", async () => {
    const model = make();
    const { origin, height } = patternSheet(model);
    const circles = (await written(model)).filter(({ tag }) => tag === "circle");
    expect(
      circles.map((circle) => ["cx", "cy", "r"].map((name) => Number(attributeOf(circle, name)))),
    ).toEqual(
      model.holes.map(({ centre, diameter }) => [
        centre.x + origin.x,
        Number((height - origin.y - centre.y).toFixed(5)),
        Number((diameter / 2).toFixed(5)),
      ]),
    );
  });

  it("has check bars of exactly 100 mm and 4 in, across and up", async () => {
    const elements = await written(make());
    expect(endsInSteps(elements, "check-mm-across")).toEqual({ dx: 100_00000, dy: 0 });
    expect(endsInSteps(elements, "check-in-across")).toEqual({ dx: 101_60000, dy: 0 });
    expect(endsInSteps(elements, "check-mm-up")).toEqual({ dx: 0, dy: 100_00000 });
    expect(endsInSteps(elements, "check-in-up")).toEqual({ dx: 0, dy: 101_60000 });
  });

  it("can be read: nothing on top of anything, nothing off the page", () => {
    expect(checkLayout(patternSheet(make()))).toEqual([]);
  });

  it("says where a mass rests on a density from memory", async () => {
    const labels = async (densityFromMemory: PatternModel["densityFromMemory"]): Promise<string[]> => {
      const model = { ...make(), ...(densityFromMemory === undefined ? {} : { densityFromMemory }) };
      expect(checkLayout(patternSheet(model))).toEqual([]);
      const texts = (await written(model)).flatMap(({ tag, text }) => (tag === "text" ? [text] : []));
      return texts.filter((text) => /mass/.test(text));
    };
    expect(await labels(undefined)).toEqual(["Steel mass, finished", "Knife mass"]);
    expect(await labels({ steel: false, knife: true })).toEqual([
      "Steel mass, finished",
      "Knife mass, density from memory",
    ]);
    expect(await labels({ steel: true, knife: true })).toEqual([
      "Steel mass, density from memory",
      "Knife mass, density from memory",
    ]);
  });

  it("has lettering of 2.5 mm and more, as font size and as height of capitals", async () => {
    const texts = (await written(make())).filter(({ tag }) => tag === "text");
    expect(texts.length).toBeGreaterThan(40);
    for (const text of texts) {
      const size = Number(attributeOf(text, "font-size"));
      // Cap height of Arial and Helvetica, the lowest of the font list, as a share of the size: 0.716 (from memory).
      expect(0.716 * size).toBeGreaterThanOrEqual(2.5);
    }
  });

  it("is black on white", async () => {
    const colours = (await written(make())).flatMap(({ attributes }) =>
      ["fill", "stroke"].map((name) => attributes[name]).filter((value) => value !== undefined),
    );
    expect(new Set(colours)).toEqual(new Set(["none", "#ffffff", "#000000"]));
  });

  it("says how to print it, and names each part once", async () => {
    const elements = await written(make());
    const texts = words(elements);
    expect(texts).toContain("PRINT AT 100 %. NO FIT TO PAGE.");
    expect(texts).toContain("Before cutting, measure all four check bars.");
    expect(texts).toContain("1 : 1");
    const ids = elements.map((element) => attributeOf(element, "id")).filter((id) => id !== "");
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("is moved by whole mm, and written as the same bytes every time", async () => {
    const first = patternSheet(make());
    expect(Number.isInteger(first.origin.x) && Number.isInteger(first.origin.y)).toBe(true);
    expect(await toSvg(first)).toBe(await toSvg(patternSheet(make())));
  });
});

describe("what the pattern of MG-14 says", () => {
  it("has the lengths, by hand: 225 mm is 566.9/64 in, 363 mm 914.6/64, 128 mm 322.5/64, 92 mm 231.8/64", async () => {
    const texts = words(await written(harvestKnife()));
    for (const text of [
      '225 mm [8 55/64"]',
      '363 mm [14 19/64"]',
      '128 mm [5 3/64"]',
      '10 mm [25/64"]',
      '92 mm [3 5/8"]',
    ]) {
      expect(texts).toContain(text);
    }
  });

  it("has the stations with their thickness, and the holes with letter, diameter and place", async () => {
    const texts = words(await written(harvestKnife()));
    for (const text of ["4.6 mm", '[0.181"]', "at 0 mm", "3.6 mm", "at 135 mm", "2.2 mm", "at 225 mm"]) {
      expect(texts).toContain(text);
    }
    for (const text of [
      "Ø 4 mm",
      "Ø 6 mm",
      '−26.00 mm [−1.024"]',
      '76.00 mm [2.992"]',
      "thong",
      "HEEL",
      "TIP",
    ]) {
      expect(texts).toContain(text);
    }
    expect(texts.filter((text) => text === "A")).toHaveLength(2);
  });

  it("has the title block", async () => {
    const texts = words(await written(harvestKnife()));
    for (const text of [
      "MG-14",
      "1084",
      "finished",
      "437 g [15.4 oz]",
      "542 g [1 lb 3.1 oz]",
      "mm [inches]",
    ]) {
      expect(texts).toContain(text);
    }
    expect(texts.join(" ")).toContain("Tall harvest knife for a market garden");
  });

  it("describes itself to those who cannot see it", async () => {
    const [, title, description] = await written(harvestKnife());
    expect(title?.text).toBe("MG-14 Tall harvest knife for a market garden: true-size pattern");
    expect(description?.text).toContain(
      'Blade with tang 363 mm [14 19/64"] long, edge length 225 mm [8 55/64"]',
    );
    expect(description?.text).toContain("3 holes");
  });

  it("is the golden drawing", async () => {
    await expect(await toSvg(patternSheet(harvestKnife()))).toMatchFileSnapshot(
      "../golden/pattern-mg-14.svg",
    );
  });
});

describe("outlines built from landmarks", () => {
  const tang: TangSpec = { form: "full", length: 128, heights: { front: 28, middle: 25, butt: 30 } };

  it("gives the outline of MG-14 as it was made by hand", async () => {
    const landmarks = { edgeLength: 225, heelHeight: 92, straightEdge: 150, tipHeight: 80 };
    const built = outlineFromLandmarks({ family: "vegetable", ...landmarks }, 10, tang);
    const model = harvestKnife();
    const outlineOf = async (given: PatternModel): Promise<string> =>
      attributeOf(byId(await written(given), "outline"), "d");
    expect(await outlineOf({ ...model, outline: built.path })).toBe(await outlineOf(model));
  });

  it.each(["straight-back", "drop-point"] as const)("can be read for a %s", (family) => {
    const { path } = outlineFromLandmarks({ family, edgeLength: 180, heelHeight: 38 }, 8, tang);
    const overallLength = 180 + 8 + 128;
    const model = {
      ...slicer(),
      outline: path,
      edgeLength: 180,
      heelHeight: 38,
      handleFront: -8,
      overallLength,
    };
    expect(checkLayout(patternSheet({ ...model, stations: [] }))).toEqual([]);
  });
});

describe("what differs from knife to knife", () => {
  it("puts inches first where the file is in inches", async () => {
    const texts = words(await written(slicer()));
    for (const text of ['12 1/64" [305 mm]', '1 1/2" [38.1 mm]', 'Ø 3/16"', "[4.76 mm]", "inches [mm]"]) {
      expect(texts).toContain(text);
    }
  });

  it("runs one centre line through holes of one height, and one through each hole otherwise", () => {
    const centreLines = (model: PatternModel): number =>
      flattenItems(patternSheet(model).items).filter((item) => item.kind === "path" && item.role === "centre")
        .length;
    expect(centreLines(harvestKnife())).toBe(3 + 1);
    expect(centreLines(boningKnife())).toBe(3 + 3);
  });

  it("does without stations, holes, ricasso, bevel line and revision", () => {
    const { revision, ...rest } = boningKnife();
    expect(revision).toBe("1");
    const model: PatternModel = { ...rest, stations: [], holes: [], bevelLine: [] };
    expect(checkLayout(patternSheet(model))).toEqual([]);
  });

  it("shortens what does not fit and keeps its size", async () => {
    const model = { ...boningKnife(), title: "Knife ".repeat(60), steel: "W".repeat(300), code: "\u202e" };
    expect(checkLayout(patternSheet(model))).toEqual([]);
    const texts = words(await written(model));
    expect(texts.some((text) => /^Knife Knife.*\.\.\.$/.test(text))).toBe(true);
    expect(texts.some((text) => /^W+\.\.\.$/.test(text))).toBe(true);
  });

  it("turns labels upright rather than let many stations run together", () => {
    const stations = Array.from({ length: 40 }, (_, index) => ({
      x: index * 3.6,
      top: 22,
      bottom: 0,
      thickness: 2.5 - index / 50,
    }));
    const drawing = patternSheet({ ...boningKnife(), stations });
    expect(checkLayout(drawing)).toEqual([]);
    const upright = flattenItems(drawing.items).filter((item) => item.kind === "text" && item.rotation > 1);
    expect(upright.length).toBeGreaterThanOrEqual(40);
  });

  it("refuses figures that the outline does not bear out", () => {
    expect(() => patternSheet({ ...harvestKnife(), overallLength: 362 })).toThrow(/overall length/);
  });

  it("can be read for any knife", () => {
    fc.assert(
      fc.property(randomModel, (model) => {
        expect(checkLayout(patternSheet(model))).toEqual([]);
      }),
      { seed: 20261, numRuns: 200 },
    );
  });

  it("is a sound file with no NaN for any knife", async () => {
    await fc.assert(
      fc.asyncProperty(randomModel, async (model) => {
        const svg = await toSvg(patternSheet(model));
        expect(readSvg(svg).length).toBeGreaterThan(60);
        expect(svg.replace(/<(text|title|desc)[^\n]*/g, "")).not.toMatch(
          /NaN|Infinity|undefined|[\d.]e[-+]?\d/,
        );
      }),
      { seed: 20262, numRuns: 40 },
    );
  });
});
