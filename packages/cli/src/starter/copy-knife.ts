import { isDeepStrictEqual } from "node:util";
import { type Document, isMap, isScalar, type Pair, type Scalar, type YAMLMap } from "yaml";
import {
  applyEdits,
  commaAfter,
  type Edit,
  endOf,
  eolOf,
  indentAt,
  insert,
  isQuoted,
  parseYaml,
  startOf,
} from "../file/yaml-edits.js";
import { yamlText } from "./commented-lines.js";

/** What is another in a copy of a knife file. */
export interface CopyChanges {
  readonly code: string;
  readonly title: string;
  /** A path that the file gives, from where it lay, as the new file has to give it. */
  readonly movedPath: (path: string) => string;
}

/**
 * The text of a knife file as the start of another: a new code and title, what was asked for put behind # (in JSON taken
 * out), paths as they lead from the new place. Everything else stays as it is, comments too.
 *
 * @param text - YAML or JSON that was read without a problem.
 * @returns undefined where the text is laid out in a way that cannot be changed so; nothing is guessed.
 */
export function copyKnife(text: string, changes: CopyChanges): string | undefined {
  const document = parseYaml(text);
  const { contents } = document;
  if (!isMap(contents)) return undefined;
  const edits = [...orderEdits(text, contents, changes), ...drawingEdits(contents, changes)];
  const edited = schemaMoved(applyEdits(text, edits), changes);
  return isCopy(document, parseYaml(edited), changes) ? edited : undefined;
}

function orderEdits(text: string, contents: YAMLMap, { code, title }: CopyChanges): Edit[] {
  const order = contents.get("order", true);
  if (!isMap(order)) return [newOrder(text, contents, { code, title })];
  const named = [
    ["code", code],
    ["title", title],
  ] as const;
  const missing = named.filter(([key]) => !order.has(key));
  const edits = named.flatMap(([key, value]) => {
    const given = order.get(key, true);
    return isScalar(given) ? [inPlaceOf(given, asText(value, order))] : [];
  });
  const others = order.items.filter(
    (pair) => isScalar(pair.key) && OF_THAT_ORDER.includes(String(pair.key.value)),
  );
  const added = missing.length === 0 ? [] : [atStart(text, order, missing)];
  const [first, ...further] = others.map((pair) => withoutKey(text, order, pair));
  return [...edits, ...together(added, first === undefined ? [] : [first], order), ...further];
}

/** What belongs to the order that is copied, not to its knife. */
const OF_THAT_ORDER: readonly string[] = ["asks", "customer", "revision", "started", "promised"];

/** Two edits at one place are one; where nothing follows in braces, no comma is left over. */
function together([added]: readonly Edit[], [taken]: readonly Edit[], order: YAMLMap): Edit[] {
  if (added === undefined || taken === undefined || added.from !== taken.from) {
    return [added, taken].filter((edit) => edit !== undefined);
  }
  const alone = order.flow === true && order.items.length === 1;
  return [{ ...taken, text: `${alone ? added.text.replace(/,\s*$/u, "") : added.text}${taken.text}` }];
}

/** A group of its own behind the first line that says something: the version. */
function newOrder(text: string, contents: YAMLMap, order: { code: string; title: string }): Edit {
  const first = contents.items[0];
  const [from, eol] = [startOf(first?.key), eolOf(text)];
  if (contents.flow === true) {
    const quoted = isQuoted(contents);
    const keys = Object.entries(order).map(
      ([key, value]) => `${keyText(key, quoted)}: ${JSON.stringify(value)}`,
    );
    return insert(from, `${keyText("order", quoted)}: { ${keys.join(", ")} },${eol}${indentAt(text, from)}`);
  }
  const indent = indentAt(text, from);
  const lines = ["order:", ...Object.entries(order).map(([key, value]) => `  ${key}: ${yamlText(value)}`)];
  return insert(from, lines.map((line) => `${line}${eol}${indent}`).join(""));
}

