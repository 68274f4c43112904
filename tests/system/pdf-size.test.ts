import {
  arcAround,
  arcBetween,
  cubic,
  line,
  type Path,
  pathBounds,
  signedArea,
  vec2,
} from "@scantling/geometry";
import { type Drawing, type DrawingItem, strokes, toPdf } from "@scantling/render";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadFonts } from "../../packages/cli/src/fonts.js";
import {
  type DrawnPath,
  pathsByMupdf,
  pointsToMm,
  readWith,
  scratchFolder,
  strokesByPoppler,
} from "./pdf-tools.js";

// True size in PDF, by two readers that know nothing of each other: MuPDF and poppler.
/** 200.00 ± 0.01 mm on a rule of 200 mm. */
const TOLERANCE_MM = 0.01;

/** A drop point with a round butt: lines, arcs and cubics, clockwise and counter-clockwise. */
const outline: Path = {
  closed: true,
  segments: [
    line(vec2(0, 0), vec2(120, 0)),
    cubic(vec2(120, 0), vec2(180, 0), vec2(215, 12), vec2(235, 28)),
    arcBetween(vec2(235, 28), vec2(150, 45), 0.7),
    arcBetween(vec2(150, 45), vec2(40, 45), -0.3),
    line(vec2(40, 45), vec2(-90, 45)),
    arcBetween(vec2(-90, 45), vec2(-90, 5), Math.PI),
    cubic(vec2(-90, 5), vec2(-60, 12), vec2(-30, -6), vec2(0, 0)),
  ],
};

const items: readonly DrawingItem[] = [
  strokes("check", [[vec2(-100, 100), vec2(100, 100)]]),
  strokes("check", [[vec2(-105, -90), vec2(-105, 110)]]),
  { kind: "path", role: "outline", paths: [outline] },
  { kind: "circle", role: "outline", centre: vec2(-60, 25), radius: 12.7 },
  {
    kind: "path",
    role: "outline",
    fill: "light",
    paths: [{ closed: true, segments: [arcAround(vec2(0, -50), 30, 1, 2 * Math.PI)] }],
  },
];
const sheet = (more: Partial<Drawing> = {}): Drawing => ({
  width: 420,
  height: 297,
  origin: vec2(130, 120),
  title: "True size",
  description: "Two rules of 200 mm, an outline and two circles",
  items,
  ...more,
});

const correction = { across: 1.0204, up: 0.9917 };
const scratch = scratchFolder();
let file = "";
beforeAll(async () => {
  file = scratch.write(
    "size.pdf",
    await toPdf([sheet(), sheet({ correction })], { fonts: await loadFonts() }),
  );
});
afterAll(scratch.remove);

const lengthOf = ({ paths }: DrawnPath): number => {
  const [segment] = paths[0]?.segments ?? [];
  if (segment === undefined) throw new Error("no line");
  return Math.hypot(segment.to.x - segment.from.x, segment.to.y - segment.from.y);
};
const within = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value}, not ${expected}`).toBeLessThanOrEqual(tolerance);
};
const PER_PAGE = items.length;

describe.each([
  ["true to size", 0, 1, 1],
  ["for a printer that prints small across and large up", 1, correction.across, correction.up],
] as const)("a page %s", (_, page, across, up) => {
  const byMupdf = (): DrawnPath[] => pathsByMupdf(file).slice(PER_PAGE * page, PER_PAGE * (page + 1));
  const at = (all: readonly DrawnPath[], index: number): DrawnPath => {
    const path = all[index];
    if (path === undefined) throw new Error(`no path ${index} of ${all.length}`);
    return path;
  };

  test("is as large as it says, by both readers", () => {
    const [width, height] = [420 * across, 297 * up];
    const boxes = [
      ...readWith("pdfinfo", "-f", "1", "-l", "2", file).matchAll(/size: +([\d.]+) x ([\d.]+) pts/g),
    ];
    within(pointsToMm(Number(boxes[page]?.[1])), width, TOLERANCE_MM);
    within(pointsToMm(Number(boxes[page]?.[2])), height, TOLERANCE_MM);
    const pages = [
      ...readWith("mutool", "trace", file).matchAll(/<page [^>]*mediabox="0 0 ([\d.]+) ([\d.]+)"/g),
    ];
    within(pointsToMm(Number(pages[page]?.[1])), width, TOLERANCE_MM);
    within(pointsToMm(Number(pages[page]?.[2])), height, TOLERANCE_MM);
  });

  test("has rules of 200 mm in both directions, by both readers", () => {
    for (const all of [byMupdf(), strokesByPoppler(file, page + 1)]) {
      within(lengthOf(at(all, 0)), 200 * across, TOLERANCE_MM);
      within(lengthOf(at(all, 1)), 200 * up, TOLERANCE_MM);
    }
  });

  test("has each of them where it belongs, y up", () => {
    for (const all of [byMupdf(), strokesByPoppler(file, page + 1)]) {
      const { minX, maxX, minY } = pathBounds(at(all, 0).paths[0] ?? outline);
      within(minX, 30 * across, TOLERANCE_MM);
      within(maxX, 230 * across, TOLERANCE_MM);
      // 297 − 120 − 100 mm below the top of the page.
      within(minY, 77 * up, TOLERANCE_MM);
    }
  });

  test("has an outline of the model's area, to a millionth", () => {
    const [drawn] = at(byMupdf(), 2).paths;
    if (drawn === undefined) throw new Error("no outline");
    const expected = signedArea(outline) * across * up;
    // y down turns the sense of going round.
    within(-signedArea(drawn) / expected, 1, 1e-6);
  });

  test("has circles of their own area, stroked or filled, to a millionth", () => {
    for (const [index, radius, kind] of [
      [3, 12.7, "stroke"],
      [4, 30, "fill"],
    ] as const) {
      const { kind: drawnAs, paths } = at(byMupdf(), index);
      expect(drawnAs).toBe(kind);
      const [circle] = paths;
      if (circle === undefined) throw new Error("no circle");
      within(Math.abs(signedArea(circle)) / (Math.PI * radius ** 2 * across * up), 1, 1e-6);
    }
  });
});

describe("the file", () => {
  test("is whole to both readers, asks for true size, and carries no date", () => {
    const info = readWith("pdfinfo", file);
    expect(info).toMatch(/^Title: +True size$/m);
    expect(info).toMatch(/^Pages: +2$/m);
    expect(info).not.toMatch(/Date/);
    expect(readWith("mutool", "show", file, "trailer/Root/ViewerPreferences")).toMatch(
      /\/PrintScaling \/None[\s\S]*\/PickTrayByPDFSize true[\s\S]*\/Duplex \/Simplex/,
    );
    expect(readWith("mutool", "show", file, "trailer/Root/Lang")).toContain("(en)");
    // A file that ends too early is repaired with a warning on standard error; a whole one has its table of objects.
    expect(readWith("mutool", "show", file, "xref")).toMatch(/^xref\n0 \d+\n/);
  });
});
