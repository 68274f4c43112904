import type { StopWork } from "./press-defaults.js";
import type { StopChoice, StopFinder } from "./stop-blocks.js";
import { stopHeight } from "./stop-height.js";
import { coldSize } from "./thermal-elongation.js";

/** How a shop presses, with a search over its stops. */
export type Pressing = StopWork & { readonly find: StopFinder };

/** Halvings of the search for the least reduction: to less than a millionth of a share. */
const HALVINGS = 22;

/** Height at 20 °C that a piece comes out at, mm. */
export const heightUnder = ({ height }: StopChoice, { temperature, stopOffset }: StopWork): number =>
  coldSize(height + stopOffset, temperature);

/**
 * Stops, lower every time, that end at a given one and whose deepest pass is the least deep that any of the shop's
 * stops allow, to a millionth; as few as do it. Undefined where that last stop is not under the piece.
 */
export function leastDeepStops(start: number, last: StopChoice, work: Pressing): StopChoice[] | undefined {
  const left = heightUnder(last, work);
  if (!(left > 0 && left < start)) return undefined;
  // In one pass it always goes.
  let best = [last];
  let deep = 1 - left / start;
  let shallow = work.maxReduction;
  for (let k = 0; k < HALVINGS; k++) {
    const reduction = (deep + shallow) / 2;
    const way = goDown(start, last, reduction, work);
    if (way === undefined) shallow = reduction;
    else {
      best = way;
      deep = reduction;
    }
  }
  return best;
}

/**
 * As low as may be every time: from lower down every stop is nearer that could be reached from higher up, so this
 * gets there if anything does, and in the fewest passes.
 */
function goDown(
  start: number,
  last: StopChoice,
  reduction: number,
  work: Pressing,
): StopChoice[] | undefined {
  const stops: StopChoice[] = [];
  let before = start;
  for (;;) {
    const lowest = stopHeight(before * (1 - reduction), work.temperature, work.stopOffset);
    // The last one may be a block that is still to be made.
    const stop = lowest <= last.height ? last : work.find(lowest, "above");
    if (stop === undefined) return undefined;
    const next = heightUnder(stop, work);
    if (next >= before) return undefined;
    stops.push(stop);
    if (stop.height <= last.height) return stops;
    before = next;
  }
}
