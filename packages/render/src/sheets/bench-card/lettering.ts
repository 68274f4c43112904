/** Heights of capitals on a card, mm. */
export interface CardLettering {
  readonly words: number;
  /** What a figure is, before it, and the same in another unit behind it. */
  readonly label: number;
  /** Heads of tables and panels beside their title, units of boxes. */
  readonly head: number;
  readonly figure: number;
  /** Figures in tables. */
  readonly cell: number;
  /** Figures that are read at the fire: never smaller than any other. */
  readonly large: number;
  readonly heading: number;
  /** White inside the frame of a panel. */
  readonly padding: number;
  /** Height of a box to write in: 6 mm is a line of a form. */
  readonly box: number;
}

/**
 * From large to small, of the ISO 3098 series (from memory): a card is set in the largest that keeps it on its pages.
 * The smallest is still read at arm's length: 2.5 mm capitals are those of a newspaper's headings.
 */
export const CARD_LETTERINGS: readonly CardLettering[] = [
  { words: 3.5, label: 3.5, head: 3.5, figure: 7, cell: 7, large: 7, heading: 5, padding: 1, box: 6 },
  { words: 3.5, label: 3.5, head: 2.5, figure: 5, cell: 5, large: 5, heading: 3.5, padding: 1, box: 6 },
  { words: 2.5, label: 2.5, head: 2.5, figure: 5, cell: 5, large: 5, heading: 3.5, padding: 1, box: 6 },
  { words: 2.5, label: 2.5, head: 2.5, figure: 5, cell: 3.5, large: 5, heading: 3.5, padding: 1, box: 6 },
  { words: 2.5, label: 2.5, head: 2.5, figure: 3.5, cell: 3.5, large: 5, heading: 3.5, padding: 1, box: 6 },
  { words: 2.5, label: 2.5, head: 2.5, figure: 3.5, cell: 2.5, large: 5, heading: 3.5, padding: 1, box: 6 },
  {
    words: 2.5,
    label: 2.5,
    head: 2.5,
    figure: 3.5,
    cell: 2.5,
    large: 3.5,
    heading: 2.5,
    padding: 0.5,
    box: 5,
  },
  {
    words: 2.5,
    label: 2.5,
    head: 2.5,
    figure: 2.5,
    cell: 2.5,
    large: 3.5,
    heading: 2.5,
    padding: 0.5,
    box: 5,
  },
];

/** So many of them have figures that are read at arm's length in tables too: 3.5 mm and more. */
export const LEAST_FIGURES = 5;
