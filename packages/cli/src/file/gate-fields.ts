import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { quantity } from "./fields.js";
import { GROUP } from "./shared-fields.js";

/** Limits at the weighing gates. */
export function gateFields(units: FileUnits) {
  const share = (about: string) =>
    quantity("share", units, { above: 0, below: 1, tolerance: false, about }).optional();
  return z
    .strictObject(
      {
        massRise: share(
          "How much heavier a piece may be than at an earlier stage before its mass is not used",
        ),
        leastSimilar: share("The smallest similar knife that is looked for, a share of the size as drawn"),
      },
      { error: GROUP },
    )
    .meta({ description: "Limits at the weighing gates" });
}
