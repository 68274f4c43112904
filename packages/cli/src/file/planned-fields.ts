import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { ASK_KINDS, type AskName } from "./ask-fields.js";
import { dateField } from "./date-field.js";
import { count, name, POSITIVE, type QuantityRule, quantity } from "./fields.js";
import { lossFields } from "./loss-fields.js";
import { GROUP } from "./shared-fields.js";

/** How an ask came out, as reports say it. */
export const VERDICTS = ["met", "at-risk", "not-met"] as const;

const ASK_NAMES = Object.keys(ASK_KINDS) as [AskName, ...AskName[]];

/**
 * What `plan` said on the day of the first entry, and the files that it said so of: what a later order of the same knife
 * is held against.
 */
export function plannedFields(units: FileUnits) {
  const mass = (about: string, rule: Omit<QuantityRule, "about"> = POSITIVE) =>
    quantity("mass", units, { ...rule, tolerance: false, about });
  const length = (about: string, rule: Omit<QuantityRule, "about"> = POSITIVE) =>
    quantity("length", units, { ...rule, tolerance: false, about });
  const need = (about: string) =>
    z
      .strictObject(
        { low: mass("At low losses"), usual: mass("At usual losses"), high: mass("At high losses") },
        { error: GROUP },
      )
      .meta({ description: about })
      .optional();
  const file = (about: string) =>
    z.string({ error: "needs the text of the file" }).meta({ description: about });
  return z
    .strictObject(
      {
        on: dateField("The day of the first entry"),
        program: name("Version of the program"),
        plan: count("Which of the plans of stock was taken, 1 for the best", 1, 10_000).optional(),
        bars: z
          .array(
            z.strictObject(
              {
                bar: name("What the bar is called"),
                steel: name("Steel of the bar").optional(),
                thickness: length("Thickness"),
                width: length("Width"),
                count: count("Pieces", 1, 10_000),
                length: length("Length of each piece as cut"),
                mass: mass("All pieces together"),
              },
              { error: GROUP },
            ),
            { error: "needs a list of bars" },
          )
          .meta({ description: "Pieces to cut; left out where no bars were known" })
          .optional(),
        heats: count("Forging heats that were counted on", 0, 500),
        weldingHeats: count("Welding heats that were counted on", 0, 500),
        needed: z
          .strictObject(
            {
              cut: need("Bars as cut"),
              billet: need("Dressed billet"),
              forged: need("Forged blade"),
              ready: need("Ready to harden"),
              finished: need("Finished blade"),
            },
            { error: GROUP },
          )
          .meta({
            description: "Steel that has to be there at each stage, at low, usual and high losses to come",
          }),
        knife: z
          .strictObject(
            { mass: mass("Mass"), least: mass("Least", {}), most: mass("Most") },
            { error: GROUP },
          )
          .meta({ description: "Mass of the finished knife, and what it lies between 95 times of 100" }),
        balance: z
          .strictObject(
            { at: length("Place", {}), least: length("Rearmost", {}), most: length("Foremost", {}) },
            { error: GROUP },
          )
          .meta({ description: "Balance ahead of the heel, and what it lies between 95 times of 100" }),
        asks: z
          .array(
            z.strictObject(
              {
                ask: z.enum(ASK_NAMES).meta({ description: "What was asked for" }),
                verdict: z.enum(VERDICTS).meta({ description: "How it came out" }),
              },
              { error: GROUP },
            ),
            { error: "needs a list" },
          )
          .meta({ description: "What was asked for, one by one" }),
        losses: lossFields(units).meta({
          description: "Losses that were counted on, the program's own with them",
        }),
        files: z
          .strictObject(
            {
              knife: file("The knife file"),
              drawing: file("The drawing that the outline is from").optional(),
              shop: file("The shop file").optional(),
            },
            { error: GROUP },
          )
          .meta({ description: "The files as they were" }),
      },
      { error: GROUP },
    )
    .meta({ description: "What was planned, written with the first entry" });
}
