import type { GivenLimits } from "../limits/finding-limits.js";
import type { GivenRanges } from "../limits/type-ranges.js";
import type { HeatRecipe } from "../materials/heat-treatment/heat-step.js";
import type { BenchTools } from "./bench-tools.js";
import type { ForgeLimits } from "./forge/forge-limits.js";
import type { MeasuredSweep } from "./forge/pre-curve.js";
import type { GateLimits } from "./gates/limits.js";
import type { MixedLimits } from "./mixed/mixed-limits.js";

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

/** The face of a die that touches the piece, mm. */
export interface DieFace {
  /** Along the bar: the bite. */
  readonly length: number;
  /** Across the bar. */
  readonly width: number;
}

/** What the press and the forge take, mm where nothing else is said; whatever is left out is not known. */
export interface PressSpec {
  /** Greatest opening between the dies, mm. */
  readonly opening?: number;
  /** Longest billet that fits the forge, mm. */
  readonly forgeLength?: number;
  /** Posts that hold the dies apart, of which one at a time is under the press. */
  readonly stopBlocks?: readonly number[];
  /** Shims to lay on a post, every one in hand listed: two of a size are listed twice. */
  readonly shims?: readonly number[];
  /**
   * How much thicker than its stop a piece is while it is hot, mm; below nothing where thinner. Learned from the cold size:
   * 19.95 mm of a piece pressed at 950 °C on a stop of 20 were 19.95 × 1.0128 = 20.2, so 0.2.
   */
  readonly stopOffset?: number;
  /** The most that one pass takes, as a share of the height before it. */
  readonly maxReduction?: number;
  /** Of the steel at the last squeeze, °C. */
  readonly temperature?: number;
  /** The same of a weld, °C. */
  readonly weldingTemperature?: number;
  /** The face of the die that touches the piece. */
  readonly die?: DieFace;
  /** What the press can push, kN. */
  readonly forceKn?: number;
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
  /**
   * Most of its height by which a piece that buckles is drawn narrower on edge; more is refused. A tenth goes at any
   * rate.
   */
  readonly mostNarrowing: number;
  /** Reach shares: easy up to, flat dies up to, fullers up to; above that refused. */
  readonly reach: { readonly easy: number; readonly flatDies: number; readonly fullers: number };
  /** Limits between billet and forged blade that differ from `FORGE_DEFAULTS`. */
  readonly forge?: Partial<ForgeLimits>;
  /** Limits of stacks of two or more steels that differ from `MIXED_LIMITS`. */
  readonly mixed?: Partial<MixedLimits>;
  /** Limits by which findings are told that differ from `FINDING_LIMITS`. */
  readonly findings?: GivenLimits;
  /** What types of knives usually measure, where the shop thinks otherwise than `KNIFE_TYPES`. */
  readonly types?: GivenRanges;
}

/** Inside of the hardening oven, mm, and the temperature that blades are hardened from, °C. */
export interface OvenSpec {
  readonly length?: number;
  readonly height?: number;
  readonly temperature?: number;
}

/** The quench tank. */
export interface QuenchTankSpec {
  /** Depth of the quenchant, mm. */
  readonly depth?: number;
  /** Quenchant in it, litres. */
  readonly litres?: number;
  /** Of the oil before the blade goes in, °C. */
  readonly temperature?: number;
}

/** The shop, as far as stock and bench are concerned; lengths mm, masses g. */
export interface ShopSpec extends BenchTools {
  readonly rack: readonly RackBar[];
  readonly losses: LossSpec;
  readonly press: PressSpec;
  readonly oven?: OvenSpec;
  readonly quenchTank?: QuenchTankSpec;
  /** Radii of the fullers for setting in a shoulder, mm. */
  readonly fullers?: readonly number[];
  /** Own recipes of heat treatment; they go before every other source. */
  readonly recipes?: readonly HeatRecipe[];
  /** How far the point of an earlier blade came up when its bevels were hammered in. */
  readonly preCurve?: MeasuredSweep;
  readonly limits: StockLimits;
  /** Limits at the weighing gates that differ from `GATE_LIMITS`. */
  readonly gates?: Partial<GateLimits>;
  /** Cutting step of the saw, mm: lengths are rounded up to it. */
  readonly cutStep: number;
  readonly kerf: number;
  /** A leftover shorter than this is scrap, mm; left out: the shortest billet that can be held, for no plan asks for less. */
  readonly minKeep?: number;
  readonly currency?: string;
}
