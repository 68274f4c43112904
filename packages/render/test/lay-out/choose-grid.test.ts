import { line, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxOfItems, visibleItems } from "../../src/box.js";
import { checkPages } from "../../src/check-layout.js";
import type { SheetContent } from "../../src/lay-out/sheet-content.js";
import { bothWays, type PaperSize } from "../../src/paper.js";
import { patternContents } from "../../src/sheets/pattern-sheet.js";
import { textBox } from "../../src/text-metrics.js";
import { fixtures } from "../fixtures.js";
import { contentOf, randomView } from "./random-view.js";
import {
  A4,
  isInside,
  LETTER,
  placeOf,
  samplePoints,
  type TilePage,
  tiled,
  windowSize,
} from "./tiled-views.js";

const OVERLAP = 10;
/** Room that features keep from an overlap. */
const CLEAR = 2;
/** Spacing of the points that stand for the lines, mm. */
const STEP = 0.4;

interface Shifted {
  readonly x: Row;
  readonly y: Row;
  readonly pages: number;
  readonly hidden: number;
}

/**
 * Every shift by `by` mm of both ways of the paper, told by points alone: how many windows hold a point, and how many
 * features lie in an overlap.
 */
function everyShift(content: SheetContent, paper: PaperSize, by: number): Shifted[] {
  const items = content.view?.items ?? [];
  const box = boxOfItems(items);
  if (box === undefined) return [];
  const points = samplePoints(items, STEP);
  const features = content.view?.features ?? [];
  return bothWays(paper).flatMap((turned) => {
    const size = windowSize(turned);
    if (size === undefined) return [];
    const across = axisShifts(
      box.minX,
      box.maxX,
      size.width,
      by,
      points.map(({ x }) => x),
    );
    const up = axisShifts(
      box.minY,
      box.maxY,
      size.height,
      by,
      points.map(({ y }) => y),
    );
    return across.flatMap((x) =>
      up.map((y) => ({
        x,
        y,
        pages: countWindows(x, y),
        hidden: features.filter((p) => isHidden(p.x, x) || isHidden(p.y, y)).length,
      })),
    );
  });
}

/** Windows along an axis: where the first begins, how far apart they are, and how many. */
interface Row {
  readonly start: number;
  readonly pitch: number;
  readonly count: number;
}

/** A shift, with the first and last window that each point is in. */
interface AxisShift extends Row {
  readonly first: Int16Array;
  readonly last: Int16Array;
}

function axisShifts(
  min: number,
  max: number,
  window: number,
  by: number,
  at: readonly number[],
): AxisShift[] {
  const pitch = window - OVERLAP;
  const from = Math.floor(min) - 1;
  const shifts: AxisShift[] = [];
  for (let start = from; start > from - pitch; start -= by) {
    const count = Math.max(1, Math.ceil((Math.ceil(max) + 1 - start - OVERLAP) / pitch));
    const last = Int16Array.from(at, (value) => Math.min(Math.floor((value - start) / pitch), count - 1));
    const first = Int16Array.from(at, (value, index) => {
      const own = last[index] ?? 0;
      return own > 0 && value - start - own * pitch <= OVERLAP ? own - 1 : own;
    });
    shifts.push({ start, pitch, count, first, last });
  }
  return shifts;
}

function countWindows(x: AxisShift, y: AxisShift): number {
  const held = new Uint8Array(x.count * y.count);
  for (let index = 0; index < x.last.length; index++) {
    for (let row = y.first[index] ?? 0; row <= (y.last[index] ?? 0); row++) {
      for (let column = x.first[index] ?? 0; column <= (x.last[index] ?? 0); column++)
        held[row * x.count + column] = 1;
    }
  }
  return held.reduce((sum, one) => sum + one, 0);
}

function isHidden(value: number, { start, pitch, count }: Row): boolean {
  const nearest = Math.round((value - start - OVERLAP / 2) / pitch);
  const isJoint = nearest > 0 && nearest < count;
  return isJoint && Math.abs(value - start - OVERLAP / 2 - nearest * pitch) < OVERLAP / 2 + CLEAR;
}

/** Features that lie in an overlap of the pages made, or too near to one. */
function hiddenOn(content: SheetContent, tiles: readonly TilePage[]): number {
  const [first] = tiles;
  if (first === undefined) return 0;
  const { row, column } = placeOf(first.label);
  const places = tiles.map(({ label }) => placeOf(label));
  const rows = Math.max(...places.map((place) => place.row)) + 1;
  const columns = Math.max(...places.map((place) => place.column)) + 1;
  const { minX, minY, maxX, maxY } = first.window;
  const [wide, high] = [maxX - minX - OVERLAP, maxY - minY - OVERLAP];
  const across = { start: minX - column * wide, pitch: wide, count: columns };
  const up = { start: minY - (rows - 1 - row) * high, pitch: high, count: rows };
  return (content.view?.features ?? []).filter((p) => isHidden(p.x, across) || isHidden(p.y, up)).length;
}

const fewest = (shifts: readonly Shifted[]): number => Math.min(...shifts.map(({ pages }) => pages));

