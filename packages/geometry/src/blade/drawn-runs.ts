import { type Issue, length } from "../errors/issue.js";
import type { Outline, RunName } from "./outline.js";
import type { TangSpec } from "./spec.js";

/** Runs written as numbers: ends of neighbours this near to each other are the same point, mm. */
export const JOIN_TOLERANCE = 1e-6;

/** Which of the runs left out side by side gets the straight line that closes the gap. */
export function closingRun(leftOut: readonly RunName[]): RunName | undefined {
  return leftOut.find((name) => name !== "front") ?? leftOut[0];
}

/**
 * Where the rest of the description says again, and differently, what the runs already draw.
 *
 * @param tolerance - how well the runs are drawn, mm.
 */
export function checkAgreement(
  outline: Outline,
  ricasso: number | undefined,
  tang: TangSpec | undefined,
  tolerance = JOIN_TOLERANCE,
): Issue[] {
  const issues: Issue[] = [];
  const disagree = (path: string, stated: number | undefined, drawn: number, what: string): void => {
    if (stated === undefined || Math.abs(stated - drawn) <= tolerance) return;
    issues.push({
      code: "runs-disagree",
      path,
      text: `${what} is given as {stated}, but the runs draw it as {drawn}. Change one of them, or leave this out.`,
      values: { stated: length(stated), drawn: length(drawn) },
    });
  };
  disagree("blade.ricasso", ricasso, outline.ricasso, "The ricasso");
  disagree("tang.length", tang?.length, outline.handleFront - outline.butt, "The tang's length");
  for (const key of ["heights", "drop"] as const) {
    if (tang?.[key] === undefined) continue;
    issues.push({
      code: "tang-shape-twice",
      path: `tang.${key}`,
      text: "The runs already draw the tang's shape, so this would say it twice. Leave it out.",
    });
  }
  return issues;
}
