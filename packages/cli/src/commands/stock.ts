import { type CutOrder, cutOrders } from "../cut-orders.js";
import { deliverReport } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { type Measured, measure } from "../measure.js";
import type { CommonOptions } from "../options.js";
import { STDIN } from "../read-input.js";
import { cuttingJson } from "../report/cutting-json.js";
import { cuttingText } from "../report/cutting-text.js";
import { jsonText, reportText } from "../report/documents.js";
import { findingCounts } from "../report/findings.js";
import { headingLines } from "../report/heading.js";
import { wrap } from "../report/layout.js";
import { mixedStockText } from "../report/mixed-text.js";
import { stockJson } from "../report/stock-json.js";
import { stockText } from "../report/stock-text.js";
import { allFindings, planBars } from "../stock-report.js";

/**
 * `scantling stock FILE...`: of one order the steel ledger and ranked plans of bars to cut and weld; of several the
 * best plan of each, and one cut list over all of them.
 */
export async function stock(io: Io, files: readonly string[], options: CommonOptions): Promise<ExitCode> {
  const [file = "", ...others] = files;
  return others.length === 0 ? stockOfOne(io, file, options) : stockOfSeveral(io, files, options);
}

async function stockOfOne(io: Io, file: string, options: CommonOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const bars = planBars(measured);
  const lines =
    bars.mixed === undefined ? stockText(bars, measured.job) : mixedStockText(bars.mixed, measured.job);
  const report = options.json
    ? { name: "stock.json", content: jsonText(stockJson(bars, measured.job)) }
    : {
        name: "stock.txt",
        content: reportText([
          ...headingLines(measured),
          "",
          ...lines,
          ...findingCounts(allFindings(measured, bars)),
        ]),
      };
  await deliverReport(io, report, options);
  return EXIT.done;
}

async function stockOfSeveral(io: Io, files: readonly string[], options: CommonOptions): Promise<ExitCode> {
  const fromStdin = files.filter((file) => file === STDIN).length;
  if (fromStdin > 1 || options.shop === STDIN) {
    throw new CommandFailure(
      EXIT.usage,
      "one-standard-input",
      "only one of several orders can come from standard input, and the shop cannot",
      "Give the others as files.",
    );
  }
  const jobs: Measured[] = [];
  for (const file of files) jobs.push(measure(await loadJob(io, file, options)));
  refuseTwoShops(jobs);
  const { loadSolver } = await import("../integer-solver.js");
  const cuts = cutOrders(jobs, await loadSolver());
  const report = options.json
    ? { name: "cut-list.json", content: jsonText(cuttingJson(cuts)) }
    : { name: "cut-list.txt", content: reportText([...cuttingText(cuts), ...cuts.orders.flatMap(countsOf)]) };
  await deliverReport(io, report, options);
  return EXIT.done;
}

/** How many findings an order has. */
function countsOf({ code, measured, bars }: CutOrder): string[] {
  return findingCounts(allFindings(measured, bars)).flatMap((counts) =>
    wrap(`${code}: ${counts}`, undefined, "  "),
  );
}

/** Bars of two racks cannot be shared out. */
function refuseTwoShops(jobs: readonly Measured[]): void {
  const names = new Set(jobs.map(({ job }) => job.shopPlaces?.fileName ?? "no shop file"));
  if (names.size <= 1) return;
  throw new CommandFailure(
    EXIT.usage,
    "two-shops",
    `the orders are of different shops: ${[...names].join(", ")}`,
    "Name the shop whose bars are to be cut: --shop FILE.",
  );
}
