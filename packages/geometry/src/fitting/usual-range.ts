import { leastButt } from "../bench/least-butt.js";
import { bevelAt } from "../blade/bevel-at.js";
import type { Knife } from "../blade/knife.js";
import { bevelsBegin } from "../blade/knife-faces.js";
import type { Changeable } from "./changeable.js";

/** How far something may be changed: of one size its least and greatest value, of several shares of what is drawn. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

/** Shares of what is drawn within which a knife stays of its kind. Basis: common practice, no source. */
const USUAL: readonly (readonly [name: RegExp, least: number, most: number])[] = [
  [/^thickness$/u, 0.85, 1.15],
  [/^tang\.(?:buttThickness|thickness)$/u, 0.7, 1.3],
  [/^bevel\.height$/u, 0.75, 1.25],
  [/^handle\.slabs\.thickness$/u, 0.75, 1.25],
  [/^handle\.block\.(?:height|width)$/u, 0.9, 1.1],
  [/^handle\.parts\.mass@\d+$/u, 0.75, 1.5],
];

/** Of anything else that is named without a range. */
const ANY = [0.75, 1.25] as const;

/**
 * The range of something that is to be changed, where none is told.
 *
 * @example
 * const [thickness] = changeables(knife, ({ kind }) => kind).filter(({ name }) => name === "thickness");
 * thickness && usualRange(thickness, knife); // { least: 0.85, most: 1.15 }
 */
export function usualRange(changeable: Changeable, knife: Knife): Range {
  const { name, sizes } = changeable;
  const [, low, high] = USUAL.find(([pattern]) => pattern.test(name)) ?? [name, ...ANY];
  const drawn = sizes.length > 1 ? 1 : (sizes[0]?.drawn ?? 0);
  const [least, most] = [drawn * low, drawn * high];
  if (name === "tang.buttThickness") return tangRange(least, drawn, most, knife);
  // The rounding of a slab's edges needs its thickness.
  if (name === "handle.slabs.thickness")
    return { least: Math.min(drawn, Math.max(least, knife.spec.handle?.slabs?.edgeRadius ?? 0)), most };
  if (name === "bevel.height") return { least, most: Math.min(most, drawn * bevelRoom(knife)) };
  return { least, most };
}

/** A tang grows no thicker toward its butt, and keeps what a pin needs where it has one. */
function tangRange(least: number, drawn: number, most: number, knife: Knife): Range {
  const { spec, laws } = knife;
  const hasPins = (spec.tang.holes ?? []).some(({ kind }) => kind === "pin");
  const needed = hasPins ? leastButt(knife) : 0;
  return {
    least: Math.min(drawn, Math.max(least, needed)),
    most: Math.max(drawn, Math.min(most, laws.spine.valueAt(0))),
  };
}

/** How much higher the bevel can be ground at the heel before it reaches the spine, as a share of its height; 1 or more. */
function bevelRoom(knife: Knife): number {
  const { height, spineDistance } = bevelAt(knife, bevelsBegin(knife));
  return Math.max(1, spineDistance / height);
}

/**
 * What is changed where nothing is named: thickness at the spine with its taper, taper of the tang, bevel height, and the
 * sizes or masses of the handle, as far as the knife has them. Never what a customer sees first, the sizes of the outline.
 *
 * @example
 * usualChanges(changeables(knife, ({ kind }) => kind), knife).map(({ name }) => name);
 * // ["thickness", "handle.slabs.thickness"]
 */
export function usualChanges(all: readonly Changeable[], { spec }: Knife): readonly Changeable[] {
  const isParallel = spec.tang.buttThickness === undefined;
  return all.filter(
    ({ name }) =>
      (USUAL.some(([pattern]) => pattern.test(name)) || isOnlyStation(name, all)) &&
      !(name === "tang.buttThickness" && isParallel),
  );
}

/** A law of one station has no name of its own. */
const isOnlyStation = (name: string, all: readonly Changeable[]): boolean =>
  /^thickness@/u.test(name) && !all.some((other) => other.name === "thickness");
