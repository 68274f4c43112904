import { describe, expect, it } from "vitest";
import {
  bothWays,
  correctedPaper,
  fileSize,
  looksScaled,
  type PaperCorrection,
  type PaperSize,
  paperNamed,
  paperWord,
  readBar,
  seriesOf,
  standardPaper,
} from "../../src/index.js";

const A4 = paperNamed("A4");
const STANDING: PaperSize = { name: "A4", width: 210, height: 297 };
const PRINTER: readonly PaperCorrection[] = [{ paper: A4, shortSide: 1.02, longSide: 0.98 }];

describe("correctedPaper", () => {
  it("puts the factors on the sides of the paper, lying and standing", () => {
    const lying = correctedPaper(A4, PRINTER);
    const standing = correctedPaper(STANDING, PRINTER);
    expect(lying).toMatchObject({ name: "A4", correction: { across: 0.98, up: 1.02 } });
    expect(standing).toMatchObject({ name: "A4", correction: { across: 1.02, up: 0.98 } });
    for (const turned of bothWays(lying)) {
      expect([lying, standing].some((paper) => paper.width === turned.width)).toBe(true);
    }
    expect(bothWays(standing)).toEqual([lying, standing]);
  });

  it("leaves the file's page the paper's own size", () => {
    const { width, height } = fileSize(correctedPaper(A4, PRINTER));
    expect(width).toBeCloseTo(297, 10);
    expect(height).toBeCloseTo(210, 10);
  });

  it("knows the paper by its size within half a millimetre, and no other", () => {
    expect(correctedPaper({ width: 210.4, height: 296.6 }, PRINTER)).toHaveProperty("correction");
    for (const paper of [paperNamed("A3"), paperNamed("Letter"), { width: 210.6, height: 297 }]) {
      expect(correctedPaper(paper, PRINTER)).toBe(paper);
    }
  });

  it("does not turn a square: which way it lies in the printer cannot be told", () => {
    const square = { width: 300, height: 300 };
    const corrected = correctedPaper(square, [{ paper: square, shortSide: 1.02, longSide: 0.98 }]);
    expect(corrected.correction).toEqual({ across: 1.02, up: 0.98 });
    expect(bothWays(corrected)).toEqual([corrected]);
  });
});

describe("readBar", () => {
  it("gives nominal over measured", () => {
    expect(readBar(180, 179.6)).toEqual({
      bar: 180,
      measured: 179.6,
      scale: 179.6 / 180,
      factor: 1.00223,
      inOrder: false,
    });
  });

  it.each([
    [99.79, false],
    [99.8, true],
    [100, true],
    [100.2, true],
    [100.21, false],
  ])("takes 99.8 to 100.2 %% as in order: %d %%", (measured, inOrder) => {
    expect(readBar(100, measured).inOrder).toBe(inOrder);
  });

  it.each([
    [96.9, true],
    [97.1, false],
    [102.9, false],
    [103.1, true],
  ])("suspects the print dialog beyond 3 %%: %d %%", (measured, scaled) => {
    expect(looksScaled(readBar(100, measured))).toBe(scaled);
  });
});

describe("papers", () => {
  it("are found by their size, lying or standing", () => {
    expect(standardPaper({ width: 210, height: 297 })?.name).toBe("A4");
    expect(standardPaper({ width: 215.9, height: 355.6 })?.name).toBe("Legal");
    expect(standardPaper({ width: 300, height: 600 })).toBeUndefined();
  });

  it("are written as they are read: by a word, or by their sides", () => {
    expect(paperWord(paperNamed("ANSI C"))).toBe("ansi-c");
    expect(paperWord({ width: 600, height: 300 })).toBe("300x600mm");
    expect(
      paperWord(
        correctedPaper({ width: 600, height: 300 }, [
          { paper: { width: 300, height: 600 }, shortSide: 1.01, longSide: 0.97 },
        ]),
      ),
    ).toBe("300x600mm");
  });

  it("belong to the series of their unit", () => {
    expect([seriesOf("A3"), seriesOf("Legal"), seriesOf("ANSI D")]).toEqual(["mm", "in", "in"]);
  });
});
