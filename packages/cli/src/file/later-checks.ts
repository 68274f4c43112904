import type { MaterialSpec } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { Rename } from "./explain.js";
import { type KnifeMaterials, MATERIAL_PARTS, materialIssues, slipsOf } from "./knife-issues.js";
import type { knifeSchema } from "./knife-schema.js";
import { liftTolerances } from "./lift.js";
import { type FilePath, formatPath, parsePath, valueAt } from "./path.js";
import { placeIssues } from "./place-issues.js";
import type { Problem } from "./problem.js";
import { type LaterFindings, positionFinder, type ShapeFailure } from "./read-shape.js";

/** What is looked at only in a file whose keys and values are right. */
export const SHAPE_CHECKS = "outline, stations, holes";

/** What is looked at only where an outline can be drawn and every number is one. */
export const BUILT_CHECKS = "holes, handle and bevels on the outline";

/** An angle that the file gets wrong does not decide where a hole lies; this stands in for it. */
const EDGE_ANGLE = { path: ["blade", "edgeAngle"], standIn: "15 deg" } as const;

/**
 * What is wrong with a knife beside the keys and values that are wrong already. Materials are always looked at. The
 * shape is where all that is known to be wrong can be put right without guessing a size: a key with one letter too
 * many, an angle that is a length. Everything else would bring false alarms, so there it is said that more may come.
 */
export function laterKnifeChecks(
  failure: ShapeFailure,
  schemaFor: (units: FileUnits) => ReturnType<typeof knifeSchema>,
): LaterFindings {
  const { tree, units, problems, renames } = failure;
  const { data, complete } = putRight(tree.data, problems, renames);
  const position = positionFinder(tree);
  const placed = {
    fileName: tree.fileName,
    // What stands under a wrong name is told there.
    positionOf: (path: string) =>
      position(
        renames.reduce((text, { from, to }) => withPrefix(text, formatPath(to), formatPath(from)), path),
      ),
  };
  const shape = complete ? schemaFor(units).safeParse(data) : undefined;
  // A drawing is not read yet here, so there is no shape to look at.
  if (shape?.success !== true || "drawing" in shape.data.blade.outline) {
    const issues = materialIssues(materialsIn(data)).filter(({ path }) => isSound(path, problems));
    return { problems: placeIssues(issues, placed, units), notReached: SHAPE_CHECKS };
  }
  const {
    scantling: _version,
    units: _units,
    order: _order,
    stack: _stack,
    quote: _quote,
    accept: _accept,
    ...knife
  } = shape.data;
  const { issues, hidesMore } = slipsOf(liftTolerances(knife).plain);
  return {
    problems: placeIssues(issues, placed, units),
    ...(hidesMore ? { notReached: BUILT_CHECKS } : {}),
  };
}

/** The data with what is wrong in it put right or taken out, and whether nothing that decides a size was taken out. */
function putRight(
  given: unknown,
  problems: readonly Problem[],
  renames: readonly Rename[],
): { data: unknown; complete: boolean } {
  const data: unknown = structuredClone(given);
  const renamed = renames.filter(({ from, to }) => move(data, from, to)).map(({ from }) => formatPath(from));
  let complete = true;
  for (const { path, code } of problems) {
    const missingVersion = path === "scantling" && code === "missing";
    if (missingVersion) put(data, ["scantling"], 1);
    else if (path === "order" || path.startsWith("order.")) take(data, ["order"]);
    else if (path === "quote" || path.startsWith("quote.")) take(data, ["quote"]);
    else if (path.startsWith(formatPath(EDGE_ANGLE.path))) put(data, EDGE_ANGLE.path, EDGE_ANGLE.standIn);
    else if (code !== "duplicate-key" && !renamed.includes(path)) complete = false;
  }
  return { data, complete };
}

function groupOf(data: unknown, path: FilePath): Record<string, unknown> | undefined {
  const group = valueAt(data, path.slice(0, -1));
  return typeof group === "object" && group !== null && !Array.isArray(group)
    ? (group as Record<string, unknown>)
    : undefined;
}

/** Moves a value to the key that was meant; not where that key is there already or its group is not. */
function move(data: unknown, from: FilePath, to: FilePath): boolean {
  const target = groupOf(data, to);
  const key = to.at(-1);
  if (target === undefined || typeof key !== "string" || Object.hasOwn(target, key)) return false;
  target[key] = valueAt(data, from);
  take(data, from);
  return true;
}

function put(data: unknown, path: FilePath, value: unknown): void {
  const group = groupOf(data, path);
  const key = path.at(-1);
  if (group !== undefined && typeof key === "string") group[key] = value;
}

function take(data: unknown, path: FilePath): void {
  const group = groupOf(data, path);
  const key = path.at(-1);
  if (group !== undefined && typeof key === "string") delete group[key];
}

function materialsIn(data: unknown): KnifeMaterials {
  const read = (path: string): MaterialSpec | undefined => {
    const value = valueAt(data, parsePath(path));
    const named = typeof value === "object" && value !== null && !Object.hasOwn(value, "density");
    const name = named ? valueAt(value, ["name"]) : value;
    return typeof name === "string" || typeof name === "number" ? { name: String(name).trim() } : undefined;
  };
  const steel = read("steel");
  const parts = MATERIAL_PARTS.flatMap((part) => {
    const material = read(`handle.${part}.material`);
    return material === undefined ? [] : [[part, material] as const];
  });
  return { ...(steel === undefined ? {} : { steel }), ...Object.fromEntries(parts) };
}

/** Whether nothing is wrong with how a material is written. */
function isSound(path: string, problems: readonly Problem[]): boolean {
  return problems.every((problem) => problem.path !== path && !problem.path.startsWith(`${path}.`));
}

function withPrefix(path: string, prefix: string, other: string): string {
  const rest = path.slice(prefix.length);
  return path.startsWith(prefix) && /^(?:[.[]|$)/u.test(rest) ? other + rest : path;
}
