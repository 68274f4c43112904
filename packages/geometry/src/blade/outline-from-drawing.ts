import { type Drawing, findElement, findOnlyShape, readDrawing, strokeOf } from "../drawing/drawing.js";
import { placeText } from "../drawing/drawing-issue.js";
import { withEnds } from "../drawing/ends.js";
import { nameOf } from "../drawing/not-read.js";
import { GeometryError, SpecError } from "../errors/errors.js";
import { type Finding, type Issue, length } from "../errors/issue.js";
import type { Segment } from "../plane/segment.js";
import { type OutlineFault, validateOutline } from "../plane/validate.js";
import { distance, interpolate, type Vec2 } from "../plane/vec2.js";
import { checkOutline } from "./check-outline.js";
import { cutAtCorners, type DrawnCorners } from "./cut-drawing.js";
import { joinedNote, mirrorNote, movedNotes, pixelNote } from "./drawing-notes.js";
import { checkDrawingSpec, drawingUnit } from "./drawing-spec.js";
import { checkAgreement } from "./drawn-runs.js";
import { type DrawnRun, joinDrawnRuns, SNAP_TOLERANCE } from "./join-drawing.js";
import { type Outline, outlineOfRuns, RUN_NAMES, type RunName } from "./outline.js";
import { type DrawnFrame, outOfFrame, placeRuns } from "./place-drawing.js";
import type { DrawingOutlineSpec, TangSpec } from "./spec.js";

/** An outline read from a drawing, and what was done to it on the way. */
export interface DrawnOutline {
  readonly outline: Outline;
  /** mm on the knife for a unit of the drawing, along its x and y; left out where there is no drawing. */
  readonly unit?: Vec2;
  /** Notes: `drawing-in-pixels`, `drawing-mirrored`, `drawing-ends-joined`, `drawing-corner-moved`. */
  readonly findings: readonly Finding[];
}

const OUTLINE = "blade.outline";
/** A drawing that is wrong in more places than this is wrong as a whole. */
const MOST_ISSUES = 10;

/**
 * Builds an outline from a vector editor's SVG drawing, y turned up, the heel moved to the origin, and mirrored where the
 * tip lies to the left. Its runs are told apart by element id (drawn in either direction, ends within 0.05 mm joined), or
 * by corner points at which one closed path is cut. Scale comes from the file's own units or from two points and their
 * distance.
 *
 * Lines, cubics, and arcs of circles are kept exactly; arcs of ellipses become cubics within 1e-7 mm.
 *
 * @param ricasso - if given, has to agree with the drawing within 0.05 mm.
 * @param tang - its length, heights and drop come from the drawing; a length that is given has to agree.
 * @throws {SpecError} with everything that is wrong with the drawing, or with the outline that it makes.
 *
 * @example
 * outlineFromDrawing({
 *   drawing: `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="60mm" viewBox="0 0 300 60">
 *     <path id="a" d="M120 45 H240 Q270 45 280 25"/><path id="b" d="M280 25 L120 15"/>
 *     <path id="c" d="M120 15 H10 V40 H120"/></svg>`,
 *   runs: { edge: "a", spine: "b", tangTop: "c" },
 * }).outline.edgeLength; // 160
 */
