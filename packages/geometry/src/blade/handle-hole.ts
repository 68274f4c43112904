import type { Path } from "../plane/path.js";
import { arcAround, line } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import type { HoleSpec } from "./spec.js";

/** Outline of a round hole, or of a slot between two end arcs of one radius; counter-clockwise. */
export function holePath(at: Vec2, to: Vec2 | undefined, radius: number): Path {
  if (to === undefined || (to.x === at.x && to.y === at.y)) {
    return {
      segments: [arcAround(at, radius, 0, Math.PI), arcAround(at, radius, Math.PI, Math.PI)],
      closed: true,
    };
  }
  const turn = Math.atan2(to.y - at.y, to.x - at.x);
  const ahead = arcAround(to, radius, turn - Math.PI / 2, Math.PI);
  const behind = arcAround(at, radius, turn + Math.PI / 2, Math.PI);
  return {
    segments: [line(behind.to, ahead.from), ahead, line(ahead.to, behind.from), behind],
    closed: true,
  };
}

/** What a hole takes from the handle around the tang: a pin's hole there has the pin's own diameter. */
export function holeThroughHandle(hole: HoleSpec): Path {
  return hole.kind === "pin"
    ? holePath(hole.at, undefined, (hole.pin ?? hole.diameter) / 2)
    : holePath(hole.at, hole.to, hole.diameter / 2);
}