/** Keys before the first one of a group. */
function atStart(text: string, order: YAMLMap, keys: readonly (readonly [string, string])[]): Edit {
  const from = startOf(order.items[0]?.key);
  const quoted = isQuoted(order);
  const parted = order.flow === true ? ", " : `${eolOf(text)}${indentAt(text, from)}`;
  const lines = keys.map(([key, value]) => `${keyText(key, quoted)}: ${asText(value, order)}${parted}`);
  return insert(from, lines.join(""));
}

/** A key with its value behind #; in braces, where no comment can stand, taken out. */
function withoutKey(text: string, order: YAMLMap, pair: Pair): Edit {
  const [from, to] = [startOf(pair.key), Math.max(endOf(pair.key), endOf(pair.value))];
  if (order.flow === true) {
    const comma = commaAfter(text, to, (order.range?.[1] ?? text.length) - 1);
    const before = /,\s*$/u.exec(text.slice(0, from));
    if (comma === undefined && before !== null) return { from: before.index, to, text: "" };
    const next =
      comma === undefined ? to : comma + 1 + (/^\s*/u.exec(text.slice(comma + 1))?.[0].length ?? 0);
    return { from, to: next, text: "" };
  }
  const lineEnd = text.indexOf("\n", Math.max(from, to - 1));
  const end = lineEnd < 0 ? text.length : lineEnd;
  const indent = indentAt(text, from);
  const lines = text
    .slice(from, end)
    .split("\n")
    .map((line, index) => (index === 0 || !line.startsWith(indent) ? line : line.slice(indent.length)));
  return { from, to: end, text: lines.map((line) => `# ${line}`).join(`\n${indent}`) };
}

/** A drawing that lies where it lay. */
function drawingEdits(contents: YAMLMap, { movedPath }: CopyChanges): Edit[] {
  const drawing = contents.getIn(["blade", "outline", "drawing"], true);
  if (!isScalar(drawing) || typeof drawing.value !== "string") return [];
  const moved = movedPath(drawing.value);
  return moved === drawing.value ? [] : [inPlaceOf(drawing, JSON.stringify(moved))];
}

/** The line that tells editors where the schema is. */
const schemaMoved = (text: string, { movedPath }: CopyChanges): string =>
  text.replace(
    /^(#\s*yaml-language-server:\s*\$schema=)(?![a-z]+:)(\S+)/imu,
    (_, before: string, path: string) => `${before}${movedPath(path)}`,
  );

const inPlaceOf = (scalar: Scalar, text: string): Edit => {
  const [from = 0, to = 0] = scalar.range ?? [];
  const isBlock = scalar.type === "BLOCK_FOLDED" || scalar.type === "BLOCK_LITERAL";
  return { from, to, text: isBlock ? `${text}\n` : text };
};

const asText = (value: string, map: YAMLMap): string =>
  map.flow === true ? JSON.stringify(value) : yamlText(value);

const keyText = (key: string, quoted: boolean): string => (quoted ? `"${key}"` : key);

/** Whether the copy says the same as the file but for its order and its paths. */
function isCopy(before: Document.Parsed, after: Document.Parsed, changes: CopyChanges): boolean {
  if (after.errors.length > 0) return false;
  const { order, ...rest } = (after.toJS() ?? {}) as Record<string, unknown>;
  const { order: old, ...others } = before.toJS() as Record<string, unknown>;
  const { code, title } = changes;
  const type = typeof old === "object" && old !== null && "type" in old ? { type: old.type } : {};
  return (
    isDeepStrictEqual(order, { code, title, ...type }) &&
    isDeepStrictEqual(rest, withMovedDrawing(others, changes))
  );
}

function withMovedDrawing(value: unknown, { movedPath }: CopyChanges): unknown {
  return JSON.parse(JSON.stringify(value), (key, each: unknown) =>
    key === "drawing" && typeof each === "string" ? movedPath(each) : each,
  );
}
