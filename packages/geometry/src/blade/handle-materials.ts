import type { HandleSpec, MaterialSpec } from "./spec.js";

/**
 * Every material of a handle with its place in the file.
 *
 * @example
 * handleMaterials(spec.handle); // [["handle.slabs.material", { name: "European ash" }]]
 */
export function handleMaterials(
  handle: HandleSpec | undefined,
): readonly (readonly [path: string, material: MaterialSpec])[] {
  const found: (readonly [string, MaterialSpec])[] = [];
  if (handle === undefined) return found;
  for (const key of ["slabs", "liners", "pins", "block", "guard", "pommel"] as const) {
    const part = handle[key];
    if (part !== undefined) found.push([`handle.${key}.material`, part.material]);
  }
  handle.bolsters?.forEach((bolster, i) => {
    found.push([`handle.bolsters[${i}].material`, bolster.material]);
  });
  return found;
}

/**
 * The same handle with every material changed; parts given by their mass have none.
 *
 * @example
 * withHandleMaterials({ pins: { material: { name: "brass" } } }, () => ({ name: "copper" }));
 * // { pins: { material: { name: "copper" } } }
 */
export function withHandleMaterials(
  handle: HandleSpec,
  change: (material: MaterialSpec) => MaterialSpec,
): HandleSpec {
  const changed = <T extends { readonly material: MaterialSpec }>(part: T): T => ({
    ...part,
    material: change(part.material),
  });
  const { slabs, liners, pins, block, bolsters, guard, pommel } = handle;
  return {
    ...handle,
    ...(slabs === undefined ? {} : { slabs: changed(slabs) }),
    ...(liners === undefined ? {} : { liners: changed(liners) }),
    ...(pins === undefined ? {} : { pins: changed(pins) }),
    ...(block === undefined ? {} : { block: changed(block) }),
    ...(bolsters === undefined ? {} : { bolsters: bolsters.map(changed) }),
    ...(guard === undefined ? {} : { guard: changed(guard) }),
    ...(pommel === undefined ? {} : { pommel: changed(pommel) }),
  };
}
