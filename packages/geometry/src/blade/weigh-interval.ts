import { inputMoved } from "./input-moved.js";
import { rebuildKnife } from "./knife.js";
import { type Reading, Reweigher } from "./reweigher.js";
import { sidesMoved, uncertainSides } from "./sides-moved.js";
import type { KnifeSpec } from "./spec.js";
import { DEFAULT_TOLERANCES, type InputTolerance, type ToleranceDefaults } from "./tolerances.js";
import { uncertainInputs } from "./uncertain-inputs.js";

/** How much of a band comes from one input. */
export interface InputShare {
  /** Path of the input; `outline` stands for its sides, `outline.blade` and `outline.tang` for those of a part. */
  readonly input: string;
  /** Its share in the variance of the mass, and in that of the balance: 0 to 1 each. */
  readonly share: number;
  readonly balanceShare: number;
}

/** Mass and balance with their bands, and what the bands come from. g, mm. */
export interface WeightInterval {
  /** 95 % interval of the whole knife's mass, g. */
  readonly massInterval: readonly [number, number];
  /** 95 % interval of the balance point from the heel, mm. */
  readonly balanceInterval: readonly [number, number];
  /** Each input with its shares, the largest in the mass first. */
  readonly contributions: readonly InputShare[];
}

/**
 * 95 % intervals of mass and balance by propagation: each input is moved to its two limits while the others stay, and the
 * differences are added in squares.
 *
 * @param tolerances - those given in the file; they take the place of the defaults for the same input.
 *
 * @example
 * // spine ± 0.1 mm; everything else by the defaults
 * weighInterval(spec, [{ path: "blade.thickness", plus: 0.1, minus: 0.1 }]).massInterval; // g, least and most of 95 in 100
 */
export function weighInterval(
  spec: KnifeSpec,
  tolerances: readonly InputTolerance[],
  defaults: ToleranceDefaults = DEFAULT_TOLERANCES,
): WeightInterval {
  // From here on every material carries its density, so that it can be moved like any other number.
  const scale = new Reweigher(rebuildKnife(spec));
  const { middle } = scale;
  const mass = new Spread(middle.mass);
  const balance = new Spread(middle.balance);
  const names: string[] = [];
  const take = (input: string, high: Reading, low: Reading): void => {
    names.push(input);
    mass.take(high.mass, low.mass);
    balance.take(high.balance, low.balance);
  };
  for (const { input, paths, plus, minus } of uncertainInputs(spec, tolerances, defaults)) {
    take(input, inputMoved(scale, spec, paths, plus), inputMoved(scale, spec, paths, -minus));
  }
  const sides = uncertainSides(tolerances);
  if (sides !== undefined && defaults.outline > 0) {
    take(
      sides.input,
      sidesMoved(scale, sides.runs, defaults.outline),
      sidesMoved(scale, sides.runs, -defaults.outline),
    );
  }
  const massShares = mass.shares();
  const balanceShares = balance.shares();
  return {
    massInterval: mass.interval(),
    balanceInterval: balance.interval(),
    contributions: names
      .map((input, i) => ({ input, share: massShares[i] ?? 0, balanceShare: balanceShares[i] ?? 0 }))
      .sort((a, b) => b.share - a.share),
  };
}

/** What the inputs do to one figure, upward and downward apart. */
class Spread {
  private readonly middle: number;
  private readonly ups: number[] = [];
  private readonly downs: number[] = [];

  constructor(middle: number) {
    this.middle = middle;
  }

  /** Both limits may move the figure the same way (a hole at the thickest place): then nothing goes the other way. */
  take(high: number, low: number): void {
    this.ups.push(Math.max(this.middle, high, low) - this.middle);
    this.downs.push(this.middle - Math.min(this.middle, high, low));
  }

  interval(): [number, number] {
    return [this.middle - Math.hypot(...this.downs), this.middle + Math.hypot(...this.ups)];
  }

  shares(): number[] {
    const squares = this.ups.map((up, i) => ((up + (this.downs[i] ?? 0)) / 2) ** 2);
    const total = squares.reduce((sum, square) => sum + square, 0);
    return squares.map((square) => (total === 0 ? 0 : square / total));
  }
}