export function outlineFromDrawing(
  spec: DrawingOutlineSpec,
  ricasso?: number,
  tang?: TangSpec,
): DrawnOutline {
  const issues = checkDrawingSpec(spec);
  if (issues.length > 0) throw new SpecError(issues);
  const drawing = collect(issues, `${OUTLINE}.drawing`, () => readDrawing(spec.drawing));
  if (drawing === undefined) throw new SpecError(issues);
  const unit = collect(issues, `${OUTLINE}.${spec.scale === undefined ? "drawing" : "scale"}`, () =>
    drawingUnit(drawing, spec.scale),
  );
  // Even without a scale the elements are looked up: all that is wrong is told at once.
  const source = new Source(drawing, unit ?? { x: 1, y: 1 }, issues);
  const cut = spec.runs !== undefined ? joinRuns(spec.runs, source) : cutPath(spec, source);
  if (issues.length > 0 || cut === undefined) throw new SpecError(issues.slice(0, MOST_ISSUES));
  const { runs, frame } = placeRuns(cut.runs);
  const outline = outlineOfRuns(runs);
  const faults = [
    ...checkOutline(outline).map((issue) => inDrawing(issue, cut, frame, source)),
    ...checkAgreement(outline, ricasso, tang, SNAP_TOLERANCE),
  ];
  if (faults.length > 0) throw new SpecError(faults.slice(0, MOST_ISSUES));
  const inPixels = spec.scale === undefined && drawing.viewport.isPx;
  const findings = [...(inPixels ? pixelNote(source.unit.x) : []), ...mirrorNote(frame), ...cut.findings];
  return { outline, unit: source.unit, findings };
}

/** A drawing with its scale, from which strokes are read; what cannot be read is added to the issues. */
class Source {
  readonly drawing: Drawing;
  readonly unit: Vec2;
  readonly issues: Issue[];

  constructor(drawing: Drawing, unit: Vec2, issues: Issue[]) {
    this.drawing = drawing;
    this.unit = unit;
    this.issues = issues;
  }

  /** From the drawing's own coordinates to mm, y up. */
  readonly toMm = ({ x, y }: Vec2): Vec2 => ({ x: x * this.unit.x, y: -y * this.unit.y });
  readonly toDrawing = ({ x, y }: Vec2): Vec2 => ({ x: x / this.unit.x, y: -y / this.unit.y });
}

interface CutOutline {
  readonly runs: Readonly<Record<RunName, readonly Segment[]>>;
  readonly findings: readonly Finding[];
  /** Element of each run, for messages. */
  elementOf(run: string): string;
  /** Key of the file that names that element. */
  pathOf(path: string): string;
}

function joinRuns(ids: NonNullable<DrawingOutlineSpec["runs"]>, source: Source): CutOutline | undefined {
  const { drawing, issues } = source;
  const given = RUN_NAMES.flatMap((name): DrawnRun[] => {
    const id = ids[name];
    if (id === undefined) return [];
    const segments = collect(issues, `${OUTLINE}.runs.${name}`, () =>
      strokeOf(drawing, findElement(drawing, id), source.unit),
    );
    const [first] = segments ?? [];
    const last = segments?.at(-1);
    if (segments === undefined || first === undefined || last === undefined) return [];
    if (distance(first.from, last.to) <= SNAP_TOLERANCE) {
      issues.push({
        code: "drawing-run-closed",
        path: `${OUTLINE}.runs.${name}`,
        text: "The element {id} is closed, and a run has two ends. Break it apart, or cut it by path and corners instead.",
        values: { id },
      });
    }
    return [{ name, id, segments }];
  });
  if (issues.length > 0) return undefined;
  const joined = joinDrawnRuns(given, source.toDrawing);
  issues.push(...joined.issues);
  return {
    runs: joined.runs,
    findings: joinedNote(joined.joined),
    elementOf: (run) =>
      RUN_NAMES.some((name) => name === run) ? (ids[run as RunName] ?? "the closing line") : "",
    pathOf: (path) => path,
  };
}

