/** A line of a file, and what stands behind it as a comment. */
export type Commented = readonly [line: string, about?: string];

/** Comments stand in line with one another; those of longer lines behind these, after two blanks. */
const COLUMN = 34;

/** Lines with their comments one below the other. */
export function commentedLines(lines: readonly Commented[]): string[] {
  return lines.map(([line, about]) =>
    about === undefined ? line : `${line.padEnd(COLUMN - 2)}  # ${about}`,
  );
}

/** Words that YAML takes for something else than text. */
const NO_TEXT = /^(?:true|false|null|yes|no|on|off|~)$/iu;

/** Text as a value of YAML: as it stands where that is safe, else between quotes. */
export function yamlText(text: string): string {
  const plain = /^[\p{L}][\p{L}\p{N} '_.()/-]*$/u.test(text) && !NO_TEXT.test(text) && !/ $/u.test(text);
  return plain ? text : JSON.stringify(text);
}
