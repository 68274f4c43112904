import { invariant } from "@scantling/geometry";
import { Document, isMap, isScalar, isSeq, parseDocument, stringify, visit } from "yaml";
import { FileError } from "../file/problem.js";
import { type RecordFile, readRecordFile } from "../file/record-file.js";

/** Lines for the file as it stands; the entry among them has its number already. */
export interface Addition {
  /** The snapshot of the plan, where it is to stand before the first entry. */
  readonly planned?: object | undefined;
  readonly entry: object;
}

/**
 * The text of a record with one more entry behind everything that it says: what was there stays as it is, byte for byte.
 *
 * @param text - A record that was read without a problem.
 * @returns undefined where the file is laid out in a way that cannot be added to; nothing is guessed.
 */
export function withEntry(text: string, addition: Addition): string | undefined {
  const document = parseDocument(text, { version: "1.2", schema: "core", prettyErrors: false });
  const { contents } = document;
  if (!isMap(contents) || contents.flow === true) return undefined;
  const eol = text.includes("\r\n") ? "\r\n" : "\n";
  const open = text.endsWith("\n") ? text : `${text}${eol}`;
  const indent = indentAt(text, contents.items[0]?.key);
  const entries = contents.get("entries", true);
  const lines =
    entries === undefined
      ? newKeys(addition, indent)
      : lastKey(contents) === "entries" && isSeq(entries) && entries.flow !== true
        ? [`${indentAt(text, entries)}- ${entryLine(addition.entry)}`]
        : undefined;
  if (lines === undefined) return undefined;
  const added = open + lines.map((line) => `${line}${eol}`).join("");
  return isTheSameAndOneMore(text, added) ? added : undefined;
}

/** The text of a new record. */
export function newRecordText(head: RecordHead, addition: Addition): string {
  const { knife, units, command } = head;
  const top = stringify({ scantling: 1, units, knife }, YAML);
  const text = [
    "# What was measured while this knife was made. Entries are only ever added, never changed:",
    `# ${command}`,
    "# A mistake is put right by a later entry, with --corrects and the number of the wrong one.",
    ...top.trimEnd().split("\n"),
    ...newKeys(addition, ""),
    "",
  ].join("\n");
  invariant(readOrNot(text)?.entries.length === 1, "a new record can be read again");
  return text;
}

export interface RecordHead {
  readonly knife: string;
  readonly units: "mm" | "in";
  /** As the smith would type it. */
  readonly command: string;
}

/** One entry as one line, for the file or to be pasted into it. */
export function entryLine(entry: object): string {
  return stringify(entry, { ...YAML, collectionStyle: "flow" }).trimEnd();
}

const YAML = { version: "1.2", schema: "core", lineWidth: 0, blockQuote: "literal" } as const;

function newKeys({ planned, entry }: Addition, indent: string): string[] {
  const snapshot = planned === undefined ? [] : ["", ...blockLines({ planned })];
  return [...snapshot, "", "entries:", `  - ${entryLine(entry)}`].map((line) =>
    line === "" ? line : indent + line,
  );
}

/** Groups of no more values than this stand in braces on one line. */
const MOST_IN_BRACES = 7;

/** A snapshot in lines; its inner groups stand in braces where they are short. */
function blockLines(value: object): string[] {
  const document = new Document(value, { version: "1.2", schema: "core" });
  visit(document, {
    Map(_key, node) {
      const flat = node.items.every(
        ({ value: inner }) => isScalar(inner) && !String(inner.value).includes("\n"),
      );
      if (flat && node.items.length <= MOST_IN_BRACES) node.flow = true;
    },
  });
  return document.toString(YAML).trimEnd().split("\n");
}

/** The blanks before a place that nothing else stands before on its line. */
function indentAt(text: string, node: unknown): string {
  const range: unknown =
    typeof node === "object" && node !== null && "range" in node ? node.range : undefined;
  const offset = Array.isArray(range) && typeof range[0] === "number" ? range[0] : 0;
  const before = text.slice(text.lastIndexOf("\n", offset - 1) + 1, offset);
  return /^[ \t]*/u.exec(before)?.[0] ?? "";
}

function lastKey({ items }: { readonly items: readonly { readonly key: unknown }[] }): string | undefined {
  const key = items.at(-1)?.key;
  return isScalar(key) ? String(key.value) : undefined;
}

/** Whether a grown record says what it said before, and one entry more. */
function isTheSameAndOneMore(before: string, after: string): boolean {
  const [old, grown] = [readOrNot(before), readOrNot(after)];
  if (old === undefined || grown === undefined || !after.startsWith(before)) return false;
  const says = ({ knife, units, entries }: RecordFile, count: number): string =>
    JSON.stringify([knife, units, entries.slice(0, count)]);
  const count = old.entries.length;
  const samePlan = old.planned === undefined || JSON.stringify(old.planned) === JSON.stringify(grown.planned);
  return samePlan && grown.entries.length === count + 1 && says(old, count) === says(grown, count);
}

/** Undefined for what is no record. */
function readOrNot(text: string): RecordFile | undefined {
  try {
    return readRecordFile(text, "");
  } catch (error) {
    if (error instanceof FileError) return undefined;
    throw error;
  }
}
