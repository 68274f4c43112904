import type { ForgedStation } from "./blade-states.js";
import type { StockLimits } from "./shop.js";

/** How hard a reach is. `refused`: the section cannot reach that height. */
export type ReachClass = "easy" | "flat dies" | "fullers" | "refused";

/**
 * Share of the thinning that has to go into height rather than length to bring a section `w0 × t0` to the height
 * `height` with the mean thickness `meanThickness`: `s = ln(hA/w0) / ln(t0/tm)`, from the spread law
 * `w₁/w₀ = (t₀/t₁)^s` with constant volume. It needs no loss figure.
 *
 * @param height - Height needed, mm.
 * @param meanThickness - Section area over height, mm.
 * @param w0 - Dimension of the dressed billet that becomes height, mm.
 * @param t0 - Its dimension that becomes thickness, mm.
 * @returns 0 where no spread is needed (`hA ≤ w0`); `Infinity` where none is to be had (`t0 ≤ tm`).
 *
 * @example
 * reachShare(53.8, 4.467, 38.1, 12.7); // 0.33
 */
export function reachShare(height: number, meanThickness: number, w0: number, t0: number): number {
  if (height <= w0) return 0;
  if (t0 <= meanThickness) return Number.POSITIVE_INFINITY;
  return Math.log(height / w0) / Math.log(t0 / meanThickness);
}

/**
 * Height that a section can be brought to when the share `s` of the thinning goes into height, mm; the inverse of
 * {@link reachShare}.
 *
 * @example
 * reachableHeight(4, 40, 12, 0.3); // 55.6
 */
export function reachableHeight(meanThickness: number, w0: number, t0: number, s: number): number {
  return t0 <= meanThickness ? w0 : w0 * (t0 / meanThickness) ** s;
}

/**
 * Puts a share into its class by the shop's limits.
 *
 * @example
 * classifyReach(0.5, DEFAULT_SHOP.limits.reach); // "flat dies"
 */
export function classifyReach(shareNeeded: number, limits: StockLimits["reach"]): ReachClass {
  if (shareNeeded <= limits.easy) return "easy";
  if (shareNeeded <= limits.flatDies) return "flat dies";
  if (shareNeeded <= limits.fullers) return "fullers";
  return "refused";
}

/** The forged sections in the form that the search reads: parallel arrays, stations without steel left out. */
export interface ReachStations {
  readonly x: Float64Array;
  readonly height: Float64Array;
  readonly meanThickness: Float64Array;
  readonly logHeight: Float64Array;
  readonly logMeanThickness: Float64Array;
  /** Greatest height ahead of the heel, mm. */
  readonly greatestHeight: number;
  /** Greatest thickness anywhere, mm. */
  readonly greatestThickness: number;
}

/**
 * Stations of the forged blade in the order in which their reach is looked at.
 *
 * @example
 * const stations = [{ x: 0, height: 50, area: 200 }, { x: 9, height: 40, area: 80 }];
 * worstShare(makeReachStations(stations), 40, 12, 0); // 0.203
 */
export function makeReachStations(stations: readonly ForgedStation[]): ReachStations {
  const solid = stations.filter(({ height, area }) => height > 0 && area > 0);
  const height = Float64Array.from(solid, (station) => station.height);
  const meanThickness = Float64Array.from(solid, (station) => station.area / station.height);
  return {
    x: Float64Array.from(solid, (station) => station.x),
    height,
    meanThickness,
    logHeight: height.map(Math.log),
    logMeanThickness: meanThickness.map(Math.log),
    greatestHeight: solid.reduce((most, { x, height: h }) => (x >= 0 ? Math.max(most, h) : most), 0),
    greatestThickness: solid.reduce((most, s) => Math.max(most, s.thickness ?? s.area / s.height), 0),
  };
}

/**
 * Index of the station that asks the most of a section `w0 × t0`, from `from` mm onward; −1 where none asks anything.
 *
 * @example
 * const stations = makeReachStations([{ x: 0, height: 50, area: 200 }, { x: 9, height: 60, area: 240 }]);
 * worstStation(stations, 40, 12, 0); // 1
 */
export function worstStation(stations: ReachStations, w0: number, t0: number, from: number): number {
  const logW0 = Math.log(w0);
  const logT0 = Math.log(t0);
  let worst = -1;
  let most = 0;
  for (let i = 0; i < stations.x.length; i++) {
    if ((stations.x[i] ?? 0) < from || (stations.height[i] ?? 0) <= w0) continue;
    const thinning = logT0 - (stations.logMeanThickness[i] ?? 0);
    const needed =
      thinning <= 0 ? Number.POSITIVE_INFINITY : ((stations.logHeight[i] ?? 0) - logW0) / thinning;
    if (needed > most) {
      most = needed;
      worst = i;
    }
  }
  return worst;
}

/**
 * The greatest share that any station from `from` mm onward asks of a section `w0 × t0`; 0 where none asks anything.
 *
 * @example
 * const stations = makeReachStations([{ x: 0, height: 50, area: 200 }]);
 * worstShare(stations, 40, 12, 0); // 0.203
 */
export function worstShare(stations: ReachStations, w0: number, t0: number, from: number): number {
  const i = worstStation(stations, w0, t0, from);
  if (i < 0) return 0;
  return reachShare(stations.height[i] ?? 0, stations.meanThickness[i] ?? 0, w0, t0);
}
