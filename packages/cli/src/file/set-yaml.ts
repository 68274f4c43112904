import { isDeepStrictEqual } from "node:util";
import { isMap, isScalar, type YAMLMap } from "yaml";
import {
  applyEdits,
  type Edit,
  endOfContent,
  inBraces,
  indentAt,
  isQuoted,
  linesAt,
  linesBehind,
  parseYaml,
  startOf,
} from "./yaml-edits.js";

/** What is written under a key. */
export type YamlValue = string | number;

/** A key with its way from the top of the file, and what it is to say. */
export interface YamlChange {
  readonly path: readonly string[];
  readonly value: YamlValue;
  /** A line of comment above the topmost key, where that is new. */
  readonly comment?: string;
}

/**
 * The text of a file with some keys set, in place of what they said or as new lines in the group that they belong to. Only that
 * is changed: comments, blank lines, order, quotes and line ends stay as they are, byte for byte.
 *
 * @param text - YAML or JSON that was read without a problem, or that has nothing but comments in it.
 * @returns undefined where the text is laid out in a way that cannot be changed so; nothing is guessed.
 */
export function withChanges(text: string, changes: readonly YamlChange[]): string | undefined {
  return changes.reduce<string | undefined>(
    (done, change) => (done === undefined ? undefined : withChange(done, change)),
    text,
  );
}

function withChange(text: string, change: YamlChange): string | undefined {
  const { contents } = parseYaml(text);
  const edit = isMap(contents)
    ? editIn(text, contents, contents, change)
    : linesAt(text, text.length, newLines(change, change.path, ""));
  if (edit === undefined) return undefined;
  const edited = applyEdits(text, [edit]);
  return saysTheSameBut(text, edited, change) ? edited : undefined;
}

/** What is to be replaced or put in, from the top of the file down to the group that the key belongs to. */
function editIn(text: string, top: YAMLMap, group: YAMLMap, change: YamlChange): Edit | undefined {
  const depth = change.path.length;
  let inside = group;
  for (const [index, key] of change.path.entries()) {
    const node = inside.get(key, true) as unknown;
    if (node === undefined) return newKeys(text, top, inside, { ...change, path: change.path.slice(index) });
    if (index === depth - 1) return replaced(node, change.value, isQuoted(top));
    if (!isMap(node)) return undefined;
    inside = node;
  }
  return undefined;
}

/** A value in place of another; one that other places of the file point to is left alone. */
function replaced(node: unknown, value: YamlValue, quoted: boolean): Edit | undefined {
  if (!isScalar(node) || node.anchor !== undefined || !node.range) return undefined;
  const mark = node.type === "QUOTE_DOUBLE" ? '"' : node.type === "QUOTE_SINGLE" ? "'" : undefined;
  const text =
    typeof value === "string" && mark !== undefined ? mark + value + mark : valueText(value, quoted);
  return { from: node.range[0], to: node.range[1], text };
}

/** A key that the group does not have yet, with the groups that are missing on the way to it. */
function newKeys(text: string, top: YAMLMap, group: YAMLMap, change: YamlChange): Edit {
  if (group.flow === true) return inBraces(text, group, flowText(change, isQuoted(group) || isQuoted(top)));
  const indent = indentAt(text, startOf(group.items[0]?.key));
  if (group === top)
    return linesAt(text, endOfContent(text, top), ["", ...newLines(change, change.path, indent)]);
  const { path, value } = change;
  return linesBehind(text, group, newLines({ path, value }, path, indent));
}

/** Steps that a group of this program's files is set in by. */
const STEP = "  ";

function newLines({ value, comment }: YamlChange, path: readonly string[], indent: string): string[] {
  const [key = "", ...rest] = path;
  const above = comment === undefined ? [] : [`${indent}# ${comment}`];
  return rest.length === 0
    ? [...above, `${indent}${key}: ${valueText(value, false)}`]
    : [...above, `${indent}${key}:`, ...newLines({ path: rest, value }, rest, indent + STEP)];
}

function flowText({ path, value }: YamlChange, quoted: boolean): string {
  const name = (key: string): string => (quoted ? `"${key}"` : key);
  const [key = "", ...rest] = path;
  return `${name(key)}: ${rest.length === 0 ? valueText(value, quoted) : `{ ${flowText({ path: rest, value }, quoted)} }`}`;
}

const valueText = (value: YamlValue, quoted: boolean): string =>
  quoted && typeof value === "string" ? `"${value}"` : String(value);

/** Whether the edited file says the same as before but for the key, which says what it should. */
function saysTheSameBut(before: string, after: string, { path, value }: YamlChange): boolean {
  const document = parseYaml(after);
  if (document.errors.length > 0) return false;
  const expected: unknown = parseYaml(before).toJS() ?? {};
  setIn(expected as Record<string, unknown>, path, value);
  return isDeepStrictEqual(document.toJS(), expected);
}

function setIn(
  data: Record<string, unknown>,
  [key = "", ...rest]: readonly string[],
  value: YamlValue,
): void {
  if (rest.length === 0) data[key] = value;
  else {
    const inside = data[key];
    const group = typeof inside === "object" && inside !== null ? inside : {};
    data[key] = group;
    setIn(group as Record<string, unknown>, rest, value);
  }
}
