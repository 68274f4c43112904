import { deliverReport } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { measure } from "../measure.js";
import type { CommonOptions } from "../options.js";
import { jsonText, reportText } from "../report/documents.js";
import { headingLines } from "../report/heading.js";
import { stockJson } from "../report/stock-json.js";
import { stockText } from "../report/stock-text.js";
import { planBars } from "../stock-report.js";

/** `scantling stock FILE`: the steel ledger and ranked plans of bars to cut and weld. */
export async function stock(io: Io, file: string, options: CommonOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const bars = planBars(measured);
  const report = options.json
    ? { name: "stock.json", content: jsonText(stockJson(bars, measured.job)) }
    : {
        name: "stock.txt",
        content: reportText([...headingLines(measured), "", ...stockText(bars, measured.job)]),
      };
  await deliverReport(io, report, options);
  return EXIT.done;
}
