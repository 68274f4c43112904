import type { Slot } from "../plane/slot.js";
import type { HoleSpec, KnifeSpec } from "./spec.js";

/** Every hole with its place in the file. */
export function namedHoles(spec: KnifeSpec): readonly (readonly [string, HoleSpec])[] {
  return [
    ...(spec.blade.holes ?? []).map((hole, i) => [`blade.holes[${i}]`, hole] as const),
    ...(spec.tang.holes ?? []).map((hole, i) => [`tang.holes[${i}]`, hole] as const),
  ];
}

/** A hole as a slot; a round one is a slot without length. */
export const slotOf = ({ at, to, diameter }: HoleSpec): Slot => ({
  from: at,
  to: to ?? at,
  radius: diameter / 2,
});
