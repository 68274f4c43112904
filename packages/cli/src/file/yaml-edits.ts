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

/** A piece of the text to be replaced; nothing is where both ends are one. */
export interface Edit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Parses as the reader of these files does. */
export const parseYaml = (text: string): Document.Parsed =>
  parseDocument(text, {
    version: "1.2",
    schema: "core",
    merge: false,
    uniqueKeys: false,
    prettyErrors: false,
  });

/** The text with pieces of it replaced; they must not overlap. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.from - a.from)
    .reduce((done, edit) => done.slice(0, edit.from) + edit.text + done.slice(edit.to), text);
}

/** One more item between the braces or brackets of a collection. */
export function inBraces(text: string, collection: YAMLMap | YAMLSeq, item: string): Edit {
  const [start, end] = [startOf(collection), (collection.range?.[1] ?? 1) - 1];
  const first = collection.items[0];
  if (first === undefined) {
    const inside = text.slice(start + 1, end);
    // What stands between them, a comment perhaps, stays.
    return inside.trim() === ""
      ? { from: start + 1, to: end, text: ` ${item} ` }
      : insert(end, `${item}${eolOf(text)}`);
  }
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

/** The end of the text, or of what stands before the mark that ends a document. */
export function endOfContent(text: string, contents: YAMLMap): number {
  const from = endOf(contents);
  const mark = /^\.\.\.(?=\s|$)/mu.exec(text.slice(from));
  return mark === null ? text.length : from + mark.index;
}

/** Puts text between two characters. */
export const insert = (at: number, text: string): Edit => ({ from: at, to: at, text });

/** How the lines of a text end. */
export const eolOf = (text: string): string => (text.includes("\r\n") ? "\r\n" : "\n");

/** The blanks before a place that nothing else stands before on its line. */
export function indentAt(text: string, offset: number): string {
  const before = text.slice(text.lastIndexOf("\n", offset - 1) + 1, offset);
  return /^[ \t]*/u.exec(before)?.[0] ?? "";
}

/** Where a node begins. */
export const startOf = (node: unknown): number => (isNode(node) ? (node.range?.[0] ?? 0) : 0);

/** Where the last thing in a node ends, without the blanks and comments behind it. */
export function endOf(node: unknown): number {
  if (!isNode(node)) return 0;
  const collection = isMap(node) || isSeq(node);
  const last = collection && node.flow !== true ? node.items.at(-1) : undefined;
  if (last !== undefined) return endOfItem(last);
  return node.range?.[1] ?? 0;
}

/** Where an item of a collection ends, a key with its value. */
export const endOfItem = (item: unknown): number =>
  isPair(item) ? Math.max(endOf(item.key), endOf(item.value)) : endOf(item);

/** Whether the keys of a map stand in double quotes, as in JSON. */
export const isQuoted = (map: YAMLMap): boolean => {
  const key = map.items[0]?.key;
  return isScalar(key) && key.type === "QUOTE_DOUBLE";
};

/** Whole lines behind the line on which a node ends. */
export function linesBehind(text: string, node: unknown, lines: readonly string[]): Edit {
  const end = endOf(node);
  const eol = eolOf(text);
  // A block of text ends with its own line end.
  const lineEnd = text[end - 1] === "\n" ? end - 1 : text.indexOf("\n", end);
  return lineEnd < 0
    ? insert(text.length, lines.map((line) => eol + line).join(""))
    : insert(lineEnd + 1, lines.map((line) => line + eol).join(""));
}

/** Whole lines at a place behind which nothing more is said. */
export function linesAt(text: string, end: number, lines: readonly string[]): Edit {
  const eol = eolOf(text);
  const open = end > 0 && text[end - 1] !== "\n" ? eol : "";
  return insert(end, open + lines.map((line) => line + eol).join(""));
}

/** One more line under the last one of a collection of lines, as far in as its first. */
export function underLast(text: string, collection: YAMLMap | YAMLSeq, line: string): Edit {
  const first = collection.items[0];
  const place = isPair(first) ? startOf(first.key) : startOf(collection);
  return linesBehind(text, collection, [indentAt(text, place) + line]);
}
