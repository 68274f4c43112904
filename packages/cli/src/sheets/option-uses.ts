import type { PatternOptions } from "../options.js";
import type { SheetName } from "./sheet-names.js";
import type { DrawingFormat } from "./write-drawings.js";

/** An option of `pattern` that counts for some drawings only. */
interface OptionUse {
  readonly option: Exclude<keyof PatternOptions, "sheet" | "format">;
  /** Left out: all sheets. */
  readonly sheets?: readonly SheetName[];
  /** Left out: all formats. */
  readonly formats?: readonly DrawingFormat[];
  /** Only where a sheet is larger than its paper, so that pages are joined. */
  readonly joined?: true;
}

/** Where each option counts that does not always; the same table is in `docs/sheets.md`. */
export const OPTION_USES: readonly OptionUse[] = [
  { option: "state", sheets: ["pattern", "mirrored"] },
  { option: "offset", sheets: ["pattern", "mirrored"] },
  { option: "at", sheets: ["sections"] },
  { option: "paper", formats: ["svg", "pdf"] },
  { option: "overlap", formats: ["svg", "pdf"], joined: true },
  { option: "margin", formats: ["svg", "pdf"], joined: true },
];

/** What came out. */
export interface Outcome {
  readonly sheets: readonly SheetName[];
  readonly format: DrawingFormat;
  /** Whether pages of any sheet are to be joined. */
  readonly joined: boolean;
}

/**
 * What was asked for and means nothing to what was drawn, each in a sentence.
 *
 * @example
 * idleOptions({ format: "svg", at: "60 %" }, { sheets: ["pattern"], format: "svg", joined: false });
 * // ["--at changed nothing: it is for the sheet sections. Add --sheet sections."]
 */
export function idleOptions(options: PatternOptions, { sheets, format, joined }: Outcome): string[] {
  return OPTION_USES.filter(({ option }) => options[option] !== undefined).flatMap((use) => {
    const says = (why: string): string[] => [`--${use.option} changed nothing: it is for ${why}`];
    if (use.formats?.includes(format) === false) {
      const names = use.formats.map((each) => each.toUpperCase()).join(" and ");
      return says(`${names}; a DXF is drawn on a page of its own size.`);
    }
    if (use.sheets?.some((sheet) => sheets.includes(sheet)) === false) {
      const [first] = use.sheets;
      const kind = use.sheets.length === 1 ? "the sheet" : "the sheets";
      return says(`${kind} ${use.sheets.join(" and ")}. Add --sheet ${first}.`);
    }
    return use.joined && !joined ? says("pages that are joined, and none are here.") : [];
  });
}
