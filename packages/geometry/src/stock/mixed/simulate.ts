import { dressedWidth, stackHeight, weldedHeight, weldedWidth } from "../billet.js";
import { afterFractionLoss, afterSkinLoss, flatSurface, skinLoss } from "../scale-loss.js";
import { afterGrooves } from "./grooves.js";
import type { MixedChain } from "./mixed-chain.js";
import type { StageSection } from "./sections.js";

/** One weld done forwards; mm³, mm: `in` is `out` and all that was lost. */
export interface SimulatedWeld {
  readonly in: number;
  readonly out: number;
  readonly lost: number;
  /** Length of each piece that is laid on the others. */
  readonly pieceLength: number;
  /** Length that the billet is drawn to before it is cut into the pieces; of the first stack that of the bars. */
  readonly barLength: number;
}

/** A stack forged forwards from its bars, mm³. */
export interface SimulatedStack {
  readonly barsAsCut: number;
  readonly welds: readonly SimulatedWeld[];
  /** The bar with its grooves ground. */
  readonly dressed: number;
  readonly forged: number;
}

/**
 * Forges a stack of two or more steels forwards, weld by weld, from bars of a given length to the forged blade: what the
 * plan says backwards has to come out here.
 *
 * @param length - Length of each bar of the first stack, mm.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const stack = { kind: "clad", core, cladding, width: 30 } as const;
 * const chain = makeMixedChain(ledgerBodies(knife), DEFAULT_SHOP, knife.forging, stack, "value");
 * simulateStack(chain, traceMixed(chain).length).forged - chain.chain.forged; // 0 mm³, but for the last digits
 */
export function simulateStack(mixed: MixedChain, length: number): SimulatedStack {
  const { chain, lastBar, stages } = mixed;
  const [first] = stages;
  const barsAsCut = first === undefined ? 0 : first.width * first.height * length;
  let volume = barsAsCut;
  const welds = stages.map((section, weld): SimulatedWeld => {
    const into = volume;
    const kept = mixed.yields[weld];
    const area = section.width * section.height;
    // A yield holds the saw's cuts, wherever they fall.
    const sawn = kept === undefined ? sawnFrom(mixed, section, weld > 0) : 0;
    const pieceLength = (into - sawn) / area;
    volume = kept === undefined ? weldForwards(mixed, section, pieceLength) : into * kept;
    const barLength = weld > 0 ? (into * section.pieces) / area : pieceLength;
    return { in: into, out: volume, lost: into - volume, pieceLength, barLength };
  });
  const dressed = afterGrooves(volume, mixed.grooves, lastBar);
  const { losses, heats } = chain;
  const forged =
    losses.scaleModel === "skin"
      ? afterSkinLoss(
          dressed,
          chain.forgedSurface,
          lastBar.width,
          lastBar.thickness,
          losses.forgingScale,
          heats,
        )
      : afterFractionLoss(dressed, losses.forgingScale, heats);
  return { barsAsCut, welds, dressed, forged };
}

/** What the saw takes of a billet that is cut for a restack, mm³. */
function sawnFrom({ kerf }: MixedChain, { pieces, width, height }: StageSection, isRestack: boolean): number {
  return isRestack ? (pieces - 1) * kerf * width * (height / pieces) : 0;
}

function weldForwards(
  { chain }: MixedChain,
  { pieces, width, height }: StageSection,
  pieceLength: number,
): number {
  const { losses, weldReduction, weldSpreadShare } = chain;
  const stacked = stackHeight(pieces, height / pieces, losses.cleaning);
  const cleaned = width * stacked * pieceLength;
  const tall = weldedHeight(pieces, stacked, weldReduction);
  const across = weldedWidth(pieces, width, weldReduction, weldSpreadShare);
  let welded = cleaned;
  if (losses.scaleModel === "skin") {
    // What is lost hangs on the surface that is left, which is straight in the volume: two trials give the line.
    const left = (volume: number): number =>
      cleaned -
      skinLoss(
        losses.weldingScale,
        chain.weldingHeats,
        flatSurface(width, stacked, pieceLength),
        flatSurface(across, tall, volume / (across * tall)),
      );
    const atNothing = left(0);
    welded = atNothing / (1 - (left(cleaned) - atNothing) / cleaned);
  } else welded = afterFractionLoss(cleaned, losses.weldingScale, chain.weldingHeats);
  const clean = dressedWidth(pieces, across, losses.dressing);
  return (welded * clean) / across - 2 * losses.crop * clean * tall;
}
