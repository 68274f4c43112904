import { REPORT_WIDTH } from "./layout.js";

/** Blanks between two tables that stand beside each other. */
const GAP = 3;

/**
 * Two tables side by side, or one below the other with a blank line between where they are too wide for that.
 *
 * @example
 * beside(["a", "bb"], ["c"]); // ["a    c", "bb"]
 */
export function beside(left: readonly string[], right: readonly string[], width = REPORT_WIDTH): string[] {
  const wide = Math.max(0, ...left.map((line) => line.length)) + GAP;
  if (wide + Math.max(0, ...right.map((line) => line.length)) > width) return [...left, "", ...right];
  return Array.from({ length: Math.max(left.length, right.length) }, (_, i) =>
    `${(left[i] ?? "").padEnd(wide)}${right[i] ?? ""}`.trimEnd(),
  );
}
