import type { HandleSpec, KnifeSpec } from "./spec.js";
import { readAt } from "./spec-path.js";

/** Whether two objects hold the very same values under all keys but some. */
export function isOneObject<T extends object>(
  a: T | undefined,
  b: T | undefined,
  but: readonly (keyof T)[] = [],
): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)] as (keyof T)[]);
  for (const key of but) keys.delete(key);
  return [...keys].every((key) => a[key] === b[key]);
}

/** Whether two descriptions draw the same outline. */
export function isOneOutline(a: KnifeSpec, b: KnifeSpec): boolean {
  return (
    a.blade.outline === b.blade.outline &&
    a.blade.ricasso === b.blade.ricasso &&
    a.blade.choil === b.blade.choil &&
    isOneObject(a.tang, b.tang, ["thickness", "buttThickness", "between", "holes"])
  );
}

const areHolesSame = (a: KnifeSpec, b: KnifeSpec): boolean =>
  a.blade.holes === b.blade.holes && a.tang.holes === b.tang.holes;

/** Whether the steel that the handle sits on is the same, the outline being the same. */
export const isOneTang = (a: KnifeSpec, b: KnifeSpec): boolean => areHolesSame(a, b) && isOneThickness(a, b);

/** Whether the steel between the flats has the same thickness everywhere, the outline being the same. */
function isOneThickness(a: KnifeSpec, b: KnifeSpec): boolean {
  return (
    a.blade.thickness === b.blade.thickness &&
    a.blade.between === b.blade.between &&
    isOneObject(a.tang, b.tang, ["holes"])
  );
}

/**
 * Whether a part of the handle has the same volume and centre in two descriptions with the same outline; its material may
 * differ.
 *
 * @param path - the part's place in the description.
 */
export function isOneHandlePart(path: string, a: KnifeSpec, b: KnifeSpec): boolean {
  if (!areHolesSame(a, b)) return false;
  const isSame = (place: string): boolean => isOneObject(sizesAt(a, place), sizesAt(b, place), ["material"]);
  const areFittingsSame =
    isSame("handle.guard") &&
    isSame("handle.pommel") &&
    bolstersOf(a).every((_, i) => isSame(`handle.bolsters[${i}]`));
  switch (path) {
    // Slabs and liners are as thick as they are, whatever the steel under them.
    case "handle.liners":
      return isSame(path) && areFittingsSame;
    case "handle.slabs":
      return isSame(path) && isSame("handle.liners") && areFittingsSame;
    case "handle.block":
      return isSame(path) && areFittingsSame && isOneThickness(a, b);
    case "handle.pins":
      return (
        ["handle.slabs", "handle.liners", "handle.block"].every(isSame) &&
        areFittingsSame &&
        isOneThickness(a, b)
      );
    default:
      return isSame(path) && isOneThickness(a, b);
  }
}

const bolstersOf = ({ handle }: KnifeSpec): NonNullable<HandleSpec["bolsters"]> => handle?.bolsters ?? [];

const sizesAt = (spec: KnifeSpec, path: string): { readonly material?: unknown } | undefined =>
  readAt(spec, path) as { readonly material?: unknown } | undefined;
