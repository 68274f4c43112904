/** Lines of a starter that are behind a #, by what stands behind them. */
const COMMENTED = /^(\s*)# ( *)(\S.*?)\s+# (default|if wanted)/u;

/** The file with the # taken off the lines of some kinds: `default` ones, and ones that may be wanted. */
export function uncommented(text: string, ...kinds: readonly ("default" | "if wanted")[]): string {
  return text
    .split("\n")
    .map((line) => {
      const [, indent = "", more = "", rest = "", kind] = COMMENTED.exec(line) ?? [];
      return kinds.some((each) => each === kind) ? `${indent}${more}${rest}` : line;
    })
    .join("\n");
}

/** How many lines of a kind a starter has. */
export const countOf = (text: string, kind: "default" | "if wanted"): number =>
  text.split("\n").filter((line) => COMMENTED.exec(line)?.[4] === kind).length;
