import type { Knife } from "../../blade/knife.js";
import { type Finding, length, type QuantityValue } from "../../errors/issue.js";
import type { RackBar } from "../shop.js";
import { coreAdvice } from "./core-advice.js";
import type { CoreAnswer, CoreReport } from "./core-report.js";
import { type MixedLimits, mixedBasis } from "./mixed-limits.js";
import type { CladSpec } from "./spec.js";

/** What core findings are worked out from. */
export interface CoreFindingInput {
  readonly knife: Knife;
  readonly stack: CladSpec;
  readonly cleaning: number;
  readonly rack: readonly RackBar[];
  readonly limits: MixedLimits;
}

const GEOMETRY = "geometry: the core's faces cut by the ground face";

/**
 * What is to be said of a core with cladding: a line outside what is asked, with the sizes that would put it right; a
 * line that hangs on how true the core lies; a core that leaves the edge.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 0.8 }, { steel: { name: "1020" }, thickness: 4 }];
 * const stack = { kind: "clad", core, cladding, width: 30 } as const;
 * const report = coreReport({ knife, stack, cleaning: 0, keptByScale: 1, centring: 0.125 });
 * const input = { knife, stack, cleaning: 0, rack: [], limits: withDefaultMixedLimits() };
 * coreFindings(input, report).map(({ code }) => code); // ["core-at-edge"]
 */
export function coreFindings(input: CoreFindingInput, report: CoreReport): Finding[] {
  const { asked } = report;
  return [...(asked === undefined ? [] : lineFindings(input, asked)), ...edgeFindings(input, report)];
}

function lineFindings(input: CoreFindingInput, asked: CoreAnswer): Finding[] {
  const { low, high, height, budget, interval, neededBand, lessScale } = asked;
  const values = {
    line: length(height),
    low: length(low),
    high: length(high),
    middle: length((low + high) / 2),
  };
  const found: Finding[] = [];
  // What is an answer's margin of 1e-5 mm is a margin here too.
  if (height < low - 1e-5 || height > high + 1e-5) return [lineMisses(input, asked, values)];
  const centring = input.limits.coreCentring;
  if (budget < centring) {
    found.push({
      code: "core-line-touchy",
      severity: "warn",
      path: "order.asks.coreLine",
      text: "The core line comes at {line} if the core lies in the middle; {budget} off the middle it leaves {low} to {high}, and {centring} is what can be held, which brings it to {least} on one face and {most} on the other. Ask for {middle} ± {band}.",
      values: {
        ...values,
        budget: length(round(budget)),
        centring: length(centring),
        least: length(tenth(interval[0])),
        most: length(tenth(interval[1])),
        band: length(neededBand),
      },
      basis: mixedBasis("coreCentring", centring),
    });
  }
  if (lessScale < low || lessScale > high) {
    found.push({
      code: "core-line-scale",
      severity: "note",
      path: "order.asks.coreLine",
      text: "Fire scale comes off the cladding, not off the core. If all of it does, the core line comes at {scaled} instead of {line}, outside {low} to {high}. Etch a cut end of the billet before it is at its last thickness.",
      values: { ...values, scaled: length(tenth(lessScale)) },
      basis: "the shop's losses at welding and forging heats, all off the faces",
    });
  }
  return found;
}

function lineMisses(
  input: CoreFindingInput,
  asked: CoreAnswer,
  values: Readonly<Record<string, QuantityValue>>,
): Finding {
  const { knife, stack, cleaning, rack } = input;
  const advice = coreAdvice(knife, stack, cleaning, asked, rack);
  const sizes = [
    ...(advice.core > 2 * cleaning && Number.isFinite(advice.core)
      ? [{ text: "a core bar of {core}", values: { core: length(round(advice.core)) } }]
      : []),
    ...(advice.cladding > cleaning && Number.isFinite(advice.cladding)
      ? [{ text: "cladding bars of {cladding}", values: { cladding: length(round(advice.cladding)) } }]
      : []),
  ];
  const onRack = advice.bars.map(({ part, bar, height }) => ({
    text: `{${part}Bar} as ${part} brings it to {${part}Line}`,
    values: { [`${part}Bar`]: bar.name, [`${part}Line`]: length(tenth(height)) },
  }));
  const said: Record<string, QuantityValue | string> = Object.assign(
    { ...values, line: length(tenth(asked.height)) },
    ...[...sizes, ...onRack].map((part) => part.values),
  );
  const list = (parts: readonly { readonly text: string }[], word: string): string =>
    parts.map(({ text }) => text).join(word);
  return {
    code: "core-line-misses",
    severity: asked.wished === true ? "warn" : "stop",
    path: "order.asks.coreLine",
    text: [
      "The core line comes at {line} above the edge, outside {low} to {high}.",
      ...(sizes.length === 0 ? [] : [`For {middle}: ${list(sizes, ", or ")}.`]),
      ...(onRack.length === 0
        ? rack.length === 0
          ? []
          : ["No bar of the rack would do."]
        : [`On the rack: ${list(onRack, "; ")}.`]),
    ].join(" "),
    values: said,
    basis: "the order; core by uniform thinning of all layers",
  };
}

/** How near the core comes to leaving the edge, at the worst place between heel and tip. */
function edgeFindings({ stack, limits }: CoreFindingInput, { least }: CoreReport): Finding[] {
  const { edge, apex } = least.budget;
  const values = {
    x: length(round(least.x)),
    core: length(round(least.core)),
    edge: length(round(Math.max(0, edge))),
    steel: stack.core.steel.name,
    centring: length(limits.coreCentring),
  };
  const at = "stack.core.thickness";
  if (edge <= 0) {
    return [
      {
        code: apex <= 0 ? "core-not-at-apex" : "core-at-edge",
        severity: "stop",
        path: at,
        text:
          apex <= 0
            ? "At {x} from the heel the core, {core} thick, does not hold the apex: the edge would be cladding. Take a thicker core or thinner cladding."
            : "At {x} from the heel the core, {core} thick, is no thicker than the edge before sharpening: cladding reaches the edge. Take a thicker core or thinner cladding, or thin the edge.",
        values,
        basis: GEOMETRY,
      },
    ];
  }
  if (edge >= limits.coreCentring) return [];
  return [
    {
      code: "core-near-edge",
      severity: "warn",
      path: at,
      text: "At {x} from the heel cladding reaches the edge once the core, {core} thick, lies {edge} off the middle; {centring} is what can be held. Forge the tip evenly from both faces, taper the core less, or take a thicker core.",
      values,
      basis: mixedBasis("coreCentring", limits.coreCentring),
    },
  ];
}

const round = (mm: number): number => Math.round(mm * 100) / 100;
const tenth = (mm: number): number => Math.round(mm * 10) / 10;
