import type { Path } from "../plane/path.js";
import { cutoutPath } from "./cutout-path.js";
import type { HoleSpec } from "./spec.js";

/** What a hole takes from the handle around the tang, as a closed path: a pin's hole there has the pin's own diameter. */
export function holeThroughHandle(hole: HoleSpec): Path {
  const { kind, at, to, diameter, pin } = hole;
  if (kind === "pin") return cutoutPath({ centre: at, radius: (pin ?? diameter) / 2 });
  return cutoutPath({ centre: at, radius: diameter / 2, ...(to === undefined ? {} : { to }) });
}
