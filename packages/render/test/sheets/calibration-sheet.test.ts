import type { Segment, Vec2 } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import {
  calibrationBars,
  calibrationSheet,
  checkLayout,
  correctedPaper,
  type Drawing,
  flattenItems,
  layOutSheet,
  type PaperSize,
  paperNamed,
  papersFor,
  patternContents,
} from "../../src/index.js";
import { harvestKnife } from "../fixtures.js";

const INCH = 25.4;

const wordsOf = (drawing: Drawing): string =>
  flattenItems(drawing.items)
    .flatMap((item) => (item.kind === "text" ? [item.text] : []))
    .join(" | ");

/** The two ends of a straight path of that name, on the page. */
function endsOf(drawing: Drawing, name: string): readonly [Vec2, Vec2] {
  const [segment] = flattenItems(drawing.items).flatMap((item): Segment[] =>
    item.kind === "path" && item.name === name ? item.paths.flatMap(({ segments }) => [...segments]) : [],
  );
  if (segment?.kind !== "line") throw new Error(`${name} is not a straight line`);
  return [segment.from, segment.to];
}

const lengthOf = (drawing: Drawing, name: string): number => {
  const [from, to] = endsOf(drawing, name);
  return Math.hypot(to.x - from.x, to.y - from.y);
};

const PAPERS: readonly (readonly [string, PaperSize])[] = [
  ...(["A4", "A3", "A2", "Letter", "Legal", "Tabloid"] as const).map(
    (name) => [name, paperNamed(name)] as const,
  ),
  ["300 × 600", { width: 300, height: 600 }],
  ["a square", { width: 300, height: 300 }],
  [
    "A4 corrected",
    correctedPaper(paperNamed("A4"), [{ paper: paperNamed("A4"), shortSide: 1.0022, longSide: 0.9988 }]),
  ],
  [
    "Letter far off",
    correctedPaper(paperNamed("Letter"), [{ paper: paperNamed("Letter"), shortSide: 1.1, longSide: 0.9 }]),
  ],
];

describe("the bars of the print check", () => {
  it("are whole tens of mm, or whole inches, as long as fits", () => {
    expect(calibrationBars(paperNamed("A4"), "mm")).toEqual({ shortSide: 180, longSide: 270 });
    const inches = calibrationBars(paperNamed("Letter"), "in");
    expect(inches.shortSide).toBeCloseTo(7 * INCH, 10);
    expect(inches.longSide).toBeCloseTo(10 * INCH, 10);
  });

  it("do not depend on how the paper lies", () => {
    expect(calibrationBars({ width: 210, height: 297 }, "mm")).toEqual(
      calibrationBars(paperNamed("A4"), "mm"),
    );
  });
});

describe.each(["mm", "in"] as const)("the print check in %s", (units) => {
  it.each(PAPERS)("stands on %s, can be read, and keeps 6 mm white", (_, paper) => {
    const drawing = calibrationSheet(paper, units);
    expect(drawing.height).toBeGreaterThanOrEqual(drawing.width);
    expect(checkLayout(drawing)).toEqual([]);
    const ink = boxOfItems(drawing.items);
    const { origin, width, height } = drawing;
    for (const white of [
      (ink?.minX ?? 0) + origin.x,
      (ink?.minY ?? 0) + origin.y,
      width - origin.x - (ink?.maxX ?? width),
      height - origin.y - (ink?.maxY ?? height),
    ]) {
      expect(white).toBeGreaterThanOrEqual(6.25 - 1e-9);
    }
  });

  it.each(PAPERS)("has its bars along the sides of %s, and diagonals of one length", (_, paper) => {
    const drawing = calibrationSheet(paper, units);
    const bars = calibrationBars(paper, units);
    const [corner, right] = endsOf(drawing, "bar-short");
    const [top, foot] = endsOf(drawing, "bar-long");
    expect(right.y).toBe(corner.y);
    expect(foot.x).toBe(top.x);
    expect(top).toEqual(corner);
    expect(lengthOf(drawing, "bar-short")).toBeCloseTo(bars.shortSide, 10);
    expect(lengthOf(drawing, "bar-long")).toBeCloseTo(bars.longSide, 10);
    const rising = lengthOf(drawing, "diagonal-rising");
    expect(lengthOf(drawing, "diagonal-falling")).toBeCloseTo(rising, 10);
    // Three, four, five: a whole number that can be checked with any rule.
    const whole = units === "mm" ? rising / 50 : (rising / INCH) * 2;
    expect(whole).toBeCloseTo(Math.round(whole), 10);
    for (const name of ["check-mm-across", "check-mm-up"])
      expect(lengthOf(drawing, name)).toBeCloseTo(100, 10);
  });
});

