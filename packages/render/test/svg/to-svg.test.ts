import { vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { createSVGWindow } from "svgdom";
import { describe, expect, it, vi } from "vitest";
import { type Drawing, type DrawingItem, lettering, strokes, toSvg } from "../../src/index.js";
import { attributeOf, readSvg } from "../read-svg.js";

const sheet = (items: readonly DrawingItem[] = [], more: Partial<Drawing> = {}): Drawing => ({
  width: 120,
  height: 80,
  origin: vec2(10, 20),
  title: "Sheet",
  description: "A sheet for the tests",
  items,
  ...more,
});

const HOSTILE: readonly (readonly [string, string])[] = [
  ["<script>alert(1)</script>", "<script>alert(1)</script>"],
  ["]]>", "]]>"],
  ["<!--", "<!--"],
  ["&lt;b&gt; &#0; &x;", "&lt;b&gt; &#0; &x;"],
  ["\"'><svg onload=alert(1)>", "\"'><svg onload=alert(1)>"],
  ["a\u0000\u0008\u001b[31mb\u009c", "a[31mb"],
  ["MG-14\u202egnp.exe", "MG-14gnp.exe"],
  ["🔪 ⅞ Ø 刃", "🔪 ⅞ Ø 刃"],
  ["half \ud83d pair", "half pair"],
  ["><", "><"],
  ['a data-svgjs="b"', 'a data-svgjs="b"'],
  ["two\nlines", "two lines"],
];

describe("toSvg", () => {
  it("writes width, height and viewBox from the same numbers: one unit is one mm", async () => {
    const sizes = fc.tuple(
      fc.integer({ min: 1, max: 5_000_000 }).map((n) => n / 997),
      fc.integer({ min: 1, max: 5_000_000 }).map((n) => n / 991),
    );
    await fc.assert(
      fc.asyncProperty(sizes, async ([width, height]) => {
        const root = readSvg(await toSvg(sheet([], { width, height })))[0];
        const box = attributeOf(root, "viewBox").split(" ");
        expect(box.slice(0, 2)).toEqual(["0", "0"]);
        expect(attributeOf(root, "width")).toBe(`${box[2]}mm`);
        expect(attributeOf(root, "height")).toBe(`${box[3]}mm`);
        expect(Number(box[2])).toBeCloseTo(width, 5);
        expect(Number(box[3])).toBeCloseTo(height, 5);
      }),
      { seed: 20261, numRuns: 60 },
    );
  });

  it("turns y over, once, about the page", async () => {
    const svg = await toSvg(sheet([strokes("thin", [[vec2(0, 0), vec2(30, 40)]])]));
    expect(
      attributeOf(
        readSvg(svg).find(({ tag }) => tag === "path"),
        "d",
      ),
    ).toBe("M10 60 L40 20");
  });

  it("turns upright text to be read from the right", async () => {
    const text = lettering("92 mm", vec2(0, 0), { height: 2.5, rotation: Math.PI / 2, anchor: "middle" });
    const element = readSvg(await toSvg(sheet([text]))).find(({ tag }) => tag === "text");
    expect(element).toEqual({
      tag: "text",
      text: "92 mm",
      attributes: {
        x: "10",
        y: "60",
        "font-size": "3.5",
        "text-anchor": "middle",
        transform: "rotate(-90 10 60)",
        fill: "#000000",
      },
    });
  });

  it("begins with a title and a description that the picture is labelled by", async () => {
    const elements = readSvg(await toSvg(sheet()));
    expect(elements.slice(1, 3)).toEqual([
      { tag: "title", attributes: { id: "sheet-title" }, text: "Sheet" },
      { tag: "desc", attributes: { id: "sheet-description" }, text: "A sheet for the tests" },
    ]);
    expect(elements[0]?.attributes).toMatchObject({
      role: "img",
      "aria-labelledby": "sheet-title sheet-description",
    });
  });

  it.each(HOSTILE)("carries %j as text and as nothing else", async (given, wanted) => {
    const raw: DrawingItem = { ...lettering("", vec2(0, 0), { height: 2.5 }), text: given };
    const svg = await toSvg(sheet([raw], { title: given, description: given }));
    const elements = readSvg(svg);
    expect(elements.map(({ tag }) => tag)).toEqual(["svg", "title", "desc", "rect", "text"]);
    expect(elements.filter(({ tag }) => /title|desc|text/.test(tag)).map(({ text }) => text)).toEqual([
      wanted,
      wanted,
      wanted,
    ]);
    expect(svg).not.toContain("]]>");
    expect(svg).not.toContain("\u202e");
  });

  it("writes any text so that it reads back", async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: "binary", minLength: 1 }), async (text) => {
        const item = lettering(text, vec2(0, 0), { height: 2.5 });
        const found = readSvg(await toSvg(sheet([item]))).find(({ tag }) => tag === "text");
        expect(found?.text ?? "").toBe(item.text);
      }),
      { seed: 20261, numRuns: 100 },
    );
  });

  it("leaves no trace of the library in the file", async () => {
    const svg = await toSvg(sheet([lettering("a", vec2(0, 0), { height: 2.5 })]));
    expect(svg).not.toMatch(/svgjs|xlink|NaN|undefined|null/);
  });

  it("writes dashes from the role", async () => {
    const centre: DrawingItem = { ...strokes("centre", [[vec2(0, 0), vec2(30, 0)]]), dashStart: 1.25 };
    const path = readSvg(await toSvg(sheet([centre]))).find(({ tag }) => tag === "path");
    expect(path?.attributes).toMatchObject({
      "stroke-width": "0.25",
      "stroke-dasharray": "6 0.75 0.125 0.75",
      "stroke-dashoffset": "1.25",
    });
  });

  it("writes the same bytes again, in a window of its own or in a given one", async () => {
    const drawing = sheet([
      lettering("a < b", vec2(0, 0), { height: 2.5 }),
      strokes("thin", [[vec2(0, 0), vec2(1, 1)]]),
    ]);
    const first = await toSvg(drawing);
    expect(await toSvg(drawing)).toBe(first);
    expect(await toSvg(drawing, { window: createSVGWindow() })).toBe(first);
  });

  it("uses the page's own window where there is one", async () => {
    const drawing = sheet([lettering("a < b", vec2(0, 0), { height: 2.5 })]);
    const elsewhere = await toSvg(drawing);
    const window = createSVGWindow() as { document: unknown; Node: unknown };
    vi.stubGlobal("document", window.document);
    vi.stubGlobal("Node", window.Node);
    try {
      expect(await toSvg(drawing)).toBe(elsewhere);
    } finally {
      vi.unstubAllGlobals();
    }
  });

  it("refuses what is not a number", async () => {
    await expect(toSvg(sheet([strokes("thin", [[vec2(0, Number.NaN), vec2(1, 1)]])]))).rejects.toThrow(
      /NaN is not a coordinate/,
    );
    await expect(toSvg(sheet([], { width: Number.POSITIVE_INFINITY }))).rejects.toThrow(
      /coordinate is finite/,
    );
  });
});
