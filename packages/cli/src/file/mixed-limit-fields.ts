import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { NOT_NEGATIVE, POSITIVE, quantity } from "./fields.js";
import { GROUP } from "./shared-fields.js";

/** The group `mixed` of the shop's limits: stacks of two or more steels. */
export function mixedLimitFields(units: FileUnits) {
  const length = (about: string) =>
    quantity("length", units, { ...POSITIVE, tolerance: false, about }).optional();
  return z
    .strictObject(
      {
        coreCentring: length("How far off the middle a core is expected to lie"),
        minLayerThickness: length("Thinnest layer that still shows"),
        maxGrooveDepth: quantity("share", units, {
          ...NOT_NEGATIVE,
          to: 1,
          tolerance: false,
          about: "Deepest groove as a share of the bar's thickness",
        }).optional(),
      },
      { error: GROUP },
    )
    .meta({ description: "Limits of stacks of two or more steels" });
}
