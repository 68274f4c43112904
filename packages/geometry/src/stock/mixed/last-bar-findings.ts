import { count, type Finding, length, type QuantityValue, share } from "../../errors/issue.js";
import { findingLimit } from "../../limits/finding-limits.js";
import { limitBasis } from "../../limits/limit.js";
import { STOCK_LIMITS } from "../../limits/shop-limits.js";
import { dressedWidth, stackHeight, weldedHeight, weldedWidth } from "../billet.js";
import { isTooMuchNarrowing, narrowingOnEdge } from "../narrowing.js";
import { narrowingFindings } from "../plan-narrowing.js";
import {
  classifyReach,
  type ReachClass,
  type ReachStations,
  reachableHeight,
  worstShare,
  worstStation,
} from "../reach.js";
import type { ShopSpec, StockLimits } from "../shop.js";
import { groovesAcross } from "./grooves.js";
import type { MixedChain } from "./mixed-chain.js";
import { type MixedLimits, mixedBasis } from "./mixed-limits.js";
import type { BarSection, MixedStackSpec } from "./spec.js";
import type { MixedSides } from "./weld-judge.js";

/** The section that is forged to the blade, held against what it has to become; mm, shares. */
export interface LastBarFigures {
  readonly section: BarSection;
  /** Of the bar before its grooves. */
  readonly length: number;
  readonly reach: number;
  readonly reachClass: ReachClass;
  /** Greatest thickness and height of the forged blade. */
  readonly thickness: number;
  readonly height: number;
  /** The station that asks most: the height it needs, and the height that the bar can be brought to there. */
  readonly worst?: { readonly height: number; readonly reachable: number };
}

/**
 * The last bar held against the forged blade, at usual losses; first those of another side of the losses where only there
 * it does not do. A last bar that the file gives is the same on every side.
 *
 * @param bar - Length of the last bar before its grooves at usual losses, mm.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const stack = { kind: "clad", core, cladding, width: 30, lastBar: { width: 32, thickness: 6 } } as const;
 * const bodies = ledgerBodies(knife);
 * const usual = makeMixedChain(bodies, DEFAULT_SHOP, knife.forging, stack, "value");
 * const sides = { low: usual, nominal: usual, high: usual };
 * lastBarFigures(sides, stack, makeReachStations(bodies.stations), 100, DEFAULT_SHOP.limits)[0]?.reachClass; // "easy"
 */
export function lastBarFigures(
  sides: MixedSides,
  stack: MixedStackSpec,
  stations: ReachStations,
  bar: number,
  limits: StockLimits,
): readonly [LastBarFigures, ...LastBarFigures[]] {
  const others = stack.lastBar === undefined ? [sides.low, sides.high].map(sectionOf) : [];
  const at = (section: BarSection): LastBarFigures => figuresOf(section, stations, bar, limits);
  return [at(sides.nominal.lastBar), ...others.map(at)];
}

/** What the last weld leaves at the losses of one side. */
function sectionOf({ stages, chain, lastBar }: MixedChain): BarSection {
  const last = stages.at(-1);
  if (last === undefined) return lastBar;
  const { pieces, width, height } = last;
  const { losses, weldReduction, weldSpreadShare } = chain;
  const stacked = stackHeight(pieces, height / pieces, losses.cleaning);
  return {
    width: dressedWidth(pieces, weldedWidth(pieces, width, weldReduction, weldSpreadShare), losses.dressing),
    thickness: weldedHeight(pieces, stacked, weldReduction),
  };
}

function figuresOf(
  section: BarSection,
  stations: ReachStations,
  bar: number,
  limits: StockLimits,
): LastBarFigures {
  const { width, thickness } = section;
  const reach = worstShare(stations, width, thickness, Number.NEGATIVE_INFINITY);
  const i = worstStation(stations, width, thickness, Number.NEGATIVE_INFINITY);
  const mean = stations.meanThickness[i] ?? Number.NaN;
  return {
    section,
    length: bar,
    reach,
    reachClass: classifyReach(reach, limits.reach),
    thickness: stations.greatestThickness,
    height: stations.greatestHeight,
    ...(i < 0
      ? {}
      : {
          worst: {
            height: stations.height[i] ?? Number.NaN,
            reachable: reachableHeight(mean, width, thickness, limits.reach.fullers),
          },
        }),
  };
}

/** How far a last bar has to be driven in on edge, as the search asks it of a bar of one steel. */
const narrowingOf = ({ section, height }: LastBarFigures, limits: StockLimits): number =>
  narrowingOnEdge(height, { height: section.width, thickness: section.thickness }, limits);

const isRefused = (bar: LastBarFigures, limits: StockLimits): boolean =>
  bar.section.thickness < bar.thickness ||
  bar.reachClass === "refused" ||
  isTooMuchNarrowing(narrowingOf(bar, limits), limits);

