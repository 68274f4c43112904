import { stackHeight } from "../billet.js";
import type { LedgerBodies } from "../blade-states.js";
import type { LossSide } from "../loss-side.js";
import { beforeFractionLoss, beforeSkinLoss } from "../scale-loss.js";
import type { StockForging } from "../search.js";
import type { ShopSpec } from "../shop.js";
import { makeSteelChain, type SteelChain, traceStack } from "../steel-chain.js";
import { beforeGrooves } from "./grooves.js";
import { type StackSections, type StageSection, stackSections } from "./sections.js";
import type { GrooveSpec, MixedStackSpec } from "./spec.js";

/** What is the same for every length of one stack of two or more steels, at one side of the losses' bands. */
export interface MixedChain extends StackSections {
  readonly chain: SteelChain;
  /** Yield of each weld, 0 to 1; undefined where the shop's own losses count. */
  readonly yields: readonly (number | undefined)[];
  readonly grooves: GrooveSpec | undefined;
  /** Width of the saw's cut, mm. */
  readonly kerf: number;
}

/** As much of a shop as a stack's losses depend on. */
export type MixedShop = Pick<ShopSpec, "losses" | "limits" | "kerf">;

/**
 * Gathers what a stack of two or more steels loses.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const stack = { kind: "clad", core, cladding, width: 30 } as const;
 * makeMixedChain(ledgerBodies(knife), DEFAULT_SHOP, knife.forging, stack, "value").stages.length; // 1
 */
export function makeMixedChain(
  bodies: LedgerBodies,
  shop: MixedShop,
  forging: StockForging,
  stack: MixedStackSpec,
  side: LossSide,
): MixedChain {
  const chain = makeSteelChain(bodies, shop.losses, shop.limits, forging, side);
  const cleaning = stack.cleaning?.[side] ?? chain.losses.cleaning;
  const sections = stackSections(stack, shop.losses, shop.limits);
  const { yields = [] } = stack;
  return {
    ...sections,
    chain: { ...chain, losses: { ...chain.losses, cleaning } },
    yields: sections.stages.map((_, weld) => (yields.length === 1 ? yields[0] : yields[weld])?.[side]),
    grooves: stack.kind === "clad" ? undefined : stack.grooves,
    kerf: shop.kerf,
  };
}

/** One weld traced back: volumes mm³, lengths mm. `in` is `out` and every row. */
export interface WeldStage extends StageSection {
  /** What goes in: the bars of the first stack, or the billet that is cut for the next one. */
  readonly in: number;
  /** The billet that comes out, welded, dressed and cropped. */
  readonly out: number;
  /** Both ends and, of a restack, the saw's cuts. */
  readonly cropping: number;
  readonly dressing: number;
  readonly scale: number;
  readonly cleaning: number;
  /** All of it together, where the smith gives the yield. */
  readonly byYield: number;
  /** Length of each piece. */
  readonly pieceLength: number;
  /** Length of the billet that is cut into the pieces; of the first stack that of the bars. */
  readonly barLength: number;
  /** Height with the joints cleaned. */
  readonly stackHeight: number;
}

/** A stack of two or more steels traced back from the forged blade: volumes mm³, lengths mm. */
export interface MixedTrace {
  /** The bar as it goes to the forging, grooves ground. */
  readonly dressed: number;
  /** Ground off as grooves. */
  readonly grooves: number;
  /** First weld first. */
  readonly stages: readonly WeldStage[];
  /** Length of the last bar, before grooves. */
  readonly lastBarLength: number;
  /** Shortest length of the first stack's bars that feeds the forged blade; `Infinity` where none does. */
  readonly length: number;
}

/**
 * Traces a stack back from the forged blade, through the grooves and every weld, to the bars of the first stack.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const stack = { kind: "clad", core, cladding, width: 30 } as const;
 * const chain = makeMixedChain(ledgerBodies(knife), DEFAULT_SHOP, knife.forging, stack, "value");
 * traceMixed(chain).length; // mm of each of the three bars
 */
export function traceMixed(mixed: MixedChain): MixedTrace {
  const { chain, lastBar } = mixed;
  const dressed =
    chain.losses.scaleModel === "skin"
      ? beforeSkinLoss(
          chain.forged,
          chain.forgedSurface,
          lastBar.width,
          lastBar.thickness,
          chain.losses.forgingScale,
          chain.heats,
        )
      : beforeFractionLoss(chain.forged, chain.losses.forgingScale, chain.heats);
  const whole = beforeGrooves(dressed, mixed.grooves, lastBar);
  const stages: WeldStage[] = [];
  let out = whole;
  for (let weld = mixed.stages.length - 1; weld >= 0; weld--) {
    const section = mixed.stages[weld];
    if (section === undefined) continue;
    const stage = traceStage(mixed, section, mixed.yields[weld], weld > 0, out);
    stages.unshift(stage);
    out = stage.in;
  }
  return {
    dressed,
    grooves: whole - dressed,
    stages,
    lastBarLength: whole / (lastBar.width * lastBar.thickness),
    length: stages[0]?.pieceLength ?? Number.POSITIVE_INFINITY,
  };
}

function traceStage(
  { chain, kerf }: MixedChain,
  section: StageSection,
  kept: number | undefined,
  isRestack: boolean,
  out: number,
): WeldStage {
  const { pieces, width, height } = section;
  const area = width * height;
  const stacked = stackHeight(pieces, height / pieces, chain.losses.cleaning);
  const none = { cropping: 0, dressing: 0, scale: 0, cleaning: 0 };
  const lengths = (volume: number, ofPieces: number) => ({
    pieceLength: ofPieces / area,
    barLength: isRestack ? (volume * pieces) / area : ofPieces / area,
    stackHeight: stacked,
  });
  if (kept !== undefined) {
    const before = out / kept;
    return { ...section, ...none, in: before, out, byYield: before - out, ...lengths(before, before) };
  }
  // A weld loses what a stack of bars loses; what becomes of its billet is counted by then.
  const trace = traceStack({ ...chain, forged: out, heats: 0 }, pieces, width, height / pieces);
  const ofPieces = area * trace.length;
  const sawn = isRestack ? ((pieces - 1) * kerf * area) / pieces : 0;
  const before = ofPieces + sawn;
  return {
    ...section,
    in: before,
    out,
    cropping: trace.crop + sawn,
    dressing: trace.dressing,
    scale: trace.cleaned - trace.welded,
    cleaning: trace.cleaning,
    byYield: 0,
    ...lengths(before, ofPieces),
  };
}
