import type { StationPlace } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { type AskTest, exampleOf, readCondition } from "./ask-condition.js";
import { count, POSITIVE, quantity, Reading } from "./fields.js";
import { place, plainPlace } from "./knife-fields.js";

const should = () =>
  z.boolean({ error: "needs true or false" }).meta({ description: "Wished for, not required" }).optional();

/** How many layers a pattern-welded blade shall have, counted as they can be told apart. */
export function layersAsk() {
  const layers = (about: string) => count(about, 1, 1_000_000).transform((value) => new Reading(value));
  return z
    .strictObject(
      {
        below: layers("Must be less than this").optional(),
        above: layers("Must be more than this").optional(),
        between: z
          .tuple([layers("Least"), layers("Most")], { error: "needs two numbers, [least, most]" })
          .optional(),
        should: should(),
      },
      { error: "needs a condition, such as { between: [180, 260] }" },
    )
    .transform(
      (given, ctx): { test: AskTest; should: boolean } =>
        readCondition(given, ctx, () => "200", "below, above, between") ?? z.NEVER,
    )
    .meta({ description: "Layers that can be told apart; needs a stack" });
}

/** Where the core of a blade with cladding shall come out. */
export function coreLineAsk(units: FileUnits) {
  const limit = (about: string) => quantity("length", units, { ...POSITIVE, tolerance: false, about });
  return z
    .strictObject(
      {
        at: place(units, "blade").optional(),
        between: z
          .tuple([limit("Least"), limit("Most")], { error: "needs two values, [least, most]" })
          .optional(),
        about: quantity("length", units, {
          ...POSITIVE,
          about: "Must be this within its tolerance",
        }).optional(),
        should: should(),
      },
      { error: "needs a place and a condition, such as { at: heel, about: 9 ± 2 mm }" },
    )
    .transform(({ at, ...given }, ctx): { test: AskTest; should: boolean; at: StationPlace } => {
      const condition = readCondition(given, ctx, exampleOf(units, "length", "9 mm"), "between, about");
      return condition === undefined ? z.NEVER : { ...condition, at: plainPlace(at ?? { kind: "heel" }) };
    })
    .meta({ description: "Height of the core line above the edge; needs a core with cladding" });
}
