import { crestCrossing } from "../blade/crest.js";
import { insideEnds } from "../blade/inside-ends.js";
import type { Knife } from "../blade/knife.js";
import { thicknessAtSwedge } from "../blade/section-report.js";

/** The swedge of the ready-to-harden blade at a station, mm. */
export interface SwedgeStation {
  /** Ahead of the heel. */
  readonly x: number;
  /** Full thickness of the spine before it is ground, and what is left at the very spine. */
  readonly before: number;
  readonly left: number;
  /** How far each plane comes down from the spine, upright, as the strip is seen from the side. */
  readonly strip: number;
}

/** How the planes along the spine are ground, both faces alike. */
export interface SwedgeSetUp {
  /** mm ahead of the heel. */
  readonly from: number;
  readonly to: number;
  /** Of each face against the centre plane, rad. */
  readonly angle: number;
  /** At both ends and evenly between them; where it takes nothing off there is none. */
  readonly stations: readonly SwedgeStation[];
}

/** Stretches between the stations. */
const STRETCHES = 4;

/**
 * How a swedge is ground into the ready-to-harden blade: strips as they come out on the body that is weighed.
 *
 * @returns undefined where there is no swedge, or none that takes anything off.
 *
 * @example
 * swedgeSetUp(knife); // undefined: no swedge
 */
export function swedgeSetUp(knife: Knife): SwedgeSetUp | undefined {
  const body = knife.body("ready");
  const swedge = body.input.crest?.input.swedge;
  if (swedge === undefined) return undefined;
  const { from, to, tan } = swedge;
  const places = Array.from({ length: STRETCHES + 1 }, (_, i) => from + ((to - from) * i) / STRETCHES);
  const stations = places.flatMap((x): SwedgeStation[] => {
    // Its front end is a wall: what is ground ends there.
    const at = Math.min(insideEnds(knife, x), to);
    const left = thicknessAtSwedge(body, at);
    const top = body.footprint.topAt(at);
    if (left === undefined || top === undefined) return [];
    const line = crestCrossing(body, body.sectionAt(at), at, top);
    return [{ x, before: body.slab.thicknessAt(at), left, strip: top - line }];
  });
  return stations.length === 0 ? undefined : { from, to, angle: Math.atan(tan), stations };
}
