import { COMPOSITES, OTHER_HANDLE_MATERIALS } from "./composites.js";
import type { Material, MaterialKind } from "./material.js";
import { METALS } from "./metals.js";
import { nearestNames } from "./nearest-name.js";
import { STEELS } from "./steels.js";
import { WOODS } from "./woods.js";

export type { DensityMark, Material, MaterialKind } from "./material.js";

/** Everything whose density is known by name; each row says where the figure comes from. */
export const MATERIALS: readonly Material[] = [
  ...STEELS,
  ...METALS,
  ...COMPOSITES,
  ...WOODS,
  ...OTHER_HANDLE_MATERIALS,
];

/** Names are compared without case, spaces, hyphens and full stops: `80 CrV2`, `80crv2` and `80-CRV-2` are one. */
const plain = (name: string): string => name.toLowerCase().replace(/[\s\-_./]+/g, "");

const BY_NAME = new Map<string, Material>();
for (const material of MATERIALS)
  for (const name of [material.name, ...material.aliases]) BY_NAME.set(plain(name), material);

/**
 * Finds a material by name or alias; case, spaces and hyphens do not matter.
 *
 * @returns The row, or `undefined`: then ask {@link suggestMaterials}, or give the density in the file.
 *
 * @example
 * findMaterial("80 crv2")?.density; // 0.00785 g/mm³, marked "from memory"
 */
export function findMaterial(name: string): Material | undefined {
  return BY_NAME.get(plain(name));
}

/**
 * Names in the table that a mistyped name may have meant, nearest first; none where nothing is near.
 *
 * @param most - How many at the most.
 * @param kind - What alone is looked for: no guard's brass where a blade's steel belongs.
 *
 * @example
 * suggestMaterials("1048"); // ["1084"]
 * suggestMaterials("5106", 2, "steel"); // ["5160"]
 */
export function suggestMaterials(name: string, most = 2, kind?: MaterialKind): string[] {
  const known = [...BY_NAME].flatMap(([key, row]) => (kind === undefined || row.kind === kind ? [key] : []));
  const keys = nearestNames(plain(name), known, known.length);
  const names = keys.map((key) => BY_NAME.get(key)?.name ?? key);
  return [...new Set(names)].slice(0, most);
}

/**
 * Whether two names mean the same steel: equal names, or names of one row of the table.
 *
 * @example
 * isSameMaterial("52100", "100Cr6");
 */
export function isSameMaterial(a: string, b: string): boolean {
  if (plain(a) === plain(b)) return true;
  const found = findMaterial(a);
  return found !== undefined && found === findMaterial(b);
}
