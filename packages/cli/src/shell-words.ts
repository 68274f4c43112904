import { REPORT_WIDTH } from "./report/layout.js";

/** A text in single quotes, as bash, zsh and their like take it for one word. */
export const shellQuoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

/** Characters that no shell takes for anything else. */
const PLAIN = /^[\w./:=@%+,-]+$/u;

/**
 * A command line that can be typed as it stands: words with blanks and marks in quotes.
 *
 * @example
 * commandLine(["scantling", "check", "my knife.yaml"]); // "scantling check 'my knife.yaml'"
 */
export const commandLine = (words: readonly string[]): string =>
  words.map((word) => (PLAIN.test(word) ? word : shellQuoted(word))).join(" ");

/**
 * The same over as many lines as it takes, each but the last with the mark that the shell goes on; a word is never broken, for
 * it could not be typed then.
 */
export function commandLines(words: readonly string[], indent = "  "): string[] {
  const lines: string[] = [];
  let line = indent;
  for (const [index, word] of words.entries()) {
    const typed = commandLine([word]);
    const next = line.trim() === "" ? `${line}${typed}` : `${line} ${typed}`;
    const room = REPORT_WIDTH - (index === words.length - 1 ? 0 : GOES_ON.length);
    if (next.length <= room || line.trim() === "") {
      line = next;
      continue;
    }
    lines.push(`${line}${GOES_ON}`);
    line = `${indent}${indent}${typed}`;
  }
  return [...lines, line];
}

const GOES_ON = " \\";
