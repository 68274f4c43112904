import { STAGE_WORDS } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { fineMassText } from "./figures.js";
import { layOutTable } from "./layout.js";
import type { Setup } from "./setup-json.js";

/** Heads of what the scale may show: what is needed at low, usual and high losses still to come. */
export const NEED_HEADS = ["short below", "usually enough", "surely enough"] as const;

/** What the scale has to show, and room for what it did. */
export function weighTable({ masses }: Setup, units: FileUnits): string[] {
  if (masses.length === 0) return [];
  const show = (grams: number): string => fineMassText(grams, units);
  return layOutTable(
    [
      ["Weigh, steel alone", ...NEED_HEADS, "on the scale"],
      ...masses.map(({ stage, need }) => [
        `  ${STAGE_WORDS[stage]}`,
        show(need.low),
        show(need.value),
        show(need.high),
        `______ ${units === "mm" ? "g" : "oz"}`,
      ]),
    ],
    ["left", "right", "right", "right", "right"],
  );
}
