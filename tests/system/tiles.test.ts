import { spawnSync } from "node:child_process";
import { type Drawing, layOutSheet, paperNamed, patternContents, toSvg } from "@scantling/render";
import { PNG } from "pngjs";
import { beforeAll, describe, expect, test } from "vitest";
import { harvestKnife } from "../../packages/render/test/fixtures.js";

// Two neighbouring pages through librsvg, down to dots: what both show of the overlap is laid on one another.
const DPI = 1200;
const DOTS_PER_MM = DPI / 25.4;
/** How well tiles have to coincide, mm. */
const COINCIDE = 0.01;

interface Page {
  readonly drawing: Drawing;
  readonly svg: string;
  /** The window in the view's mm. */
  readonly window: { minX: number; minY: number; maxX: number; maxY: number };
}

let left: Page;
let right: Page;
beforeAll(async () => {
  const drawings = layOutSheet(patternContents(harvestKnife()), { kind: "paper", paper: paperNamed("A4") });
  const pages = await Promise.all(
    drawings.map(async (drawing) => {
      const [first] = drawing.items;
      const window = first?.kind === "group" ? first.clip : undefined;
      return window === undefined ? [] : [{ drawing, window, svg: await toSvg(drawing) }];
    }),
  );
  const [a, b] = pages.flat();
  if (a === undefined || b === undefined) throw new Error("the pattern takes two pages of A4");
  left = a;
  right = b;
});

/** Renders a box of the view, given in its own mm, from the file of a page; the scale stays, only the window moves. */
function render(page: Page, box: { x: number; y: number; width: number; height: number }): PNG {
  const { origin, height } = page.drawing;
  const x = box.x + origin.x;
  const y = height - origin.y - box.y - box.height;
  const cropped = page.svg
    .replace(/(<svg[^>]*?)\bwidth="[^"]*"/, `$1width="${box.width}mm"`)
    .replace(/(<svg[^>]*?)\bheight="[^"]*"/, `$1height="${box.height}mm"`)
    .replace(/(<svg[^>]*?)\bviewBox="[^"]*"/, `$1viewBox="${x} ${y} ${box.width} ${box.height}"`);
  const result = spawnSync(
    "rsvg-convert",
    ["--dpi-x", String(DPI), "--dpi-y", String(DPI), "--background-color", "white"],
    { input: cropped, maxBuffer: 1 << 28 },
  );
  if (result.error) {
    throw new Error("no rsvg-convert: install the Debian package librsvg2-bin; this check is not skipped", {
      cause: result.error,
    });
  }
  if (result.status !== 0) throw new Error(`rsvg-convert: ${result.stderr.toString()}`);
  return PNG.sync.read(result.stdout);
}

const ink = (png: PNG, column: number, row: number): number =>
  1 - (png.data[4 * (row * png.width + column)] ?? 255) / 255;

/** Middle of all ink, mm from the upper left corner, and how much there is of it, mm². */
function centroid(png: PNG): { x: number; y: number; area: number } {
  let [sum, x, y] = [0, 0, 0];
  for (let row = 0; row < png.height; row++) {
    for (let column = 0; column < png.width; column++) {
      const dark = ink(png, column, row);
      sum += dark;
      x += dark * (column + 0.5);
      y += dark * (row + 0.5);
    }
  }
  return { x: x / sum / DOTS_PER_MM, y: y / sum / DOTS_PER_MM, area: sum / DOTS_PER_MM ** 2 };
}

/** The centres of the rings in a file, in the page's mm from its upper left corner. */
function ringsIn(page: Page): { x: number; y: number }[] {
  const group = /<g id="joints">([\s\S]*?)<\/g>/.exec(page.svg)?.[1] ?? "";
  return [...group.matchAll(/<circle cx="([^"]+)" cy="([^"]+)"/g)].map(([, x, y]) => ({
    x: Number(x),
    y: Number(y),
  }));
}

describe("two pages laid on one another", () => {
  test("have the rings of the crossing marks at the same places", () => {
    const [a, b] = [ringsIn(left), ringsIn(right)];
    expect(a.length).toBe(2);
    expect(b.length).toBe(2);
    // The windows of a row stand at the same place of the page, one pitch apart.
    const pitch = right.window.minX - left.window.minX;
    for (const [index, ring] of a.entries()) {
      expect(Math.abs(ring.x - (b[index]?.x ?? 0) - pitch)).toBeLessThan(COINCIDE);
      expect(Math.abs(ring.y - (b[index]?.y ?? 0))).toBeLessThan(COINCIDE);
    }
  });

  test("have the inked rings, and every line in the overlap, at the same places", () => {
    const from = right.window.minX;
    const to = left.window.maxX;
    expect(to - from).toBe(10);
    const boxes = [
      // All of the overlap but half a line's width at its sides, where the window's edge cuts.
      { x: from + 0.5, y: left.window.minY + 1, width: 9, height: left.window.maxY - left.window.minY - 2 },
      // The spine, at 92 mm.
      { x: from + 2, y: 90, width: 2, height: 4 },
      ...ringsIn(left).map(({ x, y }) => ({
        x: x - left.drawing.origin.x - 4.6,
        y: left.drawing.height - left.drawing.origin.y - y - 4.6,
        width: 9.2,
        height: 9.2,
      })),
    ];
    for (const box of boxes) {
      const [a, b] = [centroid(render(left, box)), centroid(render(right, box))];
      expect(a.area).toBeGreaterThan(0.5);
      expect(Math.abs(a.x - b.x)).toBeLessThan(COINCIDE);
      expect(Math.abs(a.y - b.y)).toBeLessThan(COINCIDE);
      expect(Math.abs(a.area - b.area)).toBeLessThan(0.01 * a.area);
    }
  });

  test("have the spine where the model has it", () => {
    const box = { x: right.window.minX + 2, y: 90, width: 2, height: 4 };
    for (const page of [left, right])
      expect(Math.abs(centroid(render(page, box)).y - 2)).toBeLessThan(COINCIDE);
  });

  test("show nothing of the drawing beyond the window", () => {
    const beyond = { x: left.window.maxX + 0.05, y: 88, width: 0.2, height: 8 };
    const { data } = render(left, beyond);
    expect(data.every((value) => value > 250)).toBe(true);
  });
});
