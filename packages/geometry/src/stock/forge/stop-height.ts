import { type Finding, length } from "../../errors/issue.js";
import { findingLimit } from "../../limits/finding-limits.js";
import { SHOP_BASIS } from "../../limits/limit.js";
import type { PressWork } from "./press-defaults.js";
import { ELONGATION_BASIS, hotSize } from "./thermal-elongation.js";

/**
 * Height of the stop that leaves a piece at a size once it is cold.
 *
 * @param cold - Wanted size at 20 °C, mm.
 * @param celsius - Temperature at the squeeze, 20 to 1200 °C.
 * @param offset - How much thicker than its stop a piece of this press is while it is hot, mm.
 * @returns mm
 * @throws {GeometryError} `temperature-out-of-range` outside 20 to 1200 °C.
 *
 * @example
 * stopHeight(7.35, 950); // 7.444
 */
export function stopHeight(cold: number, celsius: number, offset = 0): number {
  return hotSize(cold, celsius) - offset;
}

/**
 * A note where a stop is lower than the hot piece has to be: what is pressed to the cold size while hot comes out thin.
 *
 * @param stop - Height of the stop as it is laid in, mm.
 * @param cold - Size wanted at 20 °C, mm.
 * @param work - Temperature of the steel, °C, and how much thicker than its stop the hot piece is, mm.
 * @param path - Where the finding belongs.
 * @throws {GeometryError} `temperature-out-of-range` outside 20 to 1200 °C.
 *
 * @example
 * const work = { temperature: 950, stopOffset: 0 };
 * stopHeightFindings(7.35, 7.35, work, "press").map(({ code }) => code); // ["stop-under-hot-height"]
 */
export function stopHeightFindings(
  stop: number,
  cold: number,
  { temperature, stopOffset, given }: Pick<PressWork, "temperature" | "stopOffset" | "given">,
  path: string,
): Finding[] {
  const right = stopHeight(cold, temperature, stopOffset);
  const stopUnder = findingLimit("stopUnder", given);
  if (stop >= right - stopUnder.value) return [];
  return [
    {
      code: "stop-under-hot-height",
      path,
      severity: "note",
      text: "A stop of {stop} leaves less than {cold} once the piece has cooled from {temperature}. Lay in {right}.",
      values: {
        stop: length(stop),
        cold: length(cold),
        temperature: { quantity: "temperature", value: temperature },
        right: length(right),
      },
      basis: stopUnder.basis === SHOP_BASIS ? `${ELONGATION_BASIS}; ${SHOP_BASIS}` : ELONGATION_BASIS,
    },
  ];
}
