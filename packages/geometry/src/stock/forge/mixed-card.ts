import type { ForgingSpec } from "../../blade/spec.js";
import type { LedgerBodies } from "../blade-states.js";
import { makeMixedChain } from "../mixed/mixed-chain.js";
import type { MixedPlan } from "../mixed/plan-mixed.js";
import { simulateStack } from "../mixed/simulate.js";
import type { ShopSpec } from "../shop.js";
import type { CardStack } from "./forge-card.js";

/**
 * The last bar of a stack of two or more steels, as a solid bar that a forge card can start from: its section, and the
 * length that the bars as cut make of it on either side of the losses, grooves ground and pressed flat.
 *
 * @param plan - Of the same knife and shop.
 *
 * @example
 * const layers = ["1084", "15N20", "1084"].map((name) => ({ steel: { name }, thickness: 4 }));
 * const stack = { kind: "pattern-welded", layers, width: 35, restacks: [{ pieces: 3 }] } as const;
 * const bodies = ledgerBodies(knife);
 * const plan = planMixed(knife, bodies, DEFAULT_SHOP, stack);
 * mixedCardStack(plan, bodies, DEFAULT_SHOP, knife.forging).bars; // 1
 */
export function mixedCardStack(
  plan: MixedPlan,
  bodies: LedgerBodies,
  shop: ShopSpec,
  forging: ForgingSpec,
): CardStack {
  const { width, thickness } = plan.lastBar;
  const lengthAt = (side: "value" | "high"): number =>
    simulateStack(makeMixedChain(bodies, shop, forging, plan.stack, side), plan.cutLength).dressed /
    (width * thickness);
  return {
    bars: 1,
    width,
    thickness,
    cutLength: lengthAt("value"),
    highLength: lengthAt("high"),
    layers: "flat",
  };
}
