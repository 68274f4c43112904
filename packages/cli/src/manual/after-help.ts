/** A part of a command's help under its own title. */
export interface Section {
  readonly title: string;
  /** Without the indent that all of them share. */
  readonly lines: readonly string[];
}

/**
 * The sections of what help says after the options: each begins with a title of its own line, and ends with a blank line
 * before the next. The exit codes, which are the same everywhere, are left out.
 *
 * @example
 * sectionsOf("\nExamples:\n  scantling plan a.knife.yaml\n"); // [{ title: "Examples", lines: ["scantling plan …"] }]
 */
export function sectionsOf(text: string): Section[] {
  const sections: { title: string; lines: string[] }[] = [];
  for (const line of text.split("\n")) {
    const title = /^([A-Z][^:]*):$/u.exec(line)?.[1];
    if (title !== undefined) sections.push({ title, lines: [] });
    else if (/^Exit codes: /u.test(line)) break;
    else sections.at(-1)?.lines.push(line);
  }
  return sections.map(({ title, lines }) => ({ title, lines: trimmed(lines) }));
}

/** Without blank lines at the end and without the common indent. */
function trimmed(lines: readonly string[]): string[] {
  const kept = lines.slice(0, lines.findLastIndex((line) => line.trim() !== "") + 1);
  const indents = kept.filter((line) => line.trim() !== "").map((line) => line.search(/\S/u));
  const indent = Math.min(...indents, 80);
  return kept.map((line) => line.slice(indent));
}
