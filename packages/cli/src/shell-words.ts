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
