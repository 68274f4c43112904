import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { count, POSITIVE, plainNumber, quantity, type Reading } from "./fields.js";
import { GROUP } from "./shared-fields.js";

/** Shims of one size that a shop may own; the search takes a few dozen in all. */
const MOST_OF_A_SIZE = 32;

/** The press of the shop file: what it takes, its stops and how it is worked. */
export function pressFields(units: FileUnits) {
  const length = (about: string) => quantity("length", units, { ...POSITIVE, tolerance: false, about });
  return z.strictObject(
    {
      opening: length("Greatest opening between the dies").optional(),
      forgeLength: length("Longest billet that fits the forge").optional(),
      stopBlocks: z
        .array(length("Height of a post"), { error: "needs a list of heights, such as [6, 8, 10]" })
        .meta({ description: "Posts that hold the dies apart; one at a time is used" })
        .optional(),
      shims: shims().optional(),
      stopOffset: quantity("length", units, {
        from: -5,
        to: 5,
        tolerance: false,
        usual: "0.2 mm",
        about:
          "How much thicker than its stop a piece is while it is hot, told from its cold size: pressed at 950 °C on a stop of 20 mm and 19.95 mm when cold, it was 19.95 × 1.0128 = 20.2 mm hot, so 0.2 mm; below nothing where thinner",
      }).optional(),
      maxReduction: quantity("share", units, {
        above: 0,
        below: 1,
        tolerance: false,
        usual: "20 %",
        about: "The most that one pass takes off the height",
      }).optional(),
      temperature: quantity("temperature", units, {
        from: 20,
        to: 1200,
        tolerance: false,
        usual: "950 °C",
        about: "Steel at the last squeeze",
      }).optional(),
      weldingTemperature: quantity("temperature", units, {
        from: 20,
        to: 1200,
        tolerance: false,
        usual: "1150 °C",
        about: "Steel at the last squeeze of a weld",
      }).optional(),
      die: z
        .strictObject(
          { length: length("Along the bar"), width: length("Across the bar") },
          { error: "needs length and width, such as { length: 40, width: 60 }" },
        )
        .meta({ description: "Face of the die that touches the piece" })
        .optional(),
      forceKn: plainNumber(
        "What the press can push, kN: a metric ton is 9.81 kN, a short ton 8.9 kN",
        0,
      ).optional(),
    },
    { error: GROUP },
  );

  function shims() {
    const one = quantity("length", units, { ...POSITIVE, tolerance: false, about: "Thickness of a shim" });
    const several = z.strictObject({
      size: one,
      count: count("How many of that thickness", 1, MOST_OF_A_SIZE).optional(),
    });
    return z
      .array(
        z.union([one, several], { error: "needs a thickness, such as 0.5 mm, or { size: 0.5, count: 2 }" }),
        { error: "needs a list of thicknesses, such as [1, 0.5, 0.2]" },
      )
      .transform((entries) => entries.flatMap(everyOne))
      .meta({ description: "Shims to lay on a post; any of them together" });
  }
}

function everyOne(entry: Reading | { size: Reading; count?: number | undefined }): Reading[] {
  if (!("size" in entry)) return [entry];
  return Array.from({ length: entry.count ?? 1 }, () => entry.size);
}
