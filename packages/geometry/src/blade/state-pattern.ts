import type { Path } from "../plane/path.js";
import { line, type Segment, translateSegment } from "../plane/segment.js";
import { forgedOutline } from "./forged-outline.js";
import type { Knife } from "./knife.js";
import type { Side } from "./knife-faces.js";
import { emptyRuns, type Outline, outlineOfRuns, RUN_NAMES } from "./outline.js";
import { type PatternGeometry, patternGeometry } from "./pattern-geometry.js";
import type { PieceState } from "./weigh-state.js";

/** What a pattern of a size state shows, with the outline's own runs; mm, from the heel of that state. */
export interface StatePattern extends PatternGeometry {
  /** The outline that is drawn, with its runs told apart. */
  readonly drawn: Outline;
  /** How far its heel lies below the finished one, mm. */
  readonly below: number;
  /** The finished outline inside it; left out where it is the outline itself. */
  readonly finished?: Path;
}

/**
 * Curves, holes and stations of the knife in a size state that can be held in hand, for drawing. The forged outline has its
 * allowances along the sides and at the ends, and stands on its own heel: everything is `outline` higher than in the
 * finished knife's frame. Its bevel line is where the hammer makes one, and nothing is drilled yet.
 *
 * @param side - The face whose bevel line is drawn.
 *
 * @example
 * const { drawn, below } = statePattern(knife, "forged");
 * below; // 1.5
 * drawn.edgeLength; // 103, the tip's allowance of 3 with it
 */
export function statePattern(knife: Knife, state: PieceState, side: Side = "right"): StatePattern {
  const geometry = patternGeometry(knife, state, side);
  if (state !== "forged") return { ...geometry, drawn: knife.outline, below: 0 };
  const below = knife.allowances.outline;
  const drawn = raised(forgedOutline(knife.outline, knife.allowances), below);
  return {
    drawn,
    below,
    outline: drawn.path,
    finished: { ...knife.outline.path, segments: lifted(knife.outline.path.segments, below) },
    bevelLine: forgedBevelLine(knife, geometry.bevelLine, below),
    // Neither ground nor drilled, and no handle on it.
    fullers: [],
    fittings: [],
    holes: [],
    stations: geometry.stations.map((station) => ({ ...station, top: station.top + 2 * below })),
  };
}

const lifted = (segments: readonly Segment[], by: number): Segment[] =>
  segments.map((segment) => translateSegment(segment, 0, by));

function raised(outline: Outline, by: number): Outline {
  const runs = emptyRuns();
  for (const name of RUN_NAMES) runs[name].push(...lifted(outline.runs[name], by));
  return outlineOfRuns(runs);
}

/** The plunge and, where the bevel is hammered to it or left from the hammer, the bevel line. */
function forgedBevelLine(
  knife: Knife,
  bevelLine: PatternGeometry["bevelLine"],
  by: number,
): (readonly Segment[])[] {
  const to = knife.finish.bevels === "forged" ? "line" : knife.allowances.forgedBevel;
  if (to === "none") return [];
  const body = knife.body("forged");
  return bevelLine
    .filter((run) => to === "line" || run.every(isUpright))
    .map((run) => {
      const [plunge] = run;
      if (run.length !== 1 || plunge === undefined || !isUpright(plunge)) return lifted(run, by);
      // A plunge crosses the strips too: from the lower rim, and up to the upper one where it reached the spine.
      const { from, to: end } = plunge;
      const reachesSpine =
        end.y >= (body.footprint.topAt(from.x + BESIDE) ?? Number.POSITIVE_INFINITY) - BESIDE;
      return [line(from, { x: end.x, y: end.y + (reachesSpine ? 2 * by : by) })];
    });
}

/** Where the outline steps it is read this little ahead, mm. */
const BESIDE = 1e-6;

const isUpright = ({ from, to }: Segment): boolean => from.x === to.x;
