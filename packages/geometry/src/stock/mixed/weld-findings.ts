import { count, type Finding, length, mass, share } from "../../errors/issue.js";
import { LIMIT_DEFAULTS } from "../defaults.js";
import type { ReachClass } from "../reach.js";
import type { ShopSpec } from "../shop.js";
import type { MixedBar } from "./mixed-bars.js";
import type { WeldStage } from "./mixed-chain.js";
import { MIXED_LIMIT_DEFAULTS, type MixedLimits, mixedBasis } from "./mixed-limits.js";
import type { BarSection, MixedStackSpec } from "./spec.js";

const basisOf = (limit: number, fallback: { readonly value: number; readonly basis: string }): string =>
  limit === fallback.value ? fallback.basis : "the shop's own limit";

/** What the welds come down to: the thickness that a stack is squeezed to while it is drawn out. */
export interface WeldSqueeze {
  readonly stage: WeldStage;
  /** Share of its height that the stack loses until it is cut again or is the last bar, 0 to 1. */
  readonly squeeze: number;
}

/**
 * What is to be said of the welds: stacks that do not go into the press or are too slender for it, joints that are squeezed
 * too little, billets longer than the forge.
 *
 * @example
 * weldFindings([], DEFAULT_SHOP); // []
 */
export function weldFindings(welds: readonly WeldSqueeze[], { press, limits }: ShopSpec): Finding[] {
  return welds.flatMap(({ stage, squeeze }, i): Finding[] => {
    const values = {
      weld: count(i + 1),
      height: length(stage.stackHeight),
      squeeze: share(squeeze),
      least: share(limits.minWeldReduction),
      target: share(LIMIT_DEFAULTS.targetWeldReduction.value),
    };
    const path = i === 0 ? "stack" : `stack.restacks[${i - 1}]`;
    const found: Finding[] = [];
    if (press.opening !== undefined && stage.stackHeight > press.opening) {
      found.push({
        code: "too-tall-for-press",
        severity: "stop",
        path,
        text: "The stack of weld {weld}, {height} high, does not go into the press, which opens {opening}. Stack fewer or thinner pieces.",
        values: { ...values, opening: length(press.opening) },
        basis: "the shop file",
      });
    }
    const slenderness = stage.stackHeight / stage.width;
    if (slenderness > limits.maxSlenderness) {
      found.push({
        code: "too-slender",
        severity: "stop",
        path,
        text: "The stack of weld {weld} is {ratio} times as high as wide and would buckle; {most} is the limit. Take wider bars, or stack fewer.",
        values: { ...values, ratio: count(slenderness), most: count(limits.maxSlenderness) },
        basis: basisOf(limits.maxSlenderness, LIMIT_DEFAULTS.maxSlenderness),
      });
    }
    if (squeeze < limits.minWeldReduction) {
      found.push({
        code: "weld-reduction-too-small",
        severity: "stop",
        path,
        text: "The joints of weld {weld} are squeezed by {squeeze} only before the bar is at its thickness; {least} is the least. Start from more or thicker bars.",
        values,
        basis: basisOf(limits.minWeldReduction, LIMIT_DEFAULTS.minWeldReduction),
      });
    } else if (squeeze < LIMIT_DEFAULTS.targetWeldReduction.value) {
      found.push({
        code: "weld-reduction-low",
        severity: "warn",
        path,
        text: "The joints of weld {weld} are squeezed by {squeeze} in all; {least} is the least and {target} is wanted. Keep squeezing at welding heat, or start from more or thicker bars.",
        values,
        basis: LIMIT_DEFAULTS.targetWeldReduction.basis,
      });
    }
    if (press.forgeLength !== undefined && stage.barLength > press.forgeLength) {
      found.push({
        code: "longer-than-forge",
        severity: i === 0 ? "stop" : "warn",
        path,
        text:
          i === 0
            ? "The bars, {long} long, do not fit the forge, which takes {most}. Take wider or more bars."
            : "Drawn to the section of restack {restack} the billet is {long} long; the forge takes {most}. Cut it in two before it is drawn out, or give restacks a thicker bar.",
        values: {
          ...values,
          restack: count(i),
          long: length(Math.ceil(stage.barLength)),
          most: length(press.forgeLength),
        },
        basis: "the shop file",
      });
    }
    return found;
  });
}

/** The section that is forged to the blade, held against what it has to become; mm, shares. */
export interface LastBarFigures {
  readonly section: BarSection;
  readonly reach: number;
  readonly reachClass: ReachClass;
  /** Greatest thickness and height of the forged blade. */
  readonly thickness: number;
  readonly height: number;
}

/**
 * What is to be said of the last bar: too thin for the blade, out of reach, only just within it, grooves too deep.
 *
 * @example
 * const section = { width: 38.1, thickness: 12.7 };
 * const bar = { section, reach: 0.33, reachClass: "flat dies", thickness: 9, height: 53.8 } as const;
 * lastBarFindings(bar, DEFAULT_SHOP, undefined, withDefaultMixedLimits()); // []
 */
