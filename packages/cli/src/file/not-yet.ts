import { type FilePath, formatPath } from "./path.js";

/** Keys that the trade would expect and that this version does not work with, by the group they would stand in. */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  handle: ["form", "spacers"],
};

export function isKeyNotYet(group: FilePath, key: string): boolean {
  return KEYS[formatPath(group.filter((step) => typeof step === "string"))]?.includes(key) ?? false;
}
