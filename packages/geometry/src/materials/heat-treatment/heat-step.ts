import type { TextWithValues } from "../../errors/issue.js";
import type { DensityMark } from "../material.js";

/** What is done with a blade in the fire, in the order of the work. */
export const HEAT_STEPS = ["normalise", "anneal", "stress-relieve", "harden", "temper"] as const;

/** One of {@link HEAT_STEPS}. */
export type HeatStepName = (typeof HEAT_STEPS)[number];

/** Where a figure comes from, and how well it is known. */
export interface HeatSource {
  readonly source: string;
  readonly mark: DensityMark;
}

/**
 * One step as one source gives it; times in minutes, temperatures in °C: of a source that gives °F not rounded, so that its own
 * figure comes out again.
 */
export interface HeatStep extends HeatSource {
  readonly step: HeatStepName;
  readonly low: number;
  readonly high: number;
  /** Time at temperature, counted once the steel has come up to it. */
  readonly soak?: { readonly low: number; readonly high: number };
  /** How it is cooled: "still air", or words with temperatures in them; a plain string is shown as it stands. */
  readonly cooling?: string | TextWithValues;
  /** What comes of it, as the source says: "gives about 60 or 61 HRC". */
  readonly result?: string;
  /** How often. */
  readonly times?: number;
}

/** What a source says of a steel that is no step: one sentence. */
export interface HeatNote extends HeatSource {
  readonly text: string;
}

/** What a step is found in: all sources for it, side by side. */
export interface HeatRecipe {
  readonly steel: string;
  /** In the order of the work; several of one name where sources give their own. */
  readonly steps: readonly HeatStep[];
  /** What else to mind; left out where there is nothing. */
  readonly notes?: readonly HeatNote[];
}

/**
 * The °C of a figure that a source gives in °F, not rounded.
 *
 * @example
 * fromFahrenheit(212); // 100
 */
export const fromFahrenheit = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;
