import type { FileUnits } from "@scantling/geometry/units";
import type { z } from "zod";
import { type ExplainContext, type Explained, explainIssues, type Rename } from "./explain.js";
import { gatherFractions } from "./gather-fractions.js";
import { type FilePath, parsePath } from "./path.js";
import { FileError, type Position, type Problem } from "./problem.js";
import { type FileTree, readTree } from "./yaml-tree.js";

/** Units that a file declares; mm until it does so rightly. */
function unitsOf(data: unknown): FileUnits {
  const given = typeof data === "object" && data !== null && "units" in data ? data.units : undefined;
  return given === "in" ? "in" : "mm";
}

/** A file that does not hold to its declaration, as far as it could be read. */
export interface ShapeFailure {
  readonly tree: FileTree;
  readonly units: FileUnits;
  readonly problems: readonly Problem[];
  readonly renames: readonly Rename[];
}

/** What else was found in such a file. */
export interface LaterFindings {
  readonly problems: readonly Problem[];
  /** What could not be looked at. */
  readonly notReached?: string;
}

/** How a kind of file is declared, and what else is looked at where it does not hold to that. */
export interface ShapeRules<S extends z.ZodType> {
  readonly schemaFor: (units: FileUnits) => S;
  /** For explaining what is wrong; asked for only then. */
  readonly explained: () => Omit<ExplainContext, "tree">;
  readonly later?: (failure: ShapeFailure) => LaterFindings;
  /** What is wrong where the whole file is of another kind; of all its keys that do not belong there nothing is said then. */
  readonly otherKind?: (keys: ReadonlySet<string>) => Pick<Problem, "code" | "message"> | undefined;
}

/**
 * Reads a file against its declaration.
 *
 * @throws {FileError} with every problem of notation and of content.
 */
export function readShape<S extends z.ZodType>(
  text: string,
  fileName: string,
  rules: ShapeRules<S>,
): { data: z.output<S>; tree: FileTree; units: FileUnits } {
  const tree = readTree(text, fileName);
  const units = unitsOf(tree.data);
  const result = rules.schemaFor(units).safeParse(tree.data);
  const found: Explained = result.success
    ? { problems: [], renames: [] }
    : explainIssues(result.error.issues, { ...rules.explained(), tree });
  const problems = [...tree.problems, ...gatherFractions(found.problems, tree)];
  if (result.success && problems.length === 0) return { data: result.data, tree, units };
  const other = rules.otherKind?.(new Set(keysOf(tree.data)));
  if (other !== undefined) {
    throw new FileError(fileName, [{ ...other, file: fileName, path: "", line: 1, column: 1 }]);
  }
  const later = rules.later?.({ tree, units, problems, renames: found.renames });
  throw new FileError(fileName, [...problems, ...(later?.problems ?? [])], later?.notReached);
}

const keysOf = (data: unknown): string[] =>
  typeof data === "object" && data !== null ? Object.keys(data) : [];

/** Finds the place of a value by the path that issues carry; points of the spec are lists in the file. */
export function positionFinder(tree: FileTree): (path: string) => Position | undefined {
  return (path) => tree.positionOf(toFilePath(parsePath(path)));
}

/** Keys of points. */
const POINTS = new Set<string | number>(["at", "from", "to"]);

const INDEX_OF_COORDINATE: Readonly<Record<string, number>> = { x: 0, y: 1 };

function toFilePath(path: FilePath): FilePath {
  return path.map((step, index) => {
    const isOfPoint = POINTS.has(path[index - 1] ?? "") && typeof step === "string";
    return isOfPoint ? (INDEX_OF_COORDINATE[step] ?? step) : step;
  });
}
