import { Reading } from "./fields.js";
import { type FilePath, formatPath } from "./path.js";

/** Tolerance of one number of the spec: `path` points into it, such as `blade.thickness[1].is`. */
export interface SpecTolerance {
  readonly path: string;
  readonly plus: number;
  readonly minus: number;
}

/** A tree in which plain numbers stand for readings, and keys that were left out are not there at all. */
export type Plain<T> = T extends Reading
  ? number
  : T extends readonly (infer Item)[]
    ? Plain<Item>[]
    : T extends object
      ? { [Key in keyof T]: Plain<Exclude<T[Key], undefined>> }
      : T;

/** Takes the tolerances off a tree of readings and lists them by path. */
export function liftTolerances<T>(tree: T): { plain: Plain<T>; tolerances: SpecTolerance[] } {
  const tolerances: SpecTolerance[] = [];
  const walk = (node: unknown, path: FilePath): unknown => {
    if (node instanceof Reading) {
      const { value, plus, minus } = node;
      if (plus > 0 || minus > 0) tolerances.push({ path: formatPath(path), plus, minus });
      return value;
    }
    if (Array.isArray(node)) return node.map((item, index) => walk(item, [...path, index]));
    if (typeof node !== "object" || node === null) return node;
    return Object.fromEntries(
      Object.entries(node)
        .filter(([, value]) => value !== undefined)
        .map(([key, value]) => [key, walk(value, [...path, key])]),
    );
  };
  // The walk keeps the shape; the compiler cannot follow it through `unknown`.
  return { plain: walk(tree, []) as Plain<T>, tolerances };
}
