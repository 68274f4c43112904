import {
  areaMoments,
  handleStock,
  type KnifeSpec,
  makeKnife,
  mirrorPath,
  type Path,
  pathBounds,
} from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { handleKnives } from "../../../../tests/reference/handle-knives.js";
import { contouredSlabs, filletedSlabs } from "../../../../tests/reference/slab-knives.js";
import {
  checkLayout,
  type Drawing,
  flattenItems,
  layOutSheet,
  paperNamed,
  papersFor,
  type SlabsModel,
  slabsContents,
} from "../../src/index.js";
import { pairText, sawText } from "../../src/sheets/slabs/figures.js";
import { handledKnife } from "./random-handles.js";

const head = { code: "T-1", title: "A trial", units: "mm" as const };

function modelOf(spec: KnifeSpec): SlabsModel {
  const stock = handleStock(makeKnife(spec), 1.5);
  if (stock === undefined) throw new Error("the knife has a handle");
  return { ...head, stock };
}

const pagesOf = (model: SlabsModel): Drawing[] =>
  layOutSheet(slabsContents(model), { kind: "smallest", papers: papersFor(model.units) });

const drawnPaths = (pages: readonly Drawing[], name: string): Path[] =>
  pages.flatMap(({ items }) =>
    flattenItems(items).flatMap((item) => (item.kind === "path" && item.name === name ? item.paths : [])),
  );

describe.each([filletedSlabs(), contouredSlabs()])("slabs: $name", ({ spec }) => {
  const model = modelOf(spec);
  const pages = pagesOf(model);
  const { stock } = model;
  if (stock.kind !== "slabs") throw new Error("slabs");

  it("are drawn as the tang's own outline, the left one as the mirror image of the right one", () => {
    const right = drawnPaths(pages, "slab-right-outline");
    const left = drawnPaths(pages, "slab-left-outline");
    expect(right).toHaveLength(stock.pieces.length);
    for (const [i, piece] of stock.pieces.entries()) {
      const area = areaMoments(piece).area;
      expect(areaMoments(right[i] ?? piece).area).toBeCloseTo(area, 7);
      const mirrored = mirrorPath(right[i] ?? piece);
      const [a, b] = [pathBounds(mirrored), pathBounds(left[i] ?? piece)];
      for (const [k, segment] of mirrored.segments.entries()) {
        const other = left[i]?.segments[k];
        expect(other?.kind).toBe(segment.kind);
        expect((other?.from.x ?? 0) - b.minX).toBeCloseTo(segment.from.x - a.minX, 9);
        expect((other?.from.y ?? 0) - b.minY).toBeCloseTo(segment.from.y - a.minY, 9);
      }
    }
  });

  it("have their holes where they are, from the front end and the foot, at the finished diameter", () => {
    const [outline] = drawnPaths(pages, "slab-right-outline");
    const [piece] = stock.pieces;
    if (outline === undefined || piece === undefined) throw new Error("a slab is drawn");
    const [drawn, meant] = [pathBounds(outline), pathBounds(piece)];
    const circles = pages.flatMap(({ items }) =>
      flattenItems(items).filter(
        (item) => item.kind === "circle" && item.name?.startsWith("slab-right-hole"),
      ),
    );
    expect(circles).toHaveLength(stock.holes.length);
    for (const [i, circle] of circles.entries()) {
      const hole = stock.holes[i];
      if (circle.kind !== "circle" || hole === undefined) throw new Error("round holes");
      expect(2 * circle.radius).toBe(hole.diameter);
      expect(circle.centre.x - drawn.maxX).toBeCloseTo(hole.centre.x - meant.maxX, 9);
      expect(circle.centre.y - drawn.minY).toBeCloseTo(hole.centre.y - meant.minY, 9);
    }
  });

  it("lie in the middle of their blank", () => {
    const [blank] = drawnPaths(pages, "slab-right-blank");
    const [outline] = drawnPaths(pages, "slab-right-outline");
    if (blank === undefined || outline === undefined) throw new Error("both are drawn");
    const [outer, inner] = [pathBounds(blank), pathBounds(outline)];
    expect(inner.minX - outer.minX).toBeCloseTo(outer.maxX - inner.maxX, 9);
    expect(outer.maxX - outer.minX).toBeCloseTo(stock.blank.length, 9);
    expect(outer.maxY - outer.minY).toBeCloseTo(stock.blank.height, 9);
  });
});

