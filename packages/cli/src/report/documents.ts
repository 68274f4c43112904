/** A report for programs as the text of one JSON document. Numbers keep all their digits; what is not finite is `null`. */
export function jsonText(report: unknown): string {
  return `${JSON.stringify(report, null, 2)}\n`;
}

/** A report for people as text: no blanks at line ends, no blank lines at the end, one line feed there. */
export function reportText(lines: readonly string[]): string {
  return `${lines
    .map((line) => line.trimEnd())
    .join("\n")
    .trimEnd()}\n`;
}
