import { type FilePath, formatPath, valueAt } from "../file/path.js";
import { readTree } from "../file/yaml-tree.js";

/** Files that a plan is made from. */
export type InputFile = "knife" | "shop" | "drawing";

/** One input that is not what it was. */
export interface ChangedInput {
  readonly file: InputFile;
  /** Empty for a file that changed as a whole. */
  readonly path: FilePath;
  /** As they stand in the files; undefined where there is nothing. */
  readonly was: unknown;
  readonly is: unknown;
}

/** What is one thing to a smith, however many lines it has. */
const WHOLE: readonly string[] = ["rack"];

/** Groups whose keys mean something each by itself, so that a new group is taken apart too. */
const APART: readonly string[] = ["losses", "limits", "allowances", "tolerances", "gates", "work"];

/** Deeper than this nothing is taken apart. */
const DEEPEST = 8;

/** Inputs that differ between two texts of a file, each as near to its key as can be told. */
export function changedInputs(file: "knife" | "shop", was: string, is: string): readonly ChangedInput[] {
  if (was === is) return [];
  const [before, now] = [dataOf(was), dataOf(is)];
  // A bare number means something else in other units: nothing can be compared one by one.
  if (valueAt(before, ["units"]) !== valueAt(now, ["units"]))
    return [{ file, path: [], was: before, is: now }];
  return differences(before, now, []).map((one) => ({ file, ...one }));
}

/** What a file says, as plain data; it was read without a problem before. */
export const dataOf = (text: string): unknown => readTree(text, "").data;

type Difference = Omit<ChangedInput, "file">;

function differences(was: unknown, is: unknown, path: FilePath): readonly Difference[] {
  if (isSame(was, is)) return [];
  const whole = WHOLE.includes(formatPath(path)) || path.length >= DEEPEST;
  if (!whole && isApart(path) && (isGroup(was) || isGroup(is)) && (was === undefined || is === undefined))
    return differences(was ?? {}, is ?? {}, path);
  if (!whole && isGroup(was) && isGroup(is)) {
    const keys = [...new Set([...Object.keys(was), ...Object.keys(is)])];
    return keys.flatMap((key) => differences(was[key], is[key], [...path, key]));
  }
  if (!whole && Array.isArray(was) && Array.isArray(is) && was.length === is.length) {
    return was.flatMap((item: unknown, index) => differences(item, is[index], [...path, index]));
  }
  return [{ path, was, is }];
}

const isApart = ([top, ...rest]: FilePath): boolean =>
  typeof top === "string" && rest.length === 0 && APART.includes(top);

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * The text of a file with one of its inputs as it is now, in JSON, which is YAML too.
 *
 * @param was - What the file said.
 */
export function withInput(was: unknown, { path, is }: Pick<ChangedInput, "path" | "is">): string {
  if (path.length === 0) return JSON.stringify(is);
  const data: unknown = JSON.parse(JSON.stringify(was));
  const [top] = path;
  // A group that was not there.
  if (path.length === 2 && isGroup(data) && typeof top === "string" && data[top] === undefined)
    (data as Record<string, unknown>)[top] = {};
  const group = valueAt(data, path.slice(0, -1));
  const key = path.at(-1);
  if (Array.isArray(group) && typeof key === "number") group[key] = is;
  else if (isGroup(group) && typeof key === "string") {
    const changed = group as Record<string, unknown>;
    if (is === undefined) delete changed[key];
    else changed[key] = is;
  }
  return JSON.stringify(data);
}
