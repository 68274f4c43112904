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
  /** Places at which sections are told beside the usual ones, parted by commas. */
  readonly at?: string;
}

/** Formats that a pattern is written in. */
export const PATTERN_FORMATS = ["svg"] as const;
export type PatternFormat = (typeof PATTERN_FORMATS)[number];

export interface PatternOptions extends CommonOptions {
  readonly format: PatternFormat;
}
