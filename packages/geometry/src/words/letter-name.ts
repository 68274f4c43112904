const LETTERS = 26;

/**
 * What the hole, section or source with an index is called: A, B, … Z, A2, B2, … Z2, A3, …
 *
 * @param index - From 0.
 *
 * @example
 * letterName(1); // "B"
 * letterName(27); // "B2"
 */
export function letterName(index: number): string {
  const round = Math.floor(index / LETTERS);
  return `${String.fromCharCode(65 + (index % LETTERS))}${round === 0 ? "" : round + 1}`;
}
