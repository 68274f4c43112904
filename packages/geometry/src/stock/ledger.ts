import { LEDGER_ROWS, type LedgerBodies, type LedgerRow, type LedgerRowName } from "./blade-states.js";
import { bladeVolumes } from "./blade-volumes.js";
import { type SteelChain, traceStack } from "./steel-chain.js";

/** The rows that are bodies; every other row is what the next body back has more. */
export const LEDGER_TOTALS: readonly LedgerRowName[] = [
  "finished-blade",
  "ready-to-harden",
  "forged-blade",
  "dressed-billet",
  "bars-as-cut",
];

/** A stack as it is cut: `bars` flats of one section and length, mm. */
export interface CutStack {
  readonly bars: number;
  readonly width: number;
  readonly thickness: number;
  readonly cutLength: number;
}

/**
 * The steel ledger of one stack at one side of the losses' bands, finished blade first: every row with volume (mm³)
 * and mass (g), rows that are switched off as 0. `spare` is what the bars hold beyond the shortest length that feeds
 * the ledger at these losses: what rounding up leaves over and, at nominal losses, what is kept for the high side.
 *
 * @param chain - Made by `makeSteelChain` from the same bodies.
 * @returns The 19 rows in the order of `LEDGER_ROWS`. The finished blade and all added rows sum to the bars as cut.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const chain = makeSteelChain(ledgerBodies(knife), losses, limits, knife.forging, "value");
 * const stack = { bars: 1, width: 40, thickness: 6, cutLength: 160 };
 * makeLedger(ledgerBodies(knife), chain, stack).at(-1)?.volume; // 38400
 */
export function makeLedger(bodies: LedgerBodies, chain: SteelChain, stack: CutStack): LedgerRow[] {
  const trace = traceStack(chain, stack.bars, stack.width, stack.thickness);
  const section = stack.bars * stack.width * stack.thickness;
  // Rounding up tolerates the last digits of a double, so the difference may be a hair below nothing.
  const spare = Math.max(0, section * (stack.cutLength - trace.length));
  const volumes: Readonly<Record<LedgerRowName, number>> = {
    ...bladeVolumes(bodies, chain),
    "forging-scale": trace.dressed - chain.forged,
    "dressed-billet": trace.dressed,
    cropping: trace.crop,
    "weld-dressing": trace.dressing,
    "welding-scale": trace.cleaned - trace.welded,
    "bar-cleaning": trace.cleaning,
    spare,
    "bars-as-cut": section * stack.cutLength,
  };
  return LEDGER_ROWS.map((row) => ({ row, volume: volumes[row], mass: volumes[row] * bodies.density }));
}

/**
 * Volume or mass of one row of a ledger.
 *
 * @example
 * ledgerRow([], "drilling"); // { row: "drilling", volume: 0, mass: 0 }
 */
export function ledgerRow(ledger: readonly LedgerRow[], name: LedgerRowName): LedgerRow {
  return ledger.find(({ row }) => row === name) ?? { row: name, volume: 0, mass: 0 };
}

/**
 * Rounds a length up to the saw's cutting step. A length that exceeds a step by no more than the last digits of a
 * double counts as that step.
 *
 * @example
 * roundUpToStep(146.2, 5); // 150
 */
export function roundUpToStep(length: number, step: number): number {
  return Math.ceil((length / step) * (1 - 1e-12)) * step;
}
