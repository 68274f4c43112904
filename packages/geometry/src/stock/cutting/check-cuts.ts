import { count, type Issue, length, type QuantityValue } from "../../errors/issue.js";
import type { CutRequest } from "./cut-types.js";

const isLength = (value: number): boolean => value > 0 && Number.isFinite(value);
const isCount = (value: number): boolean => Number.isInteger(value) && value >= 1;

/**
 * What has to hold of a request before it can be cut; every problem, in its order.
 *
 * @example
 * checkCuts({ pieces: [{ order: "A-1", length: 0, count: 1 }], bars: [], kerf: 1.5, minKeep: 75 });
 * // [{ code: "not-positive", path: "pieces[0].length", … }]
 */
export function checkCuts({ pieces, bars, kerf, minKeep }: CutRequest): Issue[] {
  const issues: Issue[] = [];
  const ask = (holds: boolean, code: string, path: string, text: string, value: QuantityValue): void => {
    if (!holds) issues.push({ code, path, text, values: { value } });
  };
  const askLength = (path: string, value: number): void =>
    ask(isLength(value), "not-positive", path, "{value} has to be more than nothing.", length(value));
  const askCount = (path: string, value: number): void =>
    ask(isCount(value), "not-a-count", path, "{value} has to be a whole number, 1 or more.", count(value));
  const askNotNegative = (path: string, value: number): void =>
    ask(
      value >= 0 && Number.isFinite(value),
      "length-negative",
      path,
      "A length cannot be {value}.",
      length(value),
    );
  pieces.forEach((piece, i) => {
    askLength(`pieces[${i}].length`, piece.length);
    askCount(`pieces[${i}].count`, piece.count);
  });
  bars.forEach((bar, i) => {
    if (bar.length !== undefined) askLength(`bars[${i}].length`, bar.length);
    if (bar.count !== undefined) askCount(`bars[${i}].count`, bar.count);
  });
  askNotNegative("kerf", kerf);
  askNotNegative("minKeep", minKeep);
  return issues;
}
