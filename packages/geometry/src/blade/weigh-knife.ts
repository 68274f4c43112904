import { findMaterial } from "../materials/materials.js";
import { measureSurface } from "./body-surface.js";
import { handleParts } from "./handle-parts.js";
import type { Knife } from "./knife.js";
import { measureBody } from "./measure-body.js";
import { type Centre, type SolidWeight, weighMoments } from "./weight.js";

/** One part of the knife: steel, slabs, pins, or a part given by its mass; g and mm. */
export interface PartWeight {
  readonly name: string;
  readonly mass: number;
  readonly centre: Centre;
}

/** A knife that was weighed: its steel, the whole, and its parts. g, mm. */
export interface KnifeWeight {
  /** Blade and tang, one piece. `surface` in mm². */
  readonly steel: SolidWeight & { readonly surface: number };
  readonly knife: {
    readonly mass: number;
    readonly centre: Centre;
    /** Balance point along x from the heel and from the handle front, mm, positive toward the tip. */
    readonly balanceFromHeel: number;
    readonly balanceFromHandle: number;
  };
  /** The parts add up to the knife; the steel is the first. */
  readonly parts: readonly PartWeight[];
}

/**
 * Weighs a finished knife: the steel exactly, the handle's parts, and where the whole balances.
 *
 * @example
 * const { knife } = weighKnife(makeKnife(spec));
 * knife.mass; // g
 * knife.balanceFromHeel; // mm, positive toward the tip
 */
export function weighKnife(knife: Knife): KnifeWeight {
  const body = knife.body("finished");
  const steel = weighMoments(measureBody(body), knife.steelDensity);
  const parts = knifeParts(knife, steel);
  const whole = gather(parts);
  return {
    steel: { ...steel, surface: measureSurface(body) },
    knife: {
      mass: whole.mass,
      centre: whole.centre,
      balanceFromHeel: whole.centre.x,
      balanceFromHandle: whole.centre.x - knife.outline.handleFront,
    },
    parts,
  };
}

/**
 * The parts of the knife, given its steel.
 *
 * @example
 * knifeParts(knife, weighKnife(knife).steel).map(({ name }) => name); // ["steel", "slabs"]
 */
export function knifeParts(knife: Knife, steel: SolidWeight): PartWeight[] {
  const parts: PartWeight[] = [{ name: "steel", mass: steel.mass, centre: steel.centre }];
  const { handle } = knife.spec;
  for (const part of handleParts(handle, knife.outline, knife.body("finished").slab, knife.holes)) {
    const density = part.density ?? findMaterial(part.material)?.density ?? Number.NaN;
    const { mass, centre } = weighMoments(part.moments, density);
    parts.push({ name: part.name, mass, centre });
  }
  for (const part of handle?.parts ?? []) {
    parts.push({ name: part.name, mass: part.mass, centre: { ...part.at, z: 0 } });
  }
  return parts;
}

function gather(parts: readonly PartWeight[]): { readonly mass: number; readonly centre: Centre } {
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  const mean = (axis: keyof Centre): number =>
    parts.reduce((sum, part) => sum + part.mass * part.centre[axis], 0) / mass;
  return { mass, centre: { x: mean("x"), y: mean("y"), z: mean("z") } };
}
