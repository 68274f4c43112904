import { execFileSync } from "node:child_process";
import { appendFileSync, cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Path, pathBounds, pathLength, signedArea } from "@scantling/geometry";
import { afterAll, describe, expect, test } from "vitest";
import { measure } from "../../packages/cli/src/measure.js";
import { jobOf } from "../reference/sheets/sheet-set.js";
import { areaOfPathData } from "./path-area.js";
import { pathsByMupdf, pointsToMm, readWith } from "./pdf-tools.js";
import { runBuilt, type Written } from "./sheets-files.js";

// What the built command writes, read by others: the outline's area in every format, the check bars of every page, and
// whether pages that are laid on their crossing marks go on in one another.
const EXAMPLES = [
  "market-garden/harvest",
  "long-slicer/long-slicer",
  "pattern-welded-bowie/pattern-welded-bowie",
] as const;
const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "examples");
const fileOf = (example: string): string => `${example}.knife.yaml`;

const COINCIDE_MM = 0.01;
const CHORD_ERROR_MM = 0.005;

const made: Written[] = [];
const run = (...words: Parameters<typeof runBuilt>): Written => {
  const written = runBuilt(...words);
  made.push(written);
  return written;
};
const scratch = mkdtempSync(join(tmpdir(), "scantling-shop-"));
afterAll(() => {
  for (const each of made) each.remove();
  rmSync(scratch, { recursive: true, force: true });
});

const only = ({ names }: Written): string => {
  const [name, ...more] = names;
  if (name === undefined || more.length > 0) throw new Error(`not one file: ${names.join()}`);
  return name;
};

const modelOf = async (example: string): Promise<Path> =>
  measure(await jobOf(join(ROOT, fileOf(example)))).knife.outline.path;

/** The paths of a page whose area is about the outline's, which no other path of a pattern has. */
function outlinesOn(file: string, page: number, area: number): Path[] {
  return pathsByMupdf(file, page)
    .flatMap(({ paths }) => paths)
    .filter((path) => path.closed && Math.abs(Math.abs(signedArea(path)) / area - 1) < 1e-3);
}

const pagesIn = (file: string): number => Number(/^Pages: +(\d+)$/m.exec(readWith("pdfinfo", file))?.[1]);

describe.each(EXAMPLES)("the outline of %s has the model's area", (example) => {
  test("in SVG to a millionth", async () => {
    const area = Math.abs(signedArea(await modelOf(example)));
    const written = run("pattern", fileOf(example), "--format", "svg");
    const tag = /<path [^>]*id="outline"[^>]*>/.exec(written.text(only(written)))?.[0] ?? "";
    const found = areaOfPathData(/ d="([^"]*)"/.exec(tag)?.[1] ?? "");
    expect(Math.abs(found / area - 1)).toBeLessThan(1e-6);
  });

  test("in PDF to a millionth, on each of the pages that show a part of it", async () => {
    const area = Math.abs(signedArea(await modelOf(example)));
    for (const paper of ["fit", "a4"]) {
      const written = run("pattern", fileOf(example), "--format", "pdf", "--paper", paper);
      const file = written.path(only(written));
      const found = Array.from({ length: pagesIn(file) }, (_, index) => outlinesOn(file, index + 1, area));
      // Every page shows the outline but one in front, where there is one.
      const [first = 0, ...rest] = found.map((paths) => paths.length);
      expect([0, 1]).toContain(first);
      expect(rest).toEqual(rest.map(() => 1));
      expect(found.flat().length).toBeGreaterThan(0);
      for (const path of found.flat()) {
        expect(Math.abs(Math.abs(signedArea(path)) / area - 1)).toBeLessThan(1e-6);
      }
    }
  });

  test("in DXF within its chord error all along", async () => {
    const model = await modelOf(example);
    const written = run("pattern", fileOf(example), "--format", "dxf");
    const [found, ...more] = areasInDxf(written.path(only(written)));
    expect(more).toEqual([]);
    const off = Math.abs((found ?? 0) - Math.abs(signedArea(model)));
    expect(off).toBeLessThan(pathLength(model) * CHORD_ERROR_MM);
  });
});

