import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import { checkLayout, checkPages } from "../../src/check-layout.js";
import { type Drawing, type DrawingItem, flattenItems } from "../../src/drawing.js";
import type { SheetContent } from "../../src/lay-out/sheet-content.js";
import { onTiles } from "../../src/lay-out/tiles.js";
import { type PaperSize, paperNamed } from "../../src/paper.js";
import { patternContents } from "../../src/sheets/pattern-sheet.js";
import { fixtures, harvestKnife } from "../fixtures.js";
import { randomModel } from "../random-model.js";
import { randomView } from "./random-view.js";
import { A4, isInside, LETTER, placeOf, samplePoints, type TilePage, tiled, words } from "./tiled-views.js";

const OVERLAP = 10;
const PAPERS: readonly PaperSize[] = [
  A4,
  LETTER,
  { width: 210, height: 148 },
  { width: 200.3, height: 330.7 },
];

function pattern(make: () => Parameters<typeof patternContents>[0]): SheetContent {
  const [content] = patternContents(make());
  if (content === undefined) throw new Error("a pattern has contents");
  return content;
}

/** Where a point of the view comes to lie when the pages are joined, told from page and label alone. */
function joinedPlace(tile: TilePage, point: { x: number; y: number }): { x: number; y: number } {
  const { row, column } = placeOf(tile.label);
  const { window, drawing } = tile;
  return {
    x: point.x + drawing.origin.x + column * (window.maxX - window.minX - OVERLAP),
    y: point.y + drawing.origin.y - row * (window.maxY - window.minY - OVERLAP),
  };
}

function itemsNamed(items: readonly DrawingItem[], name: string): readonly DrawingItem[] {
  const found = items.find((item) => item.kind === "group" && item.name === name);
  return found?.kind === "group" ? found.items : [];
}

const marksOn = ({ drawing }: TilePage): { x: number; y: number }[] =>
  itemsNamed(drawing.items, "joints").flatMap((item) => (item.kind === "circle" ? [item.centre] : []));

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

/** Faults of the pages that the view does not have by itself. */
function newFaults(content: SheetContent, pages: readonly Drawing[]): string[] {
  const keysOf = (drawing: Drawing): string[] =>
    checkLayout(drawing).map(({ code, text, other }) => `${code}: ${text}, ${other}`);
  const alone: Drawing = {
    width: 1e5,
    height: 1e5,
    origin: { x: 5e4, y: 5e4 },
    title: "",
    description: "",
    items: content.view?.items ?? [],
  };
  const known = new Set(keysOf(alone));
  return pages.flatMap(keysOf).filter((key) => !known.has(key));
}

/** What must hold for the pages of any view. */
function expectWhole(content: SheetContent, pages: readonly Drawing[], tiles: readonly TilePage[]): void {
  const items = content.view?.items ?? [];
  for (const point of samplePoints(items, 1)) {
    const on = tiles.filter(({ window }) => isInside(point, window));
    expect(on.length).toBeGreaterThan(0);
    const places = on.map((tile) => joinedPlace(tile, point));
    for (const place of places) {
      expect(Math.abs(place.x - (places[0]?.x ?? 0))).toBeLessThan(1e-9);
      expect(Math.abs(place.y - (places[0]?.y ?? 0))).toBeLessThan(1e-9);
    }
  }
  expect(newFaults(content, pages)).toEqual([]);
  for (const { drawing, window } of tiles) {
    const ink = boxOfItems(drawing.items);
    expect(ink?.minX).toBeGreaterThanOrEqual(6 - drawing.origin.x);
    expect(ink?.minY).toBeGreaterThanOrEqual(6 - drawing.origin.y);
    expect(ink?.maxX).toBeLessThanOrEqual(drawing.width - 6 - drawing.origin.x);
    expect(ink?.maxY).toBeLessThanOrEqual(drawing.height - 6 - drawing.origin.y);
    expect([window.minX, window.minY, drawing.origin.x, drawing.origin.y].every(Number.isInteger)).toBe(true);
  }
}

