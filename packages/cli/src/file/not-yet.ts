import { type FilePath, formatPath } from "./path.js";

/** Keys that the trade would expect and that this version does not work with, by the group they would stand in. */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  blade: ["swedge", "fuller", "fullers", "microbevel"],
  "blade.bevel": ["left", "right", "apex", "wheelRadius"],
  "blade.edgeAngle": ["left", "right"],
  "blade.holes": ["to"],
  "tang.holes": ["to"],
  handle: ["form", "spacers"],
};

/** Words likewise, by the key they would be the value of. */
const WORDS: Readonly<Record<string, readonly string[]>> = {
  "blade.outline.family": [
    "cleaver",
    "clip-point",
    "spear-point",
    "trailing-point",
    "sheepsfoot",
    "tanto",
    "seax",
    "chef",
    "chefs",
    "petty",
    "boning",
    "slicer",
  ],
  "blade.bevel.form": ["hollow"],
};

/** Those that mean the same wherever they are written. */
const UNMISTAKABLE = new Set(["swedge", "fuller", "microbevel"]);

export function isKeyNotYet(group: FilePath, key: string): boolean {
  return UNMISTAKABLE.has(key) || (KEYS[withoutIndices(group)]?.includes(key) ?? false);
}

export function isWordNotYet(path: FilePath, word: unknown): boolean {
  return typeof word === "string" && (WORDS[withoutIndices(path)]?.includes(word.toLowerCase()) ?? false);
}

function withoutIndices(path: FilePath): string {
  return formatPath(path.filter((step) => typeof step === "string"));
}
