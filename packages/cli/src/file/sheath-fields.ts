import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { type QuantityRule, quantity } from "./fields.js";
import { GROUP } from "./shared-fields.js";

/** Sizes of a fold-over sheath: of one knife in its file, of all knives in the shop file. Limits in mm. */
export function sheathFields(units: FileUnits) {
  const size = (about: string, usual: string, limits: Pick<QuantityRule, "from" | "to">) =>
    quantity("length", units, { ...limits, tolerance: false, usual, about }).optional();
  return z
    .strictObject(
      {
        leather: size("Thickness of the leather", "3.2 mm", { from: 0.5, to: 10 }),
        welt: size("Width of the welt, from the blade to the finished edge", "12 mm", { from: 2, to: 60 }),
        trim: size("Left outside the finished edge, to be sanded off with the welt in", "2 mm", {
          from: 0.1,
          to: 20,
        }),
        stitchInset: size("From the finished edge, the mouth and the fold in to the stitches", "4 mm", {
          from: 1,
          to: 30,
        }),
        stitchPitch: size("From stitch to stitch", "4 mm", { from: 1, to: 30 }),
      },
      { error: GROUP },
    )
    .meta({ description: "Sizes of the sheath; the usual ones stand in for what is left out" });
}
