import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Drawing, type DrawingItem, flattenItems, type TextItem } from "../../src/drawing.js";
import type { SheetContent } from "../../src/lay-out/sheet-content.js";
import { segmentMeetsBox } from "../../src/lay-out/tiling/segment-box.js";
import type { PaperSize } from "../../src/paper.js";
import { patternContents } from "../../src/sheets/pattern-sheet.js";
import { textBox } from "../../src/text-metrics.js";
import { plainKnife } from "../plain-knife.js";
import { randomView } from "./random-view.js";
import { A4, LETTER, placeOf, type TilePage, tiled } from "./tiled-views.js";

// The map is laid beside the joined pages: where a page lies, and which way up, has to be the same on both.
const LABEL = /^[A-Z]+\d+$/;
const OVERLAP = 10;
const A5: PaperSize = { width: 210, height: 148 };
/** Where the check bars leave too little room at the foot the words of a page are turned. */
const NARROW: PaperSize = { width: 330, height: 150 };

function groupNamed(items: readonly DrawingItem[], name: string): readonly DrawingItem[] {
  for (const item of items) {
    if (item.kind !== "group") continue;
    if (item.name === name) return item.items;
    const inner = groupNamed(item.items, name);
    if (inner.length > 0) return inner;
  }
  return [];
}

const labelsIn = (items: readonly DrawingItem[]): TextItem[] =>
  flattenItems(items).filter(
    (item): item is TextItem => item.kind === "text" && item.bold === true && LABEL.test(item.text),
  );

const middle = ({ minX, maxX, minY, maxY }: TilePage["window"]): { x: number; y: number } => ({
  x: (minX + maxX) / 2,
  y: (minY + maxY) / 2,
});

/** What is drawn on a page is not turned there: the same mm right and up as on the joined sheet. */
function expectFooters(tiles: readonly TilePage[]): void {
  const [first] = tiles;
  if (first === undefined) return;
  const at = placeOf(first.label);
  const [wide, high] = [first.window.maxX - first.window.minX, first.window.maxY - first.window.minY];
  for (const { drawing, label, window } of tiles) {
    const [own, ...more] = labelsIn(groupNamed(drawing.items, "page-words"));
    expect(more).toEqual([]);
    expect(own?.text).toBe(label);
    expect(own?.rotation).toBe(0);
    const { row, column } = placeOf(label);
    expect(window.minX - first.window.minX).toBe((column - at.column) * (wide - OVERLAP));
    expect(window.minY - first.window.minY).toBe((at.row - row) * (high - OVERLAP));
    expect(drawing.width > drawing.height).toBe(
      (tiles[0]?.drawing.width ?? 0) > (tiles[0]?.drawing.height ?? 0),
    );
  }
}

/** Whether the labels on the map stand to one another as the pages do. */
function expectMap(cover: Drawing, tiles: readonly TilePage[]): void {
  const map = groupNamed(cover.items, "page-map");
  const labels = labelsIn(map);
  expect(labels.map(({ text }) => text).sort()).toEqual(tiles.map(({ label }) => label).sort());
  expect(labels.every(({ rotation }) => rotation === 0)).toBe(true);
  expect(new Set(labels.map(({ height }) => height)).size).toBe(1);
  const reduction = Number(
    flattenItems(map).flatMap((item) =>
      item.kind === "text" ? (/1 : (\d+)$/.exec(item.text)?.[1] ?? []) : [],
    )[0],
  );
  // Beside each label as much room as a fifth of its height, so that none seems to belong to the frame or the outline.
  const lines = flattenItems(map).flatMap((item) =>
    item.kind === "path" ? item.paths.flatMap(({ segments }) => segments) : [],
  );
  for (const label of labels) {
    const { minX, maxX, minY, maxY } = textBox(label);
    const by = 0.2 * label.height - 1e-6;
    const room = { minX: minX - by, maxX: maxX + by, minY: minY - by, maxY: maxY + by };
    expect(lines.filter((line) => segmentMeetsBox(line, room))).toEqual([]);
  }
  const shown = tiles.map(({ label, window }) => {
    const item = labels.find(({ text }) => text === label);
    if (item === undefined) throw new Error(`no ${label}`);
    return { box: textBox(item), at: middle(window), window };
  });
  for (const a of shown) {
    for (const b of shown) {
      // A label stands somewhere in its page's part of the map, which begins where the one before it ends.
      const [dx, dy] = [b.at.x - a.at.x, b.at.y - a.at.y];
      if (dx > 1) expect(a.box.maxX).toBeLessThan(b.box.minX);
      if (dy > 1) expect(a.box.maxY).toBeLessThan(b.box.minY);
      const [wide, high] = [a.window.maxX - a.window.minX, a.window.maxY - a.window.minY];
      const [mx, my] = [middle(b.box).x - middle(a.box).x, middle(b.box).y - middle(a.box).y];
      expect(Math.abs(mx * reduction - dx)).toBeLessThan(wide);
      expect(Math.abs(my * reduction - dy)).toBeLessThan(high);
    }
  }
}

function expectAlike(content: SheetContent, paper: PaperSize): { lying: boolean; pages: number } {
  const { pages, tiles } = tiled(content, paper);
  expectFooters(tiles);
  const cover = pages.find(({ items }) => groupNamed(items, "page-map").length > 0);
  if (tiles.length > 1 && cover === undefined) throw new Error("no map");
  if (cover !== undefined) expectMap(cover, tiles);
  return {
    lying: pages.some(({ width, height }, i) => i >= pages.length - tiles.length && width > height),
    pages: tiles.length,
  };
}

describe("the map of the pages", () => {
  it("shows lying and standing pages where they come to lie, and every page says which it is, upright", () => {
    const seen = { lying: 0, standing: 0 };
    fc.assert(
      fc.property(randomView, fc.constantFrom(A4, LETTER, A5, NARROW), (content, paper) => {
        const { lying, pages } = expectAlike(content, paper);
        if (pages > 2) seen[lying ? "lying" : "standing"]++;
      }),
      { seed: 20266, numRuns: 40, endOnFailure: true },
    );
    expect(seen.lying).toBeGreaterThan(5);
    expect(seen.standing).toBeGreaterThan(5);
  });

  it.each([
    [1500, 55, A4],
    [1500, 55, LETTER],
    [368, 45, LETTER],
    [620, 330, LETTER],
    [620, 330, A5],
  ] as const)("does so for a blade of %d × %d mm", (overall, height, paper) => {
    const [content] = patternContents(plainKnife(overall, height, "mm"));
    if (content === undefined) throw new Error("a pattern has contents");
    expect(expectAlike(content, paper).pages).toBeGreaterThan(1);
  });
});
