import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import { checkLayout } from "../../src/check-layout.js";
import { type DrawingItem, lettering, rectangle } from "../../src/drawing.js";
import type { Part } from "../../src/lay-out/part.js";
import type { SheetContent } from "../../src/lay-out/sheet-content.js";
import { patternContents } from "../../src/sheets/pattern-sheet.js";
import { boningKnife, harvestKnife } from "../fixtures.js";
import { A4, isInside, LETTER, placeOf, samplePoints, type TilePage, tiled, words } from "./tiled-views.js";

function pattern(make: () => Parameters<typeof patternContents>[0]): SheetContent {
  const [content] = patternContents(make());
  if (content === undefined) throw new Error("a pattern has contents");
  return content;
}

function itemsNamed(items: readonly DrawingItem[], name: string): readonly DrawingItem[] {
  const found = items.find((item) => item.kind === "group" && item.name === name);
  return found?.kind === "group" ? found.items : [];
}

const neighbours = (tiles: readonly TilePage[]): [TilePage, TilePage][] =>
  tiles.flatMap((a) => {
    const at = placeOf(a.label);
    return tiles.flatMap((b): [TilePage, TilePage][] => {
      const other = placeOf(b.label);
      const right = other.row === at.row && other.column === at.column + 1;
      const below = other.column === at.column && other.row === at.row + 1;
      return right || below ? [[a, b]] : [];
    });
  });

describe("what is not the view", () => {
  const BESIDE = ["title-block", "page-map", "how-to-join"];
  const besideOn = ({ drawing }: TilePage): DrawingItem[] =>
    drawing.items.filter(
      (item) => item.kind === "group" && [...BESIDE, "sizes", "holes"].includes(item.name ?? ""),
    );

  it("stands beside the view where all of it has room, and no page is in front", () => {
    for (const paper of [A4, LETTER]) {
      const { pages, tiles } = tiled(pattern(boningKnife), paper);
      expect(tiles).toHaveLength(2);
      expect(pages).toHaveLength(2);
      const names = tiles.flatMap(besideOn).flatMap((item) => ("name" in item ? [item.name] : []));
      expect([...names].sort()).toEqual([...BESIDE, "holes", "sizes"].sort());
      expect(pages.flatMap(checkLayout)).toEqual([]);
      expect(pages.flatMap(words)).toEqual(expect.arrayContaining(["Page 1 of 2", "Page 2 of 2"]));
    }
  });

  it("is clear of where two pages overlap, and of the view", () => {
    const { tiles } = tiled(pattern(boningKnife), A4);
    for (const [a, b] of neighbours(tiles)) {
      for (const [tile, from, to] of [
        [a, -Infinity, b.window.minX],
        [b, a.window.maxX, Infinity],
      ] as const) {
        const view = samplePoints(itemsNamed(tile.drawing.items, "view"), 1).filter((point) =>
          isInside(point, tile.window),
        );
        for (const item of besideOn(tile)) {
          const box = boxOfItems([item]) ?? tile.window;
          expect(box.minX).toBeGreaterThanOrEqual(from + 1);
          expect(box.maxX).toBeLessThanOrEqual(to - 1);
          expect(isInside({ x: box.minX, y: box.minY }, tile.window, -1e-9)).toBe(true);
          expect(isInside({ x: box.maxX, y: box.maxY }, tile.window, -1e-9)).toBe(true);
          expect(view.filter((point) => isInside(point, box, -2.5))).toEqual([]);
        }
      }
    }
  });

  it("is so wherever there is room, with figures that were moved on the drawing too", () => {
    const size = { width: 17, height: 11 };
    const small = Array.from(
      { length: 90 },
      (_, index): Part => ({
        name: `small-${index}`,
        ...size,
        wish: "foot",
        ofPaper: true,
        items: ({ x, y }) => [rectangle("thin", { x, y }, { x: x + size.width, y: y + size.height })],
      }),
    );
    const { pages, tiles } = tiled({ ...pattern(boningKnife), parts: small }, A4);
    expect(pages).toHaveLength(tiles.length);
    const [[a, b] = raise()] = neighbours(tiles);
    for (const [tile, from, to] of [
      [a, -Infinity, b.window.minX],
      [b, a.window.maxX, Infinity],
    ] as const) {
      const boxes = tile.drawing.items.flatMap((item) =>
        item.kind === "group" && item.name?.startsWith("small-") === true ? (boxOfItems([item]) ?? []) : [],
      );
      const edges = boxes.flatMap(({ minX, maxX }) => [from + 1 - minX, maxX - to + 1]);
      // Up to the joint, and not beyond.
      expect(Math.max(...edges)).toBeLessThanOrEqual(1e-9);
      expect(Math.max(...edges)).toBeGreaterThan(-size.width);
      const view = samplePoints(itemsNamed(tile.drawing.items, "view"), 1);
      expect(boxes.filter((box) => view.some((point) => isInside(point, box, -1)))).toEqual([]);
    }
  });

  it("is in front where it has none, and what would take a second page there stands beside the view", () => {
    const { pages, tiles } = tiled(pattern(harvestKnife), A4);
    expect(pages.length).toBe(tiles.length + 1);
    const table = (name: string): Part => ({
      name,
      width: 50,
      height: 60,
      wish: "foot",
      ofPaper: true,
      items: ({ x, y }) => [lettering(name, { x, y }, { height: 2.5 })],
    });
    const long = pattern(harvestKnife);
    const extra = ["one", "two", "three", "four", "five", "six"].map(table);
    const more = tiled({ ...long, parts: [...long.parts, ...extra] }, A4);
    expect(more.pages.length).toBe(more.tiles.length + 1);
    const all = more.pages.flatMap(words);
    for (const { name } of extra) expect(all.filter((text) => text === name)).toHaveLength(1);
    expect(more.tiles.flatMap(({ drawing }) => words(drawing)).some((text) => text === "one")).toBe(true);
  });
});

function raise(): never {
  throw new Error("no such thing");
}
