import { reachShare } from "../reach.js";
import { weldedStretch } from "../search.js";
import { type MixedChain, traceMixed, type WeldStage } from "./mixed-chain.js";
import { simulateStack } from "./simulate.js";
import { type BarSection, type MixedStackSpec, stackRestacks } from "./spec.js";

/** A stack of two or more steels at the losses of each side. */
export interface MixedSides {
  readonly low: MixedChain;
  readonly nominal: MixedChain;
  readonly high: MixedChain;
}

/** The section that a welded stack is drawn to before it is cut again or is the last bar. */
export interface DrawnTo {
  readonly section: BarSection;
  /** Of its thinning, what has to go into width; `Infinity` where the stack's own section is the smaller one. */
  readonly share: number;
  /** Where the file says so. */
  readonly path: string;
}

/** A weld as it is judged: whatever the losses come to within their bands, it has to do. mm, shares. */
export interface WeldSqueeze {
  readonly stage: WeldStage;
  /** Share of its height that the stack loses until it is cut again or is the last bar, 0 to 1, at usual losses. */
  readonly squeeze: number;
  /** The same where most is cleaned off. */
  readonly leastSqueeze: number;
  /** Height of the cleaned stack where least is cleaned off. */
  readonly tallest: number;
  /** Of the bars as cut, or of the billet that they make before it is cut for this weld, where least is lost. */
  readonly barLength: number;
  /** Length that the stack gets to while its joints are squeezed. */
  readonly weldedLength: number;
  /** Left out where the last bar is what the last weld leaves. */
  readonly drawn?: DrawnTo;
}

/**
 * Works out of every weld what its limits are held against: heights and lengths of the bars as they are to be cut, at every
 * side of the losses, and how far the stack has to be spread on its way to the next section.
 *
 * @param cutLength - Length of each bar of the first stack, mm.
 * @param forgedThickness - Greatest thickness of the forged blade, mm.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const stack = { kind: "clad", core, cladding, width: 30, lastBar: { width: 32, thickness: 6 } } as const;
 * const at = (side: "low" | "value" | "high") =>
 *   makeMixedChain(ledgerBodies(knife), DEFAULT_SHOP, knife.forging, stack, side);
 * const sides = { low: at("low"), nominal: at("value"), high: at("high") };
 * judgeWelds(sides, stack, 100, 4.4)[0]?.weldedLength; // 128: 30 % squeezed, 70 % of that into length
 */
export function judgeWelds(
  sides: MixedSides,
  stack: MixedStackSpec,
  cutLength: number,
  forgedThickness: number,
): WeldSqueeze[] {
  const all = [sides.nominal, sides.low, sides.high];
  const traces = all.map((side) => traceMixed(side).stages);
  const forwards = all.map((side) => simulateStack(side, cutLength).welds);
  const { weldReduction, weldSpreadShare } = sides.nominal.chain;
  return (traces[0] ?? []).map((stage, i): WeldSqueeze => {
    const heights = traces.map((stages) => stages[i]?.stackHeight ?? stage.stackHeight);
    const lowest = Math.min(...heights);
    const drawn = drawnTo(sides.nominal, stack, i, stage, lowest);
    const down = drawn?.section.thickness ?? forgedThickness;
    const longest = (of: "barLength" | "pieceLength"): number =>
      Math.max(...forwards.map((welds) => welds[i]?.[of] ?? 0));
    return {
      stage,
      squeeze: 1 - down / stage.stackHeight,
      leastSqueeze: 1 - down / lowest,
      tallest: Math.max(...heights),
      barLength: longest("barLength"),
      weldedLength: longest("pieceLength") * weldedStretch(stage.pieces, weldReduction, weldSpreadShare),
      ...(drawn === undefined ? {} : { drawn }),
    };
  });
}

function drawnTo(
  { stages }: MixedChain,
  stack: MixedStackSpec,
  weld: number,
  from: WeldStage,
  height: number,
): DrawnTo | undefined {
  const next = stages[weld + 1];
  const section =
    next === undefined ? stack.lastBar : { width: next.width, thickness: next.height / next.pieces };
  if (section === undefined) return undefined;
  const given = stackRestacks(stack)[weld]?.bar !== undefined;
  const path = next === undefined ? "stack.lastBar" : `stack.restacks[${weld}]${given ? ".bar" : ""}`;
  return { section, share: spreadShareTo(section, from.width, height), path };
}

/** Sections in inches do not come out whole in mm. */
const HAIR = 1e-9;

/** A section is made smaller by drawing, never larger. */
function spreadShareTo({ width, thickness }: BarSection, fromWidth: number, fromHeight: number): number {
  if (width * thickness > fromWidth * fromHeight * (1 + HAIR)) return Number.POSITIVE_INFINITY;
  return reachShare(width, thickness, fromWidth, fromHeight);
}
