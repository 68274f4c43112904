import type { Outline } from "../blade/outline.js";
import { longSide, type Stretch } from "../blade/rounded-slab.js";
import type { Path } from "../plane/path.js";
import { closedThrough, piecesBetween } from "./clip-x.js";
import { freeEnds } from "./free-ends.js";

/**
 * Outlines of a slab as it will be shaped, from the front back: more than one where a fitting parts it. Shoulders upright at
 * the handle front are the blade's, not the slab's.
 *
 * @param fittings - Bolsters, guard and pommel, which take its place.
 */
export function slabPieces(outline: Outline, fittings: readonly Stretch[]): Path[] {
  const { tangTop, butt, tangBottom } = outline.runs;
  const whole = closedThrough([...longSide(tangTop), ...butt, ...longSide(tangBottom)]);
  return freeStretches(outline, fittings).map(({ rear, front }) =>
    closedThrough(piecesBetween(whole.segments, rear, front)),
  );
}

/** The stretches of the tang that slabs cover, from the front back. */
function freeStretches(outline: Outline, fittings: readonly Stretch[]): Stretch[] {
  const [front, rear] = freeEnds(outline, fittings);
  const inside = fittings
    .filter((fitting) => fitting.rear > rear && fitting.front < front)
    .sort((a, b) => b.front - a.front);
  const edges = [front, ...inside.flatMap((fitting) => [fitting.front, fitting.rear]), rear];
  return edges.flatMap((x, i) => (i % 2 === 0 ? [{ front: x, rear: edges[i + 1] ?? x }] : []));
}
