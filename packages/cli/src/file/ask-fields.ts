import type { StationPlace } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { type AskTest, readCondition } from "./ask-condition.js";
import { POSITIVE, quantity } from "./fields.js";
import { coreLineAsk, layersAsk } from "./stack-asks.js";

/** What a customer can ask for that is checked by a number. */
export const ASK_KINDS = {
  mass: "mass",
  balance: "length",
  overallLength: "length",
  edgeLength: "length",
  heelHeight: "length",
  thickness: "length",
  layers: "count",
  coreLine: "length",
} as const;

export type AskName = keyof typeof ASK_KINDS;

export type { AskTest } from "./ask-condition.js";

/** One thing that was asked for. */
export interface Ask {
  readonly name: AskName;
  readonly test: AskTest;
  /** Wished for, not required: a miss is a warning. */
  readonly should: boolean;
  /** Where in the file. */
  readonly path: string;
  /** The place on the blade that is asked about, where it is not the whole. */
  readonly at?: StationPlace;
}

/** Asks that are one number of the whole knife, with a unit. */
type PlainAskName = Exclude<AskName, "layers" | "coreLine">;

const ABOUT: Readonly<Record<PlainAskName, string>> = {
  mass: "Mass of the whole knife",
  balance: "Balance point ahead of the heel; negative behind it",
  overallLength: "Butt to tip",
  edgeLength: "Heel to tip",
  heelHeight: "Height of the blade above the heel",
  thickness: "Thickness of the spine at the heel",
};

function ask(units: FileUnits, name: PlainAskName) {
  const kind = ASK_KINDS[name];
  const example = kind === "mass" ? "600 g" : "370 mm";
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
      { error: `needs a condition, such as { below: ${example} }` },
    )
    .transform(
      (given, ctx): { test: AskTest; should: boolean } => readCondition(given, ctx, example) ?? z.NEVER,
    )
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
    layers: layersAsk().optional(),
    coreLine: coreLineAsk(units).optional(),
  });
}
