import type { FileUnits } from "@scantling/geometry/units";
import type { SheetUnits } from "@scantling/render";
import type { Job } from "../load.js";
import { otherUnits } from "../report/figures.js";

type Shown = Pick<Job, "units" | "shopPlaces">;

/** The units of a job's sheets, as its shop file asks; its own and the others, inches in fractions, where it does not. */
export function sheetUnits({ units, shopPlaces }: Shown): SheetUnits {
  const { units: shown = "both", inches = "fractions" } = shopPlaces?.sheets ?? {};
  const both = shown === "both";
  return both && inches === "fractions" ? units : { main: units, both, inches };
}

/** The units that stand in brackets on a job's bench card; undefined where the shop file asks for none. */
export const besideUnits = ({ units, shopPlaces }: Shown): FileUnits | undefined =>
  shopPlaces?.sheets?.units === "own" ? undefined : otherUnits(units);
