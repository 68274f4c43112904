import type { Path } from "../plane/path.js";
import { arcAround, line, pointAt } from "../plane/segment.js";
import type { FaceArea } from "./face-area.js";
import { Footprint } from "./footprint.js";
import { grooveHalfWidth } from "./groove-moments.js";
import type { Groove } from "./steel-body.js";
import { type Surface, SurfaceSum } from "./surface-sum.js";

/**
 * What a groove adds to the faces that it is cut into: its floor, which follows the face, instead of the face above it; of
 * one deeper than its radius the upright walls too.
 */
export function grooveSurface(faces: FaceArea, groove: Groove, tolerance: number): Surface {
  const { from, to, radius, depth } = groove;
  const sides = groove.faces === "both" ? (["right", "left"] as const) : [groove.faces];
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const weight = (x: number, y: number, gx: number, gy: number): number => {
    const along = square === 0 ? 0 : ((x - from.x) * dx + (y - from.y) * dy) / square;
    const t = Math.min(1, Math.max(0, along));
    const qx = x - from.x - t * dx;
    const qy = y - from.y - t * dy;
    // depth = √(R² − q²) − (R − depth at the middle): it falls with q over that root.
    const root = Math.sqrt(Math.max(1e-16 * radius * radius, radius * radius - qx * qx - qy * qy));
    const floor = Math.sqrt(1 + (gx + qx / root) ** 2 + (gy + qy / root) ** 2);
    return floor - Math.sqrt(1 + gx * gx + gy * gy);
  };
  const sum = new SurfaceSum();
  for (const part of grooveParts(groove))
    sum.add(faces.over(new Footprint(part), { sides, weight }, tolerance));
  const rim = 2 * Math.sqrt(square) + 2 * Math.PI * radius;
  sum.add({ area: sides.length * rim * Math.max(0, depth - radius), error: 0 });
  return sum;
}

/** What a groove covers, in parts over which its depth is smooth: the strip along its line, and both round ends. */
function grooveParts(groove: Groove): readonly Path[] {
  const { from, to } = groove;
  const w = grooveHalfWidth(groove);
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const far = arcAround(to, w, angle - Math.PI / 2, Math.PI);
  const near = arcAround(from, w, angle + Math.PI / 2, Math.PI);
  const cap = (arc: typeof far): Path => ({ segments: [arc, line(arc.to, arc.from)], closed: true });
  const ends = [cap(far), cap(near)];
  if (from.x === to.x && from.y === to.y) return ends;
  const corners = [near.to, far.from, far.to, near.from];
  const strip = corners.map((corner, i) => line(corner, corners[(i + 1) % 4] ?? pointAt(far, 0)));
  return [{ segments: strip, closed: true }, ...ends];
}
