import type { Law } from "../numeric/law.js";
import type { Outline, RunName } from "./outline.js";
import type { SlabLaw } from "./slab-law.js";
import type { HandleSpec, KnifeSpec } from "./spec.js";
import { readAt } from "./spec-path.js";

/** A knife as far as its parts depend on it. */
export interface Measured {
  readonly spec: KnifeSpec;
  readonly outline: Outline;
  readonly slab: SlabLaw;
}

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

const areRunsSame = (a: Outline, b: Outline, runs: readonly RunName[]): boolean =>
  a === b || runs.every((run) => a.runs[run] === b.runs[run]);

/**
 * Whether what is ground takes the same steel from two knives: it begins at the heel, or where the spine is eased at the handle
 * front, and the tang has no part in it.
 */
export function isOneBlade(a: Measured, b: Measured): boolean {
  const runs: readonly RunName[] =
    a.spec.blade.easedSpine === undefined
      ? ["edge", "front", "spine"]
      : ["edge", "front", "spine", "tangTop", "butt", "tangBottom", "heelFace"];
  return (
    areRunsSame(a.outline, b.outline, runs) &&
    isOneObject(a.spec.blade, b.spec.blade, ["outline", "ricasso", "choil", "holes", "fullers"])
  );
}

/** Whether the steel has the same thickness everywhere behind the heel. */
export function isOneTang(a: Measured, b: Measured): boolean {
  return (
    a.slab.handleFront === b.slab.handleFront &&
    a.slab.spine.valueAt(0) === b.slab.spine.valueAt(0) &&
    a.spec.tang.between === b.spec.tang.between &&
    isOneLaw(a.slab.tang, b.slab.tang)
  );
}

function isOneLaw(a: Law | undefined, b: Law | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  const { points } = b;
  return (
    a.points.length === points.length &&
    a.points.every(({ at, is }, i) => at === points[i]?.at && is === points[i]?.is)
  );
}

/**
 * Whether a part of the handle has the same volume and centre in two knives; its material may differ.
 *
 * @param path - the part's place in the description.
 */
export function isOneHandlePart(path: string, a: Measured, b: Measured): boolean {
  const { spec } = a;
  if (spec.blade.holes !== b.spec.blade.holes || spec.tang.holes !== b.spec.tang.holes) return false;
  const places = fittingPlaces(spec.handle);
  const isSame = (place: string): boolean =>
    isOneObject(sizesAt(spec, place), sizesAt(b.spec, place), ["material"]);
  const areFittingsSame = places.every(isSame);
  // Slabs and liners leave the fittings' places free, however high and wide they are.
  const areGapsSame = places.every((place) => {
    const own = sizesAt(spec, place);
    const other = sizesAt(b.spec, place);
    return own?.at === other?.at && own?.length === other?.length;
  });
  // Whatever stands ahead of the handle front has a part of the blade in it.
  const reachesBlade = places.some((place) => (sizesAt(spec, place)?.at ?? 0) > a.outline.handleFront);
  const runs: readonly RunName[] = reachesBlade
    ? ["edge", "front", "spine", "tangTop", "butt", "tangBottom", "heelFace"]
    : ["tangTop", "butt", "tangBottom"];
  if (!areRunsSame(a.outline, b.outline, runs)) return false;
  switch (path) {
    // Slabs and liners are as thick as they are, whatever the steel under them.
    case "handle.liners":
      return isSame(path) && areGapsSame;
    case "handle.slabs":
      return isSame(path) && isSame("handle.liners") && areGapsSame;
    case "handle.block":
      return isSame(path) && areFittingsSame && isOneTang(a, b);
    case "handle.pins":
      return (
        ["handle.slabs", "handle.liners", "handle.block"].every(isSame) && areFittingsSame && isOneTang(a, b)
      );
    default:
      return isSame(path) && isOneTang(a, b);
  }
}

function fittingPlaces(handle: HandleSpec | undefined): string[] {
  const { bolsters = [], guard, pommel } = handle ?? {};
  return [
    ...bolsters.map((_, i) => `handle.bolsters[${i}]`),
    ...(guard === undefined ? [] : ["handle.guard"]),
    ...(pommel === undefined ? [] : ["handle.pommel"]),
  ];
}

interface Sizes {
  readonly material?: unknown;
  readonly at?: number;
  readonly length?: number;
}

const sizesAt = (spec: KnifeSpec, path: string): Sizes | undefined => readAt(spec, path) as Sizes | undefined;
