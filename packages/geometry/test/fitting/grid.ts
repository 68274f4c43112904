import { bevelAt } from "../../src/blade/bevel-at.js";
import { insideEnds } from "../../src/blade/inside-ends.js";
import { type Knife, makeKnife, rebuildKnife } from "../../src/blade/knife.js";
import { type Reading, Reweigher } from "../../src/blade/reweigher.js";
import { thicknessAbove } from "../../src/blade/section-report.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { changedAt, readAt } from "../../src/blade/spec-path.js";
import { SpecError } from "../../src/errors/errors.js";
import type { FitDimension, FitKind } from "../../src/fitting/dimension.js";
import type { FitAsk, FitProblem } from "../../src/fitting/fit-problem.js";

/** One size of a knife that may be changed. */
export function dimension(
  spec: KnifeSpec,
  path: string,
  least: number,
  most: number,
  step = 0.1,
  kind: FitKind = "length",
): FitDimension {
  const drawn = readAt(spec, path);
  if (typeof drawn !== "number") throw new Error(`${path} is no number`);
  return { name: path, kind, sizes: [{ path, drawn, steps: [step, step / 2, step / 10] }], least, most };
}

export const mass = (limits: Pick<FitAsk, "atLeast" | "atMost">): FitAsk => ({
  name: "mass",
  figure: { kind: "mass" },
  scale: 2,
  ...limits,
});

export const balance = (limits: Pick<FitAsk, "atLeast" | "atMost">): FitAsk => ({
  name: "balance",
  figure: { kind: "balance" },
  scale: 1,
  ...limits,
});

/** What the whole grid says of a problem. */
export interface GridAnswer {
  /** Knives that were looked at. */
  readonly points: number;
  /** Least change of those that meet the asks; undefined where none does. */
  readonly change: number | undefined;
  /** Least worst miss. */
  readonly miss: number;
}

/** How far an ask is missed by a figure, in its scale; 0 where it is met. */
export function missOf({ atLeast, atMost, scale }: FitAsk, value: number): number {
  return Math.max(0, ((atLeast ?? -1e9) - value) / scale, (value - (atMost ?? 1e9)) / scale);
}

/** Half the sum of squares of changes, each in widths of its range. */
const changeOf = ({ dimensions }: FitProblem, values: readonly number[]): number =>
  dimensions.reduce((sum, { sizes, least, most }, i) => {
    const by = ((values[i] ?? 0) - (sizes[0]?.drawn ?? 0)) / (most - least);
    return sum + (by * by) / 2;
  }, 0);

/** The figure of an ask on a knife that was built and weighed. */
function figureOf({ figure }: FitAsk, knife: Knife, reading: Reading): number {
  switch (figure.kind) {
    case "mass":
      return reading.mass;
    case "balance":
      return reading.balance;
    case "bevel-angle":
      return bevelAt(knife, 0, figure.side).angle;
    case "behind-edge":
      return thicknessAbove(knife, insideEnds(knife, 0), [figure.above])[0]?.thickness ?? Number.NaN;
    case "own":
      return figure.measure(knife);
    case "steel":
      throw new Error("too slow for a grid");
  }
}

const isBuilt = (spec: KnifeSpec): boolean => {
  try {
    makeKnife(spec);
    return true;
  } catch (error) {
    if (error instanceof SpecError) return false;
    throw error;
  }
};

/** Weighs every knife on whole steps, and the drawing's own sizes between them. Without the code that fits. */
export function searchGrid(problem: FitProblem): GridAnswer {
  const { dimensions, asks } = problem;
  const scale = new Reweigher(rebuildKnife(problem.spec));
  let change: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  const points = pointsOf(problem);
  for (const values of points) {
    const spec = dimensions.reduce((before, { sizes }, i) => {
      const path = sizes[0]?.path ?? "";
      return changedAt(before, path, (values[i] ?? 0) - (readAt(before, path) as number));
    }, scale.spec);
    const [knife, reading] = [rebuildKnife(spec), scale.read(spec)];
    const miss = Math.max(...asks.map((ask) => missOf(ask, figureOf(ask, knife, reading))));
    const by = changeOf(problem, values);
    const isLess = miss < least || (miss === 0 && (change === undefined || by < change));
    // Whether it keeps the rules is only asked where it would be better than those before.
    if (!isLess || !isBuilt(spec)) continue;
    least = Math.min(least, miss);
    if (miss === 0) change = Math.min(by, change ?? by);
  }
  return { points: points.length, change, miss: least };
}

function pointsOf({ dimensions }: FitProblem): readonly (readonly number[])[] {
  const axes = dimensions.map(({ sizes, least, most }) => {
    const { drawn = 0, steps = [1] } = sizes[0] ?? {};
    const step = steps[0] ?? 1;
    const first = Math.ceil(least / step - 1e-9);
    const whole = Array.from(
      { length: Math.floor(most / step + 1e-9) - first + 1 },
      (_, i) => (first + i) * step,
    );
    return drawn >= least && drawn <= most ? [...whole, drawn] : whole;
  });
  return axes.reduce<readonly (readonly number[])[]>(
    (before, axis) => before.flatMap((point) => axis.map((value) => [...point, value])),
    [[]],
  );
}
