import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import {
  checkLayout,
  type Drawing,
  flattenItems,
  type PatternModel,
  papersFor,
  patternSheet,
} from "../../src/index.js";
import { fixtures, harvestKnife } from "../fixtures.js";
import { plainKnife } from "../plain-knife.js";
import { randomModel } from "../random-model.js";

const WHITE = 6; // mm that most printers need
const HALF_FRAME_LINE = 0.25;

const paperOf = (drawing: Drawing): unknown =>
  papersFor("mm")
    .concat(papersFor("in"))
    .find(({ name }) => name === drawing.paper);

describe("the paper of a pattern", () => {
  it.each(Object.entries(fixtures))("is exactly that of the page, lying or standing: %s", (_, make) => {
    const drawing = patternSheet(make());
    const { width, height } = drawing;
    expect(paperOf(drawing)).toMatchObject({
      width: Math.max(width, height),
      height: Math.min(width, height),
    });
  });

  it("is A3 for MG-14, 363 mm overall, and Tabloid where the shop works in inches", () => {
    expect(patternSheet(harvestKnife())).toMatchObject({ paper: "A3", width: 420, height: 297 });
    const inches = patternSheet({ ...harvestKnife(), units: "in" });
    expect(inches).toMatchObject({ paper: "Tabloid", width: 431.8, height: 279.4 });
    expect(checkLayout(inches)).toEqual([]);
  });

  it.each([
    [160, 25, "mm", "A4"],
    [192, 40, "mm", "A4"],
    [238, 30, "mm", "A4"],
    [240, 45, "mm", "A4"],
    [160, 25, "in", "Letter"],
    [205, 40, "in", "Letter"],
  ] as const)("holds a knife of %d × %d mm on one sheet (%s): %s", (overall, height, units, paper) => {
    const drawing = patternSheet(plainKnife(overall, height, units));
    expect(drawing.paper).toBe(paper);
    expect(drawing.width).toBeGreaterThan(drawing.height);
    expect(checkLayout(drawing)).toEqual([]);
  });

  it("is named in the title block, and left out where no paper is large enough", () => {
    const words = (drawing: Drawing): string[] =>
      flattenItems(drawing.items).flatMap((item) => (item.kind === "text" ? [item.text] : []));
    expect(words(patternSheet(harvestKnife()))).toContain("Print at 100 % on A3");
    const sword = patternSheet(plainKnife(1300, 60, "mm"));
    expect(sword.paper).toBeUndefined();
    expect(sword.width).toBeGreaterThan(1300);
    expect(words(sword)).toContain("Print at 100 %");
    expect(checkLayout(sword)).toEqual([]);
  });

  it("keeps 6 mm white all round, whatever the knife", () => {
    fc.assert(
      fc.property(randomModel, (model) => {
        const drawing = patternSheet(model);
        const ink = boxOfItems(drawing.items);
        const { origin, width, height } = drawing;
        expect(ink).toBeDefined();
        if (ink === undefined) return;
        const edge = WHITE + HALF_FRAME_LINE - 1e-9;
        expect(ink.minX + origin.x).toBeGreaterThanOrEqual(edge);
        expect(ink.minY + origin.y).toBeGreaterThanOrEqual(edge);
        expect(width - origin.x - ink.maxX).toBeGreaterThanOrEqual(edge);
        expect(height - origin.y - ink.maxY).toBeGreaterThanOrEqual(edge);
      }),
      { seed: 20264, numRuns: 40 },
    );
  });

  it("never grows when the knife gets shorter", () => {
    const areas = [150, 190, 230, 280, 330, 380, 500, 700].map((overall) => {
      const { width, height } = patternSheet(plainKnife(overall, 40, "mm"));
      return width * height;
    });
    expect(areas).toEqual([...areas].sort((a, b) => a - b));
  });

  it.each(["mm", "in"] as const)(
    "does not do so at any height, be figures in a dimension or a table: %s",
    (units) => {
      for (const height of [16, 30, 40, 45, 55, 70]) {
        // From where the edge is nothing but a quarter round to where the paper is the next one for sure.
        const lengths = Array.from({ length: 12 }, (_, step) => 115 + height + 12 * step);
        const papers = lengths.map((overall) => patternSheet(plainKnife(overall, height, units)));
        const areas = papers.map((page) => page.width * page.height);
        expect(areas, `${height} mm: ${papers.map(({ paper }) => paper)}`).toEqual(
          [...areas].sort((a, b) => a - b),
        );
      }
    },
  );

  it("packs what a search through all orders finds room for: 150 mm on A4, its tables beside and over the title", () => {
    const drawing = patternSheet(plainKnife(150, 40, "mm"));
    expect(drawing.paper).toBe("A4");
    expect(checkLayout(drawing)).toEqual([]);
  });

  it("has the straight edge beside its line where the table would be too high: 185 mm on A4", () => {
    const drawing = patternSheet(plainKnife(185, 45, "mm"));
    expect(drawing.paper).toBe("A4");
    expect(checkLayout(drawing)).toEqual([]);
    const words = flattenItems(drawing.items).flatMap((item) => (item.kind === "text" ? [item.text] : []));
    expect(words).toContain('30 mm [1 3/16"]');
    expect(words).not.toContain("Straight edge, length");
  });
});

describe("the further sizes of a pattern", () => {
  const wordsOf = (model: PatternModel): string[] =>
    flattenItems(patternSheet(model).items).flatMap((item) => (item.kind === "text" ? [item.text] : []));

  it("are dimensions where there is room: bevel, front and straight edge of MG-14", () => {
    const words = wordsOf(harvestKnife());
    for (const text of ['48 mm [1 57/64"]', '80 mm [3 5/32"]', '150 mm [5 29/32"]']) {
      expect(words.filter((word) => word === text)).toHaveLength(1);
    }
    for (const text of ["Bevel", "Blade, front", "Straight edge, length"]) expect(words).not.toContain(text);
  });

  it("stand in a table otherwise, with their places: the tang of MG-14", () => {
    const words = wordsOf(harvestKnife());
    const at = words.indexOf("Tang, front");
    expect(words.slice(at, at + 9)).toEqual([
      "Tang, front",
      '28 mm [1 7/64"]',
      '−10 mm [−25/64"]',
      "Tang, middle",
      '25 mm [63/64"]',
      '−74 mm [−2 29/32"]',
      "Tang, butt",
      '30 mm [1 3/16"]',
      '−138 mm [−5 7/16"]',
    ]);
  });

  it("stand in the table where the knife is too slender for a dimension", () => {
    const words = wordsOf(fixtures.boningKnife());
    for (const text of ["Bevel", "Tip over heel"]) expect(words).toContain(text);
    expect(words).toContain('90 mm [3 35/64"]');
  });

  it("include the greatest height of a spine that rises, and a straight edge too short for its figure", () => {
    const words = wordsOf({
      ...fixtures.boningKnife(),
      greatestHeight: { x: 60, low: 0, high: 22.4 },
      straightEdge: 9,
    });
    for (const text of ["Spine, greatest", "22.4 mm", "Straight edge, length"]) {
      expect(words.some((word) => word.startsWith(text))).toBe(true);
    }
  });

  it("are left out where the model has none", () => {
    const { tangHeights, tipHeight, bevelHeight, straightEdge, ...rest } = fixtures.boningKnife();
    expect([tangHeights, tipHeight, bevelHeight, straightEdge]).not.toContain(undefined);
    expect(wordsOf(rest)).not.toContain("Height of");
  });
});
