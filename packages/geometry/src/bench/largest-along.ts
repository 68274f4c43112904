/** Places looked at between two neighbours, and how often: each pass is that much finer. */
const PARTS = 16;
const PASSES = 7;

/**
 * The greatest value along a line: at the places given, and then closer and closer about the best of them, so that a peak or
 * a kink between two places is found too. NaN counts as no value.
 *
 * @param places - At least one; so close that no peak of its own hides between two of them.
 * @returns undefined where there is no value at any place.
 */
export function greatestAlong(
  places: readonly number[],
  valueAt: (place: number) => number,
): { readonly at: number; readonly value: number } | undefined {
  let looked = [...new Set(places)].sort((a, b) => a - b);
  let best: { readonly at: number; readonly value: number } | undefined;
  for (let pass = 0; pass < PASSES; pass++) {
    for (const at of looked) {
      const value = valueAt(at);
      if (value > (best?.value ?? Number.NEGATIVE_INFINITY)) best = { at, value };
    }
    if (best === undefined) return undefined;
    const { at } = best;
    const around = [
      looked.findLast((place) => place < at) ?? at,
      at,
      looked.find((place) => place > at) ?? at,
    ];
    looked = around.flatMap((to, i) => {
      const from = around[i - 1];
      if (from === undefined || from === to) return [];
      return Array.from({ length: PARTS + 1 }, (_, part) => from + ((to - from) * part) / PARTS);
    });
  }
  return best;
}

/** Places from one end to the other, no farther apart than a step, with others between them. */
export function placesBetween(
  from: number,
  to: number,
  step: number,
  others: readonly number[] = [],
): readonly number[] {
  const count = Math.max(1, Math.ceil((to - from) / step));
  const even = Array.from({ length: count + 1 }, (_, i) =>
    i === count ? to : from + ((to - from) * i) / count,
  );
  return [...even, ...others.filter((place) => place > from && place < to)];
}
