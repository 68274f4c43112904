import { GeometryError, SpecError } from "../errors/errors.js";
import { type Issue, length } from "../errors/issue.js";
import { arcBetween, line, type Segment } from "../plane/segment.js";
import { readPathData } from "../plane/svg-path.js";
import { distance, type Vec2, vec2 } from "../plane/vec2.js";
import { checkOutline } from "./check-outline.js";
import { checkAgreement, closingRun, JOIN_TOLERANCE } from "./drawn-runs.js";
import { emptyRuns, type Outline, outlineOfRuns, RUN_NAMES, type RunName } from "./outline.js";
import type { RunsOutlineSpec, TangSpec } from "./spec.js";

/**
 * Builds an outline from runs of SVG path data (mm, y up), each starting where the one before it ends.
 *
 * A run that begins with M has to begin there within 1e-6 mm, unless the run before it was left out: then the straight
 * line that closes the gap is that run. Of several left out side by side, the first gets the line; `front` never does
 * while another is left out beside it, so a blade ends in a point wherever the edge's end is the spine's start. What
 * is left out at the end closes to the heel. The handle front is where the spine ends, and the tang's length is read
 * off the outline.
 *
 * @param ricasso - if given, has to agree with the handle front within 1e-6 mm.
 * @param tang - its length, heights and drop come from the runs; a length that is given has to agree.
 * @throws {SpecError} with everything that is wrong with the runs, or with the outline that they make.
 *
 * @example
 * outlineFromRuns({
 *   runs: { edge: "M0 0 L100 0 Q150 0 160 30", spine: "L0 30", tangTop: "L-100 30", butt: "V8", tangBottom: "L0 8" },
 * }).edgeLength; // 160
 */
export function outlineFromRuns(spec: RunsOutlineSpec, ricasso?: number, tang?: TangSpec): Outline {
  const { runs, issues } = joinRuns(readRuns(spec));
  if (issues.length > 0) throw new SpecError(issues);
  const outline = outlineOfRuns(runs);
  const faults = [...checkOutline(outline), ...checkAgreement(outline, ricasso, tang)];
  if (faults.length > 0) throw new SpecError(faults);
  return outline;
}

interface GivenRun {
  readonly name: RunName;
  /** Undefined where the run is left out. */
  readonly data: string | undefined;
}

const readRuns = (spec: RunsOutlineSpec): GivenRun[] =>
  RUN_NAMES.map((name) => ({ name, data: spec.runs[name]?.trim() === "" ? undefined : spec.runs[name] }));

interface JoinedRuns {
  readonly runs: Record<RunName, Segment[]>;
  readonly issues: readonly Issue[];
}

const HEEL = vec2(0, 0);
const runPath = (name: RunName): string => `blade.outline.runs.${name}`;

function joinRuns(given: readonly GivenRun[]): JoinedRuns {
  const runs = emptyRuns();
  const issues: Issue[] = [];
  let leftOut: RunName[] = [];
  let pen: Vec2 = HEEL;
  for (const { name, data } of given) {
    if (data === undefined) {
      leftOut.push(name);
      continue;
    }
    const read = readRun(name, data, pen, issues);
    if (read === undefined) return { runs, issues };
    const gap = distance(pen, read.start);
    if (gap > JOIN_TOLERANCE) {
      const closer = closingRun(leftOut);
      if (closer === undefined) issues.push(gapIssue(name, pen, read.start, gap));
      else runs[closer].push(line(pen, read.start));
      runs[name].push(...read.segments);
    } else {
      runs[name].push(...startAt(read.segments, pen));
    }
    leftOut = [];
    pen = runs[name].at(-1)?.to ?? read.end;
  }
  closeToHeel(runs, pen, leftOut, issues);
  return { runs, issues };
}

/** Reads one run; an unreadable one is reported, and nothing after it can be placed. */
function readRun(
  name: RunName,
  data: string,
  pen: Vec2,
  issues: Issue[],
): ReturnType<typeof readPathData> | undefined {
  try {
    return readPathData(data, pen);
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error;
    issues.push({
      code: error.code,
      path: runPath(name),
      text: "The run {run} cannot be read: {reason}. Write one connected stroke of SVG path data.",
      values: { run: name, reason: error.message },
    });
    return undefined;
  }
}

function closeToHeel(
  runs: Record<RunName, Segment[]>,
  pen: Vec2,
  leftOut: readonly RunName[],
  issues: Issue[],
): void {
  const gap = distance(pen, HEEL);
  if (gap === 0) return;
  const closer = closingRun(leftOut);
  if (closer !== undefined && gap > JOIN_TOLERANCE) {
    runs[closer].push(line(pen, HEEL));
    return;
  }
  if (gap > JOIN_TOLERANCE) {
    issues.push(gapIssue("heelFace", pen, HEEL, gap));
    return;
  }
  const last = [...RUN_NAMES].reverse().find((name) => runs[name].length > 0);
  if (last !== undefined) runs[last] = endAt(runs[last], HEEL);
}

function gapIssue(run: RunName, pen: Vec2, point: Vec2, gap: number): Issue {
  const values = { x: length(pen.x), y: length(pen.y), gap: length(gap) };
  const heel = point === HEEL;
  return {
    code: "runs-gap",
    path: runPath(run),
    text: heel
      ? "The last run ends at {x}, {y}, which is {gap} from the heel. End it at 0, 0, or leave heelFace out and it is drawn straight."
      : "This run starts {gap} away from {x}, {y}, where the run before it ends. Start it there, or leave out its M.",
    values,
  };
}

/** The same segments with the first start moved to `point`, at most the joining tolerance away. */
function startAt(segments: readonly Segment[], point: Vec2): Segment[] {
  return segments.map((segment, i) => (i === 0 ? between(segment, point, segment.to) : segment));
}

function endAt(segments: readonly Segment[], point: Vec2): Segment[] {
  return segments.map((segment, i) =>
    i === segments.length - 1 ? between(segment, segment.from, point) : segment,
  );
}

function between(segment: Segment, from: Vec2, to: Vec2): Segment {
  return segment.kind === "arc" ? arcBetween(from, to, segment.sweep) : { ...segment, from, to };
}
