import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { NOT_NEGATIVE, name, POSITIVE, quantity } from "./fields.js";

/** What a material may be: a name from the table, or one with a density of its own. */
export function material(units: FileUnits, about: string) {
  const density = quantity("density", units, { ...POSITIVE, about: "Density" }).optional();
  return z
    .union(
      [name(about).transform((text) => ({ name: text })), z.strictObject({ name: name(about), density })],
      { error: 'needs a name, such as "1084", or { name: …, density: 7.83 g/cm3 }' },
    )
    .meta({ description: about });
}

/** A material of the handle: a wood may say how moist it is instead of its density. */
export function handleMaterial(units: FileUnits, about: string) {
  const density = quantity("density", units, { ...POSITIVE, about: "Density" }).optional();
  const moisture = quantity("share", units, {
    ...NOT_NEGATIVE,
    to: 2,
    about: "Of a wood from the table: water as a share of its dry mass; 12 % unless given",
  }).optional();
  return z
    .union(
      [
        name(about).transform((text) => ({ name: text })),
        z.strictObject({ name: name(about), density, moisture }),
      ],
      {
        error:
          "needs a name, such as brass, or { name: …, density: 0.68 g/cm3 }, or { name: …, moisture: 8 % }",
      },
    )
    .meta({ description: about });
}
