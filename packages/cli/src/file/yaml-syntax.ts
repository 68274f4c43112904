import type { YAMLError } from "yaml";

const IN_PLAIN_WORDS: Partial<Record<YAMLError["code"], string>> = {
  TAB_AS_INDENT: "a tab is used to indent; use spaces",
  BAD_INDENT: "this line is indented differently from those it belongs with",
  BLOCK_AS_IMPLICIT_KEY:
    "two keys on one line, or a colon inside a value; begin a new line, or put the value in quotes",
  MULTILINE_IMPLICIT_KEY: "a key needs a colon and a space after it, on the same line",
  KEY_OVER_1024_CHARS: "this key is far too long; is a colon missing?",
  BAD_SCALAR_START: "a value cannot begin with this character; put the value in quotes",
  BAD_DQ_ESCAPE: "a backslash in double quotes is read as a code; use single quotes",
  BAD_ALIAS: "a value cannot begin with * or &; put it in quotes",
};

/** A syntax error in the words of someone who writes files by hand. */
export function describeSyntax(error: YAMLError): string {
  const unclosed = /end with an? (\S)/u.exec(error.message)?.[1];
  if (unclosed !== undefined) return `a closing ${unclosed} is missing above this line`;
  const plain = IN_PLAIN_WORDS[error.code];
  if (plain !== undefined) return plain;
  // The library's own sentence, without its own position and picture.
  const [first = ""] = error.message.split("\n");
  return `this cannot be read as YAML: ${first.replace(/ at line \d+.*$/u, "").replace(/^[A-Z](?![A-Z])/u, (c) => c.toLowerCase())}`;
}