/** Areas of the closed polylines on layer OUTLINE, bulges counted as the arcs that they are, by Debian's python3-ezdxf. */
function areasInDxf(file: string): number[] {
  const reader = `
import json, math, sys
try:
    import ezdxf
except ImportError:
    sys.exit("no ezdxf: install the Debian package python3-ezdxf; this check is not skipped")
areas = []
for e in ezdxf.readfile(sys.argv[1]).modelspace().query('POLYLINE[layer=="OUTLINE"]'):
    if not e.is_closed:
        continue
    v = [(p.dxf.location.x, p.dxf.location.y, p.dxf.bulge) for p in e.vertices]
    area = 0.0
    for (x0, y0, bulge), (x1, y1, _) in zip(v, v[1:] + v[:1]):
        area += (x0 * y1 - x1 * y0) / 2
        if bulge:
            turn = 4 * math.atan(bulge)
            radius = math.hypot(x1 - x0, y1 - y0) / (2 * math.sin(turn / 2))
            area += radius ** 2 * (turn - math.sin(turn)) / 2
    areas.append(abs(area))
print(json.dumps(areas))
`;
  return JSON.parse(execFileSync("/usr/bin/python3", ["-c", reader, file], { encoding: "utf8" })) as number[];
}

interface PageLines {
  /** Lengths of all straight single lines, mm. */
  readonly level: number[];
  readonly upright: number[];
  /** Whether anything is drawn but lines and boxes: a page of tables has nothing on it to be measured. */
  readonly hasShapes: boolean;
}

function linesOn(file: string, page: number): PageLines {
  const level: number[] = [];
  const upright: number[] = [];
  const drawn = pathsByMupdf(file, page);
  const hasShapes = drawn.some(({ kind, paths }) =>
    paths.some(
      ({ segments }) =>
        kind === "stroke" && (segments.length > 4 || segments.some((segment) => segment.kind === "cubic")),
    ),
  );
  for (const { paths } of drawn) {
    const [path, ...more] = paths;
    const [segment, ...rest] = path?.segments ?? [];
    if (segment?.kind !== "line" || more.length > 0 || rest.length > 0) continue;
    const across = Math.abs(segment.to.x - segment.from.x);
    const up = Math.abs(segment.to.y - segment.from.y);
    if (up < 1e-3) level.push(across);
    if (across < 1e-3) upright.push(up);
  }
  return { level, upright, hasShapes };
}

const has = (lengths: readonly number[], wanted: number): boolean =>
  lengths.some((length) => Math.abs(length - wanted) <= 0.005);

/** A4 in points by the reader, either way round. */
function expectA4(file: string, page: number): void {
  const size = /size: +([\d.]+) x ([\d.]+) pts/.exec(
    readWith("pdfinfo", "-f", `${page}`, "-l", `${page}`, file),
  );
  const sides = [Number(size?.[1]), Number(size?.[2])].map(pointsToMm).sort((a, b) => a - b);
  expect(Math.abs((sides[0] ?? 0) - 210)).toBeLessThan(COINCIDE_MM);
  expect(Math.abs((sides[1] ?? 0) - 297)).toBeLessThan(COINCIDE_MM);
}

/** Sheets that are measured or traced; the plots are not. */
const TRUE_SIZE = "pattern,mirrored,preform,drilling,slabs,gauges,sections,sheath";

