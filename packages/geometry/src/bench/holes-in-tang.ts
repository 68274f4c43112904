import type { Knife } from "../blade/knife.js";
import { namedHoles, slotOf } from "../blade/named-holes.js";
import { type Slot, wallAroundSlot, wallBetweenSlots } from "../plane/slot.js";
import type { Vec2 } from "../plane/vec2.js";

/** Drills that a tang is lightened with, mm, the largest first. */
const DIAMETERS = [14, 12, 10, 8, 6] as const;
/** How finely places are looked for, mm. */
const STEP = 1;

/** Holes of one size that a tang has room for. */
export interface HoleRow {
  readonly diameter: number;
  /** From the butt forward. */
  readonly places: readonly Vec2[];
}

/**
 * Where a full tang has room for holes that lighten it: along its middle, from the butt forward, each with the steel around it
 * that the limits ask for.
 *
 * @example
 * holesInTang(knife)[0]; // { diameter: 14, places: [{ x: -104, y: 17.6 }, …] }
 */
export function holesInTang(knife: Knife): HoleRow[] {
  return DIAMETERS.map((diameter) => ({ diameter, places: placesFor(knife, diameter) })).filter(
    ({ places }) => places.length > 0,
  );
}

function placesFor({ outline, spec, limits, body }: Knife, diameter: number): Vec2[] {
  const { footprint } = body("finished");
  const { holeWall, holeStep } = limits;
  const radius = diameter / 2;
  const front = outline.handleFront - holeStep.value * diameter - radius;
  const taken: Slot[] = namedHoles(spec).map(([, hole]) => slotOf(hole));
  const places: Vec2[] = [];
  for (let x = outline.butt + radius + holeWall.value; x <= front; x += STEP) {
    const spans = footprint.spansAt(x);
    const [low, high] = [spans[0]?.[0], spans.at(-1)?.[1]];
    if (low === undefined || high === undefined) continue;
    const at = { x, y: (low + high) / 2 };
    const slot: Slot = { from: at, to: at, radius };
    if (wallAroundSlot(slot, outline.path).wall < holeWall.value) continue;
    if (taken.some((other) => wallBetweenSlots(slot, other) < holeWall.value)) continue;
    taken.push(slot);
    places.push(at);
  }
  return places;
}
