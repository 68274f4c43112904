import type { FileUnits } from "@scantling/geometry/units";
import type { z } from "zod";
import { type ExplainContext, explainIssues } from "./explain.js";
import { type FilePath, parsePath } from "./path.js";
import { FileError, type Position } from "./problem.js";
import { type FileTree, readTree } from "./yaml-tree.js";

/** Units that a file declares; mm until it does so rightly. */
function unitsOf(data: unknown): FileUnits {
  const given = typeof data === "object" && data !== null && "units" in data ? data.units : undefined;
  return given === "in" ? "in" : "mm";
}

/**
 * Reads a file against its declaration.
 *
 * @throws {FileError} with every problem of notation and of content.
 */
export function readShape<S extends z.ZodType>(
  text: string,
  fileName: string,
  schemaFor: (units: FileUnits) => S,
  explained: () => Omit<ExplainContext, "tree">,
): { data: z.output<S>; tree: FileTree; units: FileUnits } {
  const tree = readTree(text, fileName);
  const units = unitsOf(tree.data);
  const result = schemaFor(units).safeParse(tree.data);
  const found = result.success ? [] : explainIssues(result.error.issues, { ...explained(), tree });
  const problems = [...tree.problems, ...found];
  if (!result.success || problems.length > 0) throw new FileError(fileName, problems);
  return { data: result.data, tree, units };
}

/** Finds the place of a value by the path that issues carry; points of the spec are lists in the file. */
export function positionFinder(tree: FileTree): (path: string) => Position | undefined {
  return (path) => tree.positionOf(toFilePath(parsePath(path)));
}

const INDEX_OF_COORDINATE: Readonly<Record<string, number>> = { x: 0, y: 1 };

function toFilePath(path: FilePath): FilePath {
  return path.map((step, index) =>
    path[index - 1] === "at" && typeof step === "string" ? (INDEX_OF_COORDINATE[step] ?? step) : step,
  );
}
