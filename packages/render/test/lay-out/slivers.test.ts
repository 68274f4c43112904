import { line, type Vec2, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import { type DrawingItem, lettering } from "../../src/drawing.js";
import { layOutSheet } from "../../src/lay-out/lay-out-sheet.js";
import type { Part } from "../../src/lay-out/part.js";
import { type SheetContent, viewOf } from "../../src/lay-out/sheet-content.js";
import { bothWays, type PaperSize } from "../../src/paper.js";
import { patternContents } from "../../src/sheets/pattern-sheet.js";
import { plainKnife } from "../plain-knife.js";
import { contentOf } from "./random-view.js";
import {
  A4,
  LETTER,
  placeOf,
  samplePoints,
  type TilePage,
  tiled,
  tilesAmong,
  windowSize,
} from "./tiled-views.js";

// A page that holds the last bit of a drawing alone is paper and a joint for nothing.
const SLIVER = 15;
const OVERLAP = 10;
/** Room that features keep from an overlap, mm. */
const CLEAR = 2;
const A5: PaperSize = { width: 210, height: 148 };

interface Windows {
  readonly left: number;
  readonly foot: number;
  readonly wide: number;
  readonly high: number;
  readonly columns: number;
  readonly rows: number;
}

/** Pages, features in an overlap, and pages with less than `bit` mm beyond their joint; told by points alone. */
function counted(
  points: readonly Vec2[],
  features: readonly Vec2[],
  w: Windows,
  bit: number,
): { pages: number; hidden: number; slivers: number } {
  const [right, up] = [w.wide - OVERLAP, w.high - OVERLAP];
  const boxes = Array.from({ length: w.columns * w.rows }, () => ({
    minX: Number.POSITIVE_INFINITY,
    maxX: Number.NEGATIVE_INFINITY,
    minY: Number.POSITIVE_INFINITY,
    maxY: Number.NEGATIVE_INFINITY,
  }));
  const within = (at: number, pitch: number, size: number, count: number): number[] => {
    const last = Math.min(Math.floor(at / pitch), count - 1);
    return [last - 1, last].filter((index) => index >= 0 && at - index * pitch <= size);
  };
  for (const { x, y } of points) {
    for (const row of within(y - w.foot, up, w.high, w.rows)) {
      for (const column of within(x - w.left, right, w.wide, w.columns)) {
        const box = boxes[row * w.columns + column];
        if (box === undefined) continue;
        box.minX = Math.min(box.minX, x - w.left - column * right);
        box.maxX = Math.max(box.maxX, x - w.left - column * right);
        box.minY = Math.min(box.minY, y - w.foot - row * up);
        box.maxY = Math.max(box.maxY, y - w.foot - row * up);
      }
    }
  }
  const isHeld = (column: number, row: number): boolean =>
    column >= 0 &&
    row >= 0 &&
    column < w.columns &&
    row < w.rows &&
    (boxes[row * w.columns + column]?.maxX ?? -1) >= 0;
  const past = OVERLAP / 2 + bit;
  const slivers = boxes.filter((box, index) => {
    const [column, row] = [index % w.columns, Math.floor(index / w.columns)];
    if (!isHeld(column, row)) return false;
    const [l, r] = [isHeld(column - 1, row), isHeld(column + 1, row)];
    const [b, t] = [isHeld(column, row - 1), isHeld(column, row + 1)];
    return (
      (l && !r && box.maxX < past) ||
      (r && !l && box.minX > w.wide - past) ||
      (b && !t && box.maxY < past) ||
      (t && !b && box.minY > w.high - past)
    );
  });
  const isHidden = (at: number, pitch: number, count: number): boolean =>
    Array.from({ length: count - 1 }, (_, index) => (index + 1) * pitch).some(
      (low) => at > low - CLEAR && at < low + OVERLAP + CLEAR,
    );
  return {
    pages: boxes.filter(({ maxX }) => maxX >= 0).length,
    hidden: features.filter(
      ({ x, y }) => isHidden(x - w.left, right, w.columns) || isHidden(y - w.foot, up, w.rows),
    ).length,
    slivers: slivers.length,
  };
}

/** The windows of the pages made. */
function windowsOf(tiles: readonly TilePage[]): Windows {
  const [first] = tiles;
  if (first === undefined) throw new Error("there are pages");
  const places = tiles.map(({ label }) => placeOf(label));
  const [columns, rows] = [
    Math.max(...places.map(({ column }) => column)) + 1,
    Math.max(...places.map(({ row }) => row)) + 1,
  ];
  const { minX, minY, maxX, maxY } = first.window;
  const [wide, high] = [maxX - minX, maxY - minY];
  const { column, row } = placeOf(first.label);
  return {
    left: minX - column * (wide - OVERLAP),
    foot: minY - (rows - 1 - row) * (high - OVERLAP),
    wide,
    high,
    columns,
    rows,
  };
}

/** Every shift by `by` mm of both ways of the paper. */
function everyShift(content: SheetContent, paper: PaperSize, by: number): Windows[] {
  const box = boxOfItems(content.view?.items ?? []);
  if (box === undefined) return [];
  const shifts = (min: number, max: number, size: number): { start: number; count: number }[] => {
    const [from, pitch] = [Math.floor(min) - 1, size - OVERLAP];
    return Array.from({ length: Math.ceil(pitch / by) }, (_, index) => {
      const start = from - index * by;
      return { start, count: Math.max(1, Math.ceil((Math.ceil(max) + 1 - start - OVERLAP) / pitch)) };
    });
  };
  return bothWays(paper).flatMap((turned) => {
    const size = windowSize(turned);
    if (size === undefined) return [];
    const { width: wide, height: high } = size;
    return shifts(box.minX, box.maxX, wide).flatMap((x) =>
      shifts(box.minY, box.maxY, high).map((y) => ({
        left: x.start,
        foot: y.start,
        wide,
        high,
        columns: x.count,
        rows: y.count,
      })),
    );
  });
}

function expectNone(content: SheetContent, paper: PaperSize): { hidden: number; refused: number } {
  const { tiles } = tiled(content, paper);
  const points = samplePoints(content.view?.items ?? [], 2);
  const features = content.view?.features ?? [];
  // Points lie up to 2 mm apart: what they count as a sliver here is one, and what they do not there is none.
  const chosen = counted(points, features, windowsOf(tiles), SLIVER - 2);
  expect(chosen.pages).toBe(tiles.length);
  const others = everyShift(content, paper, 9)
    .map((windows) => counted(points, features, windows, SLIVER + 2))
    .filter(({ pages, hidden }) => pages === chosen.pages && hidden <= chosen.hidden);
  if (others.some(({ slivers }) => slivers === 0)) expect(chosen.slivers).toBe(0);
  return { hidden: chosen.hidden, refused: others.filter(({ slivers }) => slivers > 0).length };
}

describe("a page with a sliver of the drawing alone", () => {
  it("is never made of a knife of any length on any paper, where another shift does without", () => {
    let refused = 0;
    let hidden = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 180, max: 1500 }),
        fc.integer({ min: 20, max: 90 }),
        fc.constantFrom(A4, LETTER, A5),
        (overall, height, paper) => {
          const [content] = patternContents(plainKnife(overall, height, paper === LETTER ? "in" : "mm"));
          if (content === undefined) throw new Error("a pattern has contents");
          const found = expectNone(content, paper);
          refused += found.refused;
          hidden += found.hidden;
        },
      ),
      { seed: 20265, numRuns: 20, endOnFailure: true },
    );
    expect(hidden).toBe(0);
    // Otherwise the shifts had nothing to choose between.
    expect(refused).toBeGreaterThan(10);
  });

  it("is not made to spare lettering that both pages have in part", () => {
    let refused = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 260, max: 1200 }),
        fc.array(fc.integer({ min: 0, max: 1200 }), { minLength: 5, maxLength: 40 }),
        fc.constantFrom(A4, LETTER, A5),
        (length, words, paper) => {
          refused += expectNone(strip(length, words), paper).refused;
        },
      ),
      { seed: 9, numRuns: 40, endOnFailure: true },
    );
    expect(refused).toBeGreaterThan(100);
    // Words over all of a line but its last bit: only there a joint would cut none.
    const covered = strip(
      300,
      Array.from({ length: 12 }, (_, index) => index * 23),
    );
    expect(tiled(covered, A4).tiles.map(({ label }) => label)).toEqual(["A1", "A2"]);
    expectNone(covered, A4);
  });
});