function cutPath(spec: DrawingOutlineSpec, source: Source): CutOutline | undefined {
  if (spec.corners === undefined) return undefined;
  const { drawing, issues } = source;
  const path = `${OUTLINE}.${spec.path === undefined ? "drawing" : "path"}`;
  const read = collect(issues, path, () => {
    const element = spec.path === undefined ? findOnlyShape(drawing) : findElement(drawing, spec.path);
    return { id: nameOf(element), stroke: strokeOf(drawing, element, source.unit) };
  });
  const [first] = read?.stroke ?? [];
  const last = read?.stroke.at(-1);
  if (read === undefined || first === undefined || last === undefined || issues.length > 0) return undefined;
  const gap = distance(first.from, last.to);
  if (!(gap <= SNAP_TOLERANCE)) {
    issues.push({
      code: "drawing-open",
      path,
      text: "The path {id} does not close: it starts at {start} of the drawing and ends at {end}, {gap} away. Close it in the editor.",
      values: {
        id: read.id,
        start: placeText(source.toDrawing(first.from)),
        end: placeText(source.toDrawing(last.to)),
        gap: length(gap),
      },
    });
    return undefined;
  }
  const meeting = gap > 0 ? interpolate(first.from, last.to, 0.5) : first.from;
  const corners = cornersInMm(spec.corners, source);
  const closed = withEnds(read.stroke, meeting, meeting);
  const cut = cutAtCorners(closed, corners, corners.tip.x < corners.heel.x, source.toDrawing);
  // Round a path that crosses itself there is no order of corners: that is told instead.
  if (cut.issues.length > 0) issues.push(...orElse(crossings(closed, read.id, path, source), cut.issues));
  return {
    runs: cut.runs,
    findings: [...joinedNote(gap > 0 ? [gap] : []), ...movedNotes(cut.beside)],
    elementOf: () => read.id,
    pathOf: () => path,
  };
}

const orElse = (issues: readonly Issue[], others: readonly Issue[]): readonly Issue[] =>
  issues.length > 0 ? issues : others;

function crossings(segments: readonly Segment[], id: string, path: string, source: Source): Issue[] {
  return faultsOf(segments).flatMap((fault) =>
    fault.kind !== "crossing" && fault.kind !== "overlap"
      ? []
      : {
          code: "outline-crosses-itself",
          path,
          text: "The path {elements} crosses or touches itself at {place} of the drawing. Move one side clear of the other.",
          values: { elements: id, place: placeText(source.toDrawing(fault.at)) },
        },
  );
}

function faultsOf(segments: readonly Segment[]): OutlineFault[] {
  try {
    return validateOutline({ segments, closed: true });
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error;
    // Crossings that cannot be resolved: the corners are told then, whose order was wrong as well.
    return [];
  }
}

function cornersInMm(corners: DrawnCorners, source: Source): DrawnCorners {
  const { spineStart, ...always } = corners;
  return {
    heel: source.toMm(always.heel),
    tip: source.toMm(always.tip),
    ...(spineStart === undefined ? {} : { spineStart: source.toMm(spineStart) }),
    handleTop: source.toMm(always.handleTop),
    buttTop: source.toMm(always.buttTop),
    buttBottom: source.toMm(always.buttBottom),
    handleBottom: source.toMm(always.handleBottom),
  };
}

/** Does a step; what it finds wrong is added to the issues under the key that it is about. */
function collect<T>(issues: Issue[], path: string, step: () => T): T | undefined {
  try {
    return step();
  } catch (error) {
    if (!(error instanceof SpecError)) throw error;
    issues.push(...error.issues.map((issue) => ({ ...issue, path })));
    return undefined;
  }
}

/** What is wrong with the outline, told with the elements and the place in the drawing as well. */
function inDrawing(issue: Issue, cut: CutOutline, frame: DrawnFrame, source: Source): Issue {
  const path = issue.path.startsWith(`${OUTLINE}.runs`) ? cut.pathOf(issue.path) : issue.path;
  if (issue.code === "outline-clockwise") {
    return edgeUp(path);
  }
  const { x, y, run, other } = issue.values ?? {};
  if (typeof x !== "object" || typeof y !== "object") return { ...issue, path };
  const place = placeText(source.toDrawing(outOfFrame({ x: x.value, y: y.value }, frame)));
  const names = [run, other].flatMap((name) => (typeof name === "string" ? [cut.elementOf(name)] : []));
  const elements = [...new Set(names)].join(" and ");
  return {
    ...issue,
    path,
    text: `${issue.text} In the drawing: {elements}, at {place}.`,
    values: { ...issue.values, elements, place },
  };
}

function edgeUp(path: string): Issue {
  return {
    code: "drawing-edge-up",
    path,
    text: "The edge lies above the spine in the drawing. Turn the drawing so that the edge is below, or swap the ids.",
  };
}
