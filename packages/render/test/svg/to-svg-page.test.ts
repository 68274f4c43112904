import { vec2 } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { type Drawing, type DrawingItem, lettering, strokes, toSvg } from "../../src/index.js";
import { attributeOf, readSvg } from "../read-svg.js";

const sheet = (items: readonly DrawingItem[], more: Partial<Drawing> = {}): Drawing => ({
  width: 120,
  height: 80,
  origin: vec2(10, 20),
  title: "Sheet",
  description: "A sheet for the tests",
  items,
  ...more,
});
const diagonal = strokes("thin", [[vec2(0, 0), vec2(30, 40)]]);
const clip = { minX: 0, minY: 5, maxX: 25, maxY: 35 };

describe("toSvg for a printer that does not print true to size", () => {
  it("stretches width and height and nothing inside", async () => {
    const plain = await toSvg(sheet([diagonal]));
    const corrected = await toSvg(sheet([diagonal], { correction: { across: 1.02, up: 0.99 } }));
    expect(corrected).toBe(
      plain
        .replace('width="120mm" height="80mm"', 'width="122.4mm" height="79.2mm"')
        .replace('viewBox="0 0 120 80"', 'viewBox="0 0 120 80" preserveAspectRatio="none"'),
    );
  });
});

describe("toSvg of a group with a clip", () => {
  it("cuts it by its box on the page", async () => {
    const svg = await toSvg(sheet([{ kind: "group", name: "tile", clip, items: [diagonal] }]));
    const elements = readSvg(svg);
    const path = elements.find(({ tag }) => tag === "clipPath");
    expect(path?.attributes).toEqual({ id: "clip-1" });
    expect(svg).toContain(
      '<clipPath id="clip-1">\n<rect x="10" y="25" width="25" height="30"/>\n</clipPath>',
    );
    const group = elements.find(({ tag }) => tag === "g");
    expect(group?.attributes).toEqual({ id: "tile", "clip-path": "url(#clip-1)" });
  });

  it("gives each a name of its own, inner ones and parts that have such a name among them", async () => {
    const inner: DrawingItem = { kind: "group", clip, items: [{ ...diagonal, name: "clip-2" }] };
    const svg = await toSvg(sheet([{ kind: "group", name: "clip-1", clip, items: [inner, inner] }, inner]));
    const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map((match) => match[1]);
    // The same group drawn three times is clipped three times.
    const clips = readSvg(svg)
      .filter(({ tag }) => tag === "clipPath")
      .map((element) => attributeOf(element, "id"));
    expect(clips).toHaveLength(4);
    for (const name of clips)
      expect(
        ids.filter((id) => id === name),
        name,
      ).toHaveLength(1);
  });
});

describe("toSvg of bold lettering", () => {
  it("says so, and only there", async () => {
    const at = vec2(0, 0);
    const svg = await toSvg(
      sheet([lettering("STOP", at, { height: 5, bold: true }), lettering("14.2", at, { height: 5 })]),
    );
    const weights = readSvg(svg)
      .filter(({ tag }) => tag === "text")
      .map(({ attributes }) => attributes["font-weight"]);
    expect(weights).toEqual(["bold", undefined]);
  });
});
