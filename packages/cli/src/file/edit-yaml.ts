import { isDeepStrictEqual } from "node:util";
import { type Document, isMap, isScalar, isSeq, type YAMLMap } from "yaml";
import {
  applyEdits,
  type Edit,
  endOfContent,
  inBraces,
  indentAt,
  isQuoted,
  linesAt,
  parseYaml,
  startOf,
  underLast,
} from "./yaml-edits.js";

/** An entry of the key `printer`, the paper as it is written. */
export interface PrinterLine {
  readonly paper: string;
  readonly shortSide: number;
  readonly longSide: number;
}

const KEY = "printer";

/**
 * The text of a shop file with what was measured of the printer on one paper, in place of what stood there for that
 * paper. Only that is changed: comments, blank lines, order, quotes and line ends stay as they are, byte for byte.
 *
 * @param text - YAML or JSON that was read without a problem, or that has nothing but comments in it.
 * @param isSame - Whether an entry's paper is the one that was measured.
 * @returns undefined where the text is laid out in a way that cannot be added to; nothing is guessed.
 */
export function withPrinterLine(
  text: string,
  line: PrinterLine,
  isSame: (paper: string) => boolean,
): string | undefined {
  const document = parseYaml(text);
  const edited = applyEdits(text, editsFor(document, text, line, isSame));
  return saysTheSameBut(document, parseYaml(edited), line, isSame) ? edited : undefined;
}

/** The lines for a file that has no such key yet. */
export const printerLines = (line: PrinterLine, json = false): string[] =>
  json ? [`"${KEY}": [${entryText(line, true)}]`] : [`${KEY}:`, `  - ${entryText(line, false)}`];

/** Whether the text is JSON or written like it: its keys stand in braces and double quotes. */
export function isJsonLike(text: string): boolean {
  const { contents } = parseYaml(text);
  return isMap(contents) && contents.flow === true && isQuoted(contents);
}

function entryText({ paper, shortSide, longSide }: PrinterLine, quoted: boolean): string {
  const key = (name: string): string => (quoted ? `"${name}"` : name);
  const word = quoted ? `"${paper}"` : paper;
  return `{ ${key("paper")}: ${word}, ${key("shortSide")}: ${shortSide}, ${key("longSide")}: ${longSide} }`;
}

function editsFor(
  document: Document.Parsed,
  text: string,
  line: PrinterLine,
  isSame: (paper: string) => boolean,
): Edit[] {
  const { contents } = document;
  if (!isMap(contents)) return [linesAt(text, text.length, printerLines(line))];
  const list = contents.get(KEY, true);
  if (isSeq(list)) {
    const entries = list.items.filter((item) => isMap(item));
    const known = entries.find((entry) => isSame(String(entry.get("paper"))));
    if (known !== undefined) return newFactors(known, line);
    const quoted =
      entries[0] !== undefined ? isQuoted(entries[0]) : contents.flow === true && isQuoted(contents);
    if (list.flow === true) return [inBraces(text, list, entryText(line, quoted))];
    return [underLast(text, list, `- ${entryText(line, false)}`)];
  }
  // Another value than a list is nothing that could be added to.
  if (list !== undefined) return [];
  const quoted = isQuoted(contents);
  if (contents.flow === true) {
    return [
      inBraces(
        text,
        contents,
        quoted ? printerLines(line, true).join("") : `${KEY}: [${entryText(line, false)}]`,
      ),
    ];
  }
  const indent = indentAt(text, startOf(contents.items[0]?.key));
  const lines = printerLines(line).map((each) => indent + each);
  return [linesAt(text, endOfContent(text, contents), lines)];
}

/** Only the two numbers of the entry. */
function newFactors(entry: YAMLMap, line: PrinterLine): Edit[] {
  return (["shortSide", "longSide"] as const).flatMap((key) => {
    const value = entry.get(key, true);
    if (!isScalar(value) || !value.range) return [];
    return [{ from: value.range[0], to: value.range[1], text: String(line[key]) }];
  });
}

/** Whether the edited file says the same as before but for the entry, which it has: those of other papers are as they were. */
function saysTheSameBut(
  before: Document.Parsed,
  after: Document.Parsed,
  line: PrinterLine,
  isSame: (paper: string) => boolean,
): boolean {
  if (after.errors.length > 0) return false;
  const expected = (before.toJS() ?? {}) as Record<string, unknown>;
  const given: unknown = expected[KEY] ?? [];
  if (!Array.isArray(given)) return false;
  const at = given.findIndex((entry: unknown) => isSame(paperOf(entry)));
  const entries: readonly unknown[] =
    at < 0
      ? [...given, line]
      : given.with(at, { ...given[at], shortSide: line.shortSide, longSide: line.longSide });
  return isDeepStrictEqual(after.toJS(), { ...expected, [KEY]: entries });
}

const paperOf = (entry: unknown): string =>
  typeof entry === "object" && entry !== null && "paper" in entry ? String(entry.paper) : "";