describe("the number of pages", () => {
  it("is never more than on any sampled shift of the paper lying or standing", () => {
    const counts: number[] = [];
    fc.assert(
      fc.property(randomView, fc.constantFrom(A4, LETTER), (content, paper) => {
        const { tiles } = tiled(content, paper);
        const least = fewest(everyShift(content, paper, 17));
        expect(tiles.length).toBeLessThanOrEqual(least);
        counts.push(tiles.length);
      }),
      { seed: 20264, numRuns: 40, endOnFailure: true },
    );
    expect(Math.max(...counts)).toBeGreaterThan(4);
  });

  it.each([
    ["harvestKnife", A4, 2],
    ["harvestKnife", LETTER, 2],
    ["slicer", A4, 2],
    ["slicer", LETTER, 2],
  ] as const)(
    "is the least that a search of every fourth mm across and up finds: %s",
    (name, paper, count) => {
      const [content] = patternContents(fixtures[name]());
      if (content === undefined) throw new Error("a pattern has contents");
      const shifts = everyShift(content, paper, 4);
      expect(fewest(shifts)).toBe(count);
      expect(tiled(content, paper).tiles).toHaveLength(count);
    },
  );

  it("leaves out the empty middle of a ring", () => {
    const ring = contentOf([
      {
        kind: "path",
        role: "outline",
        paths: [
          {
            closed: true,
            segments: [
              line(vec2(0, 0), vec2(700, 0)),
              line(vec2(700, 0), vec2(700, 500)),
              line(vec2(700, 500), vec2(0, 500)),
              line(vec2(0, 500), vec2(0, 0)),
            ],
          },
        ],
      },
    ]);
    const labels = tiled(ring, A4).tiles.map(({ label }) => label);
    expect(labels).not.toContain("B2");
    expect(labels).toContain("A1");
    expect(labels).toContain("C3");
  });

  it("makes the paper stand where that takes fewer pages", () => {
    const upright = contentOf([
      {
        kind: "path",
        role: "outline",
        paths: [{ segments: [line(vec2(0, 0), vec2(60, 480))], closed: false }],
      },
    ]);
    const { tiles } = tiled(upright, A4);
    expect(tiles.map(({ label }) => label)).toEqual(["A1", "B1"]);
    expect(tiles.every(({ drawing }) => drawing.height > drawing.width)).toBe(true);
  });
});

describe("features", () => {
  it("keep out of the overlaps wherever a shift with as few pages lets them", () => {
    let free = 0;
    fc.assert(
      fc.property(randomView, (content) => {
        const { tiles } = tiled(content, A4);
        const shifts = everyShift(content, A4, 13).filter(({ pages }) => pages === tiles.length);
        const hidden = hiddenOn(content, tiles);
        for (const shift of shifts) expect(hidden).toBeLessThanOrEqual(shift.hidden);
        if (shifts.some((shift) => shift.hidden > hidden)) free++;
      }),
      { seed: 7, numRuns: 40, endOnFailure: true },
    );
    // Otherwise the shifts had nothing to choose between.
    expect(free).toBeGreaterThan(8);
  });

  it.each(Object.keys(fixtures) as (keyof typeof fixtures)[])("of %s are all on one page", (name) => {
    const [content] = patternContents(fixtures[name]());
    if (content === undefined) throw new Error("a pattern has contents");
    for (const paper of [A4, LETTER]) {
      const { tiles } = tiled(content, paper);
      expect(hiddenOn(content, tiles)).toBe(0);
      for (const point of content.view?.features ?? [])
        expect(tiles.filter(({ window }) => isInside(point, window, -CLEAR))).toHaveLength(1);
    }
  });
});

/** Lettering that is whole in none of the windows, however many hold a part of it: joints go right across the view. */
function cutBy(content: SheetContent, across: Row, up: Row): number {
  const isCut = (from: number, to: number, { start, pitch, count }: Row): boolean =>
    Array.from({ length: count - 1 }, (_, index) => start + (index + 1) * pitch).some(
      (low) => from < low && to > low + OVERLAP,
    );
  return visibleItems(content.view?.items ?? []).filter(({ item }) => {
    if (item.kind !== "text" || item.text === "") return false;
    const { minX, minY, maxX, maxY } = textBox(item);
    return isCut(minX, maxX, across) || isCut(minY, maxY, up);
  }).length;
}

describe("lettering", () => {
  it.each([
    ["harvestKnife", A4],
    ["harvestKnife", LETTER],
    ["slicer", A4],
    ["slicer", LETTER],
    ["boningKnife", A4],
  ] as const)(
    "is whole on a page, though on some papers every shift with as few pages would cut a figure where it stood: %s",
    (name, paper) => {
      const [content] = patternContents(fixtures[name]());
      if (content === undefined) throw new Error("a pattern has contents");
      const { pages, tiles } = tiled(content, paper);
      expect(checkPages(pages)).toEqual([]);
      const shifts = everyShift(content, paper, 4).filter(
        (shift) => shift.pages === tiles.length && shift.hidden === 0,
      );
      expect(shifts.length).toBeGreaterThan(0);
      const least = Math.min(...shifts.map(({ x, y }) => cutBy(content, x, y)));
      expect(least).toBe(name === "slicer" || (name === "harvestKnife" && paper === LETTER) ? 1 : 0);
    },
  );

  it("is not cut where a joint can go beside it", () => {
    // Words all along but for a gap of 20 mm: the joint of two pages comes into the gap.
    const gap = { from: 233, to: 253 };
    const word = (x: number) => ({
      kind: "text" as const,
      at: vec2(x, 0),
      anchor: "start" as const,
      height: 2.5,
      rotation: 0,
    });
    const texts = Array.from({ length: 15 }, (_, index) => ({
      ...word(index * 30),
      text: "MMMMMMMM",
    })).filter(({ at }) => at.x + 30 < gap.from || at.x > gap.to);
    const content = contentOf([
      ...texts,
      {
        kind: "path",
        role: "outline",
        paths: [{ segments: [line(vec2(0, 20), vec2(450, 20))], closed: false }],
      },
    ]);
    const { tiles } = tiled(content, A4);
    expect(tiles).toHaveLength(2);
    const [left, right] = tiles;
    for (const { at } of texts) {
      const isWhole = at.x + 30 <= (left?.window.maxX ?? 0) || at.x >= (right?.window.minX ?? 0);
      expect(isWhole).toBe(true);
    }
  });
});
