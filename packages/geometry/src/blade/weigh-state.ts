import { measureSurface } from "./body-surface.js";
import type { Knife } from "./knife.js";
import { measureBody } from "./measure-body.js";
import { addMoments } from "./moments.js";
import { profileStrips } from "./profile-strips.js";
import { type SolidWeight, weighMoments } from "./weight.js";

/** Size states that a smith holds in hand: as delivered, before it is hardened, as it leaves the anvil. */
export const PIECE_STATES = ["finished", "ready", "forged"] as const;
/** Name of a size state that can be held in hand. */
export type PieceState = (typeof PIECE_STATES)[number];

/** The steel in one size state: volume, mass, centre, inertia, and its surface, mm². */
export interface StateWeight extends SolidWeight {
  readonly state: PieceState;
  readonly surface: number;
}

/**
 * Weighs blade and tang in a size state: `finished` as delivered, `ready` to harden, or as `forged` with every allowance
 * on, those along the outline and at the ends too. What heat-treatment scale is going to take is no part of the body; the
 * ledger adds it.
 *
 * @example
 * const [finished, forged] = [weighState(knife, "finished"), weighState(knife, "forged")];
 * forged.mass > finished.mass ? 1 : 0; // 1
 */
export function weighState(knife: Knife, state: PieceState): StateWeight {
  const body = knife.body(state);
  const own = measureBody(body);
  const surface = measureSurface(body);
  if (state !== "forged") return { state, ...weighMoments(own, knife.steelDensity), surface };
  const strips = profileStrips(body, knife.outline, knife.allowances);
  return {
    state,
    ...weighMoments(addMoments(own, strips), knife.steelDensity),
    surface: surface + strips.surface,
  };
}
