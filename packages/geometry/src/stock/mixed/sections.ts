import { dressedWidth, stackHeight, weldedHeight, weldedWidth } from "../billet.js";
import { lossesAt } from "../loss-side.js";
import type { LossSpec, StockLimits } from "../shop.js";
import { type BarSection, type MixedStackSpec, stackBars, stackRestacks } from "./spec.js";

/** What is laid on each other for one weld, mm. */
export interface StageSection {
  readonly pieces: number;
  /** Width of the pieces. */
  readonly width: number;
  /** All pieces together before their joints are cleaned. */
  readonly height: number;
}

/** Sections of a stack of two or more steels from weld to weld, mm. */
export interface StackSections {
  /** First the stack of bars, then each restack. */
  readonly stages: readonly StageSection[];
  /** The bar that is forged to the blade. */
  readonly lastBar: BarSection;
}

/**
 * Sections from weld to weld. A billet of which the smith does not say what it is drawn to before it is cut is drawn as
 * wide as the first bars and so thick that the new stack is as high as the first one was, joints cleaned. The last bar,
 * where it is not given, is the last billet, welded and dressed.
 *
 * @example
 * const layers = [{ steel: { name: "1084" }, thickness: 4 }, { steel: { name: "15N20" }, thickness: 4 }];
 * const stack = { kind: "pattern-welded", layers, width: 40, restacks: [{ pieces: 4 }] } as const;
 * const { losses, limits } = DEFAULT_SHOP;
 * stackSections(stack, losses, limits).stages.map(({ pieces }) => pieces); // [2, 4]
 * stackSections(stack, losses, limits).stages.map(({ height }) => height); // [8, 7.6]
 */
export function stackSections(stack: MixedStackSpec, losses: LossSpec, limits: StockLimits): StackSections {
  const { cleaning: shopCleaning, dressing } = lossesAt(losses, "value");
  const cleaning = stack.cleaning?.value ?? shopCleaning;
  const bars = stackBars(stack);
  const height = bars.reduce((sum, { thickness }) => sum + thickness, 0);
  const first: StageSection = { pieces: bars.length, width: stack.width, height };
  const cleaned = stackHeight(bars.length, height / bars.length, cleaning);
  const stages = [
    first,
    ...stackRestacks(stack).map(({ pieces, bar }) => ({
      pieces,
      width: bar?.width ?? stack.width,
      height: bar === undefined ? cleaned : bar.thickness * pieces,
    })),
  ];
  const last = stages.at(-1) ?? first;
  const { minWeldReduction, weldSpreadShare } = limits;
  const across = weldedWidth(last.pieces, last.width, minWeldReduction, weldSpreadShare);
  return {
    stages,
    lastBar: stack.lastBar ?? {
      width: dressedWidth(last.pieces, across, dressing),
      thickness: weldedHeight(
        last.pieces,
        stackHeight(last.pieces, last.height / last.pieces, cleaning),
        minWeldReduction,
      ),
    },
  };
}
