/** What a line on a drawing stands for; the role alone decides how it is drawn, in every output format. */
export type Role =
  | "outline"
  | "cut"
  | "fold"
  | "bevel"
  | "hidden"
  | "centre"
  | "adjacent"
  | "dimension"
  | "hatch"
  | "thin"
  | "check"
  | "frame"
  | "text";

/** Line width and dash pattern (drawn, left out, drawn, …), all in mm; an empty pattern is a continuous line. */
export interface Pen {
  readonly width: number;
  readonly dash: readonly number[];
}

/** Wide line for what is cut, mm. Wide to narrow is 2 : 1 (ISO 128-2, from memory). */
export const WIDE = 0.5;
/** Narrow line for everything that explains it, mm. */
export const NARROW = 0.25;

// Dash lengths in line widths as ISO 128-2 gives them (from memory): dash 12, long dash 24, gap 3, dot 0.5.
const DASHED: readonly number[] = [12 * NARROW, 3 * NARROW];
const LONG_DASH_DOT: readonly number[] = [24 * NARROW, 3 * NARROW, 0.5 * NARROW, 3 * NARROW];
const LONG_DASH_TWO_DOTS: readonly number[] = [...LONG_DASH_DOT, 0.5 * NARROW, 3 * NARROW];

const continuous = (width: number): Pen => ({ width, dash: [] });

const PENS: Readonly<Record<Role, Pen>> = {
  outline: continuous(WIDE),
  // Paper and leather are cut along it, so it is narrow: a wide line leaves a doubt of its own width.
  cut: continuous(NARROW),
  fold: { width: NARROW, dash: DASHED },
  bevel: continuous(NARROW),
  hidden: { width: NARROW, dash: DASHED },
  centre: { width: NARROW, dash: LONG_DASH_DOT },
  // What lies beside the part or was there before (ISO 128-2, from memory).
  adjacent: { width: NARROW, dash: LONG_DASH_TWO_DOTS },
  dimension: continuous(NARROW),
  hatch: continuous(NARROW),
  thin: continuous(NARROW),
  check: continuous(NARROW),
  frame: continuous(WIDE),
  text: continuous(NARROW),
};

/**
 * The pen for a role.
 *
 * @example
 * penOf("centre"); // { width: 0.25, dash: [6, 0.75, 0.125, 0.75] }
 */
export function penOf(role: Role): Pen {
  return PENS[role];
}
