import { arcAround, type Bounds, cubic, line, pointAt, type Segment, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import { type DrawingItem, lettering } from "../../src/drawing.js";
import { itemsInBox } from "../../src/lay-out/tiling/in-window.js";
import { InkMap } from "../../src/lay-out/tiling/ink-map.js";
import { segmentMeetsBox } from "../../src/lay-out/tiling/segment-box.js";
import { randomView } from "./random-view.js";

const box = (minX: number, minY: number, maxX: number, maxY: number): Bounds => ({ minX, minY, maxX, maxY });

describe("segmentMeetsBox", () => {
  it.each<[string, Segment, Bounds, boolean]>([
    ["a line through it with both ends outside", line(vec2(0, 0), vec2(10, 10)), box(4, 3, 6, 5), true],
    ["a slanted line past a corner", line(vec2(0, 0), vec2(10, 10)), box(6, 2, 9, 5), false],
    ["a circle about it", arcAround(vec2(0, 0), 10, 0, 2 * Math.PI), box(-2, -2, 2, 2), false],
    [
      "the top of a circle that dips in",
      arcAround(vec2(0, 0), 10, 0, 2 * Math.PI),
      box(-1, 9.99, 1, 12),
      true,
    ],
    ["the part that an arc leaves out", arcAround(vec2(0, 0), 10, 0, 1), box(-1, 9.9, 1, 12), false],
    [
      "a curve that bulges in",
      cubic(vec2(0, 0), vec2(0, 8), vec2(10, 8), vec2(10, 0)),
      box(4, 5.9, 6, 9),
      true,
    ],
    [
      "a curve whose handles alone do",
      cubic(vec2(0, 0), vec2(0, 8), vec2(10, 8), vec2(10, 0)),
      box(4, 6.1, 6, 9),
      false,
    ],
    ["all of a line", line(vec2(1, 1), vec2(2, 2)), box(0, 0, 3, 3), true],
  ])("knows of %s", (_, segment, window, meets) => {
    expect(segmentMeetsBox(segment, window)).toBe(meets);
  });
});

describe("itemsInBox", () => {
  const path = (segments: readonly Segment[]) => ({ segments, closed: false });
  const near = line(vec2(0, 0), vec2(5, 0));
  const far = line(vec2(50, 0), vec2(60, 0));
  const item: DrawingItem = { kind: "path", role: "outline", paths: [path([near]), path([far])] };

  it("keeps whole paths that touch the box and nothing else", () => {
    expect(itemsInBox([item], box(4, -1, 20, 1))).toEqual([{ ...item, paths: [path([near])] }]);
    expect(itemsInBox([item], box(10, -1, 20, 1))).toEqual([]);
  });

  it("keeps groups and their names, and leaves out what their own clip hides", () => {
    const group: DrawingItem = { kind: "group", name: "g", items: [item] };
    expect(itemsInBox([group], box(4, -1, 20, 1))).toMatchObject([{ name: "g", items: [{ kind: "path" }] }]);
    expect(itemsInBox([{ ...group, clip: box(40, -5, 70, 5) }], box(4, -1, 20, 1))).toEqual([]);
  });

  it("keeps an area that holds the whole box, with its holes", () => {
    const area: DrawingItem = { ...item, fill: "light", paths: [path([line(vec2(-99, -99), vec2(99, 99))])] };
    expect(itemsInBox([area], box(4, -20, 20, -10))).toEqual([area]);
  });

  it("keeps lettering that reaches in", () => {
    const word = lettering("HEEL", vec2(0, 0), { height: 2.5 });
    expect(itemsInBox([word], box(5, 0, 9, 2))).toEqual([word]);
    expect(itemsInBox([word], box(-9, 0, -1, 2))).toEqual([]);
  });
});

describe("InkMap", () => {
  it("finds the same boxes of whole mm empty as a look at each curve does", () => {
    let empty = 0;
    fc.assert(
      fc.property(
        randomView,
        fc.array(fc.tuple(fc.nat(900), fc.nat(500), fc.integer({ min: 1, max: 300 })), { maxLength: 40 }),
        (content, boxes) => {
          const items = content.view?.items ?? [];
          const zone = boxOfItems(items);
          if (zone === undefined) return;
          const ink = new InkMap(items, zone);
          for (const [x, y, size] of boxes) {
            const isEmpty = ink.isEmpty(x, y, x + size, y + size);
            expect(isEmpty).toBe(itemsInBox(items, box(x, y, x + size, y + size)).length === 0);
            if (isEmpty) empty++;
          }
        },
      ),
      { seed: 20264, numRuns: 120 },
    );
    expect(empty).toBeGreaterThan(200);
  });

  it("has a line on the edge between two cells in both", () => {
    const items: DrawingItem[] = [
      {
        kind: "path",
        role: "outline",
        paths: [{ segments: [line(vec2(0, 5), vec2(20, 5))], closed: false }],
      },
    ];
    const ink = new InkMap(items, box(0, 5, 20, 5));
    expect(ink.isEmpty(3, 5, 4, 9)).toBe(false);
    expect(ink.isEmpty(3, 1, 4, 5)).toBe(false);
    expect(ink.isEmpty(3, 6, 4, 9)).toBe(true);
  });

  it("has every point of a curve", () => {
    const curve = cubic(vec2(0, 0), vec2(90, 10), vec2(-60, 50), vec2(40, 60));
    const ink = new InkMap(
      [{ kind: "path", role: "outline", paths: [{ segments: [curve], closed: false }] }],
      box(0, 0, 60, 60),
    );
    for (let index = 0; index <= 5000; index++) {
      const { x, y } = pointAt(curve, index / 5000);
      expect(ink.isEmpty(Math.floor(x), Math.floor(y), Math.floor(x) + 1, Math.floor(y) + 1)).toBe(false);
    }
  });
});
