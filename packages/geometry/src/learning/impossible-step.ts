import { type Issue, mass, share } from "../errors/issue.js";

/** No fire takes more of a piece in one heat. Basis: common practice, no source; a thin blade loses 2 to 3 %. */
export const MOST_PER_HEAT = 0.1;

/** Why something cannot have been; its text begins with a small letter and has no full stop. */
export type Impossible = Omit<Issue, "path">;

/** Two weighings and the heats between them, and what was weighed. */
export interface WeighedStep {
  readonly before: number;
  readonly after: number;
  readonly heats: number;
  readonly names: readonly [before: string, after: string];
  /** What each heat took of the mass, all that is not scale counted off. */
  readonly each: number;
  /** The least that it may come to: below nothing where what is counted off may be too much. */
  readonly least: number;
  /** The share by which a mass may seem to rise and be a slip of the scale: the shop's own limit at its gates. */
  readonly massRise: number;
}

/**
 * Why two weighings with heats between them cannot be right: no heats, a mass that rose, nothing lost, or less or
 * more lost than can be. Undefined where they can.
 *
 * @example
 * const names = ["dressed billet", "forged blade"] as const;
 * impossibleStep({ before: 760, after: 7120, heats: 9, names, each: -0.28, least: 0, massRise: 0.02 })?.code; // "mass-rose"
 */
export function impossibleStep(step: WeighedStep): Impossible | undefined {
  const { before, after, heats, names, each, least, massRise } = step;
  const values = { first: names[0], second: names[1], was: mass(before), is: mass(after) };
  if (!(heats >= 1))
    return {
      code: "no-heats",
      text: "the heats between {first} and {second} are not written down",
      values,
    };
  if (after > before * (1 + massRise))
    return {
      code: "mass-rose",
      text: "the mass rose from {was} ({first}) to {is} ({second})",
      values,
    };
  if (after >= before)
    return {
      code: "nothing-lost",
      text: "nothing was lost from {was} ({first}) to {is} ({second}): scale was weighed with it",
      values,
    };
  if (each < least)
    return {
      code: "lost-too-little",
      text: "from {was} ({first}) to {is} ({second}) is less than crop, dressing and cleaning alone take",
      values,
    };
  if (each > MOST_PER_HEAT)
    return {
      code: "lost-too-much",
      text: "from {was} ({first}) to {is} ({second}) is {each} a heat, more than any fire takes",
      values: { ...values, each: share(each) },
    };
  return undefined;
}
