import { GeometryError, SpecError } from "@scantling/geometry";
import { describeIssue } from "@scantling/geometry/units";
import { buildKnife, FileError, readKnifeFile } from "../file/index.js";

/** Why a knife file makes no knife, in sentences; none where it makes one. */
export function problemsIn(text: string): readonly string[] {
  try {
    const file = readKnifeFile(text, "knife.yaml");
    try {
      buildKnife(file.spec);
      return [];
    } catch (error) {
      if (error instanceof SpecError) return error.issues.map((issue) => describeIssue(issue, file.units));
      if (error instanceof GeometryError) return [error.message];
      throw error;
    }
  } catch (error) {
    if (error instanceof FileError) return error.problems.map(({ message }) => message);
    throw error;
  }
}
