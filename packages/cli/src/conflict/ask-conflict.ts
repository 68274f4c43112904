import type { FitDimension } from "@scantling/geometry";
import type { FigureKind } from "../report/asks-text.js";

/** An ask of the order, as conflicts name it. */
export interface ConflictAsk {
  /** Its key below `order.asks`: `mass`, `thickness[1]`. */
  readonly key: string;
  readonly words: string;
  readonly kind: FigureKind | "hardness";
}

/** One ask that gives way by itself: its limit as asked and the one with which all others can hold; mm, g, rad, HRC. */
export interface AskRelaxation {
  readonly ask: ConflictAsk;
  readonly limit: "atLeast" | "atMost";
  readonly from: number;
  readonly to: number;
}

/**
 * Why asks cannot hold together.
 *
 * - `same-figure`, `lengths`: whatever the knife, by what the figures are
 * - `bevel`: by its angle, with the edge and the taper of the flats as drawn
 * - `hardness`: the steel does not come to it
 * - `changes`: no change that is usual leads to a knife that meets them
 */
export type ConflictKind = "same-figure" | "lengths" | "bevel" | "hardness" | "changes";

/** Asks that cannot all hold, none of which can be left out; any one of the relaxations settles it. */
export interface AskConflict {
  readonly kind: ConflictKind;
  readonly asks: readonly ConflictAsk[];
  readonly relaxations: readonly AskRelaxation[];
}

/** An ask that no usual change reaches even if nothing else is asked, and what comes nearest. */
export interface AskOutOfReach {
  readonly ask: ConflictAsk;
  readonly nearest: number;
}

/** What an order asks that cannot be had together. */
export interface OrderConflicts {
  readonly conflicts: readonly AskConflict[];
  readonly outOfReach: readonly AskOutOfReach[];
  /** `none`: nothing had to be looked for; `whole`: all was looked at; `stopped`: only a part of it. */
  readonly search: "none" | "whole" | "stopped";
  /** What was changed in the search. */
  readonly changed: readonly FitDimension[];
}
