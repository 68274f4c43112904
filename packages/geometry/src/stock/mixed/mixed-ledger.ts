import { LEDGER_ROWS, type LedgerBodies, type LedgerRow, type LedgerRowName } from "../blade-states.js";
import { bladeVolumes } from "../blade-volumes.js";
import { type MixedChain, traceMixed, type WeldStage } from "./mixed-chain.js";

/**
 * The steel ledger of a stack of two or more steels, the same 19 rows as that of any other. Rows between the dressed
 * billet and the bars are sums over all welds; `cropping` holds the saw's cuts of restacks too, `weld-dressing` the
 * pattern's grooves, `welding-scale` all that a weld of given yield loses. Masses by the knife's own density.
 *
 * @param mixed - Made by `makeMixedChain` from the same bodies.
 * @param cutLength - Length of the first stack's bars, mm.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const stack = { kind: "clad", core, cladding, width: 30 } as const;
 * const bodies = ledgerBodies(knife);
 * mixedLedger(bodies, makeMixedChain(bodies, DEFAULT_SHOP, knife.forging, stack, "value"), 200).at(-1)?.volume; // 51000
 */
export function mixedLedger(bodies: LedgerBodies, mixed: MixedChain, cutLength: number): LedgerRow[] {
  const { chain, stages } = mixed;
  const trace = traceMixed(mixed);
  const section = stages[0] === undefined ? 0 : stages[0].width * stages[0].height;
  const sum = (row: (stage: WeldStage) => number): number =>
    trace.stages.reduce((total, stage) => total + row(stage), 0);
  const volumes: Readonly<Record<LedgerRowName, number>> = {
    ...bladeVolumes(bodies, chain),
    "forging-scale": trace.dressed - chain.forged,
    "dressed-billet": trace.dressed,
    cropping: sum(({ cropping }) => cropping),
    "weld-dressing": sum(({ dressing }) => dressing) + trace.grooves,
    "welding-scale": sum(({ scale, byYield }) => scale + byYield),
    "bar-cleaning": sum(({ cleaning }) => cleaning),
    // Rounding up tolerates the last digits of a double, so the difference may be a hair below nothing.
    spare: Math.max(0, section * (cutLength - trace.length)),
    "bars-as-cut": section * cutLength,
  };
  return LEDGER_ROWS.map((row) => ({ row, volume: volumes[row], mass: volumes[row] * bodies.density }));
}
