import { type Finding, ledgerBodies, planStock, type StockReport } from "@scantling/geometry";
import type { Job } from "./load.js";
import { inFileTerms, type Measured } from "./measure.js";

/** Plans the bars of the job's rack for the knife. */
export function planBars({ job, knife }: Measured): StockReport {
  return inFileTerms(job, () =>
    planStock(ledgerBodies(knife), job.shop, { ...knife.forging, steel: job.spec.steel.name }),
  );
}

/** What is to be said of the best plan, or of there being none. */
export function stockFindings(bars: StockReport, job: Job): readonly Finding[] {
  const [best] = bars.plans;
  if (best !== undefined) return best.findings;
  if (job.shop.rack.length === 0) {
    return [
      {
        code: "rack-empty",
        severity: "note",
        path: "",
        text: "No bars are known, so none can be planned. List those in the shop in shop.yaml beside the knife file: units: in, then rack: [{ size: 1/4 x 2 }].",
        basis: "the shop file",
      },
    ];
  }
  return [
    {
      code: "no-bars-fit",
      severity: "stop",
      path: "",
      text: "Nothing on the rack can become this blade. See the reasons in the stock report; add a bar that is taller or thicker, or make the blade lower.",
      basis: "the shop file",
    },
  ];
}
