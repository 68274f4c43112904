/** The sheets that `pattern` draws, in the order in which they come out of the printer. */
export const SHEET_NAMES = [
  "pattern",
  "mirrored",
  "preform",
  "drilling",
  "slabs",
  "gauges",
  "sections",
  "sheath",
  "plots",
] as const;

export type SheetName = (typeof SHEET_NAMES)[number];

/** What each shows, for help. */
export const SHEET_WORDS: Readonly<Record<SheetName, string>> = {
  pattern: "outline of the blade",
  mirrored: "the same seen from the left",
  preform: "flat preform with its marks",
  drilling: "hole centres from two edges",
  slabs: "handle slabs or block",
  gauges: "gauges to cut out",
  sections: "sections, true and enlarged",
  sheath: "sheath blank",
  plots: "where the steel goes",
};
