import type { StationPlace } from "@scantling/geometry";
import { type FileUnits, formatQuantity, parseQuantity } from "@scantling/geometry/units";
import { z } from "zod";
import { type AskTest, readCondition } from "./ask-condition.js";
import { POSITIVE, quantity } from "./fields.js";
import { showText } from "./problem.js";
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

export const isAskName = (name: string): name is AskName => Object.hasOwn(ASK_KINDS, name);

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

function ask(units: FileUnits, name: PlainAskName) {
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
    .transform(
      (given, ctx): { test: AskTest; should: boolean } =>
        readCondition(given, ctx, (value) =>
          value === undefined ? example : formatQuantity({ quantity: kind, value }, units),
        ) ?? z.NEVER,
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
