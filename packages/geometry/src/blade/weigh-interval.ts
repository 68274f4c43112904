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
  const moves = uncertainInputs(spec, tolerances, defaults).map(
    ({ input, paths, plus, minus }): Move => ({
      input,
      plus,
      minus,
      read: (by) => inputMoved(scale, spec, paths, by),
    }),
  );
  const sides = uncertainSides(tolerances);
  if (sides !== undefined && defaults.outline > 0) {
    const read = (by: number): Reading => sidesMoved(scale, sides.runs, by);
    moves.push({ input: sides.input, plus: defaults.outline, minus: defaults.outline, read });
  }
  const highs = moves.map(({ plus, read }) => read(plus));
  const lows = lowerLimits(moves, highs, middle);
  const mass = spreadOf(middle.mass, highs, lows, (reading) => reading.mass);
  const balance = spreadOf(middle.balance, highs, lows, (reading) => reading.balance);
  return {
    massInterval: mass.interval,
    balanceInterval: balance.interval,
    contributions: moves
      .map(({ input }, i) => ({
        input,
        share: mass.shares[i] as number,
        balanceShare: balance.shares[i] as number,
      }))
      .sort((x, y) => y.share - x.share),
  };
}

/** One uncertain input and what the knife weighs with it moved. */
interface Move {
  readonly input: string;
  readonly plus: number;
  readonly minus: number;
  readonly read: (by: number) => Reading;
}

/** Share of the squares of all upper changes below which an input is moved one way only. */
const NEGLIGIBLE = 1e-3;

/**
 * Readings at the lower limits. What at its upper limit changes neither mass nor balance by a thirtieth of the whole is taken to
 * change them as much the other way: it moves the ends of the interval by less than half a thousandth of its width.
 */
function lowerLimits(moves: readonly Move[], highs: readonly Reading[], middle: Reading): Reading[] {
  const changes = highs.map(({ mass, balance }) => [mass - middle.mass, balance - middle.balance] as const);
  const least = ([0, 1] as const).map(
    (figure) => NEGLIGIBLE * changes.reduce((sum, change) => sum + change[figure] ** 2, 0),
  );
  return moves.map(({ plus, minus, read }, i) => {
    const change = changes[i] as readonly [number, number];
    const isSmall = change.every((by, figure) => by ** 2 < (least[figure] as number));
    // An input that has not moved may have had no way up.
    const hasMoved = change[0] !== 0 || change[1] !== 0;
    if (!isSmall || !hasMoved || plus === 0) return read(-minus);
    const ratio = minus / plus;
    return { mass: middle.mass - ratio * change[0], balance: middle.balance - ratio * change[1] };
  });
}

/** The interval of one figure, upward and downward apart, and the share of every input in its square. */
function spreadOf(
  middle: number,
  highs: readonly Reading[],
  lows: readonly Reading[],
  figure: (reading: Reading) => number,
): { readonly interval: readonly [number, number]; readonly shares: readonly number[] } {
  const ends = highs.map((high, i) => [middle, figure(high), figure(lows[i] as Reading)]);
  // Both limits may move the figure the same way (a hole at the thickest place): then nothing goes the other way.
  const ups = ends.map((values) => Math.max(...values) - middle);
  const downs = ends.map((values) => middle - Math.min(...values));
  const squares = ups.map((up, i) => ((up + (downs[i] as number)) / 2) ** 2);
  const total = squares.reduce((sum, square) => sum + square, 0);
  return {
    interval: [middle - Math.hypot(...downs), middle + Math.hypot(...ups)],
    shares: squares.map((square) => (total === 0 ? 0 : square / total)),
  };
}
