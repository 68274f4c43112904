import { setupSheet } from "../card/setup-sheet.js";
import { deliverReport } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { setupOf } from "../forge-setup.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { measure } from "../measure.js";
import type { SetupOptions } from "../options.js";
import { jsonText, reportText } from "../report/documents.js";
import { setupJson } from "../report/setup-json.js";
import { planBars } from "../stock-report.js";

/** `scantling setup FILE`: the numbers for forge, bench and oven, in the order in which they are used. */
export async function setup(io: Io, file: string, options: SetupOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const bars = planBars(measured);
  const found = setupOf(measured, bars, options.plan);
  const report = options.json
    ? { name: "setup.json", content: jsonText(setupJson(found, measured.job)) }
    : {
        name: "setup.txt",
        content: reportText(setupSheet(measured, found, bars)),
      };
  await deliverReport(io, report, options);
  return EXIT.done;
}
