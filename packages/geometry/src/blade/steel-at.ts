import { length, type QuantityValue } from "../errors/issue.js";
import type { Vec2 } from "../plane/vec2.js";
import type { Footprint } from "./footprint.js";

/** A sentence that says where steel is, with its numbers. */
export interface SteelWords {
  readonly text: string;
  readonly values: Readonly<Record<string, QuantityValue>>;
}

/**
 * Where the steel lies above and below a place: of several stretches the one that is nearest to it; beyond its ends how far it
 * goes along.
 */
export function steelAt(footprint: Footprint, { x, y }: Vec2): SteelWords {
  const away = ([low, high]: readonly [number, number]): number => Math.max(low - y, y - high, 0);
  const [first, ...others] = footprint.spansAt(x);
  if (first === undefined) {
    const { minX, maxX } = footprint;
    return {
      text: "The steel reaches from x {steelFrom} to x {steelTo}.",
      values: { steelFrom: length(minX), steelTo: length(maxX) },
    };
  }
  const [low, high] = others.reduce((a, b) => (away(b) < away(a) ? b : a), first);
  return {
    text: "At x {steelX} the steel reaches from y {steelLow} to y {steelHigh}.",
    values: { steelX: length(x), steelLow: length(low), steelHigh: length(high) },
  };
}