it("a block for both slabs holds two as each is told to be sawn, and the saw cut", () => {
  const blank = { kind: "slabs", material: "ash", length: 110, height: 30 } as const;
  // 9/32 in and 1 mm for sanding: 9 mm each, 3/8 in; a kerf of 1/16 in.
  const thickness = 7.14375 + 1;
  const pair = { ...blank, thickness, bookMatched: 2 * thickness + 1.5875 };
  expect(pairText(pair, "mm")).toEqual({ main: "20 mm", other: '[13/16"]' });
  for (let step = 0; step < 200; step++) {
    const each = 3 + step * 0.037;
    const of = { ...blank, thickness: each, bookMatched: 2 * each + 1.2 };
    const sawn = Number.parseInt(sawText(each, "mm").main, 10);
    const block = Number.parseInt(pairText(of, "mm")?.main ?? "", 10);
    expect(block).toBeGreaterThanOrEqual(2 * sawn + 1.2);
    expect(block).toBeLessThan(2 * sawn + 1.2 + 1);
  }
  expect(pairText({ ...blank, kind: "block", thickness }, "mm")).toBeUndefined();
});

it("slabs with pins say to what length their rod is sawn, others nothing of it", () => {
  const wordsOf = (model: SlabsModel): string =>
    pagesOf(model)
      .flatMap(({ items }) => flattenItems(items))
      .flatMap((item) => (item.kind === "text" ? [item.text] : []))
      .join(" ");
  const model = modelOf(filletedSlabs().spec);
  const pin = { index: 0, kind: "pin", centre: { x: -30, y: 15 }, diameter: 4 } as const;
  const pinned = { ...model, stock: { ...model.stock, holes: [pin] } };
  expect(wordsOf(pinned)).toContain(
    'Pins: saw the rod 2 mm [5/64"] longer on each side, glue it in, then grind it flush.',
  );
  expect(wordsOf({ ...model, stock: { ...model.stock, holes: [] } })).not.toContain("Pins:");
});

describe.each(handleKnives())("a block: $name", ({ spec }) => {
  it("is drawn from the side and from above, its tang inside it", () => {
    const model = modelOf(spec);
    const pages = pagesOf(model);
    if (model.stock.kind !== "block") throw new Error("a block");
    for (const [name, path] of [
      ["block-side", model.stock.side],
      ["block-above", model.stock.above],
    ] as const) {
      const [drawn] = drawnPaths(pages, `${name}-outline`);
      expect(areaMoments(drawn ?? path).area).toBeCloseTo(areaMoments(path).area, 6);
    }
    expect(
      pages
        .flatMap(({ items }) => flattenItems(items))
        .some(({ kind, ...item }) => kind === "path" && "role" in item && item.role === "hidden"),
    ).toBe(true);
    expect(pages.flatMap((page) => checkLayout(page))).toEqual([]);
  });
});

it("nothing overlaps on the sheets of 60 random knives, on one page and packed on A4", () => {
  const kinds = new Set<string>();
  for (let index = 0; index < 60; index++) {
    const { name, knife, head: words } = handledKnife(index);
    const stock = handleStock(knife, 1.5);
    if (stock === undefined) continue;
    kinds.add(stock.kind);
    const contents = slabsContents({ ...words, stock });
    const one = layOutSheet(contents, { kind: "smallest", papers: papersFor(words.units) });
    const packed = layOutSheet(contents, { kind: "paper", paper: paperNamed("A4") });
    for (const page of [...one, ...packed]) expect(checkLayout(page), name).toEqual([]);
  }
  expect([...kinds].sort()).toEqual(["block", "slabs"]);
});

describe("sizes to saw", () => {
  it("are rounded up, never to less than is needed: whole mm, sixteenths of an inch", () => {
    // 5 1/16 in are 128.5875 mm, a 64th more is 128.984.
    expect(sawText(128.5875, "in")).toEqual({ main: '5 1/16"', other: "[129 mm]" });
    expect(sawText(128.6, "in").main).toBe('5 1/8"');
    expect(sawText(134, "mm")).toEqual({ main: "134 mm", other: '[5 5/16"]' });
    expect(sawText(134.01, "mm").main).toBe("135 mm");
    const decimals = { main: "in", both: false, inches: "decimals" } as const;
    expect(sawText(128.6, decimals)).toEqual({ main: '5.1"' });
    for (let mm = 4; mm < 160; mm += 0.37) {
      const [whole = "0", part = "0/1"] = (sawText(mm, "in").main.match(/\d+\/\d+|\d+(?!\/)/gu) ?? []).sort(
        (a, b) => Number(a.includes("/")) - Number(b.includes("/")),
      );
      const inches = [whole, part].reduce((sum, text) => {
        const [over = 0, under = 1] = text.split("/").map(Number);
        return sum + over / under;
      }, 0);
      expect(inches * 25.4).toBeGreaterThan(mm - 1e-6);
      expect(inches * 25.4).toBeLessThan(mm + 25.4 / 16);
    }
  });

  it("are said to be so, with what is over", () => {
    const texts = pagesOf(modelOf(filletedSlabs().spec))
      .flatMap(({ items }) => flattenItems(items))
      .flatMap((item) => (item.kind === "text" ? [item.text] : []))
      .join(" ");
    expect(texts).toContain('Sizes to saw: 3 mm [1/8"] over all round');
    expect(texts).toContain("rounded up");
  });
});
