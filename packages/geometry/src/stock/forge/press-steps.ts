import type { Finding } from "../../errors/issue.js";
import { findingLimit } from "../../limits/finding-limits.js";
import type { PressSpec } from "../shop.js";
import { heightUnder } from "./coarse-stops.js";
import { endStop, type Squeeze } from "./end-stop.js";
import { type PassHeight, passHeights } from "./pass-heights.js";
import { passStops, type StoppedPasses } from "./pass-stops.js";
import type { PressWork, StopWork } from "./press-defaults.js";
import { noStopFindings, passFindings } from "./press-findings.js";
import { dieContact } from "./press-load.js";
import { pressLoadFindings } from "./press-load-findings.js";
import { nearestStop, type StopChoice } from "./stop-blocks.js";
import { stopHeight } from "./stop-height.js";
import { hotSize } from "./thermal-elongation.js";

/** A height to be pressed to, and what to lay between the dies for it; mm, cold at 20 °C. */
export interface PressStop {
  /** What is wanted. */
  readonly cold: number;
  /** The same at the temperature of the squeeze. */
  readonly hot: number;
  /** What the stop has to measure: hot, less the offset of the press. */
  readonly wanted: number;
  /** What to lay in of the shop's own blocks and shims; left out where it names none, or none that will do. */
  readonly stop?: StopChoice;
  /** What comes out with that stop, cold and hot; left out without one. */
  readonly out?: { readonly cold: number; readonly hot: number };
  /** Block to make where the shop names stops and none will do: as high as `wanted`. */
  readonly make?: number;
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
  /** Height at 20 °C that the last pass leaves: `to`, or what its stop makes of it. */
  readonly ends: number;
  /** Of the steel at the squeeze, °C: what hot heights are told for. */
  readonly temperature: number;
  /** Empty where nothing is to be taken off. */
  readonly passes: readonly PressPass[];
  readonly findings: readonly Finding[];
}

/**
 * The stop for one height: the nearest in hand, or a block to make where that is farther off than
 * {@link FINDING_LIMITS}`.stopFar`.
 *
 * @param cold - mm
 *
 * @example
 * pressStop(6, pressWork({ stopBlocks: [6], shims: [0.1] })).stop?.error; // 0.0232, 6.1 where 6.0768 is wanted
 * pressStop(3, pressWork({ stopBlocks: [6] })).make; // 3.0384
 */
export function pressStop(cold: number, work: PressWork): PressStop {
  const { stops } = work;
  const plain = bareStop(cold, work);
  if (stops === undefined) return plain;
  const stop = nearestStop(plain.wanted, stops);
  const near = Math.abs(stop.error) <= findingLimit("stopFar", work.given).value;
  return near ? { ...plain, ...laidIn(stop, { ...work, stops }) } : { ...plain, ...toMake(plain) };
}

const bareStop = (cold: number, work: PressWork): PressStop => ({
  cold,
  hot: hotSize(cold, work.temperature),
  wanted: stopHeight(cold, work.temperature, work.stopOffset),
});

const laidIn = (stop: StopChoice, work: StopWork): Pick<Required<PressStop>, "stop" | "out"> => ({
  stop,
  out: { cold: heightUnder(stop, work), hot: stop.height + work.stopOffset },
});

/** An offset that is larger than the piece leaves no height for a block. */
const toMake = ({ wanted }: PressStop): { readonly make?: number } => (wanted > 0 ? { make: wanted } : {});

/**
 * The passes of a squeeze: with the stops of the shop, or by even heights where it names none. Where none of them will
 * do for the last pass, that one asks for a block to be made; where the others are then too far apart, they are even
 * heights without a stop as well.
 *
 * @param squeeze - `to` above `from`: there is nothing to press.
 *
 * @example
 * const squeeze = { name: "blade", from: 9.5, to: 7.35, across: 38 } as const;
 * pressPasses(squeeze, {}, pressWork({})).passes.length; // 2
 */
export function pressPasses(squeeze: Squeeze, press: PressSpec, work: PressWork): PressPasses {
  const { from, to } = squeeze;
  const { temperature, stops } = work;
  const idle = { from, to, ends: from, temperature, passes: [], findings: [] };
  if (!(to > 0 && to < from)) return idle;
  const done = stops === undefined ? byHeight(squeeze, work) : byStops(squeeze, { ...work, stops });
  const ends = done.passes.at(-1)?.out?.cold ?? to;
  return {
    ...idle,
    ends,
    passes: done.passes,
    findings: [...done.findings, ...loadFindings(squeeze, ends, done.passes.length, press, work)],
  };
}

type Done = Pick<PressPasses, "passes" | "findings">;

const byHeight = ({ from, to }: Squeeze, work: PressWork): Done => ({
  passes: passHeights(from, to, work.maxReduction).map(plainPass(work)),
  findings: [],
});

const plainPass =
  (work: PressWork) =>
  ({ height, reduction }: PassHeight): PressPass => ({ ...bareStop(height, work), reduction });

function byStops(squeeze: Squeeze, work: StopWork): Done {
  const { from, to, name } = squeeze;
  const last = endStop(squeeze, work);
  if (last !== undefined) {
    const done = passStops(from, to, work, last);
    return { passes: done.passes.map(stoppedPass(work)), findings: passFindings(done, name, work) };
  }
  const wanted = stopHeight(to, work.temperature, work.stopOffset);
  const made = wanted > 0 ? passStops(from, to, work, blockOf(wanted)) : NONE;
  const fits = made.reached && made.over <= findingLimit("passSlack", work.given).value;
  const passes = fits ? made.passes.map(stoppedPass(work)) : byHeight(squeeze, work).passes;
  return {
    passes: passes.map((pass, i) => (i + 1 < passes.length ? pass : withoutStop(pass))),
    findings: noStopFindings(squeeze, passes.length, work),
  };
}

const NONE: StoppedPasses = { passes: [], reached: false, over: 0 };

const blockOf = (height: number): StopChoice => ({ block: height, shims: [], height, error: 0 });

const stoppedPass =
  (work: StopWork) =>
  ({ height, hotHeight, stopHeight: wanted, stop, pressed }: StoppedPasses["passes"][number]): PressPass => ({
    cold: height,
    hot: hotHeight,
    wanted,
    ...laidIn(stop, work),
    reduction: pressed.reduction,
  });

const withoutStop = ({ cold, hot, wanted, reduction }: PressPass): PressPass => {
  const bare = { cold, hot, wanted, reduction };
  return { ...bare, ...toMake(bare) };
};

/** The load is greatest in the last pass, where the piece is lowest. */
function loadFindings(
  { name, across }: Squeeze,
  ends: number,
  passes: number,
  press: PressSpec,
  { temperature, given }: PressWork,
): Finding[] {
  const { die } = press;
  if (die === undefined) return [];
  const contact = dieContact(die, { width: across, height: ends });
  return pressLoadFindings(contact, temperature, press, "press", { name, pass: passes }, given);
}
