import type { KnifeSpec, StationSpec } from "./spec.js";

type Node = { readonly [key: string]: unknown } | readonly unknown[];

const keysOf = (path: string): string[] => path.split(/[.[\]]+/).filter((key) => key !== "");

/** What stands at a path such as `blade.thickness[1].is`; undefined where there is nothing. */
export function readAt(spec: KnifeSpec, path: string): unknown {
  let node: unknown = spec;
  for (const key of keysOf(path)) {
    if (typeof node !== "object" || node === null) return undefined;
    node = (node as Record<string, unknown>)[key];
  }
  return node;
}

/**
 * The same description with one number moved. At a path to stations all of them move together. What does not lie on the way
 * stays the very same object, so that a change can be told from what it left alone.
 *
 * @param by - mm, g, rad or g/mm³, as the number itself.
 * @param least - what is no less than this stays no less.
 */
export function changedAt(
  spec: KnifeSpec,
  path: string,
  by: number,
  least = Number.NEGATIVE_INFINITY,
): KnifeSpec {
  const moved = (value: number): number => (value >= least ? Math.max(least, value + by) : value + by);
  return change(spec as unknown as Node, keysOf(path), moved) as unknown as KnifeSpec;
}

function change(node: unknown, keys: readonly string[], moved: (value: number) => number): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) {
    if (typeof node === "number") return moved(node);
    if (Array.isArray(node))
      return node.map((station: StationSpec) => ({ ...station, is: moved(station.is) }));
    return node;
  }
  if (Array.isArray(node))
    return node.map((item, i) => (String(i) === key ? change(item, rest, moved) : item));
  if (typeof node !== "object" || node === null) return node;
  const record = node as Record<string, unknown>;
  return Object.hasOwn(record, key) ? { ...record, [key]: change(record[key], rest, moved) } : node;
}

/**
 * The same description with something put at a path; a last key that was not there is added to its group. What does not lie on
 * the way stays the very same object.
 */
export function withValueAt(spec: KnifeSpec, path: string, value: unknown): KnifeSpec {
  return put(spec, keysOf(path), value) as KnifeSpec;
}

function put(node: unknown, [key, ...rest]: readonly string[], value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(node)) return node.map((item, i) => (String(i) === key ? put(item, rest, value) : item));
  if (typeof node !== "object" || node === null) return node;
  const record = node as Record<string, unknown>;
  return { ...record, [key]: put(record[key], rest, value) };
}
