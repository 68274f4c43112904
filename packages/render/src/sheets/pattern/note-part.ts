import { fitText } from "../../fit-text.js";
import type { Part } from "../../lay-out/part.js";
import { SMALL } from "../../lettering-size.js";
import { partOf, small, textBlock } from "../part-of.js";

/** Lines of a note are broken at this width, mm, or at the other where there is no room beside the view. */
const NOTE_WIDTHS = { wide: 110, narrow: 66 } as const;
/** A sentence has no more lines than this on the wide ones, and no more than twice as many on the narrow ones. */
const MOST_LINES = 6;

/**
 * A few sentences that may stand wherever there is room, each beginning a line of its own.
 *
 * @returns a list of one part, or of none where there is nothing to say.
 */
export function noteParts(
  name: string,
  sentences: readonly string[],
  width: keyof typeof NOTE_WIDTHS = "wide",
): Part[] {
  const most = width === "wide" ? MOST_LINES : 2 * MOST_LINES;
  const lines = sentences.flatMap((sentence) => fitText(sentence, SMALL, NOTE_WIDTHS[width], most));
  if (lines.length === 0) return [];
  return [{ ...partOf(name, textBlock(lines.map(small), { left: 0, top: 0 })), ofPaper: true }];
}