describe("tiles put together", () => {
  it.each(Object.entries(fixtures))("make the whole view, each point at one place: %s", (_, make) => {
    for (const paper of PAPERS) {
      const content = pattern(make);
      const { pages, tiles } = tiled(content, paper);
      expect(tiles.length).toBeGreaterThan(0);
      expectWhole(content, pages, tiles);
    }
  });

  it("do so for any view", () => {
    fc.assert(
      fc.property(randomView, fc.constantFrom(...PAPERS), (content, paper) => {
        const { pages, tiles } = tiled(content, paper);
        expectWhole(content, pages, tiles);
      }),
      { seed: 20264, numRuns: 60, endOnFailure: true },
    );
  });

  it("do so for any knife", () => {
    let drawn = 0;
    fc.assert(
      fc.property(randomModel, (model) => {
        const content = pattern(() => model);
        const { view } = content;
        // Some random tables are wider than the paper: such a sheet is refused.
        const pages = view === undefined ? undefined : onTiles(content, view, A4);
        if (pages === undefined) return;
        drawn++;
        expect(pages.flatMap(checkLayout)).toEqual([]);
      }),
      { seed: 20264, numRuns: 30, endOnFailure: true },
    );
    expect(drawn).toBeGreaterThan(15);
  });

  it("have the curves of the view itself, whole, and only those that touch the window", () => {
    const content = pattern(harvestKnife);
    const { tiles } = tiled(content, A4);
    const outlines = tiles.map(({ drawing }) =>
      flattenItems(drawing.items).find((item) => item.kind === "path" && item.name === "outline"),
    );
    for (const outline of outlines) expect(outline).toMatchObject({ paths: [harvestKnife().outline] });
    const names = tiles.map(({ drawing }) => JSON.stringify(drawing).includes("hole-C"));
    expect(names).toEqual([true, false]);
  });

  it("have no page for a window in which nothing is drawn", () => {
    let left = 0;
    fc.assert(
      fc.property(randomView, (content) => {
        const { tiles } = tiled(content, A4);
        const [first] = tiles;
        if (first === undefined) return;
        const points = samplePoints(content.view?.items ?? [], 0.5);
        const { row, column } = placeOf(first.label);
        const [wide, high] = [first.window.maxX - first.window.minX, first.window.maxY - first.window.minY];
        const places = tiles.map(({ label }) => placeOf(label));
        for (let r = 0; r <= Math.max(...places.map((place) => place.row)); r++) {
          for (let c = 0; c <= Math.max(...places.map((place) => place.column)); c++) {
            const minX = first.window.minX + (c - column) * (wide - OVERLAP);
            const minY = first.window.minY - (r - row) * (high - OVERLAP);
            const box = { minX, minY, maxX: minX + wide, maxY: minY + high };
            const hasPage = places.some((place) => place.row === r && place.column === c);
            const hasPoint = points.some((point) => isInside(point, box, 1e-6));
            if (hasPoint) expect(hasPage).toBe(true);
            if (!hasPage) left++;
          }
        }
      }),
      { seed: 5, numRuns: 60 },
    );
    expect(left).toBeGreaterThan(10);
  });
});

describe("crossing marks", () => {
  it("are at the same places on both pages of every joint, two of them and far apart", () => {
    let joints = 0;
    fc.assert(
      fc.property(randomView, (content) => {
        const { tiles } = tiled(content, A4);
        for (const [a, b] of neighbours(tiles)) {
          const common = marksOn(a).filter((mark) =>
            marksOn(b).some(({ x, y }) => x === mark.x && y === mark.y),
          );
          expect(common.length).toBeGreaterThanOrEqual(2);
          const spread = Math.max(
            ...common.flatMap((p) => common.map((q) => Math.hypot(p.x - q.x, p.y - q.y))),
          );
          expect(spread).toBeGreaterThan(40);
          joints++;
        }
      }),
      { seed: 11, numRuns: 40 },
    );
    expect(joints).toBeGreaterThan(40);
  });

  it("stand in the middle of the overlap, whole on both pages", () => {
    const { tiles } = tiled(pattern(harvestKnife), A4);
    const [a, b] = tiles;
    if (a === undefined || b === undefined) throw new Error("there are two pages");
    for (const mark of marksOn(a)) {
      expect(mark.x).toBe((a.window.maxX + b.window.minX) / 2);
      expect(isInside(mark, a.window, 4.5) && isInside(mark, b.window, 4.5)).toBe(true);
    }
  });
});

