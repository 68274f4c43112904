const UNIT_AT_END = /[a-z"'\u2018-\u201D\u2032\u2033]+\.?$/iu;

/** Two lengths of `6 x 40 mm`, each as text that can be read by itself. */
export interface TwoSides {
  readonly first: string;
  readonly second: string;
  /** The unit behind the second; undefined where it has none. */
  readonly unit: string | undefined;
}

/**
 * Takes `A x B` apart. A unit behind the second length is lent to the first where that has none.
 *
 * @returns how many lengths there are where they are not two.
 */
export function twoSides(text: string): TwoSides | number {
  const sides = text.trim().split(/\s*[x×]\s*/iu);
  const [first = "", second = ""] = sides;
  if (sides.length !== 2 || first === "" || second === "") return sides.length === 2 ? 1 : sides.length;
  const unit = UNIT_AT_END.exec(second)?.[0];
  const lent = unit !== undefined && !UNIT_AT_END.test(first) ? `${first} ${unit}` : first;
  return { first: lent, second, unit };
}
