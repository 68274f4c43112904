import { deliverReport } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { measure } from "../measure.js";
import type { CommonOptions } from "../options.js";
import { jsonText, reportText } from "../report/documents.js";
import { headingLines } from "../report/heading.js";
import { weighJson } from "../report/weigh-json.js";
import { weighText } from "../report/weigh-text.js";

/** `scantling weigh FILE`: volume, mass with its interval, balance, and what the interval comes from. */
export async function weigh(io: Io, file: string, options: CommonOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const report = options.json
    ? { name: "weigh.json", content: jsonText(weighJson(measured)) }
    : { name: "weigh.txt", content: reportText([...headingLines(measured), "", ...weighText(measured)]) };
  await deliverReport(io, report, options);
  return EXIT.done;
}
