import { grooveHalfWidth } from "./groove-moments.js";
import type { Groove } from "./steel-body.js";

/**
 * Volume of a groove by itself, mm³, and the x of its centre, mm, in closed form: a rod's segment along the line, and at its
 * ends half a ball's cap each. It is cut to its depth below the face wherever that lies, so the body does not count; it is
 * its own mirror about the middle of its line, so its centre lies there.
 */
export function grooveVolume(groove: Groove): { readonly volume: number; readonly x: number } {
  const { from, to, radius: r, depth, faces } = groove;
  const w = grooveHalfWidth(groove);
  const floor = r - depth;
  const rise = Math.sqrt(Math.max(0, r * r - w * w));
  const section = r * r * Math.asin(Math.min(1, w / r)) + w * rise - 2 * w * floor;
  const cap = (2 * Math.PI * (r ** 3 - rise ** 3)) / 3 - Math.PI * w * w * floor;
  const one = section * Math.hypot(to.x - from.x, to.y - from.y) + cap;
  return { volume: faces === "both" ? 2 * one : one, x: (from.x + to.x) / 2 };
}
