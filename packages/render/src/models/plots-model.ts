import type { Vec2 } from "@scantling/geometry";
import type { SheetUnits } from "../sheet-units.js";

/** A value over the distance from the heel: mm, and mm or mm². */
export type AlongBlade = readonly Vec2[];

/** The billet as a block of the same steel: it begins at the rear end of the forging; mm, mm². */
export interface PlotBillet {
  readonly from: number;
  readonly length: number;
  readonly area: number;
  /** What it is: "bar", "welded billet". */
  readonly words: string;
}

/** A row of the steel ledger; `total` where it is a state of the steel and not what a step takes. g. */
export interface PlotLedgerRow {
  readonly name: string;
  readonly mass: number;
  readonly total: boolean;
}

/** What the interval comes from, as a share of its square. */
export interface PlotCause {
  readonly name: string;
  readonly share: number;
}

/** A plan of the rack; g, and what share of the thinning has to go into height. */
export interface PlotPlan {
  /** "3 × 150 mm of 50 × 6 flat" */
  readonly words: string;
  readonly mass: number;
  readonly waste: number;
  readonly joints: number;
  readonly reach: number;
  readonly cost?: number;
}

/** Everything that the sheet of plots shows of a knife, in mm, g and shares. */
export interface PlotsModel {
  readonly code: string;
  readonly title: string;
  readonly steel: string;
  readonly units: SheetUnits;
  readonly densityFromMemory: boolean;
  /** Thickness along the blade, full, as a caliper reads it. */
  readonly thickness: {
    readonly spine: AlongBlade;
    /** So many mm above the finished edge. */
    readonly above: number;
    readonly aboveEdge: AlongBlade;
    readonly forgedSpine: AlongBlade;
    readonly forgedEdge: AlongBlade;
    /** Where a swedge begins and ends, mm from the heel: the spine steps down to what it leaves there, and up again. */
    readonly swedge?: { readonly from: number; readonly to: number };
    /** At the spine of the finished blade. */
    readonly stations: AlongBlade;
  };
  /** Steel in the sections, and what it comes to, mm³; the forging with all its allowances. */
  readonly area: {
    readonly finished: AlongBlade;
    readonly forged: AlongBlade;
    readonly finishedVolume: number;
    readonly forgedVolume: number;
    readonly billet?: PlotBillet;
  };
  /** From the finished blade to the bars as cut, the last row; nothing where no bars are known. */
  readonly ledger: readonly PlotLedgerRow[];
  /** The whole knife and where 95 in 100 of them lie, g; what was asked, infinite where there is no limit. */
  readonly mass: {
    readonly value: number;
    readonly interval: readonly [number, number];
    readonly causes: readonly PlotCause[];
    readonly asked?: readonly [number, number];
  };
  /** Best first; none where the rack gives none or the file describes its own stack. */
  readonly plans: readonly PlotPlan[];
  /** Why there is nothing to show of bars or of plans. */
  readonly noLedger?: string;
  readonly noPlans?: string;
  readonly currency?: string;
  readonly revision?: string;
}
