import type { LossSpec } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { NOT_NEGATIVE, quantity, type Reading } from "./fields.js";
import { GROUP } from "./shared-fields.js";

/** What fire, saw and grinder take, each with its band: of a shop file, and of the plan that a record keeps. */
export function lossFields(units: FileUnits) {
  const bandedShare = (about: string) =>
    quantity("share", units, { from: 0, below: 1, about }).transform(banded).optional();
  const bandedLength = (about: string) =>
    quantity("length", units, { ...NOT_NEGATIVE, about })
      .transform(banded)
      .optional();
  return z.strictObject(
    {
      scale: z
        .enum(["fraction", "skin"])
        .meta({
          description: "Scale counted as a fraction of the mass, or as a skin of the surface, per heat",
        })
        .optional(),
      scalePerHeat: bandedShare("Mass lost in a forging heat"),
      scalePerWeldingHeat: bandedShare("Mass lost in a welding heat"),
      skinPerHeat: bandedLength("Depth lost from every surface in a forging heat"),
      skinPerWeldingHeat: bandedLength("Depth lost from every surface in a welding heat"),
      heatTreatmentScale: bandedShare("Mass lost in heat treatment"),
      skinHeatTreatment: bandedLength("Depth lost from every surface in heat treatment"),
      cropPerEnd: bandedLength("Length cropped off each end of the billet"),
      weldDressingPerSide: bandedLength("Weld bead and seam ground off each long side"),
      cleaningPerFace: bandedLength("Depth cleaned off both faces of every joint"),
    },
    { error: GROUP },
  );
}

/** The band of a loss: its tolerance says how far off it may be. */
function banded({ value, plus, minus }: Reading): { value: number; low: number; high: number } {
  return { value, low: value - minus, high: value + plus };
}

type GivenLosses = Partial<Omit<LossSpec, "scaleModel">> & { readonly scale?: LossSpec["scaleModel"] };

/** The file says `scale: skin`, where the code needs a word that cannot be taken for a drawing's or a handle's. */
export function renameScale({ scale, ...losses }: GivenLosses): Partial<LossSpec> {
  return scale === undefined ? losses : { ...losses, scaleModel: scale };
}
