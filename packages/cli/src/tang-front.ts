import { endTangent, type Outline, reverseSegment, type Segment } from "@scantling/geometry";
import type { PatternHeight } from "@scantling/render";

/** Places along x nearer than this are one, mm. */
const SAME_PLACE = 1e-6;
/** A curve whose direction leans from upright by less than this stands upright, rad. */
const UPRIGHT = 1e-3;

/**
 * Height of a tang at the handle front where fillets stand in the corners of its shoulders: as the file gives it, and as a
 * caliper finds it beside them. Its sides are drawn on to the handle front; undefined where there is no fillet.
 */
export function heightBesideFillets({ runs, handleFront }: Outline): PatternHeight | undefined {
  const top = sideAt(handleFront, runs.tangTop);
  const bottom = sideAt(handleFront, [...runs.tangBottom].reverse().map(reverseSegment));
  if (top === undefined || bottom === undefined || !(top.fillet || bottom.fillet)) return undefined;
  return { x: handleFront, low: bottom.y, high: top.y };
}

/** y at which a side of the tang, its segments from the handle front back, meets the handle front. */
function sideAt(front: number, side: readonly Segment[]): { y: number; fillet: boolean } | undefined {
  const [first, next] = side.filter(({ from, to }) => Math.abs(from.x - to.x) > SAME_PLACE);
  if (first === undefined) return undefined;
  const start = endTangent(first, "from");
  const upright = start !== undefined && Math.abs(start.x) < UPRIGHT * Math.abs(start.y);
  const atFront = Math.abs(first.from.x - front) < SAME_PLACE;
  if (next === undefined || first.kind === "line" || !upright || !atFront) {
    return { y: first.from.y, fillet: false };
  }
  const { from, to } = next;
  const slope = next.kind === "line" ? (to.y - from.y) / (to.x - from.x) : 0;
  return { y: from.y + slope * (front - from.x), fillet: true };
}
