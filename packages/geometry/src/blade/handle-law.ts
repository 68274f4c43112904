import { Law } from "../numeric/law.js";
import { tangStation } from "./knife-laws.js";
import type { Between, LawSpec } from "./spec.js";

/**
 * A size along the handle as a law over the distance behind its front, mm.
 *
 * @param length - of the part that the stations stand on, mm: where its `butt` and 100 % are.
 *
 * @example
 * // 9 mm at the front, 6 mm at the butt of a handle of 120 mm
 * handleLaw([{ at: { kind: "handle" }, is: 9 }, { at: { kind: "butt" }, is: 6 }], "straight", 120).valueAt(60); // 7.5
 */
export function handleLaw(law: LawSpec, between: Between, length: number): Law {
  if (typeof law === "number") return Law.constant(law);
  const points = law.map(({ at, is }) => ({ at: tangStation(at, length), is }));
  return between === "smooth" ? Law.smooth(points) : Law.straight(points);
}

/** Least value that a law takes; a law never leaves the range of its stations. */
export const leastOf = (law: LawSpec): number =>
  typeof law === "number" ? law : Math.min(...law.map(({ is }) => is));
