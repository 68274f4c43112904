import type { StationPlace } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { type AskTest, conditionOf } from "./ask-condition.js";
import { POSITIVE } from "./fields.js";
import { hardnessAsk } from "./hardness-ask.js";
import { type PlacedAskName, placedAsk } from "./placed-asks.js";
import { coreLineAsk, layersAsk } from "./stack-asks.js";

/** What a customer can ask for that is checked by a number. */
export const ASK_KINDS = {
  mass: "mass",
  balance: "length",
  overallLength: "length",
  edgeLength: "length",
  heelHeight: "length",
  handleLength: "length",
  thickness: "length",
  behindEdge: "length",
  bevelAngle: "angle",
  sharpeningAngle: "angle",
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
  /** How far above the edge, mm, where that is asked about. */
  readonly up?: number;
}

/** Asks that are one number of the whole knife, with a unit. */
type PlainAskName = Exclude<AskName, "layers" | "coreLine" | PlacedAskName>;

const ABOUT: Readonly<Record<PlainAskName, string>> = {
  mass: "Mass of the whole knife",
  balance: "Balance point ahead of the heel; negative behind it",
  overallLength: "Butt to tip",
  edgeLength: "Heel to tip",
  heelHeight: "Height of the blade above the heel",
  handleLength: "Handle front to the rear end of the handle, guard and pommel counted",
  sharpeningAngle: "Sharpening angle per side",
};

const EXAMPLES = {
  mm: { mass: "600 g", length: "370 mm", angle: "16 deg" },
  in: { mass: "21 oz", length: "14 1/2", angle: "16 deg" },
} as const;

function ask(units: FileUnits, name: PlainAskName) {
  const kind = ASK_KINDS[name];
  const example = EXAMPLES[units][kind];
  const range = name === "balance" ? {} : POSITIVE;
  return conditionOf(units, kind, range, example).meta({ description: ABOUT[name] });
}

/** What was asked for, by name. */
export function asks(units: FileUnits) {
  return z.strictObject({
    mass: ask(units, "mass").optional(),
    balance: ask(units, "balance").optional(),
    overallLength: ask(units, "overallLength").optional(),
    edgeLength: ask(units, "edgeLength").optional(),
    heelHeight: ask(units, "heelHeight").optional(),
    handleLength: ask(units, "handleLength").optional(),
    thickness: placedAsk(units, "thickness").optional(),
    behindEdge: placedAsk(units, "behindEdge").optional(),
    bevelAngle: placedAsk(units, "bevelAngle").optional(),
    sharpeningAngle: ask(units, "sharpeningAngle").optional(),
    hardness: hardnessAsk().optional(),
    layers: layersAsk().optional(),
    coreLine: coreLineAsk(units).optional(),
  });
}
