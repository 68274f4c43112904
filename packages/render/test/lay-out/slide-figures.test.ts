import { boundsMeet, vec2 } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { visibleItems } from "../../src/box.js";
import { levelDimension } from "../../src/dimension.js";
import { type DrawingItem, polyline, type TextItem } from "../../src/drawing.js";
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
