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
 * The same description with one number moved. At a path to stations all of them move together.
 *
 * @param by - mm, g, rad or g/mm³, as the number itself.
 */
export function changedAt(spec: KnifeSpec, path: string, by: number): KnifeSpec {
  return change(spec as unknown as Node, keysOf(path), by) as unknown as KnifeSpec;
}

function change(node: unknown, keys: readonly string[], by: number): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) {
    if (typeof node === "number") return node + by;
    if (Array.isArray(node)) return node.map((station: StationSpec) => ({ ...station, is: station.is + by }));
    return node;
  }
  if (Array.isArray(node)) return node.map((item, i) => (String(i) === key ? change(item, rest, by) : item));
  if (typeof node !== "object" || node === null) return node;
  const record = node as Record<string, unknown>;
  return { ...record, [key]: change(record[key], rest, by) };
}
