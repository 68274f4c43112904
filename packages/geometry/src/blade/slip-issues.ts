import { GeometryError, SpecError } from "../errors/errors.js";
import type { Issue } from "../errors/issue.js";
import { checkNumbers } from "./check-numbers.js";
import { type Judging, judgedBy } from "./judging.js";
import { rebuildKnife } from "./knife.js";
import type { KnifeSpec } from "./spec.js";
import { type SizeSlips, sizeSlips } from "./type-findings.js";

/**
 * Slips of the pen in a knife that breaks rules, as far as it can be measured at all: a tang that stands out of its handle may be
 * no more than a thickness in the wrong unit, and that is to be told first.
 *
 * @example
 * slipIssues(spec, {}, { length: [{ times: 0.1, words: "the point put wrong" }] }); // []
 */
export function slipIssues(spec: KnifeSpec, judging: Judging, slips: SizeSlips): Issue[] {
  if (checkNumbers(spec).length > 0) return [];
  try {
    return sizeSlips({ ...rebuildKnife(spec), ...judgedBy(spec, judging) }, slips);
  } catch (error) {
    // What cannot be built cannot be measured either.
    if (error instanceof SpecError || error instanceof GeometryError) return [];
    throw error;
  }
}
