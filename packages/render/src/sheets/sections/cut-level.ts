import {
  line,
  type Path,
  parametersAtX,
  pathBounds,
  pointAt,
  type Segment,
  splitSegment,
  type Vec2,
} from "@scantling/geometry";
import { similarSegment } from "./similar.js";

/** A quarter turn clockwise: what was y is x. */
const UPRIGHT = { turn: -Math.PI / 2 } as const;
/** Pieces shorter than this in parameter are none. */
const ROUNDING = 1e-12;

/** The part of closed paths that lies below a level, mm: cut exactly, as lines, arcs and cubics. */
export interface CutPaths {
  /** What is left of the outlines, open where they were cut. */
  readonly open: readonly Path[];
  /** The same, closed along the level: the region that is left. */
  readonly region: readonly Path[];
}

/** Cuts closed paths off at a level. */
export function cutBelow(paths: readonly Path[], level: number): CutPaths {
  const open: Path[] = [];
  const region: Path[] = [];
  for (const path of paths) {
    if (pathBounds(path).maxY <= level) {
      open.push(path);
      region.push(path);
      continue;
    }
    const runs = runsBelow(path.segments, level);
    open.push(...runs.map((segments) => ({ segments, closed: false })));
    const closed = runs.flatMap((segments, i) => {
      const end = segments[segments.length - 1]?.to;
      const start = runs[(i + 1) % runs.length]?.[0]?.from;
      return end === undefined || start === undefined ? segments : [...segments, line(end, start)];
    });
    if (closed.length > 0) region.push({ segments: closed, closed: true });
  }
  return { open, region };
}

/** Connected runs of the segments that lie below the level, in order; the first and the last are joined over the start. */
function runsBelow(segments: readonly Segment[], level: number): Segment[][] {
  const runs: Segment[][] = [];
  let run: Segment[] = [];
  for (const part of segments.flatMap((segment) => partsAt(segment, level))) {
    if (pointAt(part, 0.5).y < level) {
      run.push(part);
    } else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  const [first] = runs;
  if (run.length === 0) return runs;
  const startsBelow = first !== undefined && meets(run, first);
  if (startsBelow) runs[0] = [...run, ...first];
  else runs.push(run);
  return runs;
}

const same = (a: Vec2 | undefined, b: Vec2 | undefined): boolean =>
  a !== undefined && b !== undefined && a.x === b.x && a.y === b.y;
const meets = (run: readonly Segment[], next: readonly Segment[]): boolean =>
  same(run[run.length - 1]?.to, next[0]?.from);

function partsAt(segment: Segment, level: number): Segment[] {
  const inside = parametersAtX(similarSegment(segment, UPRIGHT), level).filter(
    (t) => t > ROUNDING && t < 1 - ROUNDING,
  );
  const places = [0, ...inside, 1];
  return inside.length === 0
    ? [segment]
    : places.slice(1).map((to, i) => splitSegment(segment, places[i] ?? 0, to));
}
