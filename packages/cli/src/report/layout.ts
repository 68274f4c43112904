/** Widest line of a report for people, in characters. */
export const REPORT_WIDTH = 80;

export type Align = "left" | "right";

/**
 * Rows of cells as aligned lines, two blanks between columns, no blanks at line ends. A column is as wide as its
 * widest cell.
 *
 * @example
 * layOutTable([["steel", "412 g"], ["knife", "1 045 g"]], ["left", "right"]);
 * // ["steel    412 g", "knife  1 045 g"]
 */
export function layOutTable(rows: readonly (readonly string[])[], align: readonly Align[]): string[] {
  const widths = align.map((_, column) => Math.max(0, ...rows.map((row) => (row[column] ?? "").length)));
  return rows.map((row) =>
    widths
      .map((width, column) => {
        const cell = row[column] ?? "";
        return align[column] === "right" ? cell.padStart(width) : cell.padEnd(width);
      })
      .join("  ")
      .trimEnd(),
  );
}

/**
 * Breaks text into lines of at most `width` characters at blanks; lines after the first start with `indent`. A number
 * keeps the word after it, so that no value is parted from its unit. A path that is longer than the line stands on its own, for
 * it has to be copied whole; any other word of that length is broken.
 */
export function wrap(text: string, width: number = REPORT_WIDTH, indent = ""): string[] {
  const lines: string[] = [];
  let line = "";
  const room = width - indent.length;
  for (const piece of unbreakable(text).flatMap((word) => broken(word, room))) {
    const started = line === "" ? (lines.length === 0 ? piece : indent + piece) : `${line} ${piece}`;
    if (line !== "" && started.length > width) {
      lines.push(line);
      line = indent + piece;
    } else {
      line = started;
    }
  }
  return line === "" ? lines : [...lines, line];
}

function broken(word: string, room: number): string[] {
  if (word.length <= room || room < 1 || /[/\\]/u.test(word)) return [word];
  return word.match(new RegExp(`.{1,${room}}`, "gsu")) ?? [word];
}

function unbreakable(text: string): string[] {
  return text.match(/(?:[(±<]*[\d./-]*\d +)*\S+/gu) ?? [];
}

/** A list item: its mark, then the text with all further lines under its beginning. */
export function item(mark: string, text: string, width: number = REPORT_WIDTH): string[] {
  const indent = " ".repeat(mark.length);
  return wrap(text, width - mark.length).map((line, index) => (index === 0 ? mark : indent) + line);
}

/** Left and right text on one line as far apart as the report is wide; two lines where they do not fit on one. */
export function spread(left: string, right: string, width: number = REPORT_WIDTH): string[] {
  const gap = width - left.length - right.length;
  return gap >= 2 ? [left + " ".repeat(gap) + right] : [...wrap(left, width), right];
}
