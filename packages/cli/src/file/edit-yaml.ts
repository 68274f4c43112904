import {
  type Document,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  parseDocument,
  type YAMLMap,
  type YAMLSeq,
} from "yaml";

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
  const document = parse(text);
  const edited = apply(text, editsFor(document, text, line, isSame));
  return holdsTheRest(document, parse(edited), line) ? edited : undefined;
}

/** The lines for a file that has no such key yet. */
export const printerLines = (line: PrinterLine, json = false): string[] =>
  json ? [`"${KEY}": [${entryText(line, true)}]`] : [`${KEY}:`, `  - ${entryText(line, false)}`];

/** Whether the text is JSON or written like it: its keys stand in braces and double quotes. */
export function isJsonLike(text: string): boolean {
  const { contents } = parse(text);
  return isMap(contents) && contents.flow === true && isQuoted(contents);
}

/** A piece of the text to be replaced; nothing is where both ends are one. */
export interface Edit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

// As in the reader of these files.
export const parse = (text: string): Document.Parsed =>
  parseDocument(text, {
    version: "1.2",
    schema: "core",
    merge: false,
    uniqueKeys: false,
    prettyErrors: false,
  });

function entryText({ paper, shortSide, longSide }: PrinterLine, quoted: boolean): string {
  const key = (name: string): string => (quoted ? `"${name}"` : name);
  const word = quoted ? `"${paper}"` : paper;
  return `{ ${key("paper")}: ${word}, ${key("shortSide")}: ${shortSide}, ${key("longSide")}: ${longSide} }`;
}

export function apply(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.from - a.from)
    .reduce((done, edit) => done.slice(0, edit.from) + edit.text + done.slice(edit.to), text);
}

function editsFor(
  document: Document.Parsed,
  text: string,
  line: PrinterLine,
  isSame: (paper: string) => boolean,
): Edit[] {
  const { contents } = document;
  if (!isMap(contents)) return [atEnd(text, text.length, "", line)];
  const list = contents.get(KEY, true);
  if (isSeq(list)) {
    const entries = list.items.filter((item) => isMap(item));
    const known = entries.find((entry) => isSame(String(entry.get("paper"))));
    if (known !== undefined) return newFactors(known, line);
    const quoted =
      entries[0] !== undefined ? isQuoted(entries[0]) : contents.flow === true && isQuoted(contents);
    if (list.flow === true) return [inBraces(text, list, entryText(line, quoted))];
    return [afterLast(text, list, line)];
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
  const first = contents.items[0]?.key;
  return [atEnd(text, endOfContent(text, contents), indentAt(text, startOf(first)), line)];
}

/** Only the two numbers of the entry. */
function newFactors(entry: YAMLMap, line: PrinterLine): Edit[] {
  return (["shortSide", "longSide"] as const).flatMap((key) => {
    const value = entry.get(key, true);
    if (!isScalar(value) || !value.range) return [];
    return [{ from: value.range[0], to: value.range[1], text: String(line[key]) }];
  });
}

/** One more item under the last one of a list of lines. */
function afterLast(text: string, list: YAMLSeq, line: PrinterLine): Edit {
  const lineEnd = text.indexOf("\n", endOf(list));
  const item = `${indentAt(text, startOf(list))}- ${entryText(line, false)}`;
  return lineEnd < 0
    ? insert(text.length, `${eolOf(text)}${item}`)
    : insert(lineEnd + 1, `${item}${eolOf(text)}`);
}

/** One more item between the braces or brackets of a collection. */
function inBraces(text: string, collection: YAMLMap | YAMLSeq, item: string): Edit {
  const [start, end] = [startOf(collection), (collection.range?.[1] ?? 1) - 1];
  const first = collection.items[0];
  if (first === undefined) return { from: start + 1, to: end, text: ` ${item} ` };
  const firstStart = startOf(isPair(first) ? first.key : first);
  const between = text.slice(start + 1, firstStart).includes("\n")
    ? `${eolOf(text)}${indentAt(text, firstStart)}`
    : " ";
  const last = endOfItem(collection.items.at(-1));
  const comma = commaAfter(text, last, end);
  return comma === undefined ? insert(last, `,${between}${item}`) : insert(comma + 1, `${between}${item}`);
}

/** A comma behind the last item, comments aside. */
export function commaAfter(text: string, from: number, to: number): number | undefined {
  const rest = text.slice(from, to).replace(/(?<=\s)#[^\n]*/gu, (comment) => " ".repeat(comment.length));
  const at = rest.indexOf(",");
  return at < 0 ? undefined : from + at;
}

/** The key as new lines behind everything that the file says. */
function atEnd(text: string, end: number, indent: string, line: PrinterLine): Edit {
  const eol = eolOf(text);
  const open = end > 0 && text[end - 1] !== "\n" ? eol : "";
  return insert(
    end,
    open +
      printerLines(line)
        .map((each) => `${indent}${each}${eol}`)
        .join(""),
  );
}

/** The end of the text, or of what stands before the mark that ends a document. */
function endOfContent(text: string, contents: YAMLMap): number {
  const from = endOf(contents);
  const mark = /^\.\.\.(?=\s|$)/mu.exec(text.slice(from));
  return mark === null ? text.length : from + mark.index;
}

export const insert = (at: number, text: string): Edit => ({ from: at, to: at, text });

export const eolOf = (text: string): string => (text.includes("\r\n") ? "\r\n" : "\n");

/** The blanks before a place that nothing else stands before on its line. */
export function indentAt(text: string, offset: number): string {
  const before = text.slice(text.lastIndexOf("\n", offset - 1) + 1, offset);
  return /^[ \t]*/u.exec(before)?.[0] ?? "";
}

export const startOf = (node: unknown): number => (isNode(node) ? (node.range?.[0] ?? 0) : 0);

/** Where the last thing in a node ends, without the blanks and comments behind it. */
export function endOf(node: unknown): number {
  if (!isNode(node)) return 0;
  const collection = isMap(node) || isSeq(node);
  const last = collection && node.flow !== true ? node.items.at(-1) : undefined;
  if (last !== undefined) return endOfItem(last);
  return node.range?.[1] ?? 0;
}

const endOfItem = (item: unknown): number =>
  isPair(item) ? Math.max(endOf(item.key), endOf(item.value)) : endOf(item);

export const isQuoted = (map: YAMLMap): boolean => {
  const key = map.items[0]?.key;
  return isScalar(key) && key.type === "QUOTE_DOUBLE";
};

/** Whether the edited file says the same as before but for the entry, which it has. */
function holdsTheRest(before: Document.Parsed, after: Document.Parsed, line: PrinterLine): boolean {
  if (after.errors.length > 0) return false;
  const rest = (document: Document.Parsed): string => {
    const { [KEY]: _, ...others } = (document.toJS() ?? {}) as Record<string, unknown>;
    return JSON.stringify(others);
  };
  const { [KEY]: entries } = after.toJS() as Record<string, unknown>;
  const holds = (entry: unknown): boolean =>
    typeof entry === "object" &&
    entry !== null &&
    "shortSide" in entry &&
    "longSide" in entry &&
    entry.shortSide === line.shortSide &&
    entry.longSide === line.longSide;
  return rest(before) === rest(after) && Array.isArray(entries) && entries.some(holds);
}
