import { type FileUnits, formatQuantity, parseQuantity } from "@scantling/geometry/units";
import { z } from "zod";
import { POSITIVE, quantity } from "./fields.js";
import { showText } from "./problem.js";

/** What a customer can ask for that is checked by a number. */
export const ASK_KINDS = {
  mass: "mass",
  balance: "length",
  overallLength: "length",
  edgeLength: "length",
  heelHeight: "length",
  thickness: "length",
} as const;

export type AskName = keyof typeof ASK_KINDS;

/** The condition of an ask, mm or g. */
export type AskTest =
  | { readonly kind: "below"; readonly limit: number }
  | { readonly kind: "above"; readonly limit: number }
  | { readonly kind: "between"; readonly low: number; readonly high: number }
  | { readonly kind: "about"; readonly value: number; readonly plus: number; readonly minus: number };

/** One thing that was asked for. */
export interface Ask {
  readonly name: AskName;
  readonly test: AskTest;
  /** Wished for, not required: a miss is a warning. */
  readonly should: boolean;
  /** Where in the file. */
  readonly path: string;
}

const ABOUT: Readonly<Record<AskName, string>> = {
  mass: "Mass of the whole knife",
  balance: "Balance point ahead of the heel; negative behind it",
  overallLength: "Butt to tip",
  edgeLength: "Heel to tip",
  heelHeight: "Height of the blade above the heel",
  thickness: "Thickness of the spine at the heel",
};

const EXAMPLES = {
  mm: { mass: "600 g", length: "370 mm" },
  in: { mass: "21 oz", length: "14 1/2" },
} as const;

/** A condition made of what stands there without one: a value with a tolerance is meant to be about that. */
function conditionFor(input: unknown, kind: "mass" | "length", units: FileUnits, example: string): string {
  const written = typeof input === "number" || typeof input === "string" ? String(input) : "";
  const read = parseQuantity(written, kind, units);
  if (!read.ok) return `{ below: ${example} }`;
  const { plus, minus } = read.quantity;
  if (plus > 0 || minus > 0) return `{ about: ${showText(written)} }`;
  return `{ below: ${showText(written)} }`;
}

function ask(units: FileUnits, name: AskName) {
  const kind = ASK_KINDS[name];
  const example = EXAMPLES[units][kind];
  const range = name === "balance" ? {} : POSITIVE;
  const limit = (about: string) => quantity(kind, units, { ...range, tolerance: false, about });
  return z
    .strictObject(
      {
        below: limit("Must be less than this").optional(),
        above: limit("Must be more than this").optional(),
        between: z
          .tuple([limit("Least"), limit("Most")], { error: "needs two values, [least, most]" })
          .optional(),
        about: quantity(kind, units, { ...range, about: "Must be this within its tolerance" }).optional(),
        should: z
          .boolean({ error: "needs true or false" })
          .meta({ description: "Wished for, not required" })
          .optional(),
      },
      { error: ({ input }) => `needs a condition, such as ${conditionFor(input, kind, units, example)}` },
    )
    .transform((given, ctx): { test: AskTest; should: boolean } => {
      const complain = (code: string, message: string, path: string[] = []): never => {
        ctx.addIssue({ code: "custom", message, path, params: { code } });
        return z.NEVER;
      };
      const { below, above, between, about, should = false } = given;
      const conditions = [below, above, between, about].filter((condition) => condition !== undefined);
      if (conditions.length !== 1) {
        return complain("one-condition", "needs exactly one of below, above, between, about");
      }
      if (below !== undefined) return { test: { kind: "below", limit: below.value }, should };
      if (above !== undefined) return { test: { kind: "above", limit: above.value }, should };
      if (between !== undefined) {
        const [low, high] = [between[0].value, between[1].value];
        if (low > high)
          return complain("limits-swapped", "has the greater value first; write [least, most]", ["between"]);
        return { test: { kind: "between", low, high }, should };
      }
      if (about === undefined || (about.plus === 0 && about.minus === 0)) {
        return complain(
          "tolerance-missing",
          `needs a tolerance, such as ${about === undefined ? example : formatQuantity({ quantity: kind, value: about.value }, units)} ± 5 %`,
          ["about"],
        );
      }
      const { value, plus, minus } = about;
      return { test: { kind: "about", value, plus, minus }, should };
    })
    .meta({ description: ABOUT[name] });
}

/** What was asked for, by name. */
export function asks(units: FileUnits) {
  return z.strictObject({
    mass: ask(units, "mass").optional(),
    balance: ask(units, "balance").optional(),
    overallLength: ask(units, "overallLength").optional(),
    edgeLength: ask(units, "edgeLength").optional(),
    heelHeight: ask(units, "heelHeight").optional(),
    thickness: ask(units, "thickness").optional(),
  });
}
