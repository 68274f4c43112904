import { cleanText } from "../../clean-text.js";
import { lastThatFits } from "../../last-that-fits.js";
import { textWidth } from "../../text-metrics.js";
import { line, PIECE_GAP, type Piece, type Placed, stack, wordPiece } from "./placed.js";

/** Lettering in a line; whole where it is not to be parted between two lines. */
export interface Words {
  readonly text: string;
  readonly height: number;
  readonly bold?: boolean;
  readonly whole?: boolean;
}

/** Lettering and other pieces one behind the other, in as many lines as they take: nothing is ever left out. */
export function inline(parts: readonly (Words | Piece)[], width: number): Placed {
  const lines: Piece[][] = [[]];
  let used = 0;
  const room = (): number => width - (used === 0 ? 0 : used + PIECE_GAP);
  const put = (piece: Piece): void => {
    lines.at(-1)?.push(piece);
    used += (used === 0 ? 0 : PIECE_GAP) + piece.width;
  };
  const nextLine = (): void => {
    lines.push([]);
    used = 0;
  };
  for (const part of parts) {
    if (!("text" in part)) {
      if (part.width > room() && used > 0) nextLine();
      put(part);
      continue;
    }
    const { height, bold = false, whole = false } = part;
    let rest = cleanText(part.text);
    while (rest !== "") {
      let fits = headThatFits(rest, room(), height, bold);
      if (used > 0 && (fits === "" || (whole && fits !== rest))) {
        nextLine();
        continue;
      }
      // A word that is wider than a whole line is parted where the line ends.
      if (fits === "") fits = charactersThatFit(rest, width, height, bold);
      put(wordPiece(fits, height, bold));
      rest = rest.slice(fits.length).trimStart();
      if (rest !== "") nextLine();
    }
  }
  return stack(lines.filter((pieces) => pieces.length > 0).map((pieces) => line(pieces)));
}

/** As many whole words from the beginning as fit. */
function headThatFits(text: string, width: number, height: number, bold: boolean): string {
  if (textWidth(text, height, bold) <= width) return text;
  const heads = [...text.matchAll(BREAKS)].map(({ index }) => text.slice(0, index));
  return heads[lastThatFits(heads, (head) => textWidth(head, height, bold) <= width)] ?? "";
}

/** Blanks that a line may end at: not between a figure and its unit, its fraction, or the figure that it is multiplied with; not before the letter of a source. */
const BREAKS = /(?<!×|\bx)(?<!\d(?= (?:(?:mm|in|g|oz|lb|ml|l|min|h|HRC|K)\b|[%°×]|x |\d+\/\d))) (?!\[)/gu;

/** As many characters as fit, one at the least. */
function charactersThatFit(text: string, width: number, height: number, bold: boolean): string {
  const characters = [...(text.split(" ", 1)[0] ?? text)];
  const heads = characters.map((_, last) => characters.slice(0, last + 1).join(""));
  return (
    heads[
      Math.max(
        0,
        lastThatFits(heads, (head) => textWidth(head, height, bold) <= width),
      )
    ] ?? text
  );
}

/** Words broken into lines of a width. */
export const wordLines = (text: string, width: number, height: number, bold: boolean): Placed =>
  inline([{ text, height, bold }], width);
