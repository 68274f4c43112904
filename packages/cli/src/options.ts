import type { FamilyName, GateStage, PieceState, TangSpec } from "@scantling/geometry";
import type { SheetName } from "./sheets/sheet-names.js";
import type { DrawingFormat } from "./sheets/write-drawings.js";

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

export interface PatternOptions extends CommonOptions {
  readonly format: DrawingFormat;
  /** Left out: the pattern alone. */
  readonly sheet?: readonly SheetName[];
  /** Size states that are drawn in one another; left out: the finished knife. */
  readonly state?: readonly PieceState[];
  /** `a4`, `300x600`, `fit`; left out: the smallest that holds the sheet, for PDF the shop's own. */
  readonly paper?: string;
  /** Distance of a line to saw or scribe along from the outline. */
  readonly offset?: string;
  /** White left along the edges of tiled pages, and how much they overlap. */
  readonly margin?: string;
  readonly overlap?: string;
  /** Places of further sections, parted by commas. */
  readonly at?: string;
}

/** Formats of the bench card. */
export const CARD_FORMATS = ["pdf", "svg"] as const;

export interface JobsheetOptions extends CommonOptions {
  readonly format: (typeof CARD_FORMATS)[number];
  /** Left out: the shop's own, else A4 or Letter. */
  readonly paper?: string;
  /** Which of the ranked plans, from 1; left out: the best. */
  readonly plan?: number;
}

export interface QuoteOptions extends CommonOptions {
  /** When work begins; left out: as the knife file says, else today. */
  readonly from?: string;
  /** Of the customer's PDF; left out: the shop's own, else A4 or Letter. */
  readonly paper?: string;
  /** Which of the ranked plans, from 1; left out: the best. */
  readonly plan?: number;
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

/** What may be entered; nothing of it: what is in the record is listed. All as it was typed. */
export interface RecordOptions extends CommonOptions {
  readonly stage?: GateStage;
  readonly mass?: string;
  readonly tare?: string;
  readonly heats?: string;
  readonly weldingHeats?: string;
  /** Each `PLACE=THICKNESS` or `PLACE=THICKNESS x HEIGHT`. */
  readonly size?: readonly string[];
  /** `HEIGHT x THICKNESS = HEIGHT x THICKNESS`, before and after. */
  readonly drawn?: string;
  readonly drawnWith?: string;
  readonly task?: string;
  readonly hours?: string;
  readonly hardness?: string;
  /** `SKATES/CUTS` */
  readonly files?: string;
  readonly after?: string;
  readonly batch?: string;
  readonly note?: string;
  /** A day; left out: today. */
  readonly on?: string;
  /** The revision that is corrected. */
  readonly corrects?: string;
  /** Which plan of stock is kept with the first entry, from 1; left out: the best. */
  readonly plan?: number;
  /** What is doubted was measured again, and stands. */
  readonly sure?: boolean;
}

export interface ReorderOptions extends CommonOptions {
  /** Which of the ranked plans, from 1; left out: the best. */
  readonly plan?: number;
}

export interface LearnOptions extends CommonOptions {
  /** Change the shop file. */
  readonly write?: boolean;
}

/** Formats of the print-check sheet. */
export const CALIBRATE_FORMATS = ["svg", "pdf"] as const;

export interface CalibrateOptions extends CommonOptions {
  readonly format: (typeof CALIBRATE_FORMATS)[number];
  /** Left out: the shop's own, else A4 or Letter. */
  readonly paper?: string;
  /** What the bars of the sheet measure, along the short side of the paper and along the long one. */
  readonly short?: string;
  readonly long?: string;
  /** The sheet is printed, or was, with the correction that is stored. */
  readonly corrected?: boolean;
}

export interface FitOptions extends CommonOptions {
  /** What is asked, each a figure, `<480g`, `>450g` or `450..480g`. */
  readonly mass?: string;
  readonly balance?: string;
  readonly bevelAngle?: string;
  readonly behindEdge?: string;
  readonly steel?: string;
  /** Where bevel angle and thickness behind the edge are asked for. */
  readonly at?: string;
  /** How far above the edge the thickness behind it is asked for. */
  readonly above?: string;
  /** What may be changed, each `NAME` or `NAME=LOW..HIGH`; `help` lists the names. */
  readonly change?: readonly string[];
  /** Whether the whole band has to lie inside what is asked. */
  readonly sure?: boolean;
}

/** Shells that can be taught to complete. */
export const SHELLS = ["bash", "zsh", "fish"] as const;

export type Shell = (typeof SHELLS)[number];

export type CompletionOptions = Pick<CommonOptions, "json" | "out" | "force">;

export interface NewOptions extends CommonOptions {
  /** Left out: asked for on a terminal. */
  readonly family?: FamilyName;
  /** Left out: the family's own. */
  readonly tang?: TangSpec["form"];
  /** A knife file to begin with. */
  readonly from?: string;
  /** A shop instead of a knife. */
  readonly shopFile?: boolean;
  readonly code?: string;
  readonly title?: string;
}
