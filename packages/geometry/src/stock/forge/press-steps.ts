import type { Finding } from "../../errors/issue.js";
import type { PressSpec } from "../shop.js";
import { type PassHeight, passHeights } from "./pass-heights.js";
import { passStops } from "./pass-stops.js";
import type { PressWork } from "./press-defaults.js";
import { passFindings, pressLoadFindings } from "./press-findings.js";
import { dieContact } from "./press-load.js";
import { nearestStop, type StopChoice } from "./stop-blocks.js";
import { stopHeight } from "./stop-height.js";
import { hotSize } from "./thermal-elongation.js";

/** A height to be pressed to, and what to lay between the dies for it; mm, cold at 20 °C. */
export interface PressStop {
  readonly cold: number;
  /** At the temperature of the squeeze. */
  readonly hot: number;
  /** What the stop has to measure: hot, less the offset of the press. */
  readonly wanted: number;
  /** What of the shop's own blocks and shims comes nearest; left out where it names none. */
  readonly stop?: StopChoice;
}

/** One pass of the press. */
export interface PressPass extends PressStop {
  /** Share that it takes off the height before it, with the stop that is used. */
  readonly reduction: number;
}

/** Passes of the press from one height to another. */
export interface PressPasses {
  readonly from: number;
  readonly to: number;
  /** Of the steel at the squeeze, °C: what hot heights are told for. */
  readonly temperature: number;
  /** Empty where nothing is to be taken off. */
  readonly passes: readonly PressPass[];
  readonly findings: readonly Finding[];
}

/**
 * The stop for one height.
 *
 * @param cold - mm
 *
 * @example
 * pressStop(6, pressWork({ stopBlocks: [6], shims: [0.1] })).stop?.error; // 0.0232, 6.1 where 6.0768 is wanted
 */
export function pressStop(cold: number, work: PressWork): PressStop {
  const wanted = stopHeight(cold, work.temperature, work.stopOffset);
  return {
    cold,
    hot: hotSize(cold, work.temperature),
    wanted,
    ...(work.stops === undefined ? {} : { stop: nearestStop(wanted, work.stops) }),
  };
}

/**
 * The passes from one height to another: with the stops of the shop, or by even heights where it names none.
 *
 * @param from - mm
 * @param to - mm; above `from` there is nothing to press.
 * @param across - Width of the piece under the die, mm.
 *
 * @example
 * pressPasses(9.5, 7.35, 38, {}, pressWork({})).passes.length; // 2
 */
export function pressPasses(
  from: number,
  to: number,
  across: number,
  press: PressSpec,
  work: PressWork,
): PressPasses {
  const { temperature } = work;
  if (!(to > 0 && to < from)) return { from, to, temperature, passes: [], findings: [] };
  const { die } = press;
  const load =
    die === undefined
      ? []
      : pressLoadFindings(dieContact(die, { width: across, height: to }), work.temperature, press, "press");
  const { stops } = work;
  if (stops === undefined)
    return {
      from,
      to,
      temperature,
      passes: passHeights(from, to, work.maxReduction).map(plain(work)),
      findings: load,
    };
  const done = passStops(from, to, { ...work, stops });
  return {
    from,
    to,
    temperature,
    passes: done.passes.map(({ height, hotHeight, stopHeight: wanted, stop, pressed }) => ({
      cold: height,
      hot: hotHeight,
      wanted,
      stop,
      reduction: pressed.reduction,
    })),
    findings: [...passFindings(done, to, work, "press"), ...load],
  };
}

const plain =
  (work: PressWork) =>
  ({ height, reduction }: PassHeight): PressPass => ({ ...pressStop(height, work), reduction });
