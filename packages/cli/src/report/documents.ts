import { invariant } from "@scantling/geometry";

/**
 * A report for programs as the text of one JSON document. Numbers keep all their digits.
 *
 * @throws {InternalError} where a number is not finite: JSON would turn it into `null` without a word.
 */
export function jsonText(report: unknown): string {
  const guard = (key: string, value: unknown): unknown => {
    invariant(typeof value !== "number" || Number.isFinite(value), `${key} of a report is finite`);
    return value;
  };
  return `${JSON.stringify(report, guard, 2)}\n`;
}

/** What the marks behind inches mean, for a text that has any. */
const MARKS = "In inches, a + or − after a size: the true one is a little more or less.";

/** The text with its legend, where it needs one. */
export function withLegend(lines: readonly string[]): readonly string[] {
  return lines.some((line) => /\d"[+−]/u.test(line)) ? [...lines, MARKS] : lines;
}

/** A report for people as text: no blanks at line ends, no blank lines at the end, one line feed there. */
export function reportText(lines: readonly string[]): string {
  return `${withLegend(lines)
    .map((line) => line.trimEnd())
    .join("\n")
    .trimEnd()}\n`;
}
