import type { Knife } from "../../blade/knife.js";
import { SpecError } from "../../errors/errors.js";
import type { Finding } from "../../errors/issue.js";
import type { LedgerBodies, LedgerRow } from "../blade-states.js";
import { roundUpToStep } from "../ledger.js";
import { makeReachStations, type ReachClass } from "../reach.js";
import type { StockForging } from "../search.js";
import type { ShopSpec } from "../shop.js";
import { weldHeatFindings } from "../weld-heat-findings.js";
import { type StackAsCut, stackAsCut } from "./as-cut.js";
import { checkMixedStack } from "./check-stack.js";
import { coreFindings } from "./core-findings.js";
import { type AskedCoreLine, type CoreReport, coreReport, forgedThicknessAt } from "./core-report.js";
import { lastBarFigures, lastBarFindings } from "./last-bar-findings.js";
import { countLayers, layerThickness } from "./layers.js";
import { type MixedBar, mixedBars } from "./mixed-bars.js";
import {
  type MixedChain,
  type MixedTrace,
  makeMixedChain,
  traceMixed,
  type WeldStage,
} from "./mixed-chain.js";
import { mixedLedger } from "./mixed-ledger.js";
import { mixedBasis, withDefaultMixedLimits } from "./mixed-limits.js";
import { type BarSection, type MixedStackSpec, stackBars, stackRestacks } from "./spec.js";
import { edgeSteelFindings, type LayerFigures, layerFindings, steelPairFindings } from "./steel-findings.js";
import { densityFindings, rackFindings, weldFindings } from "./weld-findings.js";
import { judgeWelds } from "./weld-judge.js";

/** Layers of a pattern-welded stack: their order in the first stack, how many there are, how thick; mm. */
export interface MixedLayers extends LayerFigures {
  /** Steels of the first stack, from bottom to top. */
  readonly order: readonly string[];
  readonly equalMeet: boolean;
}

/** A stack of two or more steels planned: bars, welds, layers or core, ledger. Lengths mm, volumes mm³, masses g. */
export interface MixedPlan {
  readonly stack: MixedStackSpec;
  readonly bars: readonly MixedBar[];
  /** Proposed length of the bars: feeds the blade on the high side of every loss, in the saw's step. */
  readonly cutLength: number;
  readonly cutLengthNominal: number;
  /** Before rounding up, at nominal losses and on the high side. */
  readonly shortestLength: { readonly nominal: number; readonly high: number };
  /** All bars, each by its own steel's density. */
  readonly mass: number;
  /** Price of what is sawn off the rack; left out where a bar has none. */
  readonly cost?: number;
  /** Finished blade over bars, by volume: at nominal losses with no spare, and as cut. */
  readonly yield: { readonly nominal: number; readonly asCut: number };
  readonly joints: number;
  /** Forging heats, and welding heats of every weld. */
  readonly heats: number;
  /** What is needed: at nominal losses and the shortest length. */
  readonly stages: readonly WeldStage[];
  /** What lies on the anvil of bars of the proposed length. */
  readonly asCut: StackAsCut;
  /** Ground off as grooves at nominal losses. */
  readonly grooves: number;
  /** The bar that is forged, before its grooves, at nominal losses. */
  readonly lastBar: BarSection & { readonly length: number };
  /** Share of its thinning that has to go into height, over the whole blade. */
  readonly reach: { readonly share: number; readonly class: ReachClass };
  readonly layers?: MixedLayers;
  readonly core?: CoreReport;
  /** At nominal losses, for bars of the proposed length. */
  readonly ledger: readonly LedgerRow[];
  readonly ledgerHigh: readonly LedgerRow[];
  readonly ledgerLow: readonly LedgerRow[];
  readonly findings: readonly Finding[];
}

/**
 * Plans a stack of two or more steels for a knife: back from the forged blade through grooves and welds to the bars.
 *
 * @param bodies - Those of the knife.
 * @param asked - Where the core line is asked for, if it is.
 * @throws {SpecError} with everything that is wrong with the stack.
 *
 * @example
 * const steels = ["1084", "15N20", "1084", "15N20", "1084"];
 * const layers = steels.map((name) => ({ steel: { name }, thickness: 4 }));
 * const stack = { kind: "pattern-welded", layers, width: 35, restacks: [{ pieces: 3 }] } as const;
 * planMixed(knife, ledgerBodies(knife), DEFAULT_SHOP, stack).layers?.distinct; // 13
 */
