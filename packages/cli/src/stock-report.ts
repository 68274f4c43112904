import { type Finding, ledgerBodies, makeSteelChain, planStock, type StockReport } from "@scantling/geometry";
import type { Job } from "./load.js";
import { inFileTerms, type Measured } from "./measure.js";

/** The bars for a knife, and what they have to become. */
export interface Bars extends StockReport {
  /** Mass of the forged blade, handling bar not counted, at the usual losses, g. */
  readonly forgedMass: number;
}

/** Plans the bars of the job's rack for the knife. */
export function planBars({ job, knife }: Measured): Bars {
  return inFileTerms(job, () => {
    const { losses, limits } = job.shop;
    const bodies = ledgerBodies(knife);
    const { forged } = makeSteelChain(bodies, losses, limits, knife.forging, "value");
    const report = planStock(bodies, job.shop, { ...knife.forging, steel: job.spec.steel.name });
    return { ...report, forgedMass: forged * bodies.density };
  });
}

/** What is to be said of the best plan, or of there being none. */
export function stockFindings(bars: Bars, job: Job): readonly Finding[] {
  const [best] = bars.plans;
  if (best !== undefined) return best.findings;
  return [job.shop.rack.length === 0 ? RACK_EMPTY : noBarsFit(bars)];
}

const RACK_EMPTY: Finding = {
  code: "rack-empty",
  severity: "note",
  path: "",
  text: "No bars are known, so none can be planned. List those in the shop in shop.yaml beside the knife file: scantling: 1, units: in, rack: and a line such as - size: 1/4 x 2 for each.",
  basis: "the shop file",
};

/** Says why, by the reason that refused most stacks. */
function noBarsFit({ rejected, considered }: Bars): Finding {
  const [most] = [...rejected].sort((a, b) => b.count - a.count);
  const { value, limit } = most?.example ?? {};
  return {
    code: "no-bars-fit",
    severity: "stop",
    path: "",
    text: `Nothing on the rack can become this blade.${most === undefined ? "" : ` For {count} of {considered} stacks: ${most.text}`} Every reason: scantling stock FILE.`,
    values: {
      count: { quantity: "count", value: most?.count ?? 0 },
      considered: { quantity: "count", value: considered },
      ...(value === undefined ? {} : { value }),
      ...(limit === undefined ? {} : { limit }),
    },
    basis: "the shop file",
  };
}
