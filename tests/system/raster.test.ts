import { spawnSync } from "node:child_process";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type DemoPattern, drawDemoPattern } from "./demo-pattern.js";

// The same drawing through a second renderer, down to dots: librsvg at 600 dots per inch, where 1 mm is 600/25.4 dots.
const DPI = 600;
const DOTS_PER_MM = DPI / 25.4;

interface Bar {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

let pattern: DemoPattern;
beforeAll(() => {
  pattern = drawDemoPattern();
});
afterAll(() => pattern.remove());

/** A named straight bar, read off the drawing: `M x y` and then one line, written as `L x y`, `H x` or `V y`. */
function barNamed(name: string): Bar {
  const path = new RegExp(`<path[^>]*\\sid="${name}"[^>]*>`).exec(pattern.svg)?.[0] ?? "";
  const data = /\sd="([^"]*)"/.exec(path)?.[1] ?? "";
  const match = /^M\s*(\S+)[\s,]+(\S+?)\s*([LHV])\s*(\S+)(?:[\s,]+(\S+))?$/.exec(data);
  if (!match) throw new Error(`${name} is not a straight bar: ${data}`);
  const [x0, y0, a, b] = [match[1], match[2], match[4], match[5]].map(Number) as [
    number,
    number,
    number,
    number,
  ];
  if (match[3] === "H") return { x0, y0, x1: a, y1: y0 };
  if (match[3] === "V") return { x0, y0, x1: x0, y1: a };
  return { x0, y0, x1: a, y1: b };
}

/** Renders the part of the sheet around a bar and nothing else of it: the scale stays, only the window moves. */
function renderAround(bar: Bar, margin: number): PNG {
  const x = Math.min(bar.x0, bar.x1) - margin;
  const y = Math.min(bar.y0, bar.y1) - margin;
  const width = Math.abs(bar.x1 - bar.x0) + 2 * margin;
  const height = Math.abs(bar.y1 - bar.y0) + 2 * margin;
  const cropped = pattern.svg
    .replace(/(<svg[^>]*?)\bwidth="[^"]*"/, `$1width="${width}mm"`)
    .replace(/(<svg[^>]*?)\bheight="[^"]*"/, `$1height="${height}mm"`)
    .replace(/(<svg[^>]*?)\bviewBox="[^"]*"/, `$1viewBox="${x} ${y} ${width} ${height}"`);
  const result = spawnSync(
    "rsvg-convert",
    ["--dpi-x", String(DPI), "--dpi-y", String(DPI), "--background-color", "white"],
    {
      input: cropped,
      maxBuffer: 1 << 28,
    },
  );
  if (result.error) {
    throw new Error("no rsvg-convert: install the Debian package librsvg2-bin; this check is not skipped", {
      cause: result.error,
    });
  }
  if (result.status !== 0) throw new Error(`rsvg-convert: ${result.stderr.toString()}`);
  return PNG.sync.read(result.stdout);
}

/** Darkness of a dot, 0 white to 1 black. */
const ink = (png: PNG, column: number, row: number): number =>
  1 - (png.data[4 * (row * png.width + column)] ?? 255) / 255;

describe("the 100 mm check bar in dots", () => {
  test.each(["check-mm-across", "check-mm-up"])("%s is 100 mm of ink long", (name) => {
    const bar = barNamed(name);
    const margin = 2;
    const png = renderAround(bar, margin);
    const across = bar.y0 === bar.y1;
    const length = across ? png.width : png.height;
    const breadth = across ? png.height : png.width;
    expect(Math.abs(length - (100 + 2 * margin) * DOTS_PER_MM)).toBeLessThanOrEqual(1);

    // Ink along the bar's own line, each row of dots by itself; the fullest one is the line.
    const rows = Array.from({ length: breadth }, (_, j) => {
      let sum = 0;
      for (let i = 0; i < length; i++) sum += across ? ink(png, i, j) : ink(png, j, i);
      return sum;
    });
    const dots = Math.max(...rows);
    // The end ticks are a narrow line, 0.25 mm wide, centred on the bar's ends: half of each lies outside it.
    const measured = dots / DOTS_PER_MM - 0.25;
    expect(measured).toBeGreaterThan(99.95);
    expect(measured).toBeLessThan(100.05);
  });
});
