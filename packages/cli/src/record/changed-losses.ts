import type { Banded, LossSpec } from "@scantling/geometry";

/** Names of losses that differ between two shops, in the order of the file. */
export function changedLosses(was: Partial<LossSpec>, is: Partial<LossSpec>): readonly (keyof LossSpec)[] {
  const keys = Object.keys(is) as (keyof LossSpec)[];
  return keys.filter((key) => !isSame(was[key], is[key]));
}

/** Shares and mm are written to a millionth. */
const SAME = 1e-6;

function isSame(a: Banded | string | undefined, b: Banded | string | undefined): boolean {
  if (typeof a !== "object" || typeof b !== "object") return a === b;
  return (["value", "low", "high"] as const).every((side) => Math.abs(a[side] - b[side]) <= SAME);
}
