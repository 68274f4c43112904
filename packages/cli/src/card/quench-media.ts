import type { HeatRecipe } from "@scantling/geometry";

/** What a blade is quenched in. */
export type QuenchMedium = "oil" | "water" | "plates" | "air";

const MEDIA: readonly (readonly [medium: QuenchMedium, words: RegExp])[] = [
  ["oil", /\boil\b/iu],
  ["water", /\b(?:water|brine)\b/iu],
  ["plates", /\bplates?\b/iu],
  ["air", /\bair\b/iu],
];

/**
 * What the recipes quench in, as far as they say. Nobody is told of oil for a steel of which nothing is known, or that wants
 * something else: it could be lost in it.
 *
 * @example
 * quenchMedia([{ steel: "W2", steps: [{ step: "harden", cooling: "water", ...rest }] }]); // ["water"]
 */
export function quenchMedia(recipes: readonly HeatRecipe[]): readonly QuenchMedium[] {
  const told = recipes
    .flatMap(({ steps }) => steps.filter(({ step }) => step === "harden"))
    .map(({ cooling = "" }) => (typeof cooling === "string" ? cooling : cooling.text));
  return MEDIA.filter(([, words]) => told.some((text) => words.test(text))).map(([medium]) => medium);
}

/** The tools of a hardening, for the head of its panel. */
export const quenchTools = (media: readonly QuenchMedium[]): string =>
  media.length === 0 ? "oven, quench by the sheet" : `oven, ${media.join(" or ")}`;
