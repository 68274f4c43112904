import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { NOT_NEGATIVE, name, POSITIVE, quantity } from "./fields.js";
import { point, stations } from "./knife-fields.js";
import { handleMaterial } from "./material-fields.js";
import { betweenField, GROUP } from "./shared-fields.js";

const LIST = "needs a list";

/** The handle of a knife file: what lies on a full tang, or what a hidden one goes into, and the fittings of both. */
export function handle(units: FileUnits) {
  return z.strictObject(
    {
      slabs: slabs(units).meta({ description: "Slabs on both faces of a full tang" }).optional(),
      liners: z
        .strictObject(
          {
            material: handleMaterial(units, "Liner material"),
            thickness: quantity("length", units, { ...POSITIVE, about: "Thickness of one liner" }),
          },
          { error: "needs a group of keys: material, thickness" },
        )
        .meta({ description: "Sheets between tang and slabs" })
        .optional(),
      pins: z.strictObject({ material: handleMaterial(units, "Pin material") }, { error: GROUP }).optional(),
      block: block(units).meta({ description: "Handle around a hidden or through tang" }).optional(),
      bolsters: z
        .array(fitting(units), { error: LIST })
        .meta({ description: "Pairs of bolsters on a full tang, or blocks around a hidden one" })
        .optional(),
      guard: fitting(units).meta({ description: "Guard; the handle begins behind it" }).optional(),
      pommel: fitting(units).meta({ description: "Pommel" }).optional(),
      parts: z
        .array(
          z.strictObject(
            {
              name: name("What the part is"),
              mass: quantity("mass", units, { ...POSITIVE, about: "Its mass" }),
              at: point(units),
            },
            { error: "needs a group of keys: name, mass, at" },
          ),
          { error: LIST },
        )
        .meta({ description: "Parts given by their mass and place" })
        .optional(),
    },
    { error: GROUP },
  );
}

/** One length along the whole handle, or lengths at stations. */
function alongHandle(units: FileUnits, about: string) {
  const rule = { ...POSITIVE, about };
  return z.union([quantity("length", units, rule), stations(units, "tang", rule)], {
    error: "needs a length, or a list of places: - { at: handle, is: 9 }",
  });
}

function slabs(units: FileUnits) {
  return z.strictObject(
    {
      material: handleMaterial(units, "Slab material"),
      thickness: alongHandle(units, "Thickness of one slab; by stations, a contour"),
      between: betweenField().optional(),
      edgeRadius: quantity("length", units, {
        ...NOT_NEGATIVE,
        about: "Radius of the long outer edges",
      }).optional(),
    },
    { error: "needs a group of keys: material, thickness" },
  );
}

function block(units: FileUnits) {
  return z.strictObject(
    {
      material: handleMaterial(units, "Handle material"),
      section: z.enum(["oval", "octagonal", "rounded"]).meta({
        description: "Section: an ellipse, a rectangle with cut corners, or one with rounded corners",
      }),
      length: quantity("length", units, { ...POSITIVE, about: "Length of the handle itself" }),
      height: alongHandle(units, "Height, edge side to spine side; stations count from its own front"),
      width: alongHandle(units, "Width across the flats; stations count from its own front"),
      between: betweenField().optional(),
      cornerRadius: quantity("length", units, {
        ...NOT_NEGATIVE,
        about:
          "Rounded: radius of the corners. Octagonal: leg of the cuts; left out, those of a regular octagon",
      }).optional(),
      centre: quantity("length", units, {
        about: "y of its middle line; left out, the middle of the tang",
      }).optional(),
    },
    { error: "needs a group of keys: material, section, length, height, width" },
  );
}

/** A bolster pair, guard or pommel; the steel's own section is taken out. */
function fitting(units: FileUnits) {
  const length = (about: string) => quantity("length", units, { ...POSITIVE, about });
  return z.strictObject(
    {
      material: handleMaterial(units, "Its material"),
      at: quantity("length", units, { about: "x of its front face, from the heel; negative in the handle" }),
      length: length("Its length along the knife, back from its front face"),
      height: length("Its height over all"),
      width: length("Its width across the flats over all"),
      centre: quantity("length", units, {
        about: "y of its middle; left out, the middle of the steel there",
      }).optional(),
      section: z.enum(["box", "oval"]).meta({ description: "Box (unless given) or oval" }).optional(),
    },
    { error: "needs a group of keys: material, at, length, height, width" },
  );
}
