import { answer } from "./answer.js";
import { DEMO_FILES } from "./demo.js";

const FILE = "harvest.knife.yaml";

interface Target {
  readonly stage: string;
  readonly neededG: number;
  readonly neededLowG: number;
  readonly neededHighG: number;
}
interface Similar {
  readonly change: string;
  readonly possible: boolean;
  readonly fromMm: number;
  readonly toMm: number;
  readonly byMm: number;
  readonly neededG: number;
  readonly asks: readonly { readonly ask: string; readonly verdict: string; readonly was: string }[];
}
/** The report of `gate` as JSON, as far as tests look at it. */
export interface Gate {
  readonly schema: string;
  readonly verdict: string;
  readonly netG: number;
  readonly tareG: number | null;
  readonly usedG: number | null;
  readonly spareG: number | null;
  readonly spareBandG: readonly [number, number] | null;
  readonly extraHeats: { readonly count: number; readonly perHeatG: number } | null;
  readonly targets: readonly Target[];
  readonly similar: readonly Similar[];
  readonly readings: readonly { readonly finishedMm: number; readonly leftPerFaceMm: number }[];
  readonly usedLeastG: number | null;
  readonly spareLeastG: number | null;
  readonly asWeighed: {
    readonly lightByG: number;
    readonly knifeMassG: number;
    readonly mass: { readonly verdict: string; readonly valueG: number } | null;
    readonly notTold: readonly { readonly ask: string }[];
  } | null;
  readonly findings: readonly {
    readonly code: string;
    readonly severity: string;
    readonly message: string;
  }[];
}

/** Weighs the demo. */
export const gate = (argv: readonly string[], files: Readonly<Record<string, string>> = DEMO_FILES) =>
  answer(["gate", FILE, ...argv], { files });

export async function gateJson(
  argv: readonly string[],
  files: Readonly<Record<string, string>> = DEMO_FILES,
): Promise<{ readonly code: number; readonly found: Gate }> {
  const { code, out } = await gate([...argv, "--json"], files);
  return { code, found: JSON.parse(out) as Gate };
}

export const codes = ({ findings }: Gate): string[] => findings.map(({ code }) => code);

/** What has to be on the scale at a stage. */
export const needOf = ({ targets }: Gate, stage: string): Target => {
  const target = targets.find((one) => one.stage === stage);
  if (target === undefined) throw new Error(`no ${stage}`);
  return target;
};
