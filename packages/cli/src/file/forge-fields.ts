import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { count, NOT_NEGATIVE, POSITIVE, plainNumber, quantity } from "./fields.js";
import { GROUP } from "./shared-fields.js";

/** Keys of the shop file for hardening and for setting off a tang. */
export function forgeShopFields(units: FileUnits) {
  const length = (about: string) => quantity("length", units, { ...POSITIVE, tolerance: false, about });
  return {
    oven: z
      .strictObject(
        {
          length: length("Length inside").optional(),
          height: length("Height inside").optional(),
          temperature: quantity("temperature", units, {
            from: 20,
            to: 1200,
            tolerance: false,
            usual: "850 °C",
            about: "Temperature that blades are hardened from",
          }).optional(),
        },
        { error: "needs a group of keys, such as { length: 600, height: 120 }" },
      )
      .meta({ description: "Inside of the oven that blades are hardened from" })
      .optional(),
    quenchTank: z
      .strictObject(
        {
          depth: length("Depth of the quenchant").optional(),
          litres: plainNumber("Quenchant in the tank, litres: a US gallon is 3.785", 0).optional(),
          temperature: quantity("temperature", units, {
            above: -20,
            to: 300,
            tolerance: false,
            usual: "60 °C",
            about: "Of the oil before the blade goes in",
          }).optional(),
        },
        { error: "needs a group of keys, such as { depth: 450, litres: 15 }" },
      )
      .optional(),
    fullers: z
      .array(length("Radius"), { error: "needs a list of radii, such as [6, 10]" })
      .meta({ description: "Radii of the fullers that set in a shoulder" })
      .optional(),
    preCurve: z
      .strictObject(
        {
          sweep: quantity("length", units, {
            ...NOT_NEGATIVE,
            tolerance: false,
            about: "How far the point of an earlier blade came up while its bevels were hammered in",
          }),
          length: length("Bevelled length of that blade"),
        },
        { error: "needs sweep and length, such as { sweep: 8, length: 220 }" },
      )
      .meta({ description: "Measured on an earlier blade that was not bent down before" })
      .optional(),
  };
}

/** The group `forge` of the shop's limits. */
export function forgeLimitFields(units: FileUnits) {
  const clearance = (about: string) =>
    quantity("length", units, { ...NOT_NEGATIVE, tolerance: false, about }).optional();
  return z.strictObject(
    {
      bevelSpreadShare: quantity("share", units, {
        from: 0,
        to: 1,
        tolerance: false,
        usual: "45 %",
        about: "Share of the thinning that goes into height while bevels are hammered in",
      }).optional(),
      shoulderRatio: plainNumber(
        "Area before a pass over area after it, at a shoulder, at most",
        1,
      ).optional(),
      cornerRadius: clearance("Least radius in the corner of a shoulder"),
      shoulderPasses: count("Most passes at one shoulder", 1, 100).optional(),
      ovenClearance: clearance("Length of oven to leave beyond the hot blade"),
      tankClearance: clearance("Depth of quenchant to leave below the point"),
    },
    { error: GROUP },
  );
}
