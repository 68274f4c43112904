import { gaussRule } from "../numeric/gauss.js";
import { BevelMoments } from "./bevel-moments.js";
import { MOMENTS, VOLUME, X } from "./moments.js";
import { stationPieces, uprightMap } from "./station-pieces.js";
import type { SteelBody } from "./steel-body.js";

/**
 * Volume and first moment along x of what the bevels take from the slab, with the same number of stations in every piece and
 * no estimate of the error: for differences of bodies that are nearly the same, in which most of it drops out.
 *
 * @param points - stations in each piece over which the sections have one structure.
 */
export function bevelSums(body: SteelBody, points: number): readonly [volume: number, x: number] {
  const bevels = new BevelMoments(body);
  const { nodes, weights } = gaussRule(points);
  const out = new Float64Array(MOMENTS);
  let volume = 0;
  let moment = 0;
  for (const interval of body.footprint.intervals) {
    const x0 = Math.max(body.groundFrom, interval.x0);
    if (interval.x1 <= x0) continue;
    const map = uprightMap(interval);
    for (const piece of stationPieces(body, x0, interval.x1, body.footprint)) {
      const from = map.u(piece.from);
      const width = map.u(piece.to) - from;
      for (let i = 0; i < points; i++) {
        const u = from + width * (nodes[i] as number);
        bevels.station(map.x(u), interval.spans, out.fill(0));
        const weight = width * (weights[i] as number) * map.slope(u);
        volume += weight * (out[VOLUME] as number);
        moment += weight * (out[X] as number);
      }
    }
  }
  return [volume, moment];
}
