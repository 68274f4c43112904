import { GeometryError } from "../errors/errors.js";
import { count, type Issue, length, type QuantityValue } from "../errors/issue.js";
import { type OutlineFault, validateOutline } from "../plane/validate.js";
import type { Vec2 } from "../plane/vec2.js";
import { FAMILIES } from "./families.js";
import { edgeRise, type Landmarks, resolveLandmarks } from "./landmarks.js";
import { type Outline, type RunName, runOfSegment } from "./outline.js";
import type { LandmarkOutlineSpec, TangSpec } from "./spec.js";

type Values = Record<string, QuantityValue | string>;
const issue = (code: string, path: string, text: string, values: Values = {}): Issue => ({
  code,
  path,
  text,
  values,
});

/**
 * Rules that landmarks must keep before an outline can be built from them: finite, positive, and each within what the
 * others leave. Everything that is wrong is listed, in the order of the file.
 */
export function checkLandmarks(spec: LandmarkOutlineSpec, ricasso: number, tang: TangSpec): Issue[] {
  const sizes = checkSizes(spec, ricasso, tang);
  // Rules between landmarks mean nothing while one of them is no length at all.
  if (sizes.length > 0) return sizes;
  return [...checkUse(spec), ...checkProportions(resolveLandmarks(spec, ricasso, tang))];
}

/** A landmark that the family has no use for would be passed over in silence. */
function checkUse(spec: LandmarkOutlineSpec): Issue[] {
  if (spec.spineBreak === undefined || FAMILIES[spec.family].front === "pointed") return [];
  const text = "The spine of a {family} blade stays level to its front, so it has no break. Leave this out.";
  return [issue("spine-break-unused", "blade.outline.spineBreak", text, { family: spec.family })];
}

function checkSizes(spec: LandmarkOutlineSpec, ricasso: number, tang: TangSpec): Issue[] {
  const outline = "blade.outline";
  return [
    ...lengthRule(`${outline}.edgeLength`, spec.edgeLength, "positive"),
    ...lengthRule(`${outline}.heelHeight`, spec.heelHeight, "positive"),
    ...lengthRule(`${outline}.straightEdge`, spec.straightEdge, "zero-or-more"),
    ...lengthRule(
      `${outline}.tipHeight`,
      spec.tipHeight,
      spec.family === "vegetable" ? "positive" : "zero-or-more",
    ),
    ...lengthRule(`${outline}.spineBreak`, spec.spineBreak, "zero-or-more"),
    ...lengthRule("blade.ricasso", ricasso, "zero-or-more"),
    ...(tang.length === undefined
      ? [
          issue(
            "tang-length-missing",
            "tang.length",
            "The tang has no length. Give it from the handle front to the butt.",
          ),
        ]
      : lengthRule("tang.length", tang.length, "positive")),
    ...(["front", "middle", "butt"] as const).flatMap((place) =>
      lengthRule(`tang.heights.${place}`, tang.heights?.[place], "positive"),
    ),
    ...lengthRule("tang.drop", tang.drop, "zero-or-more"),
  ];
}

function lengthRule(path: string, value: number | undefined, sign: "positive" | "zero-or-more"): Issue[] {
  if (value === undefined) return [];
  if (!Number.isFinite(value)) {
    return [
      issue(
        "not-a-length",
        path,
        "This is not a length. Write a number, with its unit if it is not in the file's units.",
      ),
    ];
  }
  if (value < 0) {
    return [
      issue("negative-length", path, "A length of {value} is below zero. Give it as a positive length.", {
        value: length(value),
      }),
    ];
  }
  if (value === 0 && sign === "positive") {
    return [
      issue("zero-length", path, "A length of zero leaves nothing here. Give it as a positive length."),
    ];
  }
  return [];
}

function checkProportions(landmarks: Landmarks): Issue[] {
  const { edgeLength, heelHeight, straightEdge, tipHeight, spineBreak, drop, front } = landmarks;
  const issues: Issue[] = [];
  const add = (code: string, key: string, text: string, values: Record<string, number>): void => {
    const shown = Object.entries(values).map(([name, value]) => [name, length(value)] as const);
    issues.push(issue(code, key, text, Object.fromEntries(shown)));
  };
  if (straightEdge > edgeLength) {
    add(
      "straight-edge-too-long",
      "blade.outline.straightEdge",
      "The straight part of the edge, {straightEdge}, is longer than the whole edge of {edgeLength}. Shorten it, or lengthen the edge.",
      { straightEdge, edgeLength },
    );
  }
  if (tipHeight > heelHeight) {
    add(
      "tip-above-spine",
      "blade.outline.tipHeight",
      front === "square"
        ? "A front of {tipHeight} is higher than the blade at the heel, {heelHeight}, and the spine stays level. Lower the front, or raise the heel height."
        : "The tip at {tipHeight} lies above the spine at {heelHeight}, which this family does not rise to. Lower the tip, or give the outline by runs.",
      { tipHeight, heelHeight },
    );
  }
  if (
    spineBreak > edgeLength ||
    (spineBreak === edgeLength && tipHeight < heelHeight && front === "pointed")
  ) {
    add(
      "spine-break-beyond-tip",
      "blade.outline.spineBreak",
      "The spine would begin to fall at {spineBreak}, but the tip is at {edgeLength}. Let it begin before the tip.",
      { spineBreak, edgeLength },
    );
  }
  if (drop >= heelHeight) {
    add(
      "tang-drop-too-deep",
      "tang.drop",
      "A tang lowered by {drop} lies below the blade, which is {heelHeight} high. Lower it by less.",
      { drop, heelHeight },
    );
  }
  return issues.length > 0 ? issues : checkBelly(landmarks);
}

function checkBelly(landmarks: Landmarks): Issue[] {
  const { edgeLength, straightEdge, front } = landmarks;
  const rise = edgeRise(landmarks);
  const belly = edgeLength - straightEdge;
  if (rise === 0 || (front === "pointed" && belly > 0) || belly >= rise) return [];
  const needed = front === "square" ? edgeLength - rise : edgeLength;
  const values = { rise: length(rise), belly: length(belly), needed: length(Math.max(0, needed)) };
  const text =
    front === "square"
      ? needed < 0
        ? "The edge lifts by {rise}, more than the whole edge is long, so it would turn back. Raise the tip height."
        : "The edge lifts by {rise} over a belly of only {belly}, so it would turn back. Make the straight edge {needed} or shorter, or raise the tip height."
      : "The edge has to rise by {rise} but nothing is left for the belly. Make the straight edge shorter than {needed}.";
  return [issue("belly-too-short", "blade.outline.straightEdge", text, values)];
}

/**
 * Rules that a finished outline must keep however it was described: closed, simple and counter-clockwise, its edge ahead
 * of the heel and its tang behind the handle front. Says which runs cross and where.
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
