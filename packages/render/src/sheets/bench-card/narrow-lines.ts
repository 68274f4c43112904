import { textWidth } from "../../text-metrics.js";

/**
 * Pieces of a text joined to lines that are no wider than they must be for so many: as few of them as stand on `least`, else
 * as many as are allowed.
 *
 * @param separator - What stands between two pieces of a line.
 * @param least - Width that there is anyway, mm.
 * @param most - Lines at the most, at least one.
 *
 * @example
 * fewestLines(["from", "the", "heel"], " ", 2.5, 0, 2); // ["from the", "heel"]
 */
export function fewestLines(
  pieces: readonly string[],
  separator: string,
  height: number,
  least: number,
  most: number,
  bold = false,
): string[] {
  const widthOf = (line: string): number => textWidth(line, height, bold);
  const whole = pieces.join(separator);
  if (most === 1 || pieces.length === 1) return [whole];
  const linesAt = (width: number): string[] | undefined => {
    const lines: string[] = [];
    for (const piece of pieces) {
      const last = lines.at(-1);
      const longer = last === undefined ? piece : `${last}${separator}${piece}`;
      if (widthOf(longer) <= width) lines[Math.max(0, lines.length - 1)] = longer;
      else if (last === undefined || lines.length === most || widthOf(piece) > width) return undefined;
      else lines.push(piece);
    }
    return lines;
  };
  const atLeast = linesAt(least);
  if (atLeast !== undefined) return atLeast;
  const widths = pieces
    .flatMap((_, from) =>
      pieces.slice(from).map((__, count) => pieces.slice(from, from + count + 1).join(separator)),
    )
    .map(widthOf)
    .filter((width) => width > least)
    .sort((one, other) => one - other);
  // The wider, the more fits: halving finds the narrowest.
  let [below, above] = [-1, widths.length - 1];
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if (linesAt(widths[middle] ?? 0) === undefined) below = middle;
    else above = middle;
  }
  return linesAt(widths[above] ?? least) ?? [whole];
}