describe("of versions of a sheet on as many pages", () => {
  it("the one with fewer flaws is taken: here a hole in an overlap", () => {
    const choice = { kind: "paper", paper: A5 } as const;
    const bare = strip(200, []);
    // Holes so close together that every joint hides one.
    const holes = Array.from({ length: 15 }, (_, index) => ({ x: 8 + 13 * index, y: 0 }));
    const crowded: SheetContent = {
      ...bare,
      view: viewOf(bare.view?.items ?? [], { features: holes }),
      title: "With holes all along",
    };
    const alone = windowsOf(tilesAmong(layOutSheet([crowded], choice)));
    const points = samplePoints(bare.view?.items ?? [], 1);
    expect(counted(points, holes, alone, SLIVER)).toMatchObject({ pages: 2, hidden: 1 });
    const [first] = layOutSheet([crowded, { ...bare, parts: [NOTE] }], choice);
    expect(first?.title).toBe(bare.title);
  });
});

/** A part, so that the second version is not taken for the first with fewer dimensions. */
const NOTE: Part = { name: "note", width: 10, height: 5, wish: "foot", items: () => [] };

/** A line with a hole near either end and words over it, from the places given. */
function strip(length: number, words: readonly number[]): SheetContent {
  const holes = [20, length - 40].map((x) => ({ x, y: 0 }));
  return contentOf(
    [
      {
        kind: "path",
        role: "outline",
        paths: [{ segments: [line(vec2(0, 0), vec2(length, 0))], closed: false }],
      },
      ...holes.map((centre): DrawingItem => ({ kind: "circle", role: "outline", centre, radius: 3 })),
      ...words.map((x, index) =>
        lettering("MMMMMMMM", vec2(x % (length - 20), 10 + 4 * (index % 5)), { height: 2.5 }),
      ),
    ],
    holes,
  );
}
