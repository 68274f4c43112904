import { MATERIAL_TO_FIND } from "@scantling/geometry";
import { formatPath, type NewPart, type NewSize, parsePath } from "../file/index.js";
import { valueAt } from "../file/path.js";

/** What is written with as many digits as a tool shows is the same when it is read, to this share. */
const SAME = 1e-7;

/** Whether two descriptions are the same but for sizes that have their new values, and a part that came to the handle. */
export function sameButFor(
  before: unknown,
  after: unknown,
  sizes: readonly NewSize[],
  part: NewPart | undefined,
): boolean {
  const wanted = new Map(sizes.map(({ path, value }) => [path, value]));
  const isNear = (value: unknown, size: number): boolean =>
    typeof value === "number" && Math.abs(value - size) <= SAME * Math.max(1e-3, Math.abs(size));
  const walk = (was: unknown, is: unknown, path: readonly (string | number)[]): boolean => {
    const place = formatPath(path);
    const size = wanted.get(place);
    if (size !== undefined) return isNear(is, size);
    const density = wanted.get(`${place}.density`);
    if (density !== undefined)
      return isGroup(is) && is.name === MATERIAL_TO_FIND && isNear(is.density, density);
    if (!isGroup(was) && !isGroup(is)) return was === is;
    if (part !== undefined && isGroup(is) && is.name === part.name) return isNear(is.mass, part.mass);
    // A new key, a handle or a list of parts that was not there.
    const [old, now] = [isGroup(was) ? was : {}, isGroup(is) ? is : {}];
    if (was !== undefined && is !== undefined && isGroup(was) !== isGroup(is)) return false;
    const keys = [...new Set([...Object.keys(old), ...Object.keys(now)])];
    const step = (key: string): string | number => (Array.isArray(was ?? is) ? Number(key) : key);
    return keys.every((key) => walk(old[key], now[key], [...path, step(key)]));
  };
  const parts = valueAt(after, ["handle", "parts"]);
  const isAdded = part === undefined || (Array.isArray(parts) && parts.at(-1)?.name === part.name);
  const areSet = [...wanted].every(([path, value]) => isNear(valueAt(after, parsePath(path)), value));
  return isAdded && areSet && walk(before, after, []);
}

interface Group {
  readonly [key: string]: unknown;
  readonly name?: unknown;
  readonly density?: unknown;
  readonly mass?: unknown;
}

const isGroup = (node: unknown): node is Group => typeof node === "object" && node !== null;
