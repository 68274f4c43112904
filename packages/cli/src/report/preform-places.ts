import { type ForgeCard, preformSteps } from "@scantling/geometry";
import { type FileUnits, onRule } from "@scantling/geometry/units";

/** A place along the preform, mm. */
export interface PreformPlace {
  /** From the shoulder. */
  readonly at: number;
  /** Before its bevels. */
  readonly high: number;
  readonly thick: number;
  /** With its bevels: ahead of the heel, and how high. */
  readonly thenAt: number;
  readonly thenHigh: number;
}

/**
 * The preform in steps of a rule.
 *
 * @param step - mm.
 */
export const preformPlaces = ({ preform, spreadShare }: ForgeCard, step: number): PreformPlace[] =>
  preformSteps(preform, step).map(({ at, height, thickness, meanThickness, x }) => ({
    at,
    high: height,
    thick: thickness,
    thenAt: x,
    thenHigh: height * (thickness / meanThickness) ** spreadShare,
  }));

/** How far from the straight line between its neighbours a place that is left out may lie, mm. */
const OFF = { high: 0.5, thenHigh: 0.5, thick: 0.15 } as const;
/** A size that is off by just that is not off by more. */
const HAIR = 1e-6;

/**
 * The places that are needed so that straight lines from one to the next, as a rule tells them, pass all others within half a mm
 * of their heights, and within what a hammer leaves of their thickness; the first and the last always.
 *
 * @example
 * // 40, 35.2, 30 and 10 mm high at 0, 25, 50 and 75 mm: the second lies on the line from the first to the third
 * withoutStraight(places, "mm").map(({ at }) => at); // [0, 50, 75]
 */
export function withoutStraight(places: readonly PreformPlace[], units: FileUnits): PreformPlace[] {
  const told = places.map((place) => ({
    ...place,
    high: onRule(place.high, units),
    thenHigh: onRule(place.thenHigh, units),
  }));
  const kept: PreformPlace[] = [];
  let from = 0;
  while (from < places.length) {
    kept.push(places[from] as PreformPlace);
    let to = from + 1;
    while (to + 1 < places.length && isStraight(told.slice(from, to + 2))) to++;
    from = to;
  }
  return kept;
}

/** Whether all places between the first and the last lie on the line between these two. */
function isStraight(places: readonly PreformPlace[]): boolean {
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined) return true;
  return places.every((place) => {
    const share = (place.at - first.at) / (last.at - first.at);
    return (["high", "thenHigh", "thick"] as const).every(
      (size) => Math.abs(first[size] + (last[size] - first[size]) * share - place[size]) <= OFF[size] + HAIR,
    );
  });
}
