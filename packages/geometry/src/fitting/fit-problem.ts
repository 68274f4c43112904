import type { KnifeSpec } from "../blade/spec.js";
import type { FitDimension } from "./dimension.js";
import type { FitFigure } from "./figures.js";

/** One thing that is asked of the fitted knife; mm, g, rad. */
export interface FitAsk {
  /** Unique among the asks of a problem. */
  readonly name: string;
  readonly figure: FitFigure;
  /** Least and greatest figure that meets it; one that is left out there is not. */
  readonly atLeast?: number;
  readonly atMost?: number;
  /** What a miss is counted in, so that a gram and a millimetre can be compared: more than 0. */
  readonly scale: number;
  /** Whether it is to hold even where others cannot be met then, as far as it can: what is met as drawn is not given up. */
  readonly holds?: boolean;
}

/** A knife, what may be changed on it, and what it has to be in the end. */
export interface FitProblem {
  readonly spec: KnifeSpec;
  readonly dimensions: readonly FitDimension[];
  readonly asks: readonly FitAsk[];
}

/** How long a search may go on. */
export interface SearchBounds {
  /** Knives that are measured at the most. */
  readonly mostKnives: number;
}

/** A dimension as it comes out. */
export interface FittedDimension {
  readonly dimension: FitDimension;
  /** One for each of its sizes; left out where it stays as drawn. */
  readonly sizes?: readonly number[];
}

/** A knife that can be set at the bench, and its figures as it was weighed. */
export interface FittedKnife {
  readonly spec: KnifeSpec;
  /** In the order of the problem. */
  readonly dimensions: readonly FittedDimension[];
  /** Of each ask, in the order of the problem. */
  readonly figures: readonly number[];
  /** Half the sum of squares of the changes, each in widths of its range. */
  readonly change: number;
  /** Greatest miss of an ask in its scale; 0 where all are met. */
  readonly miss: number;
  /** 0 where the coarsest steps were enough, 1 and 2 where finer ones were needed. */
  readonly fineness: number;
}

/** What one ask would have to be for all others to hold. */
export interface FitRelaxation {
  readonly ask: FitAsk;
  /** Which of its limits gives way. */
  readonly limit: "atLeast" | "atMost";
  /** The limit that can just be held, and how far that is from the one asked. */
  readonly to: number;
  readonly by: number;
  /** The knife that does; left out where it exists only between the steps of the bench. */
  readonly knife?: FittedKnife;
}

/** An ask that no change meets, even if nothing else is asked, and the figure that comes nearest to it. */
export interface FitOutOfReach {
  readonly ask: FitAsk;
  readonly nearest: number;
}

/** Why the asks cannot all be met by the changes that are allowed. */
export interface FitConflict {
  /** Asks that are out of reach each by itself. */
  readonly outOfReach: readonly FitOutOfReach[];
  /**
   * Asks that cannot hold together though each alone could be met, none of which can be left out of the quarrel; none where an
   * ask is out of reach by itself.
   */
  readonly asks: readonly FitAsk[];
  /** One at a time: relax this, and everything else can be met. An ask that helps nothing by itself is not among them. */
  readonly relaxations: readonly FitRelaxation[];
  /** Whether the search came to its end. If not, what is told is true, but there may be more to tell and a smaller quarrel. */
  readonly isWhole: boolean;
}

/** How much of the window of an ask can be reached while all asks hold. */
export interface FitReach {
  readonly ask: FitAsk;
  readonly low: number;
  readonly high: number;
}

/** The answer to a problem: a knife that meets it, or the one that comes nearest. */
export interface FitAnswer {
  readonly isMet: boolean;
  readonly knife: FittedKnife;
  /** The same between the steps of the bench. */
  readonly ideal: { readonly change: number; readonly miss: number };
  /** Where the asks are met: of each ask with two limits what of its window is within reach. */
  readonly reaches: readonly FitReach[];
  /** Where they are not: why. */
  readonly conflict?: FitConflict;
}
