import { FAMILY_NAMES, KNIFE_TYPE_NAMES } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { acceptFields } from "./accept-fields.js";
import { asks } from "./ask-fields.js";
import { bevel, choil, fullers, microbevel, swedge } from "./blade-fields.js";
import { date } from "./date-fields.js";
import { cornersOutline, runsOutline } from "./drawing-fields.js";
import { count, NOT_NEGATIVE, name, POSITIVE, type QuantityRule, quantity, text } from "./fields.js";
import { handle } from "./handle-fields.js";
import { edgeAngle, law, point, stations } from "./knife-fields.js";
import { material } from "./material-fields.js";
import { allowances, betweenField, GROUP, unitsField, versionField } from "./shared-fields.js";
import { sheathFields } from "./sheath-fields.js";
import { stackFields } from "./stack-fields.js";
import { quoteFields } from "./work-fields.js";

const LIST = "needs a list";

/**
 * The knife file, declared once: it validates, turns quantities into mm, g and rad, and is the source of
 * `schemas/knife.schema.json`.
 *
 * @param units - What bare numbers of the file are in.
 */
export function knifeSchema(units: FileUnits) {
  const length = (rule: QuantityRule) => quantity("length", units, rule);
  return z
    .strictObject(
      {
        scantling: versionField(),
        order: z
          .strictObject(
            {
              code: name("Order number, printed on every sheet").optional(),
              title: name("What it is, printed on every sheet").optional(),
              type: z
                .enum(KNIFE_TYPE_NAMES)
                .meta({
                  description: "What kind of knife it is: what is usual, too steep or too thin for it",
                })
                .optional(),
              asks: asks(units).meta({ description: "What was asked for; checked one by one" }).optional(),
              customer: text("Who ordered it, for the customer's sheet").optional(),
              revision: name("Which revision of the drawing this is: A, B, ...").optional(),
              started: date("When work begins or began").optional(),
              promised: date("The day that it is promised for").optional(),
            },
            { error: GROUP },
          )
          .optional(),
        units: unitsField(),
        steel: material(units, "Steel: a name from the table, or a name with its density"),
        blade: blade(units),
        tang: tang(units),
        handle: handle(units).optional(),
        finish: z
          .strictObject(
            { flats: surface("The flats").optional(), bevels: surface("The bevels").optional() },
            { error: GROUP },
          )
          .optional(),
        stack: stackFields(units).optional(),
        quote: quoteFields(units).optional(),
        accept: acceptFields().optional(),
        allowances: allowances(units).optional(),
        sheath: sheathFields(units).optional(),
        forging: z
          .strictObject(
            {
              heats: count("Forging heats from billet to forged blade", 0).optional(),
              weldingHeats: count("Welding heats", 0).optional(),
              stop: length({
                ...POSITIVE,
                tolerance: false,
                about: "Height of the stop that the blade is pressed to at last, as it is laid in",
              }).optional(),
            },
            { error: GROUP },
          )
          .optional(),
      },
      { error: "needs to be a group of keys, beginning with scantling: 1" },
    )
    .meta({ title: "Scantling knife file, version 1" });

  function blade(bladeUnits: FileUnits) {
    return z.strictObject(
      {
        outline: outline(bladeUnits),
        ricasso: length({
          ...NOT_NEGATIVE,
          about: "Unground length between heel and handle front",
        }).optional(),
        thickness: stations(bladeUnits, "blade", { ...POSITIVE, about: "Full thickness at the spine" }),
        between: betweenField().optional(),
        flankTaper: law(bladeUnits, {
          ...NOT_NEGATIVE,
          about: "How much thinner the blade is at the bevel line than at the spine",
        }).optional(),
        plunge: z
          .strictObject(
            {
              at: length({ ...NOT_NEGATIVE, about: "Its rear end, ahead of the heel" }),
              length: length({ ...NOT_NEGATIVE, about: "Over how much length it eases in; 0 is a wall" }),
            },
            { error: GROUP },
          )
          .optional(),
        bevel: bevel(bladeUnits),
        edgeAngle: edgeAngle(bladeUnits),
        microbevel: microbevel(bladeUnits).optional(),
        swedge: swedge(bladeUnits).optional(),
        fullers: fullers(bladeUnits).optional(),
        holes: holes(bladeUnits).optional(),
        choil: choil(bladeUnits).optional(),
        easedSpine: length({
          ...NOT_NEGATIVE,
          about: "Radius that eases both edges of the spine, from the handle front to the tip",
        }).optional(),
      },
      { error: "needs a group of keys: outline, thickness, bevel, edgeAngle" },
    );
  }

  function tang(tangUnits: FileUnits) {
    return z.strictObject(
      {
        form: z.enum(["full", "hidden", "through"]).meta({
          description: "Form of the tang: as wide as the handle, inside it, or inside it and right through",
        }),
        length: length({ ...POSITIVE, about: "Handle front to butt" }).optional(),
        heights: z
          .strictObject(
            {
              front: length({ ...POSITIVE, about: "Height at the handle front" }),
              middle: length({ ...POSITIVE, about: "Height half way" }),
              butt: length({ ...POSITIVE, about: "Height at the butt" }),
            },
            { error: "needs a group of keys: front, middle, butt" },
          )
          .optional(),
        drop: length({ about: "How far the tang's top lies below the spine's end" }).optional(),
        shoulderRadius: length({
          ...NOT_NEGATIVE,
          about: "Radius in the corners of a hidden tang's shoulders",
        }).optional(),
        buttThickness: length({ ...POSITIVE, about: "Thickness at the butt of a tapered tang" }).optional(),
        thickness: stations(tangUnits, "tang", { ...POSITIVE, about: "Thickness of the tang" }).optional(),
        between: betweenField().optional(),
        holes: holes(tangUnits).optional(),
      },
      { error: "needs a group of keys: form, length, heights" },
    );
  }
}

function outline(units: FileUnits) {
  const length = (about: string) => quantity("length", units, { ...POSITIVE, about });
  const landmarks = z.strictObject({
    family: z.enum(FAMILY_NAMES).meta({ description: "Table of ratios that fills in what is left out" }),
    edgeLength: length("Heel to tip, along x"),
    heelHeight: length("Height of the spine above the heel"),
    straightEdge: quantity("length", units, {
      ...NOT_NEGATIVE,
      about: "Straight edge before the belly",
    }).optional(),
    tipHeight: quantity("length", units, {
      ...NOT_NEGATIVE,
      about: "Square front: height of the front; pointed: height of the tip",
    }).optional(),
    spineBreak: length("Pointed: where the spine begins to fall, from the heel").optional(),
  });
  return z.union([landmarks, runsOutline(units), cornersOutline(units)], {
    error: "needs a family with its sizes, { runs: { edge: …, … } }, or { drawing: sketch.svg, … }",
  });
}

/** Round holes and slots that go straight through. */
function holes(units: FileUnits) {
  const length = (about: string) => quantity("length", units, { ...POSITIVE, about });
  return z.array(
    z.strictObject(
      {
        kind: z.enum(["pin", "lightening", "hanging", "thong"]).meta({ description: "What the hole is for" }),
        at: point(units),
        to: point(units).meta({ description: "Slot: centre of its other end" }).optional(),
        diameter: length("Diameter of the hole, or width of the slot"),
        pin: length("The pin's own diameter, where it differs").optional(),
      },
      { error: "needs a group of keys: kind, at, diameter" },
    ),
    { error: LIST },
  );
}

function surface(about: string) {
  return z.enum(["forged", "ground"]).meta({ description: `${about}: left from the hammer, or ground` });
}
