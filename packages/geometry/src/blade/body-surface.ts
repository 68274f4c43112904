import type { Path } from "../plane/path.js";
import { natureOf } from "./bevel-moments.js";
import { cutoutPath } from "./cutout-path.js";
import { FaceArea, type FaceWork } from "./face-area.js";
import { Footprint } from "./footprint.js";
import { VOLUME } from "./moments.js";
import { slabMoments } from "./slab-moments.js";
import type { SteelBody } from "./steel-body.js";
import { grooveSurface } from "./surface-grooves.js";
import { Rims } from "./surface-rims.js";
import { stepWalls } from "./surface-steps.js";
import { type Surface, SurfaceSum } from "./surface-sum.js";

/** Relative error that the quadrature aims at, and what its estimates cannot see. */
const AIM = { plain: 1e-9, intricate: 1e-8, ridged: 1e-7 };
const DOUBT = { plain: 1e-9, intricate: 3e-8, ridged: 3e-7 };

const BOTH: FaceWork = { sides: ["right", "left"] };

/**
 * Surface of a steel body, mm²: both faces with their slopes and what is ground into them, the rim all round, the walls of
 * cut-outs and of steps.
 *
 * Accuracy: 10⁻⁹ relative on bodies with flat bevels along straight and gently curved edges, 10⁻⁷ on every other.
 *
 * @example
 * measureSurface(knife.body("finished")); // mm², the faces, the rim and the walls of holes
 */
export const measureSurface = (body: SteelBody): number => surfaceOf(body).area;

/**
 * The same with its estimated error.
 *
 * @example
 * const { area, error } = surfaceOf(knife.body("finished"));
 * error / area; // 3e-8 or so
 */
export function surfaceOf(body: SteelBody): Surface {
  const { path, cutouts, grooves = [] } = body.input;
  const nature = natureOf(body);
  const sum = new SurfaceSum();
  sum.add({ area: flats(body, path), error: 0 });
  const tolerance = sum.area * AIM[nature];
  const faces = new FaceArea(body);
  const rims = new Rims(body);
  sum.add(faces.over(body.footprint, BOTH, tolerance));
  sum.add(rims.along(path, 1, tolerance));
  for (const cutout of cutouts) {
    const around = cutoutPath(cutout);
    sum.add(rims.along(around, -1, tolerance));
    sum.add({ area: flats(body, around), error: 0 }, -1);
    sum.add(faces.over(new Footprint(around), BOTH, tolerance), -1);
  }
  for (const groove of grooves) sum.add(grooveSurface(faces, groove, tolerance));
  sum.add(stepWalls(body, tolerance));
  return { area: sum.area, error: sum.error + DOUBT[nature] * sum.area };
}

/** Both faces of a region as if nothing were ground: the slab's own slope only. */
function flats({ slab }: SteelBody, path: Path): number {
  const slopes = { thicknessAt: (x: number) => 2 * Math.hypot(1, slab.slopeAt(x) / 2), breaks: slab.breaks };
  return slabMoments(path, slopes).value[VOLUME] as number;
}
