import { describe, expect, test } from "vitest";
import { readShopFile } from "../../packages/cli/src/file/index.js";
import { paperChoiceOf } from "../../packages/cli/src/paper-choice.js";
import { answer } from "../../packages/cli/test/support/answer.js";
import { type FakeIo, fakeIo } from "../../packages/cli/test/support/fake-io.js";
import { layOutSheet, patternContents, toSvg } from "../../packages/render/src/index.js";
import { harvestKnife } from "../../packages/render/test/fixtures.js";
import {
  attributeOf,
  boundsOfPoints,
  byId,
  pointsOfPathData,
  readSvg,
} from "../../packages/render/test/read-svg.js";
import { type CrookedPrinter, Print } from "./printer.js";

// The whole way of a correction: the check sheet through a printer that is not true, its bars measured in dots, the
// lengths typed, the correction stored, and a pattern and the proof sheet through the same printer.

const PRINTER: CrookedPrinter = { shortSide: 0.987, longSide: 1.006 };
/** What has to hold on paper, mm: half of what a caliper shows. */
const TRUE_WITHIN = 0.02;
/** The part of a cross or of an end tick that is looked at, mm from the bar. */
const [FROM, TO] = [1, 2.5];

interface Bar {
  readonly id: string;
  readonly direction: "across" | "up";
  /** On which side of it the ends have their lines: before it is above or to the left. */
  readonly side: -1 | 1;
}

const LONG_BARS = {
  short: { id: "bar-short", direction: "across", side: -1 },
  long: { id: "bar-long", direction: "up", side: -1 },
} as const;

const CHECK_BARS: readonly (readonly [number, Bar])[] = [
  [100, { id: "check-mm-across", direction: "across", side: -1 }],
  [101.6, { id: "check-in-across", direction: "across", side: 1 }],
  [100, { id: "check-mm-up", direction: "up", side: -1 }],
  [101.6, { id: "check-in-up", direction: "up", side: 1 }],
];

/** Length of a bar on the print, from the middle of one end line to the middle of the other, mm. */
function measured(svg: string, printer: CrookedPrinter, { id, direction, side }: Bar): number {
  const [a, b] = pointsOfPathData(attributeOf(byId(readSvg(svg), id), "d"));
  if (a === undefined || b === undefined) throw new Error(`${id} is no bar`);
  const print = new Print(svg, printer);
  const [first, second] = [a, b].map((end) => print.lineNear(end, direction, side * FROM, side * TO));
  return Math.abs((second ?? 0) - (first ?? 0));
}

