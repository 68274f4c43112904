import { HEAT_STEPS, type HeatRecipe, type HeatStep } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { count, name, plainNumber, quantity } from "./fields.js";

/** Where an own recipe comes from unless the file says: it goes before every other source. */
const OWN = "the shop's own recipe";

/** Keys of the shop file for own recipes of heat treatment; they go before every other source. */
export function recipeFields(units: FileUnits) {
  const step = z
    .strictObject(
      {
        step: z.enum(HEAT_STEPS).meta({ description: "What is done" }),
        at: quantity("temperature", units, {
          from: 20,
          to: 1300,
          usual: "815 °C",
          about: "Temperature, with how far it may be off either way",
        }),
        minutes: plainNumber("Time at temperature, minutes", 0).optional(),
        times: count("How often", 1, 20).optional(),
        cooling: name("How it is cooled, and in what").optional(),
      },
      { error: "needs a group of keys, such as { step: harden, at: 815 °C, minutes: 5, cooling: fast oil }" },
    )
    .transform(({ step: what, at, minutes, times, cooling }) => ({
      step: what,
      low: at.value - at.minus,
      high: at.value + at.plus,
      ...(minutes === undefined ? {} : { soak: { low: minutes, high: minutes } }),
      ...(times === undefined ? {} : { times }),
      ...(cooling === undefined ? {} : { cooling }),
    }));
  return {
    recipes: z
      .array(
        z
          .strictObject(
            {
              steel: name("Steel"),
              source: name("Where the figures come from").optional(),
              steps: z.array(step, { error: "needs a list of steps" }).min(1),
            },
            { error: "needs a group of keys: steel, source, steps" },
          )
          .transform(
            ({ steel, source = OWN, steps }): HeatRecipe => ({
              steel,
              steps: steps.map((one): HeatStep => ({ ...one, source, mark: "looked up" })),
            }),
          ),
        { error: "needs a list of recipes" },
      )
      .meta({ description: "The shop's own recipes of heat treatment; they go before every other source" })
      .optional(),
  };
}
