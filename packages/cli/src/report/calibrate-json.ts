import { type BarReading, type Drawing, type PaperSize, paperWord, sidesOf } from "@scantling/render";
import type { Calibration } from "../calibration.js";
import { SCALED, type StoreOutcome } from "./calibrate-text.js";

const SCHEMA = "scantling/calibrate/1";

const paperJson = (paper: PaperSize): unknown => {
  const { short, long } = sidesOf(paper);
  return { word: paperWord(paper), name: paper.name ?? null, shortSideMm: short, longSideMm: long };
};

/** Where the sheet is: `scantling/calibrate/1` with `sheet`, and no readings yet. */
export function calibrateSheetJson(
  sheet: { readonly file: string; readonly format: string; readonly drawing: Drawing },
  paper: PaperSize,
  bars: { readonly shortSide: number; readonly longSide: number },
): unknown {
  return {
    schema: SCHEMA,
    paper: paperJson(paper),
    sheet: {
      file: sheet.file,
      format: sheet.format,
      corrected: sheet.drawing.correction !== undefined,
      shortSideBarMm: bars.shortSide,
      longSideBarMm: bars.longSide,
    },
    readings: [],
    inOrder: null,
    correction: null,
    findings: [],
  };
}

/** What was measured and what became of it: `scantling/calibrate/1` with `readings`, and no sheet. */
export function calibrateJson(found: Calibration, outcome: StoreOutcome): unknown {
  const { short, long, line } = found;
  const reading = (side: string, { bar, measured, scale, inOrder }: BarReading): unknown => ({
    side,
    barMm: bar,
    measuredMm: measured,
    scale,
    inOrder,
  });
  return {
    schema: SCHEMA,
    paper: paperJson(found.paper),
    sheet: null,
    readings: [reading("short", short), reading("long", long)],
    inOrder: short.inOrder && long.inOrder,
    correction: {
      shortSide: line.shortSide,
      longSide: line.longSide,
      stored: outcome.kind === "stored",
      file: outcome.kind === "not-needed" ? null : outcome.file,
      lines: outcome.kind === "not-stored" ? outcome.lines : [],
    },
    findings: found.scaled ? [{ severity: "warn", code: "page-scaled", message: SCALED }] : [],
  };
}
