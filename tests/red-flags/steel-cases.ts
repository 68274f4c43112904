// R4: what the steel ledger needs is read off a weighing of next to nothing, and weighed just under and just over.
import type { FindingCode } from "@scantling/geometry";
import type { GateOptions } from "../../packages/cli/src/options.js";
import { atScale, find, type Node } from "./world.js";

export interface SteelCase {
  readonly code: FindingCode;
  readonly stage: GateOptions["stage"];
  /** The need that decides: at usual losses or at high ones. */
  readonly need: "usual" | "high";
  /** Losses with which more is needed. */
  readonly more: Node;
}

const HEAT: Node = { heatTreatmentScale: "3 ± 1 %" };

/** Usual losses stay under what were high ones, and high ones are higher. */
const WIDER: Node = { heatTreatmentScale: "0.9 ± 0.9 %" };

export const STEEL_CASES: readonly SteelCase[] = [
  { code: "steel-short", stage: "forged", need: "usual", more: HEAT },
  { code: "steel-only-just", stage: "forged", need: "high", more: WIDER },
];

/** Needs of a stage, g. */
export async function needsOf({
  stage,
}: Pick<SteelCase, "stage">): Promise<Record<"usual" | "high", number>> {
  const values = (await find(atScale(stage, 1), "steel-short"))?.values ?? {};
  const of = (name: string): number => {
    const held = values[name];
    return typeof held === "object" ? held.value : Number.NaN;
  };
  return { usual: of("usual"), high: of("high") };
}
