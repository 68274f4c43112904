import type { LedgerBodies, LedgerRowName } from "./blade-states.js";
import type { SteelChain } from "./steel-chain.js";

/** The ledger's rows from the finished blade to the forged one, mm³: the same whatever bars it is forged from. */
export const bladeVolumes = (
  bodies: LedgerBodies,
  { heatTreatmentScale, ready, forged }: Pick<SteelChain, "heatTreatmentScale" | "ready" | "forged">,
) =>
  ({
    "finished-blade": bodies.finished,
    sharpening: bodies.sharpening,
    "finish-grinding": bodies.finishGrinding,
    "heat-treatment-scale": heatTreatmentScale,
    "ready-to-harden": ready,
    drilling: bodies.drilling,
    "bevel-grinding": bodies.bevelGrinding,
    "tang-grinding": bodies.tangGrinding,
    "face-grinding": bodies.faceGrinding,
    "profile-trimming": bodies.profileTrimming,
    "forged-blade": forged,
  }) satisfies Partial<Record<LedgerRowName, number>>;
