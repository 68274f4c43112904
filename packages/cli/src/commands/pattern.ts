import { writeOutput } from "../deliver.js";
import { drawPattern } from "../draw-pattern.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { measure } from "../measure.js";
import type { PatternOptions } from "../options.js";
import { jsonText } from "../report/documents.js";
import { findingCounts } from "../report/findings.js";
import { patternJson } from "../report/pattern-json.js";
import { knifeFindings } from "../stock-report.js";

/** `scantling pattern FILE`: writes the true-size drawing, and its path on standard output. */
export async function pattern(io: Io, file: string, options: PatternOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const sheet = await drawPattern(measured, options.state);
  const [path = sheet.name] = await writeOutput(io, options.out ?? ".", [sheet], options);
  io.stdout.write(options.json ? jsonText(patternJson(sheet, path)) : `${path}\n`);
  io.stderr.write("Print at 100 %, then measure the check bars: 100 mm and 4 in, both ways.\n");
  // A drawing shows no warning: what `check` would stop is said beside it.
  for (const counts of findingCounts(knifeFindings(measured))) io.stderr.write(`${counts}\n`);
  return EXIT.done;
}
