/** Lettering heights (capitals), mm, of the ISO 3098 series 2.5, 3.5, 5, 7 (from memory). */
export const SMALL = 2.5;
export const KEY = 3.5;

/** Distance from one base line to the next, as a multiple of the height. */
export const LINE_PITCH = 1.7;
