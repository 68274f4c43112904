import { formatLength } from "@scantling/geometry/units";
import { writeOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Io } from "../io/io.js";
import { type Job, loadJob } from "../load.js";
import { measure } from "../measure.js";
import { STATE_WORDS } from "../models/pattern-model.js";
import { lengthOption, tileLength } from "../option-checks.js";
import type { PatternOptions } from "../options.js";
import { jsonText } from "../report/documents.js";
import { findingCounts } from "../report/findings.js";
import { patternJson, type WrittenPage } from "../report/pattern-json.js";
import { type DrawnSheets, drawSheets } from "../sheets/draw-sheets.js";
import { idleOptions } from "../sheets/option-uses.js";
import { drawingFiles } from "../sheets/write-drawings.js";
import { knifeFindings } from "../stock-report.js";

/** `scantling pattern FILE`: writes true-size drawings, and their paths on standard output. */
export async function pattern(io: Io, file: string, options: PatternOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const { job } = measured;
  const { state: states = ["finished"], sheet: sheets = ["pattern"] } = options;
  const sheetsDrawn = await drawSheets(measured, {
    sheets,
    states,
    cutOffset: offsetOf(job, options.offset),
    format: options.format,
    tiling: tilingOf(job, options),
    ...(options.paper === undefined ? {} : { paper: options.paper }),
    ...(options.at === undefined ? {} : { at: options.at }),
  });
  refuseNothing(sheetsDrawn, sheets.length);
  tellMissing(io, sheetsDrawn.missing);
  const outcome = {
    sheets: sheetsDrawn.drawn.map(({ sheet }) => sheet),
    format: options.format,
    joined: sheetsDrawn.drawn.some((sheet) => sheet.pages.some(({ joinedAs }) => joinedAs !== undefined)),
  };
  for (const words of idleOptions(options, outcome)) io.stderr.write(`${words}\n`);
  const pages = await writePages(io, job, sheetsDrawn, options);
  const shown = states.map((state) => STATE_WORDS[state]);
  io.stdout.write(
    options.json
      ? jsonText(patternJson(pages, shown, sheetsDrawn.missing))
      : [...new Set(pages.map((page) => `${page.file}\n`))].join(""),
  );
  io.stderr.write(
    options.format === "dxf"
      ? "A DXF file has no unit of its own: read it as mm, and measure the 100 mm line on layer CHECK.\n"
      : "Print at 100 %, then measure the check bars: 100 mm and 4 in, both ways.\n",
  );
  // A drawing shows no warning: what `check` would stop is said beside it.
  for (const counts of findingCounts(knifeFindings(measured))) io.stderr.write(`${counts}\n`);
  return EXIT.done;
}

/** Writes all pages, and says which file each of them is in. */
async function writePages(
  io: Io,
  job: Job,
  { drawn }: DrawnSheets,
  options: PatternOptions,
): Promise<WrittenPage[]> {
  const { name } = job;
  const named = drawn.map(({ suffix, pages }) => ({ name: `${name}.${suffix}`, pages }));
  const files = await drawingFiles(named, options.format, allSheets(job));
  const paths = await writeOutput(io, options.out ?? ".", files, options);
  return files.flatMap(({ format, pages }, index) =>
    pages.map((drawing) => ({
      drawing,
      format,
      file: paths[index] ?? "",
      sheet: drawn.find((sheet) => sheet.pages.includes(drawing))?.sheet ?? "",
    })),
  );
}

/** What a PDF with several sheets of a job is called. */
export function allSheets({ name, knife: { order } }: Job): { name: string; title: string } {
  const words = [order.code, order.title].filter((part) => part !== "").join(" ");
  return { name: `${name}.sheets`, title: `${words === "" ? "Knife" : words}: true-size sheets` };
}

/** A sheet that there is none of is no mistake among several; alone it is. */
function refuseNothing({ drawn, missing }: DrawnSheets, asked: number): void {
  if (drawn.length === 0) {
    const reasons = missing.map(({ sheet, reason }) => `there is no ${sheet} sheet: ${reason}`);
    throw new CommandFailure(
      EXIT.usage,
      "no-such-sheet",
      reasons.join("; "),
      asked === 1 ? "scantling pattern --help lists the sheets." : "Ask for another sheet.",
    );
  }
}

/** Which of several sheets there are none of, and why. */
export function tellMissing(io: Io, missing: DrawnSheets["missing"]): void {
  for (const { sheet, reason } of missing) io.stderr.write(`No ${sheet} sheet: ${reason}.\n`);
}

function tilingOf(job: Job, options: PatternOptions): { margin?: number; overlap?: number } {
  const margin = tileLength("margin", options.margin, job.knife.units);
  const overlap = tileLength("overlap", options.overlap, job.knife.units);
  return {
    ...(margin === undefined ? {} : { margin }),
    ...(overlap === undefined ? {} : { overlap }),
  };
}

/** Saw kerfs, scribes and pencils are narrower, mm; common practice, no source. */
const WIDEST_OFFSET = 6;

function offsetOf(job: Job, text: string | undefined): number {
  const offset = lengthOption("--offset", text, job.knife.units) ?? 0;
  if (Math.abs(offset) <= WIDEST_OFFSET) return offset;
  throw new CommandFailure(
    EXIT.usage,
    "offset-too-far",
    `--offset ${text} is ${formatLength(offset, job.knife.units)}: a saw or scribe line lies within ${formatLength(WIDEST_OFFSET, job.knife.units)} of the outline`,
    "Give a smaller one with its unit, for example: --offset 0.3mm",
  );
}
