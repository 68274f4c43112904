import { dressedWidth, stackHeight, weldedHeight, weldedWidth } from "../stock/billet.js";
import type { GateStack } from "../stock/gates/stage-need.js";
import type { Losses } from "../stock/loss-side.js";
import { flatSurface } from "../stock/scale-loss.js";
import type { ScaleModel, StockLimits } from "../stock/shop.js";

/** What a heat takes, from the mass before and after some heats, g: a share, or mm of skin. */
export type LossOf = (before: number, after: number, heats: number) => number;

/** The limits that a weld's section is computed with. */
type WeldLimits = Pick<StockLimits, "minWeldReduction" | "weldSpreadShare">;

/**
 * The share of the mass that each of some heats takes; undoes `afterFractionLoss`.
 *
 * @example
 * shareLost(100, 92, 1); // 0.08
 */
export const shareLost: LossOf = (before, after, heats) => 1 - (after / before) ** (1 / heats);

/** Depth of skin over some heats while the surface goes evenly from one piece's to the next one's; undoes `skinLoss`. */
const skinDepth = (lost: number, heats: number, before: number, after: number): number =>
  (2 * lost) / (heats * (before + after));

interface WeldSections {
  /** Of the cleaned stack. */
  readonly height: number;
  readonly billetHeight: number;
  readonly billetWidth: number;
  /** Of the billet with bead and seam ground off. */
  readonly cleanWidth: number;
}

function sectionsOf(stack: GateStack, losses: Losses, limits: WeldLimits): WeldSections {
  const { bars, width, thickness } = stack;
  const height = stackHeight(bars, thickness, losses.cleaning);
  const billetWidth = weldedWidth(bars, width, limits.minWeldReduction, limits.weldSpreadShare);
  return {
    height,
    billetHeight: weldedHeight(bars, height, limits.minWeldReduction),
    billetWidth,
    cleanWidth: dressedWidth(bars, billetWidth, losses.dressing),
  };
}

/**
 * The skin that a forging heat takes, as the ledger counts it: from the dressed billet as a flat piece to the forged blade
 * as planned.
 *
 * @param blade - Density of the steel, g/mm³, and surface of the forged blade, mm².
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const blade = { density: 0.00785, forgedSurface: 20_000 };
 * const skin = forgingSkin({ bars: 1, width: 30, thickness: 6 }, blade, lossesAt(losses, "value"), limits);
 * skin(300, 280, 9) > 0; // true, mm
 */
export function forgingSkin(
  stack: GateStack,
  blade: { readonly density: number; readonly forgedSurface: number },
  losses: Losses,
  limits: WeldLimits,
): LossOf {
  const { density, forgedSurface } = blade;
  const { cleanWidth, billetHeight } = sectionsOf(stack, losses, limits);
  return (before, after, heats) => {
    const volume = before / density;
    const surface = flatSurface(cleanWidth, billetHeight, volume / (cleanWidth * billetHeight));
    return skinDepth(volume - after / density, heats, surface, forgedSurface);
  };
}

/**
 * What a welding heat takes, as the ledger counts it: from the bars as cut to the dressed billet, once what is cleaned,
 * dressed and cropped off is counted back by the shop's own figures.
 *
 * @param density - g/mm³
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const weld = weldingLoss({ bars: 3, width: 40, thickness: 6 }, 0.00785, lossesAt(losses, "value"), limits, "fraction");
 * weld(900, 700, 3) > 0.015; // true
 */
export function weldingLoss(
  stack: GateStack,
  density: number,
  losses: Losses,
  limits: WeldLimits,
  model: ScaleModel,
): LossOf {
  const { bars, width, thickness } = stack;
  const { height, billetHeight, billetWidth, cleanWidth } = sectionsOf(stack, losses, limits);
  return (before, after, heats) => {
    const length = before / density / (bars * width * thickness);
    const cleaned = length * width * height;
    const crop = 2 * losses.crop * cleanWidth * billetHeight;
    const welded = ((after / density + crop) * billetWidth) / cleanWidth;
    if (model === "fraction") return shareLost(cleaned, welded, heats);
    const weldedLength = welded / (billetWidth * billetHeight);
    return skinDepth(
      cleaned - welded,
      heats,
      flatSurface(width, height, length),
      flatSurface(billetWidth, billetHeight, weldedLength),
    );
  };
}
