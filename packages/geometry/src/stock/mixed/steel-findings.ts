import { count, type Finding, length, temperature } from "../../errors/issue.js";
import { findingLimit, type GivenLimits } from "../../limits/finding-limits.js";
import { type HardeningRange, hardeningGap, hardeningOf } from "../../materials/hardening.js";
import { findMaterial, isSameMaterial } from "../../materials/materials.js";
import { type MixedStackSpec, stackBars } from "./spec.js";

/** Steels of a stack, each once. */
function steelsOf(stack: MixedStackSpec): string[] {
  const names: string[] = [];
  for (const { steel } of stackBars(stack)) {
    if (!names.some((name) => isSameMaterial(name, steel.name))) names.push(steel.name);
  }
  return names;
}

const RANGES = (a: HardeningRange, b: HardeningRange, limit: string): string =>
  `hardening ranges: ${a.steel} ${a.source}; ${b.steel} ${b.source}. Limit: ${limit}`;

/**
 * Whether the steels of a stack go through one hardening: ranges that lie apart, layers that do not harden, stainless
 * cladding at full thickness, steels of which nothing is known.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "304" }, thickness: 3 }];
 * steelPairFindings({ kind: "clad", core, cladding, width: 30 }).map(({ code }) => code); // ["stainless-cladding"]
 */
export function steelPairFindings(stack: MixedStackSpec, given: GivenLimits = {}): Finding[] {
  const most = findingLimit("hardeningGap", given);
  const known: HardeningRange[] = [];
  const findings: Finding[] = [];
  for (const name of steelsOf(stack)) {
    const range = hardeningOf(name);
    if (range === undefined) {
      findings.push({
        code: "hardening-not-known",
        severity: "note",
        path: "stack",
        text: "At what temperature {steel} hardens is not known here. Hold the suppliers' sheets of both steels side by side before they are welded.",
        values: { steel: name },
        basis: "the table of hardening temperatures",
      });
    } else known.push(range);
  }
  for (const [i, a] of known.entries()) {
    for (const b of known.slice(i + 1)) {
      const gap = hardeningGap(a, b);
      if (gap === undefined || gap <= most.value) continue;
      findings.push({
        code: "hardening-apart",
        severity: "warn",
        path: "stack",
        text: "{first} hardens at {firstLow} to {firstHigh}, {second} at {secondLow} to {secondHigh}: no one heat suits both. Choose the heat for the steel at the edge, or pair other steels.",
        values: {
          first: a.steel,
          firstLow: temperature(a.low ?? 0),
          firstHigh: temperature(a.high ?? 0),
          second: b.steel,
          secondLow: temperature(b.low ?? 0),
          secondHigh: temperature(b.high ?? 0),
        },
        basis: RANGES(a, b, most.basis),
      });
    }
  }
  return [...findings, ...softFindings(stack, known), ...stainlessFindings(stack)];
}

/**
 * Whether the core of a stack is the steel that the knife file names: weight, density and reports go by that, the edge by the
 * core. Nothing where `steel` is a name of the smith's own for the stack as a whole.
 *
 * @param steel - Name of the knife file's steel.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "O1" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * edgeSteelFindings({ kind: "clad", core, cladding, width: 30 }, "52100")[0]?.code; // "core-not-the-steel"
 */
export function edgeSteelFindings(stack: MixedStackSpec, steel: string): Finding[] {
  if (stack.kind !== "clad" || findMaterial(steel) === undefined) return [];
  const core = stack.core.steel.name;
  if (isSameMaterial(steel, core)) return [];
  return [
    {
      code: "core-not-the-steel",
      severity: "warn",
      path: "stack.core.steel",
      text: "The core, which comes to the edge, is {core}, but the file's steel is {steel}. Write {core} for steel too, or {steel} for the core.",
      values: { core, steel },
      basis: "the knife file",
    },
  ];
}

/** A steel that does not harden belongs beside the core, not among the layers of an edge. */
function softFindings(stack: MixedStackSpec, known: readonly HardeningRange[]): Finding[] {
  const atEdge =
    stack.kind === "clad" ? known.filter(({ steel }) => isSameMaterial(steel, stack.core.steel.name)) : known;
  return atEdge
    .filter(({ low }) => low === undefined)
    .map(({ steel, source }) => ({
      code: "edge-stays-soft",
      severity: "warn",
      path: "stack",
      text: "{steel} does not harden, and it comes to the edge. Put a core of edge steel in, or take another steel.",
      values: { steel },
      basis: `low-carbon and austenitic steels: ${source}`,
    }));
}

function stainlessFindings(stack: MixedStackSpec): Finding[] {
  if (stack.kind !== "clad") return [];
  const { name } = stack.cladding.steel;
  if (hardeningOf(name)?.stainless !== true || hardeningOf(stack.core.steel.name)?.stainless === true)
    return [];
  return [
    {
      code: "stainless-cladding",
      severity: "warn",
      path: "stack.cladding.steel",
      text: "At ricasso and tang the cladding of {steel} keeps its full thickness, and blades have split along the core there when quenched. Keep the ricasso out of the quench, or take other cladding.",
      values: { steel: name },
      basis: "one maker's report of stainless-clad blades that split; no measured limit",
    },
  ];
}

/** Layers of the forged blade, as findings look at them. */
export interface LayerFigures {
  readonly nominal: number;
  readonly distinct: number;
  /** At the face where the forged blade is thickest, mm. */
  readonly thickness: number;
  /** From where on toward the tip they are thinner than the limit, mm from the heel. */
  readonly thinFrom?: number;
}

/**
 * What is to be said of the layers: the count that may be claimed, and layers too thin to be told apart.
 *
 * @param least - Thinnest layer that still shows, mm, and where that limit comes from.
 *
 * @example
 * layerFindings({ nominal: 208, distinct: 193, thickness: 0.047 }, { value: 0.02, basis: "the shop's own limit" })[0]?.code;
 * // "layers-nominal"
 */
export function layerFindings(
  layers: LayerFigures,
  least: { readonly value: number; readonly basis: string },
): Finding[] {
  const { nominal, distinct, thickness, thinFrom } = layers;
  const findings: Finding[] = [];
  if (nominal !== distinct) {
    findings.push({
      code: "layers-nominal",
      severity: "note",
      path: "stack",
      text: "{nominal} layers as multiplied up, {distinct} that can be told apart: where equal steels meet at a joint they are one. State {distinct}, or both.",
      values: { nominal: count(nominal), distinct: count(distinct) },
      basis: "geometry: equal steels at the joints",
    });
  }
  const values = { thickness: length(micrometre(thickness)), least: length(least.value) };
  if (thickness < least.value) {
    findings.push({
      code: "layers-too-thin",
      severity: "warn",
      path: "stack",
      text: "The layers are {thickness} thick at the face of the forged blade; under {least} the pattern fades. Restack fewer times.",
      values,
      basis: least.basis,
    });
  } else if (thinFrom !== undefined) {
    findings.push({
      code: "layers-thin-at-tip",
      severity: "note",
      path: "stack",
      text: "From {from} ahead of the heel the layers are thinner than {least}: the pattern may fade toward the tip.",
      values: { ...values, from: length(Math.round(thinFrom)) },
      basis: least.basis,
    });
  }
  return findings;
}

const micrometre = (mm: number): number => Math.round(mm * 1000) / 1000;
