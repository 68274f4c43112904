/** A file that is drawn over a hardened edge: it cuts, only just cuts, only just skates, or skates. */
export type FileAnswer = "cuts" | "barely cuts" | "barely skates" | "skates";

/** A hardness between two values, HRC; an end that nothing tells of is infinite. */
export interface HardnessBracket {
  readonly low: number;
  readonly high: number;
}

/** A file bites what is this much softer than itself, and leaves no mark on what is this much harder; HRC. */
const BITE = 2;

/** Where the rule of {@link fileAnswer} comes from. */
export const FILE_SOURCE =
  "SAE J864 file test, after a laboratory's page: a file just cuts what is 2 HRC softer and skates on what is 2 HRC harder";

/** Files as shops have them, HRC. */
export const USUAL_FILES: readonly number[] = [40, 45, 50, 55, 60, 65];

/**
 * What a file of known hardness does on steel. Near its own hardness it is a matter of feel: the same finish on both, a light hand,
 * and never more than a bracket.
 *
 * @param file - HRC of the file.
 * @param hardness - HRC of the steel.
 *
 * @example
 * fileAnswer(65, 60.5); // "cuts"
 * fileAnswer(60, 60.5); // "barely skates"
 * fileAnswer(55, 60.5); // "skates"
 */
export function fileAnswer(file: number, hardness: number): FileAnswer {
  if (hardness <= file - BITE) return "cuts";
  if (hardness >= file + BITE) return "skates";
  return hardness < file ? "barely cuts" : "barely skates";
}

/**
 * The hardness that files tell of: where each would have answered so. A file that barely skates is no harder than the steel, one
 * that barely cuts no softer.
 *
 * @param answers - HRC of each file that was tried, and what it did.
 * @returns undefined where the answers cannot all be right.
 *
 * @example
 * hardnessByFiles([{ file: 60, answer: "barely skates" }, { file: 65, answer: "cuts" }]); // { low: 60, high: 62 }
 * hardnessByFiles([{ file: 60, answer: "cuts" }, { file: 55, answer: "skates" }]); // { low: 57, high: 58 }
 * hardnessByFiles([{ file: 55, answer: "cuts" }, { file: 60, answer: "skates" }]); // undefined
 */
export function hardnessByFiles(
  answers: readonly { readonly file: number; readonly answer: FileAnswer }[],
): HardnessBracket | undefined {
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (const { file, answer } of answers) {
    const [least, most] = {
      cuts: [Number.NEGATIVE_INFINITY, file - BITE],
      "barely cuts": [file - BITE, file],
      "barely skates": [file, file + BITE],
      skates: [file + BITE, Number.POSITIVE_INFINITY],
    }[answer] as [number, number];
    low = Math.max(low, least);
    high = Math.min(high, most);
  }
  return low <= high ? { low, high } : undefined;
}
