import { arcAround, vec2 } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { checkLayout, type Drawing, type DrawingItem, lettering, polyline, strokes } from "../src/index.js";

const sheet = (...items: DrawingItem[]): Drawing => ({
  width: 100,
  height: 60,
  origin: vec2(10, 10),
  title: "test",
  description: "test",
  items,
});
const word = (x: number, y: number) => lettering("92 mm", vec2(x, y), { height: 2.5 });
const codes = (drawing: Drawing): string[] => checkLayout(drawing).map((fault) => fault.code);

describe("checkLayout", () => {
  it("finds nothing wrong with a sheet that is in order", () => {
    expect(codes(sheet(word(0, 0), word(0, 10), strokes("outline", [[vec2(0, 6), vec2(60, 6)]])))).toEqual(
      [],
    );
  });

  it("finds lettering on lettering, inside groups too", () => {
    const group: DrawingItem = { kind: "group", items: [word(4, 1)] };
    expect(codes(sheet(word(0, 0), group))).toEqual(["text-on-text"]);
  });

  it("finds lettering and lines off the page", () => {
    expect(codes(sheet(word(80, 0)))).toEqual(["text-off-page"]);
    expect(codes(sheet(strokes("thin", [[vec2(0, 0), vec2(0, -10)]])))).toEqual(["line-off-page"]);
  });

  it.each([
    ["a line that ends in it", strokes("thin", [[vec2(-5, 1), vec2(2, 1)]])],
    ["a line across it", strokes("outline", [[vec2(5, -8), vec2(6, 30)]])],
    ["a slanted line", strokes("centre", [[vec2(-8, -8), vec2(20, 20)]])],
    ["a point inside it", strokes("thin", [[vec2(4, 1), vec2(4, 1)]])],
    ["the rim of a hole", { kind: "circle", role: "outline", centre: vec2(0, 0), radius: 3 } as const],
    [
      "an arc",
      {
        kind: "path",
        role: "bevel",
        paths: [{ segments: [arcAround(vec2(0, 0), 6, -1, 2)], closed: false }],
      } as const,
    ],
    [
      "an arrowhead",
      {
        kind: "path",
        role: "dimension",
        fill: "black",
        paths: [polyline([vec2(2, 0), vec2(3, 1), vec2(3, 2)], true)],
      } as const,
    ],
    ["half a wide line's width", strokes("outline", [[vec2(-5, 3), vec2(20, 3)]])],
  ])("finds %s through lettering", (_, item) => {
    expect(codes(sheet(word(0, 0), item))).toEqual(["line-through-text"]);
  });

  it("lets a line pass just beside lettering", () => {
    expect(codes(sheet(word(0, 0), strokes("outline", [[vec2(-5, 3.06), vec2(20, 3.06)]])))).toEqual([]);
  });
});