export function planMixed(
  knife: Knife,
  bodies: LedgerBodies,
  shop: ShopSpec,
  stack: MixedStackSpec,
  asked?: AskedCoreLine,
): MixedPlan {
  const issues = checkMixedStack(stack, shop.losses.cleaningPerFace.high);
  if (issues.length > 0) throw new SpecError(issues);
  const forging: StockForging = knife.forging;
  const nominal = makeMixedChain(bodies, shop, forging, stack, "value");
  const high = makeMixedChain(bodies, shop, forging, stack, "high");
  const low = makeMixedChain(bodies, shop, forging, stack, "low");
  const sides = { low, nominal, high };
  const trace = traceMixed(nominal);
  const shortest = { nominal: trace.length, high: traceMixed(high).length };
  const step = (mm: number): number => roundUpToStep(Math.max(mm, shop.limits.minBilletLength), shop.cutStep);
  const cutLength = step(shortest.high);
  const bars = mixedBars(stack, cutLength, shop.rack, shop.kerf);
  const costs = bars.map(({ cost }) => cost ?? Number.NaN);
  const cost = costs.reduce((sum, each) => sum + each, 0);
  const mass = bars.reduce((sum, bar) => sum + bar.mass, 0);
  const section = stack.width * stackBars(stack).reduce((sum, { thickness }) => sum + thickness, 0);
  const stations = makeReachStations(bodies.stations);
  const lastBars = lastBarFigures(sides, stack, stations, trace.lastBarLength, shop.limits);
  const [{ reach, reachClass }] = lastBars;
  const joints = trace.stages.reduce((sum, { pieces }) => sum + pieces - 1, 0);
  const parts = describeParts(knife, shop, stack, nominal, trace, asked);
  const asCut = stackAsCut(nominal, high, cutLength);
  return {
    stack,
    bars,
    cutLength,
    cutLengthNominal: step(shortest.nominal),
    shortestLength: shortest,
    mass,
    ...(Number.isFinite(cost) ? { cost } : {}),
    yield: {
      nominal: bodies.finished / (section * shortest.nominal),
      asCut: bodies.finished / (section * cutLength),
    },
    joints,
    heats: forging.heats + trace.stages.length * forging.weldingHeats,
    stages: trace.stages,
    asCut,
    grooves: trace.grooves,
    lastBar: { ...nominal.lastBar, length: trace.lastBarLength },
    reach: { share: reach, class: reachClass },
    ...parts.described,
    ledger: mixedLedger(bodies, nominal, cutLength),
    ledgerHigh: mixedLedger(bodies, high, cutLength),
    ledgerLow: mixedLedger(bodies, low, cutLength),
    findings: [
      ...(Number.isFinite(shortest.high) ? [] : [lostToScale()]),
      ...weldHeatFindings(joints, forging.weldingHeats),
      ...weldFindings(judgeWelds(sides, stack, cutLength, stations.greatestThickness), shop),
      ...lastBarFindings(lastBars, shop, stack, withDefaultMixedLimits(shop.limits.mixed)),
      ...parts.findings,
      ...steelPairFindings(stack, shop.limits.findings),
      ...edgeSteelFindings(stack, knife.spec.steel.name),
      ...densityFindings(mass / (section * cutLength), knife.steelDensity, shop.limits.findings),
      ...rackFindings(bars),
    ],
  };
}

/** Layers or core, and what is to be said of them. */
function describeParts(
  knife: Knife,
  shop: ShopSpec,
  stack: MixedStackSpec,
  nominal: MixedChain,
  trace: MixedTrace,
  asked: AskedCoreLine | undefined,
): { described: Pick<MixedPlan, "layers" | "core">; findings: readonly Finding[] } {
  const limits = withDefaultMixedLimits(shop.limits.mixed);
  if (stack.kind === "pattern-welded") {
    const layers = describeLayers(knife, stack, limits.minLayerThickness);
    const least = {
      value: limits.minLayerThickness,
      basis: mixedBasis("minLayerThickness", limits.minLayerThickness),
    };
    return { described: { layers }, findings: layerFindings(layers, least) };
  }
  const { cleaning } = nominal.chain.losses;
  const [weld] = trace.stages;
  const keptByWeld = weld === undefined || weld.byYield > 0 ? 1 : keptByWelding(weld);
  const keptByScale = (nominal.chain.forged / trace.dressed) * keptByWeld;
  const input = { knife, stack, cleaning, keptByScale, centring: limits.coreCentring };
  const core = coreReport(input, asked);
  return {
    described: { core },
    findings: coreFindings({ knife, stack, cleaning, rack: shop.rack, limits }, core),
  };
}

/** Share of the cleaned stack that its welding scale leaves. */
function keptByWelding({ in: into, cleaning, cropping, scale, dressing, out }: WeldStage): number {
  const welded = out + cropping + dressing;
  return Number.isFinite(into - cleaning) ? welded / (welded + scale) : 1;
}

/** Spacing at which the forged thickness is looked at for layers that get too thin, mm. */
const SPACING = 1;

function describeLayers(
  knife: Knife,
  stack: Extract<MixedStackSpec, { kind: "pattern-welded" }>,
  least: number,
): MixedLayers {
  const order = stack.layers.map(({ steel }) => steel.name);
  const counts = countLayers(
    order,
    stackRestacks(stack).map(({ pieces }) => pieces),
  );
  const { edgeLength } = knife.outline;
  let thickest = 0;
  let thinFrom: number | undefined;
  for (let x = 0; x <= edgeLength; x += SPACING) {
    const forged = forgedThicknessAt(knife, x);
    thickest = Math.max(thickest, forged);
    if (layerThickness(forged, counts.distinct) >= least) thinFrom = undefined;
    else thinFrom ??= x;
  }
  return {
    order,
    ...counts,
    thickness: layerThickness(thickest, counts.distinct),
    ...(thinFrom === undefined ? {} : { thinFrom }),
  };
}

const lostToScale = (): Finding => ({
  code: "lost-to-scale",
  severity: "stop",
  path: "stack",
  text: "The stack burns or is ground away before any length of bar feeds the blade. Take wider or more bars.",
  basis: "the shop's losses",
});