export function lastBarFindings(
  bar: LastBarFigures,
  { limits }: ShopSpec,
  stack: MixedStackSpec | undefined,
  mixed: MixedLimits,
): Finding[] {
  const path = stack?.lastBar === undefined ? "stack" : "stack.lastBar";
  const values = {
    width: length(bar.section.width),
    thickness: length(bar.section.thickness),
    needed: length(bar.thickness),
    high: length(bar.height),
    share: share(Math.min(bar.reach, 9.99)),
    most: share(limits.reach.fullers),
  };
  if (bar.section.thickness < bar.thickness) {
    return [
      {
        code: "too-thin",
        severity: "stop",
        path,
        text: "The last bar, {thickness} thick, is too thin: the forged blade is {needed} thick. Take more or thicker bars, or leave the last bar thicker.",
        values,
        basis: "geometry",
      },
    ];
  }
  const found: Finding[] = [];
  if (bar.reachClass === "refused") {
    found.push({
      code: "out-of-reach",
      severity: "stop",
      path,
      text: Number.isFinite(bar.reach)
        ? "To bring the last bar, {width} × {thickness}, to {high} high, {share} of the thinning would have to go into height; {most} is the most that fullers do. Make the last bar wider or thicker."
        : "The last bar, {width} × {thickness}, cannot be brought to {high} high. Make the last bar wider or thicker.",
      values,
      basis: basisOf(limits.reach.fullers, LIMIT_DEFAULTS.reachFullers),
    });
  } else if (bar.reachClass === "fullers") {
    found.push({
      code: "reach-only-just",
      severity: "warn",
      path,
      text: "{share} of the last bar's thinning has to go into height. Lay the fullers along the bar, or make it wider or thicker.",
      values,
      basis: basisOf(limits.reach.flatDies, LIMIT_DEFAULTS.reachFlatDies),
    });
  }
  const grooves = stack?.kind === "pattern-welded" ? stack.grooves : undefined;
  const deepest = mixed.maxGrooveDepth * bar.section.thickness;
  if (grooves !== undefined && "depth" in grooves && grooves.depth > deepest + 1e-9) {
    found.push({
      code: "grooves-deep",
      severity: "warn",
      path: "stack.grooves.depth",
      text: "The grooves are {depth} deep in a bar {thickness} thick; {deepest} is the most. One groove too deep leaves a thin blade.",
      values: { ...values, depth: length(grooves.depth), deepest: length(Math.round(deepest * 10) / 10) },
      basis: mixedBasis("maxGrooveDepth", mixed.maxGrooveDepth),
    });
  }
  return found;
}

/**
 * Bars that the rack does not have, or not enough of.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const bars = mixedBars({ kind: "clad", core, cladding, width: 30 }, 100, [], 1.5);
 * rackFindings(bars).length; // 2
 */
export function rackFindings(bars: readonly MixedBar[]): Finding[] {
  return bars.flatMap((bar): Finding[] => {
    const { steel, thickness, width, pieces, cutLength, bar: entry, rackIndex, enough } = bar;
    if (enough) return [];
    const values = {
      steel,
      pieces: count(pieces),
      thickness: length(thickness),
      width: length(width),
      long: length(cutLength),
      mass: mass(bar.mass),
    };
    const need = "{pieces} × {long} of {steel}, {thickness} × {width}, {mass} together";
    return [
      entry === undefined
        ? {
            code: "stack-bar-missing",
            severity: "note",
            path: "stack",
            text: `Not on the rack, to be bought: ${need}.`,
            values,
            basis: "the shop file",
          }
        : {
            code: "stack-bar-short",
            severity: "warn",
            path: `rack[${rackIndex}]`,
            text: `The bars in hand do not hold all pieces: ${need}. Buy more, or make the stack of shorter and more bars.`,
            values,
            basis: "the shop file",
          },
    ];
  });
}

/**
 * Whether the knife is weighed with a density that its stack does not have.
 *
 * @param stack - Density of the stack of bars, g/mm³; knife - that of the knife file.
 *
 * @example
 * densityFindings(0.00785, 0.00785); // []
 */
export function densityFindings(stack: number, knife: number): Finding[] {
  const limit = MIXED_LIMIT_DEFAULTS.densityDifference;
  if (Math.abs(stack / knife - 1) <= limit.value) return [];
  return [
    {
      code: "stack-density",
      severity: "note",
      path: "steel",
      text: "The stack's steels together have {stack} g/cm³, the knife is weighed with {knife}. Give the blade its own, like steel: { name: …, density: {stack} g/cm3 }.",
      values: { stack: (stack * 1000).toFixed(2), knife: (knife * 1000).toFixed(2) },
      basis: limit.basis,
    },
  ];
}