/**
 * What is to be said of the last bar: too thin for the blade, out of reach, only just within it, so high that it has to be
 * driven in on edge, grooves too deep or too many.
 *
 * @param figures - That at usual losses first; others where a side of the losses makes the bar another one.
 *
 * @example
 * const section = { width: 38.1, thickness: 12.7 };
 * const bar = { section, length: 145, reach: 0.33, reachClass: "flat dies", thickness: 9, height: 53.8 } as const;
 * lastBarFindings([bar], DEFAULT_SHOP, undefined, withDefaultMixedLimits()); // []
 */
export function lastBarFindings(
  figures: readonly LastBarFigures[],
  { limits }: ShopSpec,
  stack: MixedStackSpec | undefined,
  mixed: MixedLimits,
): Finding[] {
  const bar = figures.find((each) => isRefused(each, limits)) ?? figures[0];
  if (bar === undefined) return [];
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
  return [
    ...reachFindings(bar, path, values, limits),
    ...edgeFindings(bar, path, values, limits),
    ...grooveFindings(bar, values, stack, mixed),
  ];
}

type Values = Readonly<Record<string, QuantityValue>>;

function reachFindings(bar: LastBarFigures, path: string, values: Values, limits: StockLimits): Finding[] {
  const { reach, reachClass, worst } = bar;
  if (reachClass === "refused") {
    return [
      {
        code: "out-of-reach",
        severity: "stop",
        path,
        text: Number.isFinite(reach)
          ? "To bring the last bar, {width} × {thickness}, to {high} high, {share} of the thinning would have to go into height; {most} is the most that fullers do. Make the last bar wider or thicker."
          : "The last bar, {width} × {thickness}, cannot be brought to {high} high. Make the last bar wider or thicker.",
        values,
        basis: limitBasis(limits.reach.fullers, STOCK_LIMITS.reachFullers),
      },
    ];
  }
  const tightHeight = findingLimit("tightHeight", limits.findings);
  const tight = worst !== undefined && worst.reachable < worst.height * (1 + tightHeight.value);
  if (reachClass !== "fullers" && !tight) return [];
  return [
    {
      code: "reach-only-just",
      severity: "warn",
      path,
      text: `{share} of the last bar's thinning has to go into height${worst === undefined ? "" : ": {need} high is needed, {reachable} is the most to be had"}. Lay the fullers along the bar, or make it wider or thicker.`,
      values: {
        ...values,
        ...(worst === undefined ? {} : { need: length(worst.height), reachable: length(worst.reachable) }),
      },
      basis:
        reachClass === "fullers"
          ? limitBasis(limits.reach.flatDies, STOCK_LIMITS.reachFlatDies)
          : tightHeight.basis,
    },
  ];
}

function edgeFindings(bar: LastBarFigures, path: string, values: Values, limits: StockLimits): Finding[] {
  const { width, thickness } = bar.section;
  const narrowing = narrowingOf(bar, limits);
  if (narrowing === 0) return [];
  const slenderness = width / thickness;
  if (!isTooMuchNarrowing(narrowing, limits))
    return narrowingFindings({ share: narrowing, from: width, to: bar.height, slenderness }, 1, path, limits);
  return [
    {
      code: "too-high",
      severity: "stop",
      path,
      text: "The last bar, {width} × {thickness}, buckles on edge, and {narrowing} of its height would have to be driven in there to come to the blade's {high}; {mostNarrowing} is the most. Make the last bar narrower or thicker.",
      values: { ...values, narrowing: share(narrowing), mostNarrowing: share(limits.mostNarrowing) },
      basis: limitBasis(limits.mostNarrowing, STOCK_LIMITS.mostNarrowing),
    },
  ];
}

function grooveFindings(
  bar: LastBarFigures,
  values: Values,
  stack: MixedStackSpec | undefined,
  mixed: MixedLimits,
): Finding[] {
  const grooves = stack?.kind === "pattern-welded" ? stack.grooves : undefined;
  if (grooves === undefined || "share" in grooves) return [];
  const found: Finding[] = [];
  const deepest = mixed.maxGrooveDepth * bar.section.thickness;
  if (grooves.depth > deepest + 1e-9) {
    found.push({
      code: "grooves-deep",
      severity: "warn",
      path: "stack.grooves.depth",
      text: "The grooves are {depth} deep in a bar {thickness} thick; {deepest} is the most. One groove too deep leaves a thin blade.",
      values: { ...values, depth: length(grooves.depth), deepest: length(Math.round(deepest * 10) / 10) },
      basis: mixedBasis("maxGrooveDepth", mixed.maxGrooveDepth),
    });
  }
  const room = groovesAcross(grooves, bar.length);
  if ("count" in grooves && grooves.count > room) {
    found.push({
      code: "grooves-too-many",
      severity: "warn",
      path: "stack.grooves.count",
      text: "{count} grooves, each {groove} wide, do not lie side by side on both faces of a bar {long} long; {room} do. Grind fewer or narrower ones, or give their pitch.",
      values: {
        count: count(grooves.count),
        groove: length(grooves.width),
        long: length(Math.round(bar.length * 10) / 10),
        room: count(room),
      },
      basis: "geometry",
    });
  }
  return found;
}
