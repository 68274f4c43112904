import {
  beforeFractionLoss,
  insideEnds,
  lossesAt,
  type PieceState,
  type StateSection,
  type StateWeight,
  stateSection,
  weighState,
} from "@scantling/geometry";
import { inFileTerms, type Measured } from "./measure.js";
import type { ReportStation } from "./stations.js";

/** The steel in one size state, with its sections. */
export interface WeighedState {
  readonly weight: StateWeight;
  /** Mass that the ledger has for this state at usual losses: with the scale that hardening is going to take, g. */
  readonly ledgerMass: number;
  readonly stations: readonly {
    readonly x: number;
    readonly asked: boolean;
    readonly section: StateSection;
  }[];
}

/** Weighs and cuts the knife in a size state before it is finished. */
export function weighInState(
  { job, knife }: Measured,
  state: PieceState,
  stations: readonly ReportStation[],
): WeighedState {
  return inFileTerms(job, () => {
    const weight = weighState(knife, state);
    const ready = state === "ready" ? weight : weighState(knife, "ready");
    const { scaleModel, heatTreatmentScale } = lossesAt(job.shop.losses, "value");
    const scale =
      scaleModel === "skin"
        ? heatTreatmentScale * ready.surface
        : beforeFractionLoss(ready.volume, heatTreatmentScale, 1) - ready.volume;
    return {
      weight,
      ledgerMass: weight.mass + (state === "finished" ? 0 : scale * knife.steelDensity),
      stations: stations.map(({ x, asked }) => ({
        x,
        asked,
        section: stateSection(knife, insideEnds(knife, x), state),
      })),
    };
  });
}
