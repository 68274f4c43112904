import { FINDING_LIMITS } from "./finding-limits.js";
import type { LimitEntry } from "./limit.js";
import { FORGE_LIMITS, GATE_LIMITS, MIXED_LIMITS, STOCK_LIMITS } from "./shop-limits.js";

/** A limit with the key that changes it in the shop file. */
export interface LimitRow extends LimitEntry {
  /** Such as `limits.findings.holeWall`. */
  readonly key: string;
}

/** Where the reach of a bar stands, which is a group of three. */
const REACH_KEYS: Readonly<Record<string, string>> = {
  reachEasy: "limits.reach.easy",
  reachFlatDies: "limits.reach.flatDies",
  reachFullers: "limits.reach.fullers",
};

const rows = (table: Readonly<Record<string, LimitEntry>>, prefix: string): LimitRow[] =>
  Object.entries(table).map(([name, entry]) => ({ key: REACH_KEYS[name] ?? `${prefix}.${name}`, ...entry }));

/** Every limit that decides a finding or refuses a bar, with its key, value, basis and the findings that it decides. */
export const LIMIT_TABLE: readonly LimitRow[] = [
  ...rows(FINDING_LIMITS, "limits.findings"),
  ...rows(STOCK_LIMITS, "limits"),
  ...rows(FORGE_LIMITS, "limits.forge"),
  ...rows(MIXED_LIMITS, "limits.mixed"),
  ...rows(GATE_LIMITS, "gates"),
];
