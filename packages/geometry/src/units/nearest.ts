import { editDistance } from "../words/edit-distance.js";

/**
 * The word most like `name`, case aside, or undefined where none is near enough to be meant: a third of the
 * letters may differ, one in words of three to five, none in shorter ones.
 *
 * @example
 * nearestWord("heigth", ["height", "form"]); // "height"
 */
export function nearestWord(name: string, words: readonly string[]): string | undefined {
  const limit = Math.min(4, Math.floor(name.length / 3));
  let best: string | undefined;
  let bestDistance = limit + 1;
  for (const word of words) {
    const distance = editDistance(name.toLowerCase(), word.toLowerCase());
    if (distance < bestDistance) {
      best = word;
      bestDistance = distance;
    }
  }
  return best;
}
