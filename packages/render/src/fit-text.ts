import { cleanText } from "./clean-text.js";
import { textWidth } from "./text-metrics.js";

const ELLIPSIS = "...";

/**
 * Where a line may be broken: at a blank, but never between `6` and `41/64`, a figure and its unit, or `1 lb` and `5.6 oz`.
 */
const BREAK =
  /(?<!\d)(?<!\d lb(?= \d)) |(?<=\d) (?!\d+\/\d|(?:[mc]m[²³]?|in[²³]?|lb|oz|k?g|°[CF]|%|min|h|HRC)(?![\p{L}\d]))/u;

/**
 * Breaks a text into lines that fit a width; what does not go into the last line is cut off and marked with dots.
 *
 * @param height - height of the capitals, mm.
 * @param maxWidth - mm.
 * @returns at least one line; a text with nothing printable in it gives one dash.
 *
 * @example
 * fitText("Tall harvest knife", 2.5, 30, 2); // ["Tall harvest", "knife"]
 */
export function fitText(
  text: string,
  height: number,
  maxWidth: number,
  maxLines: number,
  bold = false,
): string[] {
  const fits = (line: string): boolean => textWidth(line, height, bold) <= maxWidth;
  const words = cleanText(text)
    .split(BREAK)
    .filter((word) => word !== "");
  if (words.length === 0) return ["–"];
  const lines: string[] = [];
  let rest = words;
  while (rest.length > 0) {
    if (lines.length === maxLines - 1) {
      lines.push(shorten(rest.join(" "), fits));
      return lines;
    }
    let count = 1;
    while (count < rest.length && fits(rest.slice(0, count + 1).join(" "))) count++;
    const line = rest.slice(0, count).join(" ");
    const whole = shorten(line, fits);
    lines.push(whole);
    if (whole !== line) return lines;
    rest = rest.slice(count);
  }
  return lines;
}

function shorten(line: string, fits: (line: string) => boolean): string {
  if (fits(line)) return line;
  const characters = [...line];
  const cutAt = (count: number): string => characters.slice(0, count).join("").trimEnd() + ELLIPSIS;
  // The more of it, the wider: halving finds the longest that fits.
  let count = 0;
  let tooLong = characters.length + 1;
  while (tooLong - count > 1) {
    const middle = (count + tooLong) >> 1;
    if (fits(cutAt(middle))) count = middle;
    else tooLong = middle;
  }
  return cutAt(count);
}
