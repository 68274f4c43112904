import type { HoleSpec, KnifeSpec } from "./spec.js";

/** Every hole with its place in the file. */
export function namedHoles(spec: KnifeSpec): readonly (readonly [string, HoleSpec])[] {
  return [
    ...(spec.blade.holes ?? []).map((hole, i) => [`blade.holes[${i}]`, hole] as const),
    ...(spec.tang.holes ?? []).map((hole, i) => [`tang.holes[${i}]`, hole] as const),
  ];
}