describe("the words of the print check", () => {
  it("say what to type, with the paper and the units of these very bars", () => {
    const words = wordsOf(calibrationSheet(paperNamed("A4"), "mm"));
    expect(words).toContain("PRINT AT 100 %");
    expect(words).toContain("180 mm bar measures");
    expect(words).toContain("scantling calibrate --paper a4 --units mm | --short 179.6mm --long 269.3mm");
    const inches = wordsOf(calibrationSheet(paperNamed("Letter"), "in"));
    expect(inches).toContain(
      "scantling calibrate --paper letter --units in | --short 6.986in --long 9.975in",
    );
  });

  it("say whether the sheet is corrected, and by what", () => {
    const a4 = paperNamed("A4");
    const plain = wordsOf(calibrationSheet(a4, "mm"));
    expect(plain).toContain("No correction on this sheet");
    const drawing = calibrationSheet(
      correctedPaper(a4, [{ paper: a4, shortSide: 1.0022, longSide: 0.9988 }]),
      "mm",
    );
    expect(wordsOf(drawing)).toContain(
      "Corrected for this printer on A4: | short side × 1.0022, long side × 0.9988.",
    );
    expect(wordsOf(drawing)).toContain("scantling calibrate --corrected --paper a4");
    expect(drawing.correction).toEqual({ across: 1.0022, up: 0.9988 });
  });

  it("are refused on paper that has no room for them", () => {
    expect(() => calibrationSheet({ width: 105, height: 148 }, "mm")).toThrow(
      /does not fit on paper of 105 × 148 mm/,
    );
  });
});

describe("a sheet for a printer that was measured", () => {
  const a3 = paperNamed("A3");
  const printer = [{ paper: a3, shortSide: 1.0131, longSide: 0.994 }];
  const papers = papersFor("mm").map((paper) => correctedPaper(paper, printer));
  const [drawing] = layOutSheet(patternContents(harvestKnife()), { kind: "smallest", papers });

  it("says so beside the words about printing, which stay as they are", () => {
    if (drawing === undefined) throw new Error("no page");
    expect(drawing.paper).toBe("A3");
    expect(checkLayout(drawing)).toEqual([]);
    const words = wordsOf(drawing);
    expect(words).toContain("Corrected for this printer on A3: | short side × 1.0131, long side × 0.994.");
    expect(words).toContain("If one is not 100 mm or 4 in, do not use this print.");
    expect(lengthOf(drawing, "check-mm-across")).toBe(100);
  });

  it("holds what will be measured: the paper divided by the factors", () => {
    expect(drawing?.width).toBeCloseTo(420 / 0.994, 10);
    expect(drawing?.height).toBeCloseTo(297 / 1.0131, 10);
    expect(drawing?.correction).toEqual({ across: 0.994, up: 1.0131 });
  });

  it("says nothing of a correction on paper that was not measured", () => {
    const [plain] = layOutSheet(patternContents(harvestKnife()), { kind: "paper", paper: paperNamed("A2") });
    expect(plain && wordsOf(plain)).not.toContain("Corrected");
    expect(plain).not.toHaveProperty("correction");
  });
});
