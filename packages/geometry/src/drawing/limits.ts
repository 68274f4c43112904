/** A drawing of a blade is a few kB; a file beyond this many characters is the wrong one, or hostile. */
export const MOST_CHARACTERS = 1_048_576;
export const MOST_ELEMENTS = 20_000;
/** Elements inside one another. */
export const MOST_DEPTH = 100;
/** Selectors of style rules that move or hide something. */
export const MOST_RULES = 500;
/** Pieces of one stroke: crossings are looked for between every two of them. */
export const MOST_PIECES = 2_000;
/** No blade reaches this far from the drawing's origin, mm; beyond it digits are lost as well. */
export const FARTHEST = 1e6;
