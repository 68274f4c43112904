/** A value with its band: the loss is taken at `value` for the nominal length and at `high` for the cautious one. */
export interface Banded {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** A flat bar on the rack, mm. */
export interface RackBar {
  readonly name: string;
  readonly width: number;
  readonly thickness: number;
  /** Length in hand; left out: as long as needed. */
  readonly length?: number;
  /** How many of that length; left out: one when a length is given. */
  readonly count?: number;
  readonly steel?: string;
  /** Money per kilogram, in the shop's currency. */
  readonly pricePerKg?: number;
}

/**
 * How fire scale is counted. `fraction`: a share of the mass each heat. `skin`: mm lost from every surface each heat.
 */
export type ScaleModel = "fraction" | "skin";

/** Losses of a shop, each with its band. */
export interface LossSpec {
  readonly scaleModel: ScaleModel;
  /** Share of mass lost per forging heat (fraction model). */
  readonly scalePerHeat: Banded;
  /** Share of mass lost per welding heat (fraction model). */
  readonly scalePerWeldingHeat: Banded;
  /** Depth lost per forging heat from every surface, mm (skin model). */
  readonly skinPerHeat: Banded;
  /** Depth lost per welding heat, mm (skin model). */
  readonly skinPerWeldingHeat: Banded;
  /** Share of mass lost in heat treatment (fraction model); skin model: `skinHeatTreatment` mm. */
  readonly heatTreatmentScale: Banded;
  readonly skinHeatTreatment: Banded;
  /** Length cropped off each end of the dressed billet, mm. */
  readonly cropPerEnd: Banded;
  /** Weld bead and seam ground off each long side of a stack, mm. */
  readonly weldDressingPerSide: Banded;
  /** Depth cleaned off both faces of every joint, mm. */
  readonly cleaningPerFace: Banded;
}

/** What the press and the forge take, mm. */
export interface PressSpec {
  /** Greatest opening between the dies, mm. */
  readonly opening?: number;
  /** Longest billet that fits the forge, mm. */
  readonly forgeLength?: number;
}

/** Limits of what is tried. */
export interface StockLimits {
  /** Greatest number of bars in a stack. */
  readonly maxBars: number;
  /** Least share of its height that a stack must lose at welding heat. */
  readonly minWeldReduction: number;
  /** Share of the thinning at welding that goes into width. */
  readonly weldSpreadShare: number;
  /** Shortest billet that can be held and worked, mm. */
  readonly minBilletLength: number;
  /** Upsetting limit: length over thickness or width over thickness at which a piece on edge buckles. */
  readonly maxSlenderness: number;
  /** Reach shares: easy up to, flat dies up to, fullers up to; above that refused. */
  readonly reach: { readonly easy: number; readonly flatDies: number; readonly fullers: number };
}

/** The shop, as far as stock is concerned; lengths mm, masses g. */
export interface ShopSpec {
  readonly rack: readonly RackBar[];
  readonly losses: LossSpec;
  readonly press: PressSpec;
  readonly limits: StockLimits;
  /** Cutting step of the saw, mm: lengths are rounded up to it. */
  readonly cutStep: number;
  readonly kerf: number;
  readonly currency?: string;
}
