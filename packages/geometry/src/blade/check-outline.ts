import { GeometryError } from "../errors/errors.js";
import { count, type Issue, length, type QuantityValue } from "../errors/issue.js";
import { type OutlineFault, validateOutline } from "../plane/validate.js";
import type { Vec2 } from "../plane/vec2.js";
import { type Outline, type RunName, runOfSegment } from "./outline.js";

type Values = Record<string, QuantityValue | string>;
const issue = (code: string, path: string, text: string, values: Values = {}): Issue => ({
  code,
  path,
  text,
  values,
});

/**
 * Rules that a finished outline must keep however it was described: closed, simple and counter-clockwise, its edge ahead
 * of the heel and its tang behind the handle front. Says which runs cross and where.
 *
 * @example
 * checkOutline(outline); // []
 */
export function checkOutline(outline: Outline): Issue[] {
  const issues = shapeIssues(outline);
  const heel = outline.runs.edge[0]?.from;
  if (heel === undefined || heel.x !== 0 || heel.y !== 0) {
    issues.push(
      issue("edge-off-heel", runPath("edge"), "The edge has to start at the heel, which is the point 0, 0."),
    );
  }
  if (!(outline.edgeLength > 0)) {
    issues.push(
      issue(
        "edge-not-ahead",
        runPath("edge"),
        "The edge ends at x = {x}, not ahead of the heel. Draw it from the heel toward the tip, along +x.",
        {
          x: length(outline.edgeLength),
        },
      ),
    );
  }
  if (!(outline.handleFront <= 0)) {
    issues.push(
      issue(
        "handle-front-ahead-of-heel",
        runPath("spine"),
        "The spine ends at x = {x}, ahead of the heel; the handle begins there. End it at the heel or behind it.",
        {
          x: length(outline.handleFront),
        },
      ),
    );
  }
  if (!(outline.butt < outline.handleFront)) {
    issues.push(
      issue(
        "no-tang",
        runPath("tangTop"),
        "Nothing of the outline lies behind the handle front at x = {x}, so there is no tang.",
        {
          x: length(outline.handleFront),
        },
      ),
    );
  }
  return issues;
}

function shapeIssues(outline: Outline): Issue[] {
  try {
    return validateOutline(outline.path).map((fault) => describeFault(fault, outline));
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error;
    const text = "The outline cannot be checked for crossings: {reason}. Draw the two clear of each other.";
    return [issue(error.code, "blade.outline", text, { reason: error.message })];
  }
}

const runPath = (run: RunName | undefined): string =>
  run === undefined ? "blade.outline" : `blade.outline.runs.${run}`;

function describeFault(fault: OutlineFault, outline: Outline): Issue {
  const run = (index: number): RunName | undefined => runOfSegment(outline, index);
  const at = (point: Vec2): Values => ({ x: length(point.x), y: length(point.y) });
  const where = "segment" in fault ? runPath(run(fault.segment)) : "blade.outline";
  switch (fault.kind) {
    case "empty":
      return issue(
        "outline-empty",
        where,
        "The outline has no lines at all. Give at least its edge and spine.",
      );
    case "clockwise":
      return issue(
        "outline-clockwise",
        where,
        "The outline runs clockwise. Draw it from the heel along the edge to the tip and back along the spine, with y up.",
      );
    case "not-finite":
      return issue(
        "outline-not-finite",
        where,
        "A number in the run {run} is not finite. Write plain lengths.",
        { run: run(fault.segment) ?? "" },
      );
    case "zero-length":
      return issue(
        "outline-zero-length",
        where,
        "The run {run} has a piece without length at {x}, {y}. Leave it out.",
        { ...at(fault.at), run: run(fault.segment) ?? "" },
      );
    case "arc-off-its-ends":
      return issue("outline-arc", where, "An arc in the run {run} misses its own end by {gap}.", {
        run: run(fault.segment) ?? "",
        gap: length(fault.gap),
      });
    case "open":
      return issue(
        "outline-open",
        where,
        "The run {run} ends at {x}, {y}, and what follows starts {gap} away. Let each run start where the one before it ends.",
        { ...at(fault.at), run: run(fault.segment) ?? "", gap: length(fault.gap) },
      );
    case "crossing":
    case "overlap": {
      const values = {
        ...at(fault.at),
        run: run(fault.segment) ?? "",
        other: run(fault.other) ?? "",
        piece: count(fault.segment + 1),
      };
      const itself = values.run === values.other;
      const verb = fault.kind === "crossing" ? "crosses or touches" : "runs over";
      const text = `The outline ${verb} itself: ${itself ? "{run} with itself" : "{run} with {other}"}, at {x}, {y}. Move one of them clear of the other.`;
      return issue("outline-crosses-itself", where, text, values);
    }
  }
}
