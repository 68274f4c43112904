import { deliverReport } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { measure } from "../measure.js";
import type { WeighOptions } from "../options.js";
import { jsonText, reportText } from "../report/documents.js";
import { findingCounts } from "../report/findings.js";
import { headingLines } from "../report/heading.js";
import { weighJson } from "../report/weigh-json.js";
import { weighText } from "../report/weigh-text.js";
import { stationsOf } from "../stations.js";
import { wishFindings } from "../wishes.js";

/** `scantling weigh FILE`: mass with its interval, balance, what the interval comes from, and sections at stations. */
export async function weigh(io: Io, file: string, options: WeighOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const stations = stationsOf(measured.knife, options.at, measured.job.knife.units);
  const report = options.json
    ? { name: "weigh.json", content: jsonText(weighJson(measured, stations)) }
    : {
        name: "weigh.txt",
        content: reportText([
          ...headingLines(measured),
          ...findingCounts([...measured.findings, ...wishFindings(measured.answers)]),
          "",
          ...weighText(measured, stations),
        ]),
      };
  await deliverReport(io, report, options);
  return EXIT.done;
}
