/**
 * The place of the last that fits, where each one fits only if those before it do; found by halving.
 *
 * @returns -1 where not even the first does.
 */
export function lastThatFits<T>(all: readonly T[], fits: (one: T) => boolean): number {
  let [found, tooFar] = [-1, all.length];
  while (tooFar - found > 1) {
    const middle = (found + tooFar) >> 1;
    if (all.slice(middle, middle + 1).every(fits)) found = middle;
    else tooFar = middle;
  }
  return found;
}
