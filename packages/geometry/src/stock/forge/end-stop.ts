import { findingLimit } from "../../limits/finding-limits.js";
import { heightUnder } from "./coarse-stops.js";
import type { StopWork } from "./press-defaults.js";
import { type StopChoice, stopFinder } from "./stop-blocks.js";
import { stopHeight } from "./stop-height.js";

/** What is squeezed: remarks say which, and a weld is judged otherwise than the rest. */
export type SqueezeName = "weld" | "blade" | "handle";

/** A squeeze from one height to another, mm at 20 °C. */
export interface Squeeze {
  readonly name: SqueezeName;
  readonly from: number;
  readonly to: number;
  /** Width of the piece under the die. */
  readonly across: number;
}

/** Shares of one squeeze agree within the last digits of a double. */
const HAIR = 1e-9;

/**
 * The stop in hand that a squeeze can end at, or undefined where there is none and a block has to be made.
 *
 * A weld has to lose its least reduction, so its stop is never above the wanted height, and takes no more than
 * {@link FINDING_LIMITS}`.weldBeyond` beyond that. Every other squeeze ends at the nearest stop that is no farther off
 * than {@link FINDING_LIMITS}`.stopFar`. A stop that is not lower than the piece is none.
 *
 * @throws {GeometryError} as {@link stopFinder} and {@link stopHeight}.
 *
 * @example
 * const work = { temperature: 950, stopOffset: 0, maxReduction: 0.2, stops: { blocks: [10, 14.2], shims: [] } };
 * endStop({ name: "blade", from: 20, to: 14, across: 40 }, work)?.height; // 14.2, nearest to 14.18
 * endStop({ name: "weld", from: 20, to: 14, across: 40 }, work); // undefined: 14.2 is above, 10 far below
 */
export function endStop({ name, from, to }: Squeeze, work: StopWork): StopChoice | undefined {
  const wanted = stopHeight(to, work.temperature, work.stopOffset);
  const find = stopFinder(work.stops);
  const weld = name === "weld";
  return (weld ? (["below"] as const) : (["both", "below"] as const))
    .flatMap((side) => find(wanted, side) ?? [])
    .find((stop) => {
      const out = heightUnder(stop, work);
      if (!(out > 0 && out < from)) return false;
      return weld
        ? (to - out) / from <= findingLimit("weldBeyond", work.given).value + HAIR
        : Math.abs(stop.error) <= findingLimit("stopFar", work.given).value + HAIR;
    });
}
