import type { Measured } from "../measure.js";
import type { OrderConflicts } from "./ask-conflict.js";
import { plainConflicts } from "./plain-conflicts.js";
import { searchedConflicts } from "./searched-conflicts.js";

/**
 * What the order asks that cannot be had together: first what contradicts itself, which is known at once; where nothing does and
 * the knife as drawn does not meet all, what no usual change brings together.
 */
export function orderConflicts(measured: Measured): OrderConflicts {
  const plain = plainConflicts(measured);
  // A hardness is no figure of the shape: it says nothing of the others.
  if (plain.some(({ kind }) => kind !== "hardness"))
    return { conflicts: plain, outOfReach: [], search: "none", changed: [] };
  const searched = searchedConflicts(measured);
  return { ...searched, conflicts: [...plain, ...searched.conflicts] };
}
