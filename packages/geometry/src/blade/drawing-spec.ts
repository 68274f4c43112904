import type { Drawing } from "../drawing/drawing.js";
import { drawingError } from "../drawing/drawing-issue.js";
import type { Issue } from "../errors/issue.js";
import type { Vec2 } from "../plane/vec2.js";
import type { DrawingOutlineSpec } from "./spec.js";

/** Rules for how a drawing is said to be read, before it is looked into. */
export function checkDrawingSpec(spec: DrawingOutlineSpec): Issue[] {
  const issues: Issue[] = [];
  const add = (
    code: string,
    key: string,
    text: string,
    values: Readonly<Record<string, string>> = {},
  ): void => {
    issues.push({ code, path: `blade.outline${key}`, text, values });
  };
  const { runs, path, corners, scale } = spec;
  if (runs !== undefined && (path !== undefined || corners !== undefined)) {
    add(
      "drawing-cut-twice",
      ".runs",
      "The runs are told apart by id here, so path and corners say it again. Leave them out.",
    );
  } else if (runs === undefined && corners === undefined) {
    add(
      "drawing-cut-missing",
      "",
      "Nothing says which line of the drawing is which. Add runs: { edge: id, spine: id, … }, or corners: { heel: [x, y], tip: [x, y], … } of one closed path.",
    );
  }
  if (runs !== undefined && runs.edge === undefined) {
    add("drawing-edge-missing", ".runs", "The edge has no id, and it cannot be left out. Add edge: id.");
  }
  const named = Object.entries(runs ?? {});
  named.forEach(([name, id], i) => {
    const [first] = named.find(([, other], j) => j < i && other === id) ?? [];
    if (first === undefined) return;
    const text =
      "The element {id} is the {first} already, and cannot be the {name} too. Break it apart in the editor, or use path and corners.";
    add("drawing-id-for-two-runs", `.runs.${name}`, text, { id: id ?? "", first, name });
  });
  const points = [
    ...Object.entries(corners ?? {}).map(([key, point]) => [`.corners.${key}`, point] as const),
    ...(scale === undefined
      ? []
      : ([
          [".scale.from", scale.from],
          [".scale.to", scale.to],
        ] as const)),
  ];
  for (const [key, point] of points) {
    if (point === undefined || (Number.isFinite(point.x) && Number.isFinite(point.y))) continue;
    add("drawing-point", key, "This is not a point of the drawing. Write two plain numbers, [x, y].");
  }
  if (scale !== undefined && !(scale.is > 0 && Number.isFinite(scale.is))) {
    add(
      "drawing-scale-distance",
      ".scale.is",
      "The distance of the two points has to be a length above zero.",
    );
  }
  return issues;
}

/**
 * mm per unit of a drawing along x and y: its own, or by two points whose distance on the knife is known.
 *
 * @throws {SpecError} `drawing-no-scale`, `drawing-scale-points`
 */
export function drawingUnit({ viewport }: Drawing, scale: DrawingOutlineSpec["scale"]): Vec2 {
  const { unit, unscaled } = viewport;
  if (scale === undefined) {
    if (unscaled !== undefined) throw unscaled;
    return unit;
  }
  const apart = Math.hypot((scale.to.x - scale.from.x) * unit.x, (scale.to.y - scale.from.y) * unit.y);
  if (!(apart > 0)) {
    throw drawingError(
      "drawing-scale-points",
      "The two points that give the scale are one and the same. Give two points far apart, and their distance on the knife.",
    );
  }
  const factor = scale.is / apart;
  return { x: unit.x * factor, y: unit.y * factor };
}
