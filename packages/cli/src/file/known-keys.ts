import type { JsonSchema } from "./json-schema.js";
import type { FilePath } from "./path.js";

/** Keys that may stand in the group at `path`; of all its forms where it has several. */
export function keysAt(schema: JsonSchema, path: FilePath): string[] {
  let here: JsonSchema[] = branches(schema);
  for (const step of path) {
    here = here.flatMap((node) => {
      const next = typeof step === "number" ? itemsOf(node) : node.properties?.[step];
      return next === undefined ? [] : branches(next);
    });
  }
  return [...new Set(here.flatMap((node) => Object.keys(node.properties ?? {})))];
}

/** Every group that knows this key, as a path without indices: `["blade.bevel"]` for `edgeThickness`. */
export function groupsOf(schema: JsonSchema, key: string): string[] {
  const found = new Set<string>();
  const walk = (node: JsonSchema, path: string): void => {
    for (const branch of branches(node)) {
      for (const [name, inner] of Object.entries(branch.properties ?? {})) {
        if (name === key) found.add(path);
        walk(inner, path === "" ? name : `${path}.${name}`);
      }
      const items = itemsOf(branch);
      if (items !== undefined) walk(items, path);
    }
  };
  walk(schema, "");
  return [...found];
}

function branches(schema: JsonSchema): JsonSchema[] {
  return schema.anyOf === undefined ? [schema] : schema.anyOf.flatMap(branches);
}

function itemsOf(schema: JsonSchema): JsonSchema | undefined {
  const { items } = schema;
  return Array.isArray(items) ? items[0] : (items as JsonSchema | undefined);
}
