import { type Disc, wallBetween } from "../plane/disc.js";
import { distance, interpolate } from "../plane/vec2.js";
import type { HoleSpec, KnifeSpec } from "./spec.js";

/** Every hole with its place in the file. */
export function namedHoles(spec: KnifeSpec): readonly (readonly [string, HoleSpec])[] {
  return [
    ...(spec.blade.holes ?? []).map((hole, i) => [`blade.holes[${i}]`, hole] as const),
    ...(spec.tang.holes ?? []).map((hole, i) => [`tang.holes[${i}]`, hole] as const),
  ];
}

/** Steps along a slot, as a share of its radius: between two discs the slot is narrower by less than a hundredth of it. */
const STEP = 0.25;

/** A hole as discs: one for a round hole, a close row of them for a slot. */
export function holeDiscs({ at, to, diameter }: HoleSpec): readonly Disc[] {
  const radius = diameter / 2;
  if (to === undefined) return [{ centre: at, radius }];
  const steps = Math.max(1, Math.min(400, Math.ceil(distance(at, to) / (STEP * radius))));
  return Array.from({ length: steps + 1 }, (_, i) => ({ centre: interpolate(at, to, i / steps), radius }));
}

/** Least steel between two holes, mm; negative where they run into each other. */
export const leastWall = (a: readonly Disc[], b: readonly Disc[]): number =>
  Math.min(...a.flatMap((one) => b.map((other) => wallBetween(one, other))));
