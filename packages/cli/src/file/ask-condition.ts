import { type FileUnits, formatQuantity, MM_PER_INCH, parseQuantity } from "@scantling/geometry/units";
import { z } from "zod";
import { type QuantityRule, quantity, type Reading } from "./fields.js";
import { showText } from "./problem.js";

/** The condition of an ask, mm, g, rad or a plain number. */
export type AskTest =
  | { readonly kind: "below"; readonly limit: number }
  | { readonly kind: "above"; readonly limit: number }
  | { readonly kind: "between"; readonly low: number; readonly high: number }
  | { readonly kind: "about"; readonly value: number; readonly plus: number; readonly minus: number };

/** What an ask may say of its condition; exactly one of the first four. */
interface GivenCondition {
  readonly below?: Reading | undefined;
  readonly above?: Reading | undefined;
  readonly between?: readonly [Reading, Reading] | undefined;
  readonly about?: Reading | undefined;
  readonly should?: boolean | undefined;
}

/**
 * The condition of an ask; undefined, with a complaint, where it is none.
 *
 * @param example - a value with a tolerance as it may be written, made of the one that is given where there is one.
 */
export function readCondition(
  { below, above, between, about, should = false }: GivenCondition,
  ctx: z.core.$RefinementCtx,
  example: (given?: number) => string,
  words = "below, above, between, about",
): { test: AskTest; should: boolean } | undefined {
  const complain = (code: string, message: string, path: string[] = []): undefined => {
    ctx.addIssue({ code: "custom", message, path, params: { code } });
    return undefined;
  };
  const conditions = [below, above, between, about].filter((condition) => condition !== undefined);
  if (conditions.length !== 1) {
    return complain("one-condition", `needs exactly one of ${words}`);
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
    return complain("tolerance-missing", `needs a tolerance, such as ${example(about?.value)}`, ["about"]);
  }
  const { value, plus, minus } = about;
  return { test: { kind: "about", value, plus, minus }, should };
}

/** Kinds of quantity that are asked for with a unit. */
export type AskedKind = "mass" | "length" | "angle";

/** A condition made of what stands there without one: a value with a tolerance is meant to be about that. */
function conditionFor(input: unknown, kind: AskedKind, units: FileUnits, example: string): string {
  const written = typeof input === "number" || typeof input === "string" ? String(input) : "";
  const read = parseQuantity(written, kind, units);
  if (!read.ok) return `{ below: ${example} }`;
  const { plus, minus } = read.quantity;
  if (plus > 0 || minus > 0) return `{ about: ${showText(written)} }`;
  return `{ below: ${showText(written)} }`;
}

/** The keys of a condition with a unit: below, above, between, about, should. */
export function conditionShape(
  units: FileUnits,
  kind: AskedKind,
  range: Pick<QuantityRule, "above" | "from">,
) {
  const limit = (about: string) => quantity(kind, units, { ...range, tolerance: false, about });
  return {
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
  };
}

/** What is complained of where a condition should stand. */
export const needsCondition =
  (units: FileUnits, kind: AskedKind, example: string) =>
  ({ input }: { readonly input?: unknown }): string =>
    `needs a condition, such as ${conditionFor(input, kind, units, example)}`;

/** How a value with a tolerance is written in a complaint about it. */
export const exampleOf =
  (units: FileUnits, kind: AskedKind, example: string) =>
  (value?: number): string => {
    const written = (given: number): string => formatQuantity({ quantity: kind, value: given }, units);
    // Five per cent of nothing is none.
    if (value === 0) return `${written(0)} ± ${written(units === "in" ? MM_PER_INCH / 8 : 3)}`;
    return `${value === undefined ? example : written(value)} ± 5 %`;
  };

/** A condition with a unit and nothing else. */
export function conditionOf(
  units: FileUnits,
  kind: AskedKind,
  range: Pick<QuantityRule, "above" | "from">,
  example: string,
) {
  return z
    .strictObject(conditionShape(units, kind, range), { error: needsCondition(units, kind, example) })
    .transform(
      (given, ctx): { test: AskTest; should: boolean } =>
        readCondition(given, ctx, exampleOf(units, kind, example)) ?? z.NEVER,
    );
}
