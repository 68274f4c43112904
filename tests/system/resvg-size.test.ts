import { createRequire } from "node:module";
import { Resvg } from "@resvg/resvg-js";
import { vec2 } from "@scantling/geometry";
import { type Drawing, type DrawingItem, lettering, strokes, textBox, toSvg } from "@scantling/render";
import { describe, expect, test } from "vitest";

// True size of an SVG in a renderer of its own making, resvg, by the ink of its dots: 1 mm is DPI/25.4 dots, and a dot
// that a line covers in part is grey by that part.
const DPI = 1200;
const DOTS_PER_MM = DPI / 25.4;
const TOLERANCE_MM = 0.01;

const fromCli = createRequire(new URL("../../packages/cli/src/fonts.ts", import.meta.url));
const FONT_FILES = ["DejaVuSans", "DejaVuSans-Bold"].map((name) =>
  fromCli.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`),
);

interface Dots {
  readonly width: number;
  readonly height: number;
  /** Darkness of a dot, 0 white to 1 black. */
  ink(column: number, row: number): number;
}

async function dotsOf(drawing: Drawing): Promise<Dots> {
  const image = new Resvg(await toSvg(drawing), {
    dpi: DPI,
    background: "white",
    font: { loadSystemFonts: false, fontFiles: FONT_FILES, defaultFontFamily: "DejaVu Sans" },
  }).render();
  const { width, height, pixels } = image;
  return { width, height, ink: (column, row) => 1 - (pixels[4 * (row * width + column)] ?? 255) / 255 };
}

const sheet = (width: number, height: number, items: readonly DrawingItem[]): Drawing => ({
  width,
  height,
  origin: vec2(0, 0),
  title: "True size",
  description: "Lines for the tests",
  items,
});
const lying = sheet(215, 8, [strokes("outline", [[vec2(7.03, 4), vec2(207.03, 4)]])]);
const standing = sheet(8, 215, [strokes("outline", [[vec2(4, 7.03), vec2(4, 207.03)]])]);

/** Ink along the fullest row or column of dots, and where its middle is from the left or the top; mm. */
function longest({ width, height, ink }: Dots, along: "row" | "column"): { length: number; middle: number } {
  const [count, size] = along === "row" ? [height, width] : [width, height];
  let length = 0;
  let middle = 0;
  for (let line = 0; line < count; line++) {
    let sum = 0;
    let moment = 0;
    for (let dot = 0; dot < size; dot++) {
      const here = along === "row" ? ink(dot, line) : ink(line, dot);
      sum += here;
      moment += here * (dot + 0.5);
    }
    if (sum > length) {
      length = sum;
      middle = moment / sum;
    }
  }
  return { length: length / DOTS_PER_MM, middle: middle / DOTS_PER_MM };
}

const within = (value: number, expected: number, tolerance = TOLERANCE_MM): void => {
  expect(Math.abs(value - expected), `${value} mm, not ${expected} mm`).toBeLessThanOrEqual(tolerance);
};

describe("a rule of 200 mm in dots of 1/1200 in", () => {
  test("is 200.00 ± 0.01 mm in both directions, where it belongs", async () => {
    const across = longest(await dotsOf(lying), "row");
    within(across.length, 200);
    within(across.middle, 107.03);
    const up = longest(await dotsOf(standing), "column");
    within(up.length, 200);
    within(up.middle, 215 - 107.03);
  });

  test("is stretched by the correction, each direction by its own", async () => {
    const correction = { across: 1.0204, up: 0.9917 };
    const across = await dotsOf({ ...lying, correction });
    within(across.width / DOTS_PER_MM, 215 * 1.0204, 1 / DOTS_PER_MM);
    within(across.height / DOTS_PER_MM, 8 * 0.9917, 1 / DOTS_PER_MM);
    within(longest(across, "row").length, 200 * 1.0204);
    const up = longest(await dotsOf({ ...standing, correction }), "column");
    within(up.length, 200 * 0.9917);
    within(up.middle, (215 - 107.03) * 0.9917);
  });

  test("is cut off by the box of its group, and by that alone", async () => {
    const clip = { minX: 50.8, minY: 0, maxX: 152.4, maxY: 8 };
    const clipped = await dotsOf({ ...lying, items: [{ kind: "group", clip, items: lying.items }] });
    const { length, middle } = longest(clipped, "row");
    within(length, 101.6);
    within(middle, 101.6);
  });
});

describe("lettering in dots", () => {
  /** First and last column with ink, mm from the left. */
  function span({ width, height, ink }: Dots): { left: number; right: number; ink: number } {
    let left = width;
    let right = 0;
    let total = 0;
    for (let column = 0; column < width; column++) {
      let sum = 0;
      for (let row = 0; row < height; row++) sum += ink(column, row);
      total += sum;
      if (sum > 0) {
        left = Math.min(left, column);
        right = column + 1;
      }
    }
    return { left: left / DOTS_PER_MM, right: right / DOTS_PER_MM, ink: total };
  }
  const text = (bold: boolean) => lettering("STOP 14.2 mm", vec2(5, 3), { height: 5, bold });
  const drawn = async (bold: boolean) => span(await dotsOf(sheet(70, 12, [text(bold)])));

  test("bold is heavier and wider than regular, and both stay in their boxes", async () => {
    const regular = await drawn(false);
    const bold = await drawn(true);
    expect(bold.ink).toBeGreaterThan(1.3 * regular.ink);
    expect(bold.right).toBeGreaterThan(regular.right + 2);
    for (const [seen, box] of [
      [regular, textBox(text(false))],
      [bold, textBox(text(true))],
    ] as const) {
      expect(seen.left).toBeGreaterThanOrEqual(box.minX);
      expect(seen.right).toBeLessThanOrEqual(box.maxX);
      expect(seen.right).toBeGreaterThan(box.maxX - 5);
    }
  });
});