describe("every page that the demo prints at true size", () => {
  const demo = fileOf(EXAMPLES[0]);
  const words = ["--sheet", TRUE_SIZE, "--format", "pdf", "--paper", "a4"];

  test("is A4 and has both check bars both ways, 100.00 and 101.60 mm", () => {
    const written = run("pattern", demo, ...words);
    const file = written.path(only(written));
    let measured = 0;
    for (let page = 1; page <= pagesIn(file); page++) {
      expectA4(file, page);
      const { level, upright, hasShapes } = linesOn(file, page);
      if (!hasShapes) continue;
      measured++;
      for (const length of [100, 101.6]) {
        expect(has(level, length), `page ${page}: ${length} mm across`).toBe(true);
        expect(has(upright, length), `page ${page}: ${length} mm up`).toBe(true);
      }
    }
    expect(measured).toBeGreaterThan(10);
  });

  test("is still A4 when corrected for the printer, the bars stretched by the factors of their sides", () => {
    const [shortSide, longSide] = [1.0125, 0.9952];
    const shop = join(scratch, "shop.yaml");
    cpSync(join(ROOT, "market-garden", "shop.yaml"), shop);
    appendFileSync(shop, `\nprinter: [{ paper: a4, shortSide: ${shortSide}, longSide: ${longSide} }]\n`);
    const written = run("pattern", demo, ...words, "--shop", shop);
    const file = written.path(only(written));
    let measured = 0;
    for (let page = 1; page <= pagesIn(file); page++) {
      expectA4(file, page);
      const size = /size: +([\d.]+) x ([\d.]+)/.exec(
        readWith("pdfinfo", "-f", `${page}`, "-l", `${page}`, file),
      );
      const lying = Number(size?.[1]) > Number(size?.[2]);
      const { level, upright, hasShapes } = linesOn(file, page);
      if (!hasShapes) continue;
      measured++;
      for (const length of [100, 101.6]) {
        expect(has(level, length * (lying ? longSide : shortSide)), `page ${page} across`).toBe(true);
        expect(has(upright, length * (lying ? shortSide : longSide)), `page ${page} up`).toBe(true);
      }
    }
    expect(measured).toBeGreaterThan(10);
  });
});

describe("the pages of the long slicer on A4, laid on their crossing marks", () => {
  test("go on in one another within 0.01 mm", async () => {
    const example = EXAMPLES[1];
    const area = Math.abs(signedArea(await modelOf(example)));
    const written = run("pattern", fileOf(example), "--format", "pdf", "--paper", "a4");
    const file = written.path(only(written));
    const tiles = Array.from({ length: pagesIn(file) }, (_, index) => index + 1).flatMap((page) => {
      const [outline] = outlinesOn(file, page, area);
      return outline === undefined ? [] : [{ outline, rings: ringsOn(file, page) }];
    });
    expect(tiles.length).toBeGreaterThanOrEqual(2);
    let joints = 0;
    for (const [index, left] of tiles.entries()) {
      const right = tiles[index + 1];
      if (right === undefined) continue;
      // Each ring of a joint is on both pages: the pitch that two of them have in common lays one page on the other.
      const pitches = left.rings.flatMap((a) =>
        right.rings.map((b) => ({ x: a.x - b.x, y: a.y - b.y })).filter(({ x }) => x > 100),
      );
      const shared = pitches.find(
        (one) => pitches.filter(({ x, y }) => Math.hypot(x - one.x, y - one.y) < COINCIDE_MM).length === 2,
      );
      if (shared === undefined) throw new Error("no two rings in common");
      joints++;
      for (const [at, segment] of left.outline.segments.entries()) {
        const same = right.outline.segments[at];
        expect(same?.kind).toBe(segment.kind);
        expect(Math.abs(segment.to.x - (same?.to.x ?? 0) - shared.x)).toBeLessThan(COINCIDE_MM);
        expect(Math.abs(segment.to.y - (same?.to.y ?? 0) - shared.y)).toBeLessThan(COINCIDE_MM);
      }
    }
    expect(joints).toBe(tiles.length - 1);
  });

  /** Centres of the rings of crossing marks: circles of one size between 3 and 9 mm across. */
  function ringsOn(file: string, page: number): { readonly x: number; readonly y: number }[] {
    return pathsByMupdf(file, page)
      .flatMap(({ paths }) => paths)
      .filter(({ segments, closed }) => closed && segments.every(({ kind }) => kind === "cubic"))
      .map(pathBounds)
      .filter(({ minX, maxX, minY, maxY }) => {
        const [wide, high] = [maxX - minX, maxY - minY];
        return Math.abs(wide - high) < COINCIDE_MM && wide > 3 && wide < 9;
      })
      .map(({ minX, maxX, minY, maxY }) => ({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 }));
  }
});
