import { type BevelAtStation, bevelAt } from "./bevel-at.js";
import type { Knife } from "./knife.js";

export type Side = "right" | "left";

/** The faces to be judged: one for both where they are alike. */
export const facesOf = (knife: Knife): readonly Side[] =>
  knife.laws.symmetric ? ["right"] : ["right", "left"];

/**
 * x from which the bevels are ground to their full depth, mm from the heel: the plunge's front end.
 *
 * @example
 * bevelsBegin(knife); // 0, a plunge that is a wall at the heel
 */
export function bevelsBegin({ spec }: Knife): number {
  const { plunge } = spec.blade;
  return plunge === undefined ? 0 : plunge.at + plunge.length;
}

/** Stations between those that the laws give. */
const EVENLY = 48;

/**
 * One face at stations from heel to tip: where the laws have theirs, and evenly between. Near a tip the bevel is lower
 * than it is thick, and there is no face to judge: those are left out.
 */
export function bevelStations(knife: Knife, side: Side): BevelAtStation[] {
  const from = bevelsBegin(knife);
  const to = knife.outline.edgeLength;
  const places = new Set([from, ...knife.body("finished").section.breaks.filter((x) => x > from && x < to)]);
  for (let i = 1; i < EVENLY; i++) places.add(from + ((to - from) * i) / EVENLY);
  return [...places]
    .sort((a, b) => a - b)
    .map((x) => bevelAt(knife, x, side))
    .filter(({ height, rise }) => height > 4 * Math.abs(rise));
}