describe("every page", () => {
  const { pages, tiles } = tiled(pattern(harvestKnife), A4);

  it("carries all four check bars and says to print at 100 %", () => {
    for (const drawing of pages) {
      for (const [name, length] of [
        ["check-mm-across", 100],
        ["check-in-across", 101.6],
        ["check-mm-up", 100],
        ["check-in-up", 101.6],
      ] as const) {
        const bars = flattenItems(drawing.items).filter((item) => item.kind === "path" && item.name === name);
        expect(bars).toHaveLength(1);
        const box = boxOfItems(bars);
        const size = box === undefined ? [] : [box.maxX - box.minX, box.maxY - box.minY];
        expect(Math.max(...size)).toBeCloseTo(length, 9);
      }
      expect(words(drawing).join(" ")).toContain("PRINT AT 100 %");
    }
  });

  it("says which it is and what comes beside it", () => {
    expect(tiles.map(({ label }) => label)).toEqual(["A1", "A2"]);
    expect(words(pages[1] as Drawing)).toEqual(
      expect.arrayContaining(["A1", "A2", "Page 2 of 3", "lay A2 on this edge, up to the dashes"]),
    );
    expect(words(pages[2] as Drawing)).toEqual(
      expect.arrayContaining(["A1", "A2", "Page 3 of 3", "cut at the dashes, lay on A1"]),
    );
    expect(words(pages[0] as Drawing).join(" ")).toContain("HOW TO JOIN THE PAGES");
  });

  it("has no lettering that is cut on both pages, where a joint beside it is possible", () => {
    expect(checkPages(pages)).toEqual([]);
  });

  it("passes the correction of the printer on and says so", () => {
    const correction = { across: 1.01, up: 1.005 };
    const paper = { name: "A4" as const, width: 297 / 1.01, height: 210 / 1.005, correction };
    const corrected = tiled(pattern(harvestKnife), paper);
    for (const { drawing } of corrected.tiles) {
      const lying = drawing.width > drawing.height;
      expect(drawing.correction).toEqual(lying ? correction : { across: 1.005, up: 1.01 });
      expect(words(drawing).join(" ")).toContain("corrected");
    }
    expect(corrected.pages.flatMap(checkLayout)).toEqual([]);
  });
});

describe("margin, overlap and paper", () => {
  const content = pattern(harvestKnife);
  const view = content.view;
  if (view === undefined) throw new Error("a pattern has a view");

  it("may be others than the usual ones", () => {
    for (const options of [
      { margin: 0, overlap: 6 },
      { margin: 12.5, overlap: 20 },
      { margin: 30, overlap: 50 },
    ]) {
      const pages = onTiles(content, view, paperNamed("A4"), options) ?? [];
      expect(pages.length).toBeGreaterThan(1);
      expect(pages.flatMap(checkLayout)).toEqual([]);
    }
  });

  it("are refused outside of their limits", () => {
    for (const options of [
      { margin: -1 },
      { margin: 31 },
      { overlap: 5 },
      { overlap: 51 },
      { overlap: Number.NaN },
    ])
      expect(() => onTiles(content, view, A4, options)).toThrow(/mm/);
  });

  it.each([
    [100, 150],
    [105, 148],
    [130, 400],
    [60, 60],
  ])("make no pages of %d × %d mm, on which the check bars find no room", (width, height) => {
    expect(onTiles(content, view, { width, height })).toBeUndefined();
  });
});
