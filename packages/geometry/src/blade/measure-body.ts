import { BevelMoments } from "./bevel-moments.js";
import { addMoments, MOMENTS, type Moments, VOLUME } from "./moments.js";
import { discMoments, slabMoments } from "./slab-moments.js";
import type { SteelBody } from "./steel-body.js";

/** Relative error that a measurement aims at. */
const AIM = 1e-12;

/**
 * Volume integrals of a steel body: outline × thickness by Green's theorem, less what the bevels take, less the
 * cut-outs.
 *
 * Accuracy: the error returned covers the truth on every body tried; 10⁻¹² of the volume on bodies with straight and
 * gently curved edges.
 */
export function measureBody(body: SteelBody, aim = AIM): Moments {
  const slab = slabMoments(body.input.path, body.slab);
  const scale = slab.value.map((v, i) =>
    Math.max(Math.abs(v), 1e-3 * (slab.value[VOLUME] as number), i === VOLUME ? 0 : 1),
  );
  const bevels = new BevelMoments(body);
  let total = addMoments(slab, bevels.overOutline(scale, aim), -1);
  for (const cutout of body.input.cutouts) {
    let hole = discMoments(cutout, body.slab);
    if (cutout.centre.x + cutout.radius > body.input.plunge.at) {
      hole = addMoments(hole, bevels.overDisc(cutout, scale, aim), -1);
    }
    total = addMoments(total, hole, -1);
  }
  return total;
}

export const noMoments = (): Moments => ({
  value: new Float64Array(MOMENTS),
  error: new Float64Array(MOMENTS),
});
