import { fitText } from "../../fit-text.js";
import type { Part } from "../../lay-out/part.js";
import { SMALL } from "../../lettering-size.js";
import { partOf, small, textBlock } from "../part-of.js";

/** Lines of a note are broken at this width, mm, and a sentence has no more lines than this. */
const WIDTH = 110;
const MOST_LINES = 6;

/**
 * A few sentences that may stand wherever there is room, each beginning a line of its own.
 *
 * @returns a list of one part, or of none where there is nothing to say.
 */
export function noteParts(name: string, sentences: readonly string[]): Part[] {
  const lines = sentences.flatMap((sentence) => fitText(sentence, SMALL, WIDTH, MOST_LINES));
  if (lines.length === 0) return [];
  return [{ ...partOf(name, textBlock(lines.map(small), { left: 0, top: 0 })), ofPaper: true }];
}
