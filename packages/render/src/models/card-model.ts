/** What stands in a place of a table: words or a figure, or an empty box to write a reading in, with its unit. */
export type CardCell = string | { readonly box: string };

/** A part of a panel. */
export type CardBlock =
  /** A few words, broken into lines; loud ones in bold. */
  | { readonly kind: "words"; readonly text: string; readonly loud?: boolean }
  /** Figures, each with what it is in small letters before it, and the same in the other unit or its source behind it. */
  | { readonly kind: "figures"; readonly figures: readonly CardFigure[] }
  /**
   * Rows of figures under small heads; the first column is flush left, the others flush right. `large` are the places of
   * the columns that are read from afar: in the largest figures of the card, a long one parted behind its plus signs.
   */
  | {
      readonly kind: "table";
      readonly heads: readonly string[];
      readonly large?: readonly number[];
      readonly rows: readonly (readonly CardCell[])[];
    }
  /** Small boxes to strike off, one for each time something is done. */
  | { readonly kind: "tally"; readonly count: number };

export interface CardFigure {
  /** Small boxes to tick before it, one for each time that it is done. */
  readonly ticks?: number;
  readonly label: string;
  /** Left out where there is only a box to fill. */
  readonly figure?: string;
  readonly beside?: string;
  /** Empty boxes behind it, each with its unit. */
  readonly boxes?: readonly string[];
}

/** One step of the work: what is set, on what tool, and room for what came out. */
export interface CardPanel {
  readonly title: string;
  /** The tool that its figures are set on, with their unit: "rule", "height gauge, mm". */
  readonly tool?: string;
  /** As wide as the page; else one column. */
  readonly wide?: boolean;
  readonly blocks: readonly CardBlock[];
}

/** A part of the work that has a page of its own: what is done at the forge, what is done at the bench. */
export interface CardSide {
  readonly name: string;
  /** In the order of use. */
  readonly panels: readonly CardPanel[];
  /** What can hurt someone in this work: "hot steel", "noise"; at the foot of its pages. */
  readonly hazards: readonly string[];
}

/** The bench card: the figures of one job in the order of use. */
export interface CardModel {
  readonly code: string;
  readonly title: string;
  /** Steel, sizes: under the title. */
  readonly about: string;
  /** What cannot work as planned: in the head of every page, or where it is long in a panel of its own before all others. */
  readonly warnings: readonly string[];
  readonly sides: readonly CardSide[];
  /** What goes before all that the card says; at the foot of every page. */
  readonly rule: string;
}
