import { deliverReport } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { gateReport } from "../gate-report.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { measure } from "../measure.js";
import type { GateOptions } from "../options.js";
import { jsonText, reportText } from "../report/documents.js";
import { gateJson } from "../report/gate-json.js";
import { gateText } from "../report/gate-text.js";
import { headingLines } from "../report/heading.js";

/**
 * `scantling gate FILE`: steel to spare or short at a stage, what can still be made of it, and what is left to take off
 * where a caliper was put on. Exit code 4 where the steel is short at the usual losses, or the mass is one that steel
 * cannot have; 0 with a warning where a mass that rose a little leaves it open, as an ask that is at risk.
 */
export async function gate(io: Io, file: string, options: GateOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const found = gateReport(measured, options, () => {
    io.stderr.write("Short: looking for the largest knives that can still be made.\n");
  });
  const report = options.json
    ? { name: "gate.json", content: jsonText(gateJson(found, measured.job)) }
    : {
        name: "gate.txt",
        content: reportText([...headingLines(measured), "", ...gateText(found, measured.job)]),
      };
  await deliverReport(io, report, options);
  return found.found === undefined || found.found.verdict === "short" ? EXIT.notMet : EXIT.done;
}
