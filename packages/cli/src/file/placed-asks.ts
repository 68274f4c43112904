import type { StationPlace } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { type AskTest, conditionShape, exampleOf, needsCondition, readCondition } from "./ask-condition.js";
import { NOT_NEGATIVE, POSITIVE, quantity } from "./fields.js";
import { place, plainPlace } from "./knife-fields.js";

/** Asks about a place on the blade; several of a kind make a list. */
export type PlacedAskName = "thickness" | "behindEdge" | "bevelAngle";

/** One of them as it was read; left out, the place is the heel. */
export interface PlacedAsk {
  readonly test: AskTest;
  readonly should: boolean;
  readonly at?: StationPlace;
  readonly up?: number;
}

const ABOUT: Readonly<Record<PlacedAskName, string>> = {
  thickness: "Thickness of the spine; at the heel unless a place is given",
  behindEdge:
    "Thickness of the finished blade where its sharpening bevel ends, or so far up from the edge; where the bevels are first at their full depth unless a place is given",
  bevelAngle:
    "Angle of the bevel's chord per side; where the bevels are first at their full depth unless a place is given",
};

const EXAMPLES = {
  mm: { thickness: "3.6 mm", behindEdge: "0.4 mm", bevelAngle: "4 deg" },
  in: { thickness: "1/8", behindEdge: "0.015", bevelAngle: "4 deg" },
} as const;

/** One ask about a place, or a list of such. */
export function placedAsk(units: FileUnits, name: PlacedAskName) {
  const kind = name === "bevelAngle" ? "angle" : "length";
  const example = EXAMPLES[units][name];
  const up = quantity("length", units, {
    ...POSITIVE,
    tolerance: false,
    about: "How far up from the edge; left out: where the sharpening bevel ends",
  }).optional();
  const shape = {
    at: place(units, "blade").optional(),
    ...conditionShape(units, kind, name === "thickness" ? POSITIVE : NOT_NEGATIVE),
  };
  const fields = name === "behindEdge" ? { ...shape, up } : shape;
  const one = z
    .strictObject(fields, { error: needsCondition(units, kind, example) })
    .transform((given, ctx): PlacedAsk => {
      const condition = readCondition(given, ctx, exampleOf(units, kind, example));
      if (condition === undefined) return z.NEVER;
      const above = "up" in given ? given.up : undefined;
      return {
        ...condition,
        ...(given.at === undefined ? {} : { at: plainPlace(given.at) }),
        ...(above === undefined ? {} : { up: above.value }),
      };
    });
  return z
    .union([one, z.array(one).min(1, { error: "needs at least one condition" })], {
      error: needsCondition(units, kind, example),
    })
    .meta({ description: ABOUT[name] });
}
