import type { PieceState } from "@scantling/geometry";
import { deliverReport } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { type Measured, measure } from "../measure.js";
import type { WeighOptions } from "../options.js";
import { jsonText, reportText } from "../report/documents.js";
import { findingCounts } from "../report/findings.js";
import { headingLines } from "../report/heading.js";
import { weighJson } from "../report/weigh-json.js";
import { weighStateJson, weighStateText } from "../report/weigh-state.js";
import { weighText } from "../report/weigh-text.js";
import { stationsOf } from "../stations.js";
import { knifeFindings } from "../stock-report.js";
import { weighInState } from "../weigh-in-state.js";

/** `scantling weigh FILE`: mass with its interval, balance, what the interval comes from, and sections at stations. */
export async function weigh(io: Io, file: string, options: WeighOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  if (options.state !== undefined && options.state !== "finished") {
    return weighOneState(io, measured, options.state, options);
  }
  const stations = stationsOf(measured.knife, options.at, measured.job.knife.units);
  const report = options.json
    ? { name: "weigh.json", content: jsonText(weighJson(measured, stations)) }
    : {
        name: "weigh.txt",
        content: reportText([
          ...headingLines(measured),
          ...findingCounts(knifeFindings(measured)),
          "",
          ...weighText(measured, stations),
        ]),
      };
  await deliverReport(io, report, options);
  return EXIT.done;
}

/** The steel before the knife is finished: no handle, so no balance of the knife and no asks. */
async function weighOneState(
  io: Io,
  measured: Measured,
  state: PieceState,
  options: WeighOptions,
): Promise<ExitCode> {
  const stations = stationsOf(measured.knife, options.at, measured.job.knife.units);
  const weighed = weighInState(measured, state, stations);
  const report = options.json
    ? { name: `weigh-${state}.json`, content: jsonText(weighStateJson(weighed, measured)) }
    : {
        name: `weigh-${state}.txt`,
        content: reportText([...headingLines(measured), "", ...weighStateText(weighed, measured)]),
      };
  await deliverReport(io, report, options);
  return EXIT.done;
}
