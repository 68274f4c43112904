import type { SheetUnits } from "@scantling/render";
import type { Job } from "../load.js";

/** The units of a job's sheets, as its shop file asks; its own and the others, inches in fractions, where it does not. */
export function sheetUnits({ units, shopPlaces }: Pick<Job, "units" | "shopPlaces">): SheetUnits {
  const { units: shown = "both", inches = "fractions" } = shopPlaces?.sheets ?? {};
  return { main: units, both: shown === "both", inches };
}
