import type { z } from "zod";
import type { Reading } from "./fields.js";

/** The condition of an ask, mm, g or a plain number. */
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
 * @param example - a value as it may be written, made of the one that is given where there is one.
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
    return complain("tolerance-missing", `needs a tolerance, such as ${example(about?.value)} ± 5 %`, [
      "about",
    ]);
  }
  const { value, plus, minus } = about;
  return { test: { kind: "about", value, plus, minus }, should };
}
