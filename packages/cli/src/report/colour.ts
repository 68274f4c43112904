import type { Io, OutStream } from "../io/io.js";

/**
 * Words that stand out on a terminal, gravest first. They are in the text anyway, in capitals or at the beginning of their
 * line: a colour is never the only sign of anything.
 */
const WORDS: readonly (readonly [RegExp, string])[] = [
  [/\bSTOP\b|\bNOT MET\b|^SHORT(?=:)|^scantling(?=: )/gmu, "1;31"],
  [/^warning(?=: )|\bat risk\b|^NOT SURE(?=:)/gmu, "33"],
];

/** The same world, with grave words in colour where a person reads on a terminal that has them. */
export function withColours(io: Io): Io {
  const { NO_COLOR: none, TERM: terminal } = io.env;
  if ((none !== undefined && none !== "") || terminal === "dumb") return io;
  return { ...io, stdout: painted(io.stdout), stderr: painted(io.stderr) };
}

function painted(stream: OutStream): OutStream {
  if (!stream.isTTY) return stream;
  return {
    columns: stream.columns,
    isTTY: true,
    write: (text) => stream.write(paint(text)),
    flush: () => stream.flush(),
  };
}

const paint = (text: string): string =>
  WORDS.reduce((done, [words, code]) => done.replace(words, `\u001b[${code}m$&\u001b[0m`), text);
