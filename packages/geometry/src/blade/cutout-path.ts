import type { Path } from "../plane/path.js";
import { arcAround, line } from "../plane/segment.js";
import type { Cutout } from "./steel-body.js";

/** Outline of a cut-out, counter-clockwise: a circle in two halves, or a slot. */
export function cutoutPath({ centre, radius, to }: Cutout): Path {
  const end = to ?? centre;
  const angle = Math.atan2(end.y - centre.y, end.x - centre.x);
  const nearEnd = arcAround(centre, radius, angle + Math.PI / 2, Math.PI);
  const farEnd = arcAround(end, radius, angle - Math.PI / 2, Math.PI);
  if (end.x === centre.x && end.y === centre.y) {
    return { segments: [farEnd, { ...nearEnd, from: farEnd.to, to: farEnd.from }], closed: true };
  }
  return {
    segments: [farEnd, line(farEnd.to, nearEnd.from), nearEnd, line(nearEnd.to, farEnd.from)],
    closed: true,
  };
}
