import { count, type Finding, length, share } from "../../errors/issue.js";
import type { StoppedPasses } from "./pass-stops.js";
import { limitBasis, PRESS_DEFAULTS, type PressWork } from "./press-defaults.js";
import {
  type DieContact,
  FLOW_STRESS_RANGE,
  flowStress,
  LOAD_BASIS,
  longestBite,
  pressLoad,
} from "./press-load.js";

const NEWTONS_PER_KILONEWTON = 1000;

/**
 * What is unwise about passes with real stops: one that is deeper than the limit, a last stop far from the wanted
 * height, no stop low enough, or a limit that the textbooks think too deep.
 *
 * @param done - The passes, from {@link passStops}.
 * @param end - Height that was wanted, mm at 20 °C.
 * @param path - Where the findings belong.
 *
 * @example
 * const work = { temperature: 950, stopOffset: 0, maxReduction: 0.2, stops: { blocks: [12], shims: [] } };
 * passFindings(passStops(10, 8, work), 8, work, "press").map(({ code }) => code); // ["no-stop-low-enough"]
 */
export function passFindings(
  { passes, over, reached }: StoppedPasses,
  end: number,
  { maxReduction }: PressWork,
  path: string,
): Finding[] {
  const findings: Finding[] = [];
  const { deepestReduction, passSlack, stopError } = PRESS_DEFAULTS;
  if (maxReduction > deepestReduction.value)
    findings.push({
      code: "pass-limit-deep",
      path: "press.maxReduction",
      severity: "warn",
      text: "Passes may take {limit} each; from {deepest} on laps form. Give the press a lower maxReduction.",
      values: { limit: share(maxReduction), deepest: share(deepestReduction.value) },
      basis: deepestReduction.basis,
    });
  if (!reached)
    findings.push({
      code: "no-stop-low-enough",
      path,
      severity: "warn",
      text: "No stop block and shims in hand hold the press at {end}: the nearest is not lower than the piece. Make a lower block, or press without one and measure.",
      values: { end: length(end) },
      basis: "the shop file",
    });
  if (over > passSlack.value)
    findings.push({
      code: "pass-over-limit",
      path,
      severity: "warn",
      text: "With the stops in hand one pass takes {most}, {over} more than {limit}. Add a block or a shim between, or make two squeezes of it without a stop.",
      values: { most: share(maxReduction + over), over: share(over), limit: share(maxReduction) },
      basis: limitBasis(maxReduction, PRESS_DEFAULTS.maxReduction),
    });
  const error = passes.at(-1)?.stop.error ?? 0;
  if (Math.abs(error) > stopError.value)
    findings.push({
      code: "stop-far-off",
      path,
      severity: "note",
      text: `The last stop is {off} ${error > 0 ? "taller" : "lower"} than wanted. ${
        error > 0 ? "Grind the rest off, or add" : "Use the next one up, or add"
      } a shim that makes {wanted}.`,
      values: { off: length(Math.abs(error)), wanted: length(passes.at(-1)?.stopHeight ?? end) },
      basis: stopError.basis,
    });
  return findings;
}

/**
 * What is unwise about a squeeze with this press: a load above its force, or a bite too short to work the middle.
 *
 * @param contact - Where die and piece touch at the end of the squeeze, mm.
 * @param celsius - Temperature of the steel.
 * @param press - What the press can push, kN.
 * @param path - Where the findings belong.
 *
 * @example
 * const contact = { length: 60, width: 40, height: 10 };
 * pressLoadFindings(contact, 1000, { forceKn: 250 }, "press").map(({ code }) => code); // ["press-too-weak"]
 */
export function pressLoadFindings(
  contact: DieContact,
  celsius: number,
  { forceKn }: { readonly forceKn?: number },
  path: string,
): Finding[] {
  return [
    ...biteFindings(contact, path),
    ...(forceKn === undefined ? [] : loadFindings(contact, celsius, forceKn, path)),
  ];
}

function biteFindings({ length: bite, height }: DieContact, path: string): Finding[] {
  const { leastBite } = PRESS_DEFAULTS;
  if (bite >= leastBite.value * height) return [];
  return [
    {
      code: "bite-too-short",
      path,
      severity: "note",
      text: "A die {bite} long on a piece {height} high leaves its middle unworked. Use a die of {least} or more, above all for welding.",
      values: { bite: length(bite), height: length(height), least: length(leastBite.value * height) },
      basis: leastBite.basis,
    },
  ];
}

function loadFindings(contact: DieContact, celsius: number, forceKn: number, path: string): Finding[] {
  const temperature = { quantity: "temperature", value: celsius } as const;
  const { lowest, highest } = FLOW_STRESS_RANGE;
  if (!(celsius >= lowest && celsius <= highest))
    return [
      {
        code: "press-load-unknown",
        path,
        severity: "note",
        text: "How hard steel is to press at {temperature} is not known here; the load was not compared with the press.",
        values: { temperature },
        basis: LOAD_BASIS,
      },
    ];
  const stress = flowStress(celsius);
  const low = pressLoad(contact, stress.low) / NEWTONS_PER_KILONEWTON;
  const high = pressLoad(contact, stress.high) / NEWTONS_PER_KILONEWTON;
  if (high <= forceKn) return [];
  const tooWeak = low > forceKn;
  return [
    {
      code: tooWeak ? "press-too-weak" : "press-near-limit",
      path,
      severity: tooWeak ? "warn" : "note",
      text: `This squeeze asks for about {low} to {high} kN at {temperature}; the press has {force} kN. ${
        tooWeak ? "It will stall: take" : "It may stall: if it does, take"
      } bites of {bite}, or press hotter.`,
      values: {
        low: count(Math.round(low)),
        high: count(Math.round(high)),
        force: count(forceKn),
        temperature,
        bite: length(
          longestBite(forceKn * NEWTONS_PER_KILONEWTON, contact, tooWeak ? stress.low : stress.high),
        ),
      },
      basis: LOAD_BASIS,
    },
  ];
}
