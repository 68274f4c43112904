import { type FileUnits, parseQuantity } from "@scantling/geometry/units";
import { z } from "zod";
import { NOT_NEGATIVE, POSITIVE, quantity, Reading } from "./fields.js";
import { ANGLE, bevelHeight, crown, law, place, point } from "./knife-fields.js";
import { GROUP } from "./shared-fields.js";

/** The ground faces: both alike, and under `left` and `right` what differs on one of them. */
export function bevel(units: FileUnits) {
  const { form, height, ...rest } = face(units);
  const one = z.strictObject(
    { form: form.optional(), height: height.optional(), ...rest },
    { error: "needs a group of keys: form, height, crown, wheelRadius" },
  );
  return z.strictObject(
    {
      form,
      height,
      edgeThickness: law(units, { ...NOT_NEGATIVE, about: "Full thickness at the edge before sharpening" }),
      ...rest,
      left: one.meta({ description: "What differs on the left-hand face" }).optional(),
      right: one.meta({ description: "What differs on the right-hand face" }).optional(),
      apex: apex().optional(),
    },
    { error: "needs a group of keys: form, height, edgeThickness" },
  );
}

function face(units: FileUnits) {
  return {
    form: z.enum(["flat", "convex", "hollow"]).meta({ description: "Form of the ground face" }),
    height: bevelHeight(units),
    crown: crown(units).optional(),
    wheelRadius: quantity("length", units, {
      ...POSITIVE,
      about: "Hollow: radius of the wheel, half its diameter",
    }).optional(),
  };
}

const APEX = "needs a number from -1 (on the left face) to 1 (on the right face)";

/** Where the apex lies between the faces. */
function apex() {
  return z
    .union([z.number(), z.string()], { error: APEX })
    .transform((raw, ctx) => {
      const parsed = /[%a-z]/iu.test(String(raw)) ? undefined : parseQuantity(raw, "share", "mm");
      const { value, plus, minus } = parsed?.ok ? parsed.quantity : { value: Number.NaN, plus: 0, minus: 0 };
      if (!(value - minus >= -1 && value + plus <= 1)) {
        ctx.addIssue({ code: "custom", message: APEX, params: { code: "out-of-range" } });
      }
      return new Reading(value, plus, minus);
    })
    .meta({ description: "Where the apex lies: -1 on the left face, 0 in the middle, 1 on the right face" });
}

/** A second, steeper pair of planes at the very edge. */
export function microbevel(units: FileUnits) {
  return z
    .strictObject(
      {
        height: quantity("length", units, { ...POSITIVE, about: "How far up from the edge it goes" }),
        angle: quantity("angle", units, { ...ANGLE, usual: "20 deg", about: "Its angle per side" }),
      },
      { error: "needs a group of keys: height, angle" },
    )
    .meta({ description: "A second, steeper bevel at the very edge" });
}

/** Planes along the spine. */
export function swedge(units: FileUnits) {
  return z
    .strictObject(
      {
        from: place(units, "blade"),
        to: place(units, "blade"),
        angle: quantity("angle", units, {
          ...ANGLE,
          usual: "25 deg",
          about: "Angle of each plane against the centre plane",
        }),
        thickness: law(units, { ...NOT_NEGATIVE, about: "Full thickness left at the spine" }),
      },
      { error: "needs a group of keys: from, to, angle, thickness" },
    )
    .meta({ description: "Planes along the spine between two places" });
}

/** Grooves of circular section. */
export function fullers(units: FileUnits) {
  const length = (about: string) => quantity("length", units, { ...POSITIVE, about });
  return z
    .array(
      z.strictObject(
        {
          from: point(units),
          to: point(units),
          radius: length("Radius of the groove's section"),
          depth: length("How deep it is cut into the face"),
          faces: z
            .enum(["both", "left", "right"])
            .meta({ description: "Faces that it is cut into; both unless told" })
            .optional(),
        },
        { error: "needs a group of keys: from, to, radius, depth" },
      ),
      { error: "needs a list: - { from: [20, 30], to: [90, 30], radius: 5, depth: 0.8 }" },
    )
    .meta({ description: "Grooves along lines" });
}

/** Half-round notch behind the heel. */
export function choil(units: FileUnits) {
  return z
    .strictObject(
      { radius: quantity("length", units, { ...POSITIVE, about: "Radius of the half circle" }) },
      { error: GROUP },
    )
    .meta({ description: "Half-round notch cut up into the ricasso right behind the heel" });
}
