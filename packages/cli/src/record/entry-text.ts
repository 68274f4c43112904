import { invariant } from "@scantling/geometry";
import { Document, isMap, isScalar, isSeq, stringify, visit, type YAMLMap } from "yaml";
import { FileError } from "../file/problem.js";
import { type RecordFile, readRecordFile } from "../file/record-file.js";
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
} from "../file/yaml-edits.js";

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
  const { contents } = parseYaml(text);
  if (!isMap(contents)) return undefined;
  const edit = editFor(text, contents, addition);
  if (edit === undefined) return undefined;
  const added = applyEdits(text, [edit]);
  return isTheSameAndOneMore(text, added) ? added : undefined;
}

/** Behind the last entry; as far behind everything that is said as the layout lets it. */
function editFor(text: string, contents: YAMLMap, addition: Addition): Edit | undefined {
  const entries = contents.get("entries", true);
  const quoted = isQuoted(contents);
  const { entry } = addition;
  if (isSeq(entries) && entries.flow === true) return inBraces(text, entries, itemText(entry, quoted));
  if (entries === undefined && contents.flow === true)
    return inBraces(text, contents, flowKeys(addition, quoted));
  if (contents.flow === true) return undefined;
  const end = endOfContent(text, contents);
  if (entries === undefined)
    return linesAt(text, end, newKeys(addition, indentAt(text, startOf(contents.items[0]?.key))));
  if (!isSeq(entries)) return undefined;
  const line = `- ${entryLine(entry)}`;
  return lastKey(contents) === "entries"
    ? linesAt(text, end, [indentAt(text, startOf(entries)) + line])
    : underLast(text, entries, line);
}

/** An entry among others in brackets. */
const itemText = (entry: object, quoted: boolean): string =>
  quoted ? JSON.stringify(entry) : entryLine(entry);

function flowKeys({ planned, entry }: Addition, quoted: boolean): string {
  const key = (name: string): string => (quoted ? `"${name}"` : name);
  // In braces a text of several lines can only stand quoted, as in JSON.
  const snapshot = planned === undefined ? "" : `${key("planned")}: ${JSON.stringify(planned)}, `;
  return `${snapshot}${key("entries")}: [${itemText(entry, quoted)}]`;
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

function lastKey({ items }: { readonly items: readonly { readonly key: unknown }[] }): string | undefined {
  const key = items.at(-1)?.key;
  return isScalar(key) ? String(key.value) : undefined;
}

/** Whether a grown record says what it said before, and one entry more. */
function isTheSameAndOneMore(before: string, after: string): boolean {
  const [old, grown] = [readOrNot(before), readOrNot(after)];
  if (old === undefined || grown === undefined) return false;
  const says = ({ knife, units, entries }: RecordFile, count: number): string =>
    JSON.stringify([knife, units, entries.slice(0, count)]);
  const count = old.entries.length;
  const samePlan = old.planned === undefined || JSON.stringify(old.planned) === JSON.stringify(grown.planned);
  return samePlan && grown.entries.length === count + 1 && says(old, count) === says(grown, count);
}

/** What keeps a knife file from having a record, in words that follow its name; undefined for nothing. */
export function knifeNameProblem(knife: string): string | undefined {
  try {
    readRecordFile(stringify({ scantling: 1, units: "mm", knife }, YAML), "");
    return undefined;
  } catch (error) {
    if (error instanceof FileError) return error.problems[0]?.message.replace(/^knife /u, "");
    throw error;
  }
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