/** Overall length of the knife on the print: its butt and its front are upright lines. */
function overallLength(svg: string, printer: CrookedPrinter): number {
  const outline = byId(readSvg(svg), "outline");
  const { minX, maxX } = boundsOfPoints(pointsOfPathData(attributeOf(outline, "d")));
  const [root = ""] = /<svg[^>]*>/.exec(svg) ?? [];
  const alone = `${root}<path d="${attributeOf(outline, "d")}" stroke="#000000" stroke-width="0.5"/></svg>`;
  const print = new Print(alone, printer);
  const ends = pointsOfPathData(attributeOf(outline, "d"));
  const [butt, front] = [minX, maxX].map((x) => {
    const ys = ends.filter((point) => Math.abs(point.x - x) < 1e-9).map(({ y }) => y);
    const middle = { x, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
    return print.lineNear(middle, "across", -1, 1);
  });
  return (front ?? 0) - (butt ?? 0);
}

async function sheet(io: FakeIo, ...words: readonly string[]): Promise<string> {
  const { code, out, err } = await answer(["calibrate", ...words], io);
  if (code !== 0) throw new Error(err);
  return io.disk.text(`/shop/${out.trim()}`);
}

describe.each([
  ["a4", "mm"],
  ["a3", "mm"],
  ["letter", "in"],
  ["300x600mm", "mm"],
] as const)("a printer that is 1.3 %% small and 0.6 %% large, on %s", (paper, units) => {
  /** Prints the check sheet, measures it and types the lengths; the shop file that this gives. */
  async function calibrated(): Promise<FakeIo> {
    const io = fakeIo({ files: { "shop.yaml": `units: ${units} # ours\n` } });
    const svg = await sheet(io, "--paper", paper);
    const short = measured(svg, PRINTER, LONG_BARS.short);
    const long = measured(svg, PRINTER, LONG_BARS.long);
    const typed = ["--short", `${short.toFixed(2)}mm`, "--long", `${long.toFixed(2)}mm`, "--force"];
    const { code } = await answer(["calibrate", "--paper", paper, ...typed], io);
    expect(code).toBe(0);
    return io;
  }

  test("is measured and stored as it is", async () => {
    const io = await calibrated();
    const [entry, ...others] = readShopFile(io.disk.text("/shop/shop.yaml"), "shop.yaml").printer;
    expect(others).toEqual([]);
    expect(entry?.shortSide).toBeCloseTo(1 / PRINTER.shortSide, 3);
    expect(entry?.longSide).toBeCloseTo(1 / PRINTER.longSide, 3);
    expect(io.disk.text("/shop/shop.yaml")).toContain("# ours\n");
  });

  test("is seen on a sheet without correction, and not any more on the proof, which stands", async () => {
    const io = await calibrated();
    const plain = await sheet(io, "--paper", paper, "--force");
    expect(measured(plain, PRINTER, { id: "check-mm-across", direction: "across", side: -1 })).toBeCloseTo(
      98.7,
      1,
    );
    expect(measured(plain, PRINTER, { id: "check-mm-up", direction: "up", side: -1 })).toBeCloseTo(100.6, 1);
    const proof = await sheet(io, "--paper", paper, "--corrected");
    for (const [length, bar] of CHECK_BARS) {
      expect(Math.abs(measured(proof, PRINTER, bar) - length), bar.id).toBeLessThan(TRUE_WITHIN);
    }
  });
});

describe.each(["a3", "tabloid"])("a pattern on %s, which lies", (paper) => {
  const overall = 363;
  const shop = (shortSide: number, longSide: number) =>
    readShopFile(
      `printer: [{ paper: ${paper}, shortSide: ${shortSide}, longSide: ${longSide} }]\n`,
      "shop.yaml",
    );

  async function drawn(shopFile: ReturnType<typeof shop> | undefined): Promise<string> {
    const choice = paperChoiceOf({ units: "mm", shopPlaces: shopFile }, paper, "smallest");
    const [drawing, ...more] = layOutSheet(patternContents(harvestKnife()), choice);
    if (drawing === undefined || more.length > 0) throw new Error("not one page");
    expect(drawing.width).toBeGreaterThan(drawing.height);
    return toSvg(drawing);
  }

  test("comes out at true size when corrected: all check bars and the knife", async () => {
    const svg = await drawn(shop(1.01317, 0.99404));
    for (const [length, bar] of CHECK_BARS) {
      expect(Math.abs(measured(svg, PRINTER, bar) - length), bar.id).toBeLessThan(TRUE_WITHIN);
    }
    expect(Math.abs(overallLength(svg, PRINTER) - overall)).toBeLessThan(TRUE_WITHIN);
    expect(svg).toContain("short side × 1.01317, long side × 0.99404.");
  });

  test("does not without, nor with the factors on the wrong sides", async () => {
    expect(overallLength(await drawn(undefined), PRINTER)).toBeCloseTo(overall * 1.006, 1);
    const swapped = await drawn(shop(0.99404, 1.01317));
    expect(Math.abs(overallLength(swapped, PRINTER) - overall)).toBeGreaterThan(5);
  });

  test("is measured truly by this very ruler: a true printer gives the true length", async () => {
    const svg = await drawn(undefined);
    expect(Math.abs(overallLength(svg, { shortSide: 1, longSide: 1 }) - overall)).toBeLessThan(0.002);
  });
});
