import type { FileUnits } from "@scantling/geometry/units";
import { type AskAnswer, limitsOf, type Verdict } from "../asks.js";
import { ASK_KINDS, type AskName } from "../file/ask-fields.js";
import { lengthText, massText } from "./figures.js";
import { layOutTable, wrap } from "./layout.js";

const NAMES: Readonly<Record<AskName, string>> = {
  mass: "mass",
  balance: "balance",
  overallLength: "overall length",
  edgeLength: "edge length",
  heelHeight: "heel height",
  thickness: "thickness",
};

export const VERDICTS: Readonly<Record<Verdict, string>> = {
  met: "met",
  "at-risk": "at risk",
  "not-met": "NOT MET",
};

/** One line for each ask: what was asked, what was computed with its band, the verdict and by how much. */
export function askTable(answers: readonly AskAnswer[], units: FileUnits): string[] {
  if (answers.length === 0) return ["Nothing was asked for: see order.asks in the knife file."];
  const rows = answers.map((answer) => [
    `${NAMES[answer.ask.name]}${answer.ask.should ? "*" : ""}`,
    conditionText(answer, units),
    valueText(answer, units),
    verdictText(answer, units),
  ]);
  const wish = answers.some(({ ask }) => ask.should) ? ["* wished for, not required"] : [];
  return [...layOutTable(rows, ["left", "left", "left", "left"]), ...wish];
}

/** What a verdict that is not plain means, in a sentence each. */
export function askRemarks(answers: readonly AskAnswer[]): string[] {
  const atRisk = answers.filter(({ verdict }) => verdict === "at-risk");
  const near = answers.filter(({ verdict, limitInBand }) => verdict === "not-met" && limitInBand);
  return [
    ...(atRisk.length === 0
      ? []
      : wrap(
          `At risk: computed inside, but the limit lies within the band of ${names(atRisk)}. Leave more room, or measure more closely.`,
        )),
    ...(near.length === 0
      ? []
      : wrap(
          `Not met as computed, though the limit lies within the band of ${names(near)}: change the design, do not hope.`,
        )),
  ];
}

const names = (answers: readonly AskAnswer[]): string => answers.map(({ ask }) => NAMES[ask.name]).join(", ");

function figureOf(name: AskName): (value: number, units: FileUnits) => string {
  return ASK_KINDS[name] === "mass" ? massText : lengthText;
}

function conditionText({ ask }: AskAnswer, units: FileUnits): string {
  const show = (value: number): string => figureOf(ask.name)(value, units);
  const { atLeast, atMost } = limitsOf(ask.test);
  switch (ask.test.kind) {
    case "below":
      return `below ${show(atMost)}`;
    case "above":
      return `above ${show(atLeast)}`;
    case "between":
    case "about":
      return `${show(atLeast)} to ${show(atMost)}`;
  }
}

function valueText({ ask, figure, band }: AskAnswer, units: FileUnits): string {
  const show = (value: number): string => figureOf(ask.name)(value, units);
  return band > 0 ? `${show(figure.value)} ± ${show(band)}` : show(figure.value);
}

function verdictText({ ask, verdict, margin }: AskAnswer, units: FileUnits): string {
  return `${VERDICTS[verdict]}${verdict === "at-risk" ? ":" : " by"} ${figureOf(ask.name)(Math.abs(margin), units)}`;
}
