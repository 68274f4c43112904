import { vec2 } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import { checkLayout, checkPages } from "../../src/check-layout.js";
import { type Drawing, type DrawingItem, lettering, strokes } from "../../src/drawing.js";

const page = (...items: DrawingItem[]): Drawing => ({
  width: 100,
  height: 60,
  origin: vec2(0, 0),
  title: "test",
  description: "test",
  items,
});
const clipped = (minX: number, maxX: number, ...items: DrawingItem[]): DrawingItem => ({
  kind: "group",
  clip: { minX, maxX, minY: 0, maxY: 60 },
  items,
});
const word = (x: number, y = 10) => lettering("92 mm", vec2(x, y), { height: 2.5 });
const codes = (drawing: Drawing): string[] => checkLayout(drawing).map((fault) => fault.code);

describe("checkLayout with a clip", () => {
  it("does not count what is outside of it", () => {
    const long = strokes("outline", [[vec2(-500, 30), vec2(500, 30)]]);
    expect(codes(page(long))).toContain("line-off-page");
    expect(codes(page(clipped(10, 90, long, word(300))))).toEqual([]);
    expect(codes(page(clipped(10, 50, long), word(60, 29)))).toEqual([]);
    expect(codes(page(clipped(10, 50, word(48)), word(51, 10)))).toEqual([]);
  });

  it("counts what is inside, of lines and of lettering", () => {
    expect(
      codes(page(clipped(10, 65, strokes("outline", [[vec2(-500, 30), vec2(500, 30)]])), word(60, 29))),
    ).toEqual(["line-through-text"]);
    expect(codes(page(clipped(10, 55, word(48)), word(50, 10)))).toEqual(["text-on-text"]);
    expect(codes(page(clipped(10, 55, word(48)), strokes("thin", [[vec2(52, 1), vec2(52, 20)]])))).toEqual([
      "line-through-text",
    ]);
  });

  it("takes a clip inside a clip as what both leave", () => {
    const inner = clipped(40, 80, word(60));
    expect(codes(page(clipped(10, 50, inner), word(60)))).toEqual([]);
    expect(codes(page(clipped(10, 30, inner), word(60)))).toEqual([]);
    expect(codes(page(clipped(10, 78, inner), word(60)))).toEqual(["text-on-text"]);
  });

  it("still finds a clip that reaches off the page", () => {
    expect(codes(page(clipped(10, 200, strokes("thin", [[vec2(20, 30), vec2(150, 30)]]))))).toEqual([
      "line-off-page",
    ]);
  });
});

describe("boxOfItems with a clip", () => {
  it("is what is seen", () => {
    const long = strokes("outline", [[vec2(-500, 30), vec2(500, 30)]]);
    expect(boxOfItems([clipped(10, 90, long)])).toEqual({ minX: 10, maxX: 90, minY: 30, maxY: 30 });
    expect(boxOfItems([clipped(10, 90, word(200))])).toBeUndefined();
  });
});

describe("checkPages", () => {
  const pageCodes = (...pages: Drawing[]): string[] => checkPages(pages).map((fault) => fault.code);

  it("finds lettering that is cut on every page, once", () => {
    expect(pageCodes(page(clipped(10, 45, word(40))), page(clipped(43, 90, word(40))))).toEqual(["text-cut"]);
  });

  it("lets lettering be cut that is whole on another page", () => {
    expect(pageCodes(page(clipped(10, 45, word(40))), page(clipped(35, 90, word(40))))).toEqual([]);
  });

  it("does not take the same words elsewhere for it", () => {
    expect(pageCodes(page(clipped(10, 45, word(40))), page(clipped(35, 90, word(41))))).toEqual(["text-cut"]);
  });

  it("finds the faults of each page", () => {
    expect(pageCodes(page(word(10), word(10)), page(word(95)))).toEqual(["text-on-text", "text-off-page"]);
  });
});
