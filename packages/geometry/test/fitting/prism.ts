import type { KnifeSpec } from "../../src/blade/spec.js";
import type { FitDimension } from "../../src/fitting/dimension.js";
import type { FitAsk } from "../../src/fitting/fit-problem.js";
import { boxKnife, p } from "../blade/bodies.js";
import { heel } from "../blade/random-knives.js";

/** mm */
export const THICKNESS = 4;
/** Of a wedge 120 × 30, thick T at the spine and nothing at the edge, and of a tang 100 × 20 × T behind it: g for a mm of T. */
export const GRAMS_PER_MM = (1800 + 2000) * 0.00785;
/** g */
export const DRAWN_MASS = THICKNESS * GRAMS_PER_MM;
/** Both are as thick all along: middles at 60 and −50. mm */
export const CENTRE = (1800 * 60 - 2000 * 50) / 3800;
/** Where the weight of the handle sits, mm, and what it weighs, g. */
export const WEIGHT_AT = -90;
export const DRAWN_WEIGHT = 10;

/** A knife whose mass and balance are sums by hand, however thick it is and whatever its weight. */
export const PRISM: KnifeSpec = boxKnife(
  {
    thickness: [heel(THICKNESS)],
    bevel: { form: "flat", height: "full", edgeThickness: 0 },
  },
  { handle: { parts: [{ name: "weight", mass: DRAWN_WEIGHT, at: p(WEIGHT_AT, 20) }] } },
);

export const massBy = (thickness: number, weight: number): number => thickness * GRAMS_PER_MM + weight;
export const balanceBy = (thickness: number, weight: number): number =>
  (thickness * GRAMS_PER_MM * CENTRE + weight * WEIGHT_AT) / massBy(thickness, weight);

export const thickness = (
  least: number,
  most: number,
  steps: readonly number[] = [0.1, 0.05, 0.01],
): FitDimension => ({
  name: "thickness@heel",
  kind: "length",
  sizes: [{ path: "blade.thickness[0].is", drawn: THICKNESS, steps }],
  least,
  most,
});

export const weight = (
  least: number,
  most: number,
  steps: readonly number[] = [1, 0.5, 0.1],
): FitDimension => ({
  name: "handle.parts.mass@1",
  kind: "mass",
  sizes: [{ path: "handle.parts[0].mass", drawn: DRAWN_WEIGHT, steps }],
  least,
  most,
});

export const massAsk = (limits: Pick<FitAsk, "atLeast" | "atMost">): FitAsk => ({
  name: "mass",
  figure: { kind: "mass" },
  scale: 1,
  ...limits,
});

export const balanceAsk = (limits: Pick<FitAsk, "atLeast" | "atMost">): FitAsk => ({
  name: "balance",
  figure: { kind: "balance" },
  scale: 1,
  ...limits,
});
