import { drawnAt, type FitDimension, type FitSize, isInProportion } from "./dimension.js";

/** What a dimension can be set to at the bench. */
export interface Setting {
  /** Its change from the drawing, in widths of the dimension's range. */
  readonly change: number;
  /** One for each size; undefined where it stays as drawn. */
  readonly sizes: readonly number[] | undefined;
}

/** Sizes that differ by less are one: a hundredth of a micrometre, or as little of another unit. */
const SAME = 1e-9;
/** Digits of a size that is a whole number of steps. */
const DIGITS = 12;

/**
 * All settings of a dimension in its range, in order: whole steps, and the drawing itself where it lies in the range.
 *
 * @param fineness - which of its steps: 0 is the coarsest.
 *
 * @example
 * const sizes = [{ path: "tang.buttThickness", drawn: 2.44, steps: [0.1] }];
 * const tang = { name: "tang.buttThickness", kind: "length", sizes, least: 2.35, most: 2.55 } as const;
 * settingsOf(tang, 0).map(({ sizes }) => sizes?.[0] ?? "as drawn"); // [2.4, "as drawn", 2.5]
 */
export function settingsOf(dimension: FitDimension, fineness: number): readonly Setting[] {
  const { least, most } = dimension;
  const drawn = drawnAt(dimension);
  const at = (value: number, sizes: readonly number[]): Setting => ({
    change: (value - drawn) / (most - least),
    sizes,
  });
  const whole = isInProportion(dimension)
    ? proportions(dimension, fineness).map(([value, sizes]) => at(value, sizes))
    : wholeSteps(least, most, stepOf(dimension.sizes[0], fineness)).map((value) => at(value, [value]));
  const isDrawn = ({ sizes }: Setting): boolean =>
    sizes?.every((size, i) => Math.abs(size - (dimension.sizes[i]?.drawn ?? 0)) < SAME) === true;
  const asDrawn: Setting = { change: 0, sizes: undefined };
  const isInside = drawn >= least - SAME && drawn <= most + SAME;
  return [...whole.filter((setting) => !isDrawn(setting)), ...(isInside ? [asDrawn] : [])].sort(
    (a, b) => a.change - b.change,
  );
}

const stepOf = (size: FitSize | undefined, fineness: number): number =>
  size?.steps[Math.min(fineness, size.steps.length - 1)] ?? 1;

const tidy = (value: number): number => Number(value.toPrecision(DIGITS));

function wholeSteps(least: number, most: number, step: number): number[] {
  const found: number[] = [];
  for (let k = Math.ceil(least / step - SAME); k * step <= most + SAME * step; k++)
    found.push(tidy(k * step));
  return found;
}

/**
 * Sizes in proportion, each rounded to its own step: every way in which they come out between the ends of the range. Where one
 * after the other rounds up there are many more of them than steps of one size.
 */
function proportions(
  { sizes, least, most }: FitDimension,
  fineness: number,
): (readonly [share: number, sizes: readonly number[]])[] {
  const turns = new Set([least, most]);
  for (const size of sizes) {
    const step = stepOf(size, fineness) / size.drawn;
    for (let k = Math.ceil(least / step - 0.5); (k + 0.5) * step < most; k++)
      if ((k + 0.5) * step > least) turns.add((k + 0.5) * step);
  }
  const ends = [...turns].sort((a, b) => a - b);
  const found = new Map<string, readonly [number, readonly number[]]>();
  for (const [i, to] of ends.slice(1).entries()) {
    const share = ((ends[i] ?? to) + to) / 2;
    const rounded = sizes.map((size) => {
      const step = stepOf(size, fineness);
      return tidy(Math.round((size.drawn * share) / step) * step);
    });
    if (rounded.some((value) => value <= 0)) continue;
    const shares = rounded.map((value, k) => value / (sizes[k]?.drawn ?? 1));
    found.set(rounded.join(" "), [shares.reduce((sum, each) => sum + each, 0) / shares.length, rounded]);
  }
  return [...found.values()];
}
