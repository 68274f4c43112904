import { z } from "zod";
import { type AskTest, readCondition } from "./ask-condition.js";
import { Reading } from "./fields.js";

/** What Rockwell C is read on, and what knives can be. */
const SOFTEST = 20;
const HARDEST = 70;

const points = (about: string) =>
  z
    .union([z.number(), z.string()], { error: "needs a hardness, for example 60 or 60 HRC" })
    .transform((raw, ctx): Reading => {
      const text = String(raw)
        .replace(/\s*HRC\b/iu, "")
        .trim();
      const [, number = "", band = "0"] =
        /^(\d+(?:\.\d+)?)(?:\s*(?:±|\+-|\+\/-)\s*(\d+(?:\.\d+)?))?$/u.exec(text) ?? [];
      const value = Number(number === "" ? Number.NaN : number);
      if (!(value >= SOFTEST && value <= HARDEST)) {
        ctx.addIssue({
          code: "custom",
          message: `"${text}" is no hardness of a blade; write HRC, ${SOFTEST} to ${HARDEST}, for example 60 or 60 ± 1`,
          params: { code: "hardness-range" },
        });
        return z.NEVER;
      }
      return new Reading(value, Number(band), Number(band));
    })
    .meta({ description: `${about} (HRC; 60, 60 HRC, 60 ± 1)` });

/** How hard the edge shall be: told by tempering tables and a test, never computed. */
export function hardnessAsk() {
  return z
    .strictObject(
      {
        below: points("Must be less than this").optional(),
        above: points("Must be more than this").optional(),
        between: z
          .tuple([points("Least"), points("Most")], { error: "needs two values, [least, most]" })
          .optional(),
        about: points("Must be this within its tolerance").optional(),
        should: z
          .boolean({ error: "needs true or false" })
          .meta({ description: "Wished for, not required" })
          .optional(),
      },
      { error: "needs a condition, such as { about: 60 ± 1 }" },
    )
    .transform(
      (given, ctx): { test: AskTest; should: boolean } =>
        readCondition(given, ctx, (value) => (value === undefined ? "60 ± 1" : `${value} ± 1`)) ?? z.NEVER,
    )
    .meta({
      description: "Hardness of the edge, HRC: whether the steel comes to it, by its tempering tables",
    });
}
