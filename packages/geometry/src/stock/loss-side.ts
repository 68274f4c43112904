import type { LossSpec, ScaleModel } from "./shop.js";

/** Which end of the losses' bands: the nominal length goes with `value`, the cautious one with `high`. */
export type LossSide = "low" | "value" | "high";

/** All losses at one side of their bands; the two scale models share names, for only one of them counts. */
export interface Losses {
  readonly scaleModel: ScaleModel;
  /** Per forging heat: a share, or mm of skin. */
  readonly forgingScale: number;
  /** Per welding heat: a share, or mm of skin. */
  readonly weldingScale: number;
  /** In heat treatment: a share, or mm of skin. */
  readonly heatTreatmentScale: number;
  /** mm off each end. */
  readonly crop: number;
  /** mm off each long side. */
  readonly dressing: number;
  /** mm off each face of a joint. */
  readonly cleaning: number;
}

/**
 * Picks the losses of one side.
 *
 * @example
 * lossesAt(DEFAULT_SHOP.losses, "value").forgingScale; // 0.012
 */
export function lossesAt(spec: LossSpec, side: LossSide): Losses {
  const skin = spec.scaleModel === "skin";
  return {
    scaleModel: spec.scaleModel,
    forgingScale: (skin ? spec.skinPerHeat : spec.scalePerHeat)[side],
    weldingScale: (skin ? spec.skinPerWeldingHeat : spec.scalePerWeldingHeat)[side],
    heatTreatmentScale: (skin ? spec.skinHeatTreatment : spec.heatTreatmentScale)[side],
    crop: spec.cropPerEnd[side],
    dressing: spec.weldDressingPerSide[side],
    cleaning: spec.cleaningPerFace[side],
  };
}
