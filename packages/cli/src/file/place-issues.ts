import type { Issue } from "@scantling/geometry";
import { describeIssue, type FileUnits } from "@scantling/geometry/units";
import { formatPath, parsePath, pathWords, withPathWords } from "./path.js";
import type { Position, Problem } from "./problem.js";

/** A file that was read, as far as finding places in it goes. */
export interface PlacedFile {
  readonly fileName: string;
  positionOf(path: string): Position | undefined;
}

/**
 * Issues that geometry found, each at its place in the file: that of the value itself, or of the nearest group
 * around it that the file has.
 *
 * @param units - Units to show numbers in.
 */
export function placeIssues(issues: readonly Issue[], file: PlacedFile, units: FileUnits): Problem[] {
  return issues.map((issue) => {
    const position = nearestPosition(issue.path, file);
    const text = withPathWords(describeIssue(issue, units));
    return {
      code: issue.code,
      file: file.fileName,
      path: issue.path,
      line: position?.line,
      column: position?.column,
      message: issue.path === "" ? text : `${pathWords(parsePath(issue.path))}: ${text}`,
    };
  });
}

/** Where a value stands, or the nearest group around it that the file has. */
export function nearestPosition(path: string, file: PlacedFile): Position | undefined {
  const steps = parsePath(path);
  for (let length = steps.length; length > 0; length--) {
    const position = file.positionOf(formatPath(steps.slice(0, length)));
    if (position !== undefined) return position;
  }
  return undefined;
}
