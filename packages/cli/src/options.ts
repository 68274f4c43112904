import type { GateStage, PieceState } from "@scantling/geometry";

/** Options that every command takes. */
export interface CommonOptions {
  /** The report as JSON on standard output. */
  readonly json?: boolean;
  /** Folder to write into; left out: standard output, or for drawings the current folder. */
  readonly out?: string;
  /** Units of reports and sheets; left out: those of the knife file. JSON is always in mm and g. */
  readonly units?: "mm" | "in";
  /** The shop file; left out: found by walking up from the knife file. */
  readonly shop?: string;
  /** Overwrite. */
  readonly force?: boolean;
}

export interface WeighOptions extends CommonOptions {
  /** Size state that is weighed; left out: the finished knife. */
  readonly state?: PieceState;
  /** Places at which sections are told beside the usual ones, parted by commas. */
  readonly at?: string;
}

export interface SetupOptions extends CommonOptions {
  /** Which of the ranked plans, from 1; left out: the best. */
  readonly plan?: number;
}

/** Formats that a pattern is written in. */
export const PATTERN_FORMATS = ["svg"] as const;
export type PatternFormat = (typeof PATTERN_FORMATS)[number];

export interface PatternOptions extends CommonOptions {
  readonly format: PatternFormat;
  /** Size state that is drawn; left out: the finished knife. */
  readonly state?: PieceState;
}

export interface GateOptions extends CommonOptions {
  readonly stage: GateStage;
  /** What the scale shows. */
  readonly mass: string;
  /** The handling bar's own mass. */
  readonly tare?: string;
  /** Which of the ranked plans, from 1; left out: the best. */
  readonly plan?: number;
  /** Weighed earlier, each `STAGE=MASS`. */
  readonly before?: readonly string[];
  /** Caliper readings, each `PLACE=THICKNESS`. */
  readonly at?: readonly string[];
}
