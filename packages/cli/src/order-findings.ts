import {
  type AskedLengths,
  askedLengthFindings,
  type Finding,
  type HardnessAnswer,
  hardnessAnswer,
  type Knife,
  typeFindings,
} from "@scantling/geometry";
import { askSlips } from "./ask-slips.js";
import { type AskLimits, limitsOf } from "./asks.js";
import type { AskName } from "./file/index.js";
import type { Job } from "./load.js";
import type { Measured } from "./measure.js";
import { SIZE_SLIPS } from "./size-slips.js";

/** What was asked of the hardness, held against the tempering tables of the steel at the edge; undefined where it was not. */
export function hardnessOf(job: Job, knife: Knife): HardnessAnswer | undefined {
  const { hardness } = job.knife.order;
  if (hardness === undefined) return undefined;
  const { atLeast, atMost } = limitsOf(hardness.test);
  return hardnessAnswer(knife, edgeSteel(job), { low: atLeast, high: atMost, path: "order.asks.hardness" });
}

/** The steel at the edge: of a blade with a core that of the core; of layers, the first of them. */
export function edgeSteel({ knife: { stack }, spec }: Job): string {
  if (stack === undefined) return spec.steel.name;
  return stack.kind === "clad" ? stack.core.steel.name : (stack.layers[0]?.steel.name ?? spec.steel.name);
}

/** What is to be said of the order as a whole: lengths that do not add up, sizes that are not usual, a hardness out of reach. */
export function orderFindings({ job, knife, weight, hardness, answers }: Measured): Finding[] {
  // What was asked for is held against the ask.
  const asked = new Set(job.knife.order.asks.map(({ name }) => name));
  const figures = {
    ...(asked.has("mass") ? {} : { mass: weight.knife.mass }),
    ...(asked.has("balance") ? {} : { balance: weight.knife.balanceFromHeel }),
  };
  return [
    ...askedLengthFindings(askedLengths(job), knife.outline.ricasso, knife.limits.lengthsApart),
    ...typeFindings(knife, figures, SIZE_SLIPS),
    ...askSlips(answers),
    ...softened(hardness, job),
  ];
}

/** A hardness that is only wished for stops nothing. */
function softened(hardness: HardnessAnswer | undefined, { knife }: Job): readonly Finding[] {
  const findings = hardness?.findings ?? [];
  if (knife.order.hardness?.should !== true) return findings;
  return findings.map((finding) =>
    finding.severity === "stop" ? { ...finding, severity: "warn" as const } : finding,
  );
}

function askedLengths({ knife }: Job): AskedLengths {
  const of = (name: AskName): { readonly low: number; readonly high: number } => {
    const ask = knife.order.asks.find((one) => one.name === name && !one.should);
    const { atLeast, atMost }: Pick<AskLimits, "atLeast" | "atMost"> =
      ask === undefined
        ? { atLeast: Number.NEGATIVE_INFINITY, atMost: Number.POSITIVE_INFINITY }
        : limitsOf(ask.test);
    return { low: Math.max(0, atLeast), high: atMost };
  };
  return { overall: of("overallLength"), edge: of("edgeLength"), handle: of("handleLength") };
}
