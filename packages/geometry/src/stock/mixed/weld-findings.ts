import { count, type Finding, length, mass, share } from "../../errors/issue.js";
import { findingLimit, type GivenLimits } from "../../limits/finding-limits.js";
import { limitBasis } from "../../limits/limit.js";
import { STOCK_LIMITS } from "../../limits/shop-limits.js";
import { classifyReach } from "../reach.js";
import type { ShopSpec } from "../shop.js";
import type { MixedBar } from "./mixed-bars.js";
import type { WeldSqueeze } from "./weld-judge.js";

/** Computed lengths carry the last digits of a double, mm. */
const HAIR = 1e-9;

/**
 * What is to be said of the welds: stacks that do not go into the press or are too slender for it, joints that are squeezed
 * too little, sections that no stack is drawn to, billets longer than the forge.
 *
 * @example
 * weldFindings([], DEFAULT_SHOP); // []
 */
export function weldFindings(welds: readonly WeldSqueeze[], shop: ShopSpec): Finding[] {
  return welds.flatMap((weld, i): Finding[] => {
    const path = i === 0 ? "stack" : `stack.restacks[${i - 1}]`;
    return [
      ...standingFindings(weld, i, path, shop),
      ...squeezeFindings(weld, i, path, shop),
      ...drawingFindings(weld, i, shop),
      ...forgeFindings(weld, i, path, shop),
    ];
  });
}

/** The cleaned stack as it stands in the press, where least is cleaned off. */
function standingFindings(
  { stage, tallest }: WeldSqueeze,
  i: number,
  path: string,
  { press, limits }: ShopSpec,
): Finding[] {
  const values = { weld: count(i + 1), height: length(tallest) };
  const found: Finding[] = [];
  if (press.opening !== undefined && tallest > press.opening + HAIR) {
    found.push({
      code: "too-tall-for-press",
      severity: "stop",
      path,
      text: "The stack of weld {weld}, {height} high, does not go into the press, which opens {opening}. Stack fewer or thinner pieces.",
      values: { ...values, opening: length(press.opening) },
      basis: "the shop file",
    });
  }
  const slenderness = tallest / stage.width;
  if (slenderness > limits.maxSlenderness + HAIR) {
    found.push({
      code: "too-slender",
      severity: "stop",
      path,
      text: "The stack of weld {weld} is {ratio} times as high as wide and would buckle; {most} is the limit. Take wider bars, or stack fewer.",
      values: { ...values, ratio: count(slenderness), most: count(limits.maxSlenderness) },
      basis: limitBasis(limits.maxSlenderness, STOCK_LIMITS.maxSlenderness),
    });
  }
  return found;
}

/** Squeezed too little on any side of the losses: stop. Less than wanted at usual ones: warn. */
function squeezeFindings(
  { squeeze, leastSqueeze }: WeldSqueeze,
  i: number,
  path: string,
  { limits }: ShopSpec,
): Finding[] {
  const { minWeldReduction } = limits;
  const target = findingLimit("targetWeldReduction", limits.findings);
  const tooSmall = leastSqueeze < minWeldReduction - HAIR;
  if (!tooSmall && squeeze >= target.value) return [];
  const values = {
    weld: count(i + 1),
    squeeze: share(tooSmall ? leastSqueeze : squeeze),
    least: share(minWeldReduction),
    target: share(target.value),
  };
  return [
    tooSmall
      ? {
          code: "weld-reduction-too-small",
          severity: "stop",
          path,
          text: "The joints of weld {weld} are squeezed by {squeeze} only before the bar is at its thickness; {least} is the least. Start from more or thicker bars.",
          values,
          basis: limitBasis(minWeldReduction, STOCK_LIMITS.minWeldReduction),
        }
      : {
          code: "weld-reduction-low",
          severity: "warn",
          path,
          text: "The joints of weld {weld} are squeezed by {squeeze} in all; {least} is the least and {target} is wanted. Keep squeezing at welding heat, or start from more or thicker bars.",
          values,
          basis: target.basis,
        },
  ];
}

/** Whether the stack can be spread to the section that comes next, by the limits of reach. */
function drawingFindings({ stage, drawn }: WeldSqueeze, i: number, { limits }: ShopSpec): Finding[] {
  if (drawn === undefined) return [];
  const { section, path } = drawn;
  const reachClass = classifyReach(drawn.share, limits.reach);
  const values = {
    weld: count(i + 1),
    from: length(stage.width),
    height: length(stage.stackHeight),
    width: length(section.width),
    thickness: length(section.thickness),
    share: share(Math.min(drawn.share, 9.99)),
    most: share(limits.reach.fullers),
  };
  if (reachClass === "refused") {
    return [
      {
        code: "bar-out-of-reach",
        severity: "stop",
        path,
        text: Number.isFinite(drawn.share)
          ? "To draw the stack of weld {weld}, {from} wide and {height} high, to {width} × {thickness}, {share} of its thinning would have to go into width; {most} is the most that fullers do. Take wider bars for the stack, or draw to a narrower or thinner bar."
          : "The stack of weld {weld}, {from} wide and {height} high, cannot be drawn to {width} × {thickness}, which is the larger section. Take more, thicker or wider bars for the stack, or draw to a smaller bar.",
        values,
        basis: Number.isFinite(drawn.share)
          ? limitBasis(limits.reach.fullers, STOCK_LIMITS.reachFullers)
          : "geometry",
      },
    ];
  }
  if (reachClass !== "fullers") return [];
  return [
    {
      code: "bar-only-just",
      severity: "warn",
      path,
      text: "From the stack of weld {weld}, {from} wide and {height} high, to {width} × {thickness}, {share} of the thinning has to go into width. Lay the fullers along the bar, take wider bars for the stack, or draw to a narrower or thinner bar.",
      values,
      basis: limitBasis(limits.reach.flatDies, STOCK_LIMITS.reachFlatDies),
    },
  ];
}

/** Bars as they are to be cut, and billets that they make where least is lost. */
function forgeFindings(
  { barLength, weldedLength }: WeldSqueeze,
  i: number,
  path: string,
  { press }: ShopSpec,
): Finding[] {
  const { forgeLength: most } = press;
  if (most === undefined || !Number.isFinite(weldedLength)) return [];
  const values = { weld: count(i + 1), restack: count(i), most: length(most) };
  const whole = (mm: number) => length(Math.ceil(mm - HAIR));
  const found: Finding[] = [];
  if (weldedLength > most + HAIR) {
    found.push({
      code: "longer-than-forge",
      severity: "stop",
      path,
      text:
        i === 0
          ? "The bars, cut to {bars}, get {long} long while they are welded; the forge takes {most}. Take wider or more bars."
          : "The pieces of restack {restack} get {long} long while they are welded; the forge takes {most}. Cut the billet in more pieces, or give the restack a thicker or wider bar.",
      values: { ...values, bars: length(barLength), long: whole(weldedLength) },
      basis: "the shop file",
    });
  }
  if (i > 0 && barLength > most + HAIR) {
    found.push({
      code: "longer-than-forge",
      severity: "warn",
      path,
      text: "Drawn to the section of restack {restack} the billet is up to {long} long; the forge takes {most}. Cut it in two before it is drawn out, or give restacks a thicker bar.",
      values: { ...values, long: whole(barLength) },
      basis: "the shop file",
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
export function densityFindings(stack: number, knife: number, given: GivenLimits = {}): Finding[] {
  const limit = findingLimit("densityDifference", given);
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
