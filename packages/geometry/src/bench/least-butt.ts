import { byUse } from "../blade/judging.js";
import type { Knife } from "../blade/knife.js";

/**
 * How thin a tang may be tapered at its butt, mm: not under the least at a pin, and with that left at every pin.
 *
 * @example
 * leastButt(knife); // 1.6, a tang without pins
 */
export function leastButt(knife: Knife): number {
  const { limits, outline, laws, holes } = knife;
  const { tangAtPin, tangAtPinChopper } = limits;
  const least = byUse(knife, { kitchen: tangAtPin, field: tangAtPin, chopper: tangAtPinChopper }).value;
  const front = laws.spine.valueAt(0);
  const length = outline.handleFront - outline.butt;
  const atPins = holes
    .filter(({ kind, at }) => kind === "pin" && at.x < outline.handleFront)
    .map(({ at }) => front - ((front - least) * length) / (outline.handleFront - at.x));
  return Math.min(front, Math.max(least, ...atPins));
}
