import { boundsMeet, vec2 } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { visibleItems } from "../../src/box.js";
import { levelDimension } from "../../src/dimension.js";
import { type DrawingItem, polyline, strokes, type TextItem } from "../../src/drawing.js";
import { patternContents } from "../../src/sheets/pattern-sheet.js";
import { textBox } from "../../src/text-metrics.js";
import { fixtures } from "../fixtures.js";
import { contentOf } from "./random-view.js";
import { A4, LETTER, tiled } from "./tiled-views.js";

// Where joints go is chosen by pieces and lettering; figures then move out of their way.
const OVERLAP = 10;

describe("figures on dimension lines", () => {
  it.each(Object.keys(fixtures) as (keyof typeof fixtures)[])("keep clear of every overlap: %s", (name) => {
    const [content] = patternContents(fixtures[name]());
    if (content === undefined) throw new Error("a pattern has contents");
    for (const paper of [A4, LETTER]) {
      const { tiles } = tiled(content, paper);
      const figures = tiles.flatMap(({ drawing }) =>
        visibleItems(drawing.items).flatMap(({ item }) =>
          item.kind === "text" && (item.slide ?? []).length > 0 ? [textBox(item)] : [],
        ),
      );
      expect(figures.length).toBeGreaterThan(0);
      for (const box of figures) {
        const seenOn = tiles.filter(({ window }) => boundsMeet(box, window));
        expect(seenOn).toHaveLength(1);
      }
    }
  });

  it("are moved along the line and never off its ends", () => {
    for (const at of [180, 200, 230, 260]) {
      const items = levelDimension({
        from: 0,
        to: 2 * at,
        y: 0,
        text: "a figure of some length",
        clearOf: [],
        beside: "right",
      });
      const { tiles } = tiled(contentOf(items), A4);
      const [figure, ...more] = tiles.flatMap(({ drawing }) =>
        visibleItems(drawing.items).flatMap(({ item }) =>
          item.kind === "text" && item.slide !== undefined ? [item] : [],
        ),
      );
      expect(more).toEqual([]);
      const box = textBox(figure as TextItem);
      expect(figure?.at.y).toBe(textBoxFoot(items));
      expect(box.minX).toBeGreaterThan(3);
      expect(box.maxX).toBeLessThan(2 * at - 3);
    }
  });
});

describe("figures with too little room on their line", () => {
  /** All lettering that is whole on what a page keeps when it is cut and covered up to its joints. */
  const wholeWords = (items: readonly DrawingItem[]): string[] => {
    const { tiles } = tiled(contentOf(items), A4);
    expect(tiles.length).toBeGreaterThan(1);
    const texts = tiles.flatMap(({ drawing, window }, index) =>
      visibleItems(drawing.items).flatMap(({ item }) => {
        if (item.kind !== "text" || item.slide === undefined) return [];
        const { minX, maxX, minY, maxY } = textBox(item);
        const from = window.minX + (index > 0 ? OVERLAP / 2 : 0);
        const to = window.maxX - (index < tiles.length - 1 ? OVERLAP / 2 : 0);
        const isWhole = minX >= from && maxX <= to && minY >= window.minY && maxY <= window.maxY;
        return isWhole ? [`${item.height} ${item.text}`] : [];
      }),
    );
    return [...new Set(texts)].sort();
  };
  // Two windows of 258 mm have to cover it all, so that the joint falls in the middle.
  const row = (length: number): DrawingItem[] => [
    strokes("outline", [[vec2(-252, 0), vec2(252, 0)]]),
    ...levelDimension({
      from: -length / 2,
      to: length / 2,
      y: 20,
      text: '2 63/64" [75.74 mm]',
      clearOf: [],
      beside: "right",
    }),
  ];

  it("are set in the small lettering", () => {
    expect(wholeWords(row(92))).toEqual(['2.5 2 63/64" [75.74 mm]']);
  });

  it("are parted, each unit whole on a page", () => {
    expect(wholeWords(row(80))).toEqual(['3.5 2 63/64"', "3.5 [75.74 mm]"]);
  });

  it("are avoided by the joint where the pages leave a choice", () => {
    const items = [strokes("outline", [[vec2(-150, 0), vec2(150, 0)]]), ...row(57).slice(1)];
    expect(wholeWords(items)).toEqual(['3.5 2 63/64" [75.74 mm]']);
  });
});

/** y of the base line of the only lettering. */
const textBoxFoot = (items: readonly DrawingItem[]): number | undefined =>
  items.flatMap((item) => (item.kind === "text" ? [item.at.y] : []))[0];

describe("pieces that are cut out", () => {
  const piece = (y: number, height: number): DrawingItem => ({
    kind: "path",
    role: "cut",
    paths: [polyline([vec2(0, y), vec2(150, y), vec2(150, y + height), vec2(0, y + height)], true)],
  });

  it.each([
    [100, 160],
    [160, 100],
    [70, 180],
  ])("are parted by the joint and not cut by it: %d and %d mm, 3 mm apart", (low, high) => {
    const { tiles } = tiled(contentOf([piece(low + 3, high), piece(0, low)]), LETTER);
    expect(tiles.map(({ label }) => label)).toEqual(["A1", "B1"]);
    const joint = (tiles[0]?.window.minY ?? 0) + OVERLAP / 2;
    expect(joint).toBeGreaterThanOrEqual(low);
    expect(joint).toBeLessThanOrEqual(low + 3);
  });
});
