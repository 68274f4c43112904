import { z } from "zod";
import { GROUP } from "./shared-fields.js";

/** How sheets write their figures, as far as the shop file says; the first of each where it does not. */
export interface SheetWords {
  readonly units?: "both" | "own";
  readonly inches?: "fractions" | "decimals";
}

/** Keys of the shop file for how sheets are written. */
export function sheetFields() {
  return z
    .strictObject(
      {
        units: z
          .enum(["both", "own"], { error: "needs both or own, for the units of the sheets" })
          .meta({
            description:
              "Figures of sheets with the other units in brackets, or only in those of the file or of --units; both if left out",
          })
          .optional(),
        inches: z
          .enum(["fractions", "decimals"], { error: "needs fractions or decimals, for inches on drawings" })
          .meta({
            description:
              'Inches on drawings as 7 7/8" to 1/64, or as 7.875" to 0.001 (0.01 on hot steel); fractions if left out',
          })
          .optional(),
      },
      { error: GROUP },
    )
    .meta({ description: "How sheets write their figures" });
}
