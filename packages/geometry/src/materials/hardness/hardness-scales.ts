import { Law } from "../../numeric/law.js";

/**
 * Vickers hardness of 20 to 68 HRC: ASTM E140, table 1 (carbon, alloy and tool steels), from two secondary charts that agree.
 * One value for every point of Rockwell C, softest first.
 */
const VICKERS: readonly number[] = [
  238, 243, 248, 254, 260, 266, 272, 279, 286, 294, 302, 310, 318, 327, 336, 345, 354, 363, 372, 382, 392,
  402, 412, 423, 434, 446, 458, 471, 484, 498, 513, 528, 544, 560, 577, 595, 613, 633, 653, 674, 697, 720,
  746, 772, 800, 832, 865, 900, 940,
];
const SOFTEST = 20;

const TO_VICKERS = Law.straight(VICKERS.map((is, i) => ({ at: SOFTEST + i, is })));
const TO_ROCKWELL = Law.straight(VICKERS.map((at, i) => ({ at, is: SOFTEST + i })));

/** What a converted hardness is told with: E140 itself calls its values approximate, and says what steel they are for. */
export const HARDNESS_SOURCE =
  "ASTM E140 table 1, from two secondary charts that agree; approximate, and not for skins or thin edges";

/**
 * Vickers hardness of a Rockwell C hardness by ASTM E140 table 1, straight between its rows.
 *
 * @param rockwell - HRC.
 * @returns HV; undefined outside of 20 to 68 HRC.
 *
 * @example
 * vickersOf(60); // 697
 */
export function vickersOf(rockwell: number): number | undefined {
  return inside(TO_VICKERS, rockwell) ? TO_VICKERS.valueAt(rockwell) : undefined;
}

/**
 * Rockwell C hardness of a Vickers hardness by ASTM E140 table 1. The standard wants a converted Rockwell hardness told as a
 * whole number, with the measured one behind it.
 *
 * @param vickers - HV.
 * @returns HRC, not rounded; undefined outside of 238 to 940 HV.
 *
 * @example
 * rockwellOf(697); // 60
 */
export function rockwellOf(vickers: number): number | undefined {
  return inside(TO_ROCKWELL, vickers) ? TO_ROCKWELL.valueAt(vickers) : undefined;
}

const inside = ({ points }: Law, place: number): boolean =>
  place >= (points[0]?.at ?? Number.POSITIVE_INFINITY) &&
  place <= (points.at(-1)?.at ?? Number.NEGATIVE_INFINITY);
