import { type Finding, length, share } from "../../errors/issue.js";
import { findingLimit } from "../../limits/finding-limits.js";
import { limitBasis } from "../../limits/limit.js";
import { heightUnder } from "./coarse-stops.js";
import { endStop, type Squeeze, type SqueezeName } from "./end-stop.js";
import type { StoppedPasses } from "./pass-stops.js";
import { PRESS_DEFAULTS, type PressWork, type StopWork } from "./press-defaults.js";
import { stopFinder } from "./stop-blocks.js";
import { stopHeight } from "./stop-height.js";

/** Which pass of which squeeze, passes counted from 1. */
export interface PassName {
  readonly name: SqueezeName;
  readonly pass: number;
}

const NAMES: Readonly<Record<SqueezeName, string>> = { weld: "Weld", blade: "Blade", handle: "Handle" };

/**
 * How a remark begins that is about one pass. Those of the handle go among the passes of the fuller, so they are called
 * by another word.
 *
 * @example
 * passNamed({ name: "weld", pass: 3 }); // "Weld, pass 3: "
 */
export const passNamed = ({ name, pass }: PassName): string =>
  `${NAMES[name]}, ${name === "handle" ? "squeeze" : "pass"} ${pass}: `;

/**
 * What is unwise about passes with real stops: one that is deeper than the limit, a last stop far from the wanted
 * height, or a limit that the textbooks think too deep. A weld is squeezed until its joints have taken, so its last
 * stop is not held against a height.
 *
 * @param done - The passes, from {@link passStops}.
 *
 * @example
 * const work = { temperature: 950, stopOffset: 0, maxReduction: 0.2, stops: { blocks: [6.08], shims: [] } };
 * passFindings(passStops(10, 6, work), "blade", work).map(({ code }) => code); // ["pass-over-limit"]
 */
export function passFindings({ passes, over }: StoppedPasses, name: SqueezeName, work: StopWork): Finding[] {
  const { maxReduction } = work;
  const passSlack = findingLimit("passSlack", work.given);
  const stopError = findingLimit("stopError", work.given);
  const findings = depthFindings(work);
  if (over > passSlack.value) {
    const depths = passes.map(({ pressed }) => pressed.reduction);
    const deepest = Math.max(...depths);
    findings.push({
      code: "pass-over-limit",
      path: "press",
      severity: "warn",
      text: `${passNamed({ name, pass: depths.indexOf(deepest) + 1 })}the stops in hand make it take {most}, {over} more than {limit}. Add a block or a shim between, or make two squeezes of it without a stop.`,
      values: { most: share(maxReduction + over), over: share(over), limit: share(maxReduction) },
      basis: limitBasis(maxReduction, PRESS_DEFAULTS.maxReduction),
    });
  }
  const last = passes.at(-1);
  if (last === undefined || name === "weld" || Math.abs(last.stop.error) <= stopError.value) return findings;
  const tall = last.stop.error > 0;
  findings.push({
    code: "stop-far-off",
    path: "press",
    severity: "note",
    text: `${passNamed({ name, pass: passes.length })}it comes out {out}, {off} ${
      tall
        ? "thicker than wanted. Grind the rest off, or"
        : "thinner than wanted. Press to {hot} hot by the caliper, or"
    } make a ${lowerThanAll(last.stopHeight, work)}block of {make}.`,
    values: {
      out: length(last.pressed.height),
      off: length(Math.abs(last.pressed.height - last.height)),
      hot: length(last.hotHeight),
      make: length(last.stopHeight),
    },
    basis: stopError.basis,
  });
  return findings;
}

/** The limit of a pass itself, whatever the squeeze. */
function depthFindings({ maxReduction, given }: PressWork): Finding[] {
  const deepestReduction = findingLimit("deepestReduction", given);
  if (maxReduction <= deepestReduction.value) return [];
  return [
    {
      code: "pass-limit-deep",
      path: "press.maxReduction",
      severity: "warn",
      text: "Passes may take {limit} each; from {deepest} on laps form. Give the press a lower maxReduction.",
      values: { limit: share(maxReduction), deepest: share(deepestReduction.value) },
      basis: deepestReduction.basis,
    },
  ];
}

/** A shim cannot help where even the lowest block is too tall. */
const lowerThanAll = (height: number, { stops }: StopWork): string =>
  Math.min(...stops.blocks) > height ? "lower " : "";

/**
 * What to do where no stop in hand will do for the last pass of a squeeze; nothing where one does.
 *
 * @param passes - How many there are.
 *
 * @example
 * const work = { temperature: 950, stopOffset: 0, maxReduction: 0.2, stops: { blocks: [30, 40], shims: [] } };
 * const squeeze = { name: "weld", from: 20.2, to: 14.14, across: 45 } as const;
 * noStopFindings(squeeze, 2, work).map(({ code }) => code); // ["no-stop-low-enough"]
 */
export function noStopFindings(squeeze: Squeeze, passes: number, work: StopWork): Finding[] {
  if (endStop(squeeze, work) !== undefined) return [];
  const { name, from, to } = squeeze;
  const make = stopHeight(to, work.temperature, work.stopOffset);
  const which = passNamed({ name, pass: passes });
  const values = { make: length(make), end: length(to), offset: length(work.stopOffset) };
  const common = { path: "press", severity: "warn", basis: "the shop file" } as const;
  const limit = depthFindings(work);
  const stopFar = findingLimit("stopFar", work.given);
  if (make <= 0)
    return [
      ...limit,
      {
        ...common,
        code: "no-stop-low-enough",
        text: `${which}with an offset of {offset} no stop holds the press at {end}. Measure stopOffset again (hot height of a piece less its stop), or press without a stop and measure.`,
        values,
      },
    ];
  const below = stopFinder(work.stops)(make, "below");
  const out = below === undefined ? 0 : heightUnder(below, work);
  const orLess = name === "weld" ? " or a little less" : "";
  if (below === undefined || out <= 0)
    return [
      ...limit,
      {
        ...common,
        code: "no-stop-low-enough",
        text: `${which}no stop in hand is low enough: make a block of {make}${orLess}.`,
        values,
      },
    ];
  return [
    ...limit,
    name === "weld"
      ? {
          ...common,
          code: "no-stop-near",
          text: `${which}no stop in hand comes near: the next lower one squeezes the weld by {taken}, where {least} is planned. Make a block of {make}${orLess}.`,
          values: { ...values, taken: share(1 - out / from), least: share(1 - to / from) },
          basis: findingLimit("weldBeyond", work.given).basis,
        }
      : {
          ...common,
          code: "no-stop-near",
          text: `${which}no stop in hand will do: they are off by more than {far}, or not lower than the piece. Make a block of {make}.`,
          values: { ...values, far: length(stopFar.value) },
          basis: stopFar.basis,
        },
  ];
}
