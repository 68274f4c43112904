import { placeText } from "../drawing/drawing-issue.js";
import { reversed, withEnds } from "../drawing/ends.js";
import { type Issue, length } from "../errors/issue.js";
import { line, type Segment } from "../plane/segment.js";
import { distance, interpolate, type Vec2 } from "../plane/vec2.js";
import { closingRun } from "./drawn-runs.js";
import { emptyRuns, RUN_NAMES, type RunName } from "./outline.js";

/** Ends of a drawing this near to each other are meant to be one point, mm: finer than a pencil, or a grinder. */
export const SNAP_TOLERANCE = 0.05;

/** One run as it was drawn, in mm, in either direction. */
export interface DrawnRun {
  readonly name: RunName;
  /** Its element in the drawing. */
  readonly id: string;
  readonly segments: readonly Segment[];
}

export interface JoinedDrawing {
  readonly runs: Readonly<Record<RunName, readonly Segment[]>>;
  readonly issues: readonly Issue[];
  /** Width of each gap that was closed by moving both ends to its middle, mm. */
  readonly joined: readonly number[];
}

/**
 * Turns runs so that they follow one another and joins their ends. Ends within {@link SNAP_TOLERANCE} become one point;
 * farther apart, a run left out between them is the straight line; with none left out it is an issue.
 *
 * @param given - in the order of {@link RUN_NAMES}.
 * @param toDrawing - from mm to the drawing's own coordinates, for messages.
 */
export function joinDrawnRuns(given: readonly DrawnRun[], toDrawing: (p: Vec2) => Vec2): JoinedDrawing {
  const turned = inSequence(given);
  const runs = emptyRuns();
  const issues: Issue[] = [];
  const joined: number[] = [];
  const joints = turned.map((run, i) => {
    const next = turned[(i + 1) % turned.length] ?? run;
    const end = endOf(run);
    const start = startOf(next);
    const gap = distance(end, start);
    if (gap <= SNAP_TOLERANCE) {
      if (gap > 0) joined.push(gap);
      const middle = gap > 0 ? interpolate(end, start, 0.5) : end;
      return { end: middle, start: middle };
    }
    const closer = closingRun(namesBetween(run.name, next.name));
    if (closer === undefined) issues.push(gapIssue(run, next, gap, toDrawing));
    else runs[closer].push(line(end, start));
    return { end, start };
  });
  turned.forEach((run, i) => {
    const before = joints[(i + joints.length - 1) % joints.length];
    const after = joints[i];
    if (before !== undefined && after !== undefined) {
      runs[run.name].push(...withEnds(run.segments, before.start, after.end));
    }
  });
  return { runs, issues, joined };
}

const startOf = (run: DrawnRun): Vec2 => run.segments[0]?.from ?? { x: 0, y: 0 };
const endOf = (run: DrawnRun): Vec2 => run.segments.at(-1)?.to ?? { x: 0, y: 0 };

/** Runs left out between one run and the next, going round. */
function namesBetween(name: RunName, next: RunName): RunName[] {
  const from = RUN_NAMES.indexOf(name) + 1;
  const count = (RUN_NAMES.indexOf(next) - from + RUN_NAMES.length) % RUN_NAMES.length;
  return Array.from({ length: count }, (_, i) => RUN_NAMES[(from + i) % RUN_NAMES.length] as RunName);
}

/** Gaps where nothing is left out have to close; they weigh this much more than gaps that get a straight line. */
const MUST_MEET = 1e3;

/** Each run in the direction in which all of them together leave the least gaps: seven runs have 128 ways to lie. */
function inSequence(given: readonly DrawnRun[]): DrawnRun[] {
  const count = given.length;
  // What it costs to go from one run to the next, by which of the two are turned round: neither, first, second, both.
  const costs = given.map((run, i) => {
    const next = given[(i + 1) % count] ?? run;
    const weight = namesBetween(run.name, next.name).length === 0 ? MUST_MEET : 1;
    return [0, 1, 2, 3].map((turned) => {
      const end = turned & 1 ? startOf(run) : endOf(run);
      return weight * distance(end, turned & 2 ? endOf(next) : startOf(next));
    });
  });
  const isTurned = (choice: number, i: number): number => (choice >> (i % count)) & 1;
  let best = { choice: 0, cost: Number.POSITIVE_INFINITY };
  for (let choice = 0; choice < 2 ** count; choice++) {
    const cost = costs.reduce(
      (sum, each, i) => sum + (each[isTurned(choice, i) + 2 * isTurned(choice, i + 1)] ?? 0),
      0,
    );
    if (cost < best.cost) best = { choice, cost };
  }
  return given.map((run, i) =>
    isTurned(best.choice, i) ? { ...run, segments: reversed(run.segments) } : run,
  );
}

function gapIssue(run: DrawnRun, next: DrawnRun, gap: number, toDrawing: (p: Vec2) => Vec2): Issue {
  return {
    code: "drawing-gap",
    path: `blade.outline.runs.${next.name}`,
    text: "The {run} ({id}) ends at {end} of the drawing, and the {next} ({nextId}) starts at {start}, {gap} away. Draw them to one point.",
    values: {
      run: run.name,
      id: run.id,
      end: placeText(toDrawing(endOf(run))),
      next: next.name,
      nextId: next.id,
      start: placeText(toDrawing(startOf(next))),
      gap: length(gap),
    },
  };
}
