import { GeometryError } from "@scantling/geometry";
import { calibrationBars, calibrationSheet, type Drawing, type PaperSize } from "@scantling/render";
import { type Calibration, isInOrder, readCalibration, sheetPaper } from "../calibration.js";
import { deliverDone, writeOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Io } from "../io/io.js";
import type { CalibrateOptions } from "../options.js";
import { type PaperSource, plainPaper } from "../paper-choice.js";
import { calibrateJson, calibrateSheetJson } from "../report/calibrate-json.js";
import { calibrateText } from "../report/calibrate-text.js";
import { jsonText, reportText } from "../report/documents.js";
import { failureText } from "../report/failure-report.js";
import { drawingFiles } from "../sheets/write-drawings.js";
import { findPrinterShop, type PrinterShop, storeCorrection } from "../store-correction.js";

/**
 * `scantling calibrate`: writes the sheet that a printer is checked with; with two lengths measured on it, stores what
 * sets the printer right. Exit code 5 where it would have to change a shop file without `--force`.
 */
export async function calibrate(io: Io, options: CalibrateOptions): Promise<ExitCode> {
  const shop = await findPrinterShop(io, options);
  const source: PaperSource = {
    units: options.units ?? shop.file?.units ?? "mm",
    shopPlaces: shop.file,
  };
  const paper = plainPaper(source, options.paper);
  const found = readCalibration(options, source, paper);
  if (found === undefined) return drawSheet(io, options, source, paper);
  return store(io, options, found, shop);
}

async function drawSheet(
  io: Io,
  options: CalibrateOptions,
  source: PaperSource,
  paper: PaperSize,
): Promise<ExitCode> {
  const printed = sheetPaper(options, source, paper);
  const drawing = drawn(printed, source, options.shop);
  const name = `calibrate${options.corrected ? "-corrected" : ""}`;
  const files = await drawingFiles([{ name, pages: [drawing] }], options.format, {
    name,
    title: drawing.title,
  });
  const [path = name] = await writeOutput(io, options.out ?? ".", files, options);
  const bars = calibrationBars(printed, source.units);
  io.stdout.write(
    options.json
      ? jsonText(calibrateSheetJson({ file: path, format: options.format, drawing }, paper, bars))
      : `${path}\n`,
  );
  io.stderr.write("Print at 100 %, measure the two long bars, then type what the sheet says.\n");
  return EXIT.done;
}

function drawn(paper: PaperSize, { units }: PaperSource, shop: string | undefined): Drawing {
  try {
    return calibrationSheet(paper, units, shop);
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error;
    throw new CommandFailure(EXIT.usage, error.code, error.message, "Give a larger paper with --paper.");
  }
}

async function store(
  io: Io,
  options: CalibrateOptions,
  found: Calibration,
  shop: PrinterShop,
): Promise<ExitCode> {
  const { outcome, refusal } = isInOrder(found)
    ? { outcome: { kind: "not-needed" } as const, refusal: undefined }
    : await storeCorrection(io, options, found, shop);
  const content = options.json
    ? jsonText(calibrateJson(found, outcome))
    : reportText(calibrateText(found, outcome));
  if (outcome.kind === "stored") {
    const done = { is: `the correction IS stored in ${outcome.file}`, todo: "Do not store it again." };
    // Its folder is where a new shop file goes; the report has no copy.
    const { out: _out, ...rest } = options;
    return deliverDone(io, done, () => ({ name: "calibrate", content }), rest);
  }
  io.stdout.write(content);
  if (refusal === undefined) return EXIT.done;
  io.stderr.write(failureText(refusal));
  return refusal.exitCode;
}
