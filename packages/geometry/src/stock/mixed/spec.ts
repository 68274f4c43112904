import type { NamedMaterial } from "../../materials/material-density.js";
import type { Banded } from "../shop.js";

/** A bar of a stack of two or more steels, as bought; mm. */
export interface StackBar {
  readonly steel: NamedMaterial;
  readonly thickness: number;
}

/** Section of a bar, mm: the width becomes height of the blade, the thickness its thickness. */
export interface BarSection {
  readonly width: number;
  readonly thickness: number;
}

/** The billet cut into pieces that are stacked and welded anew, all the same way up. */
export interface RestackSpec {
  readonly pieces: number;
  /** Section that the billet is drawn to before it is cut; left out: see {@link stackSections}. */
  readonly bar?: BarSection;
}

/** Form of a groove across the bar: a part of a circle, a vee or a slot. */
export type GrooveForm = "round" | "vee" | "square";

/** Grooves ground across the last bar before it is forged flat, mm: their share of the bar, or their size and number. */
export type GrooveSpec =
  | { readonly share: number }
  | { readonly form: GrooveForm; readonly depth: number; readonly width: number; readonly count: number }
  | {
      readonly form: GrooveForm;
      readonly depth: number;
      readonly width: number;
      /** From one groove to the next on the same face. */
      readonly pitch: number;
      readonly faces: 1 | 2;
    };

/** What every stack of two or more steels says. */
interface StackBase {
  /** Width of the bars, mm. */
  readonly width: number;
  /** Depth ground off each face of a joint, mm; left out: the shop's. */
  readonly cleaning?: Banded;
  /**
   * What is left of the steel after a weld with all that goes with it, 0 to 1: one for all welds or one for each. `high`
   * is the cautious side, as with losses: the lowest yield. Left out: the shop's own losses.
   */
  readonly yields?: readonly Banded[];
  /** Section of the bar that is forged to the blade; left out: what the last weld leaves. */
  readonly lastBar?: BarSection;
}

/** Layers of two or more steels, welded, and cut and stacked again as often as wanted. */
export interface PatternWeldedSpec extends StackBase {
  readonly kind: "pattern-welded";
  /** Bars of the first stack, from bottom to top. */
  readonly layers: readonly StackBar[];
  readonly restacks: readonly RestackSpec[];
  readonly grooves?: GrooveSpec;
}

/** A core of edge steel between two bars of another, the cladding. */
export interface CladSpec extends StackBase {
  readonly kind: "clad";
  readonly core: StackBar;
  readonly cladding: StackBar;
}

/** A stack of two or more steels. */
export type MixedStackSpec = PatternWeldedSpec | CladSpec;

/**
 * The bars of the first stack, from bottom to top.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * stackBars({ kind: "clad", core, cladding, width: 30 }).map(({ thickness }) => thickness); // [3, 2.5, 3]
 */
export function stackBars(stack: MixedStackSpec): readonly StackBar[] {
  return stack.kind === "clad" ? [stack.cladding, stack.core, stack.cladding] : stack.layers;
}

/**
 * The times that a stack is cut and stacked again; none for a core with cladding.
 *
 * @example
 * const layers = [{ steel: { name: "1084" }, thickness: 3 }, { steel: { name: "15N20" }, thickness: 2 }];
 * stackRestacks({ kind: "pattern-welded", layers, width: 40, restacks: [{ pieces: 4 }] }).length; // 1
 */
export function stackRestacks(stack: MixedStackSpec): readonly RestackSpec[] {
  return stack.kind === "clad" ? [] : stack.restacks;
}
