import { angle, count, type Finding, length, mass, type QuantityValue } from "@scantling/geometry";
import type { AskAnswer } from "./asks.js";
import { ASK_KINDS, type AskName } from "./file/index.js";

/** What is asked for, as reports call it. */
export const ASK_WORDS: Readonly<Record<AskName, string>> = {
  mass: "mass",
  balance: "balance",
  overallLength: "overall length",
  edgeLength: "edge length",
  heelHeight: "heel height",
  handleLength: "handle length",
  thickness: "thickness",
  behindEdge: "behind the edge",
  bevelAngle: "bevel per side",
  sharpeningAngle: "sharpened per side",
  layers: "layers",
  coreLine: "core line",
};

const QUANTITIES: Readonly<Record<(typeof ASK_KINDS)[AskName], (value: number) => QuantityValue>> = {
  mass,
  length,
  angle,
  count,
};

/** A wish that is missed stops nothing, but it is to be told to whoever wished. */
export function wishFindings(answers: readonly AskAnswer[]): Finding[] {
  return answers
    .filter(({ ask, verdict }) => ask.should && verdict === "not-met")
    .map(({ ask, figure, margin, onLimit }) => {
      const quantity = QUANTITIES[ASK_KINDS[ask.name]];
      return {
        code: "wish-not-met",
        severity: "warn",
        path: ask.path,
        text: onLimit
          ? "A wish is missed: the {what} of {value} is equal to its limit, which is not allowed itself."
          : "A wish is missed: the {what} of {value} is {by} outside its limits.",
        values: {
          what: ASK_WORDS[ask.name],
          value: quantity(figure.value),
          by: quantity(Math.max(0, -margin)),
        },
        basis: "the order",
      };
    });
}
