import { count, type Finding, length, roughLength } from "../../errors/issue.js";
import { findingLimit, type GivenLimits } from "../../limits/finding-limits.js";
import { type PassName, passNamed } from "./press-findings.js";
import {
  type DieContact,
  FLOW_STRESS_RANGE,
  flowStress,
  LOAD_BASIS,
  longestBite,
  pressLoad,
} from "./press-load.js";

const NEWTONS_PER_KILONEWTON = 1000;

/** What is told of an estimate: two digits. */
const rough = (value: number): number => Number(value.toPrecision(2));

/**
 * What is unwise about a squeeze with this press: a load above its force, or a bite too short to work the middle.
 *
 * @param contact - Where die and piece touch at the end of the squeeze, mm.
 * @param celsius - Temperature of the steel.
 * @param press - What the press can push, kN.
 * @param path - Where the findings belong.
 * @param pass - Which squeeze it is, where there is more than one.
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
  pass?: PassName,
  given?: GivenLimits,
): Finding[] {
  const which = pass === undefined ? "" : passNamed(pass);
  return [
    ...biteFindings(contact, path, which, given),
    ...(forceKn === undefined ? [] : loadFindings(contact, celsius, forceKn, path, which)),
  ];
}

function biteFindings(
  { length: bite, height }: DieContact,
  path: string,
  which: string,
  given: GivenLimits | undefined,
): Finding[] {
  const leastBite = findingLimit("leastBite", given);
  if (bite >= leastBite.value * height) return [];
  return [
    {
      code: "bite-too-short",
      path,
      severity: "note",
      text: `${which}${which === "" ? "A" : "a"} die {bite} long on a piece {height} high leaves its middle unworked. Use a die of {least} or more, above all for welding.`,
      values: { bite: length(bite), height: length(height), least: length(leastBite.value * height) },
      basis: leastBite.basis,
    },
  ];
}

function loadFindings(
  contact: DieContact,
  celsius: number,
  forceKn: number,
  path: string,
  which: string,
): Finding[] {
  const temperature = { quantity: "temperature", value: celsius } as const;
  const { lowest, highest } = FLOW_STRESS_RANGE;
  if (!(celsius >= lowest && celsius <= highest))
    return [
      {
        code: "press-load-unknown",
        path,
        severity: "note",
        text: `${which}${which === "" ? "How" : "how"} hard steel is to press at {temperature} is not known here; the load was not compared with the press.`,
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
      text: `${which}${which === "" ? "This" : "this"} squeeze asks for about {low} to {high} kN at {temperature}; the press has {force} kN. ${
        tooWeak ? "It will stall: take" : "It may stall: if it does, take"
      } bites of {bite}, or press hotter.`,
      values: {
        low: count(rough(low)),
        high: count(rough(high)),
        force: count(forceKn),
        temperature,
        // Of the steel at its hardest: a bite that surely goes.
        bite: roughLength(longestBite(forceKn * NEWTONS_PER_KILONEWTON, contact, stress.high)),
      },
      basis: LOAD_BASIS,
    },
  ];
}
