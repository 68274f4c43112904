import { type FileUnits, inchesToMm } from "@scantling/geometry/units";
import { type AskAnswer, limitsOf, type Verdict } from "../asks.js";
import { ASK_KINDS } from "../file/index.js";
import { ASK_WORDS } from "../wishes.js";
import { type Figure, fixed, LENGTH_FIGURES, lengthText, MASS_FIGURES, massText } from "./figures.js";
import { layOutTable, wrap } from "./layout.js";

/** Bands below this are told in thousandths of an inch, not in 64ths of which they are too few, mm: 1/32 in. */
const LEAST_IN_FRACTIONS = inchesToMm(1 / 32) - 1e-6;

export const VERDICTS: Readonly<Record<Verdict, string>> = {
  met: "met",
  "at-risk": "at risk",
  "not-met": "NOT MET",
};

/** One line for each ask: what was asked, what was computed with its band, the verdict and by how much. */
export function askTable(answers: readonly AskAnswer[], units: FileUnits): string[] {
  if (answers.length === 0) return ["Nothing was asked for: see order.asks in the knife file."];
  const rows = answers.map((answer) => {
    const show = figureFor(answer, units);
    return [
      `${ASK_WORDS[answer.ask.name]}${answer.ask.should ? "*" : ""}`,
      conditionText(answer, show),
      valueText(answer, show, bandFigure(answer, units)),
      verdictText(answer, show),
    ];
  });
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

const names = (answers: readonly AskAnswer[]): string =>
  answers.map(({ ask }) => ASK_WORDS[ask.name]).join(", ");

type Show = (value: number) => string;

/** A plain number, whole. */
const countText: Figure = (value) => fixed(value, 0);

/** Coarse ones first. */
const FIGURES: Readonly<Record<(typeof ASK_KINDS)[keyof typeof ASK_KINDS], readonly Figure[]>> = {
  mass: MASS_FIGURES,
  length: LENGTH_FIGURES,
  count: [countText],
};

/** With the fewest digits in which value and limit differ, so that no verdict hangs on rounding. */
function figureFor({ ask, figure, margin }: AskAnswer, units: FileUnits): Show {
  const figures = FIGURES[ASK_KINDS[ask.name]];
  const shows = figures.map(
    (each): Show =>
      (value) =>
        each(value, units),
  );
  const { atLeast, atMost } = limitsOf(ask.test);
  const limits = [atLeast, atMost].filter(Number.isFinite);
  const tells = (show: Show): boolean =>
    show(Math.abs(margin)) !== show(0) && limits.every((limit) => show(limit) !== show(figure.value));
  // Where none tells them apart they are equal, and that is said.
  return shows.find(tells) ?? shows[0] ?? String;
}

function conditionText({ ask }: AskAnswer, show: Show): string {
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

const BAND_FIGURES = { mass: massText, length: lengthText, count: countText } as const;

/** A band is known to no more digits than usual, but rounding may not make another one of it. */
function bandFigure({ ask, band }: AskAnswer, units: FileUnits): Show {
  const kind = ASK_KINDS[ask.name];
  const isFine = kind === "length" && units === "in" && band < LEAST_IN_FRACTIONS;
  const figure = isFine ? (LENGTH_FIGURES[1] ?? lengthText) : BAND_FIGURES[kind];
  return (value) => figure(value, units);
}

function valueText({ figure }: AskAnswer, show: Show, band: Show): string {
  const value = show(figure.value);
  if (figure.interval === undefined) return value;
  const [plus, minus] = [band(figure.interval[1] - figure.value), band(figure.value - figure.interval[0])];
  if (plus === minus) return plus === band(0) ? value : `${value} ± ${plus}`;
  const unit = / \p{L}+$/u.exec(minus)?.[0] ?? "";
  const shared = unit !== "" && plus.endsWith(unit);
  return `${value} +${shared ? plus.slice(0, -unit.length) : plus}/−${minus}`;
}

function verdictText({ verdict, margin, onLimit }: AskAnswer, show: Show): string {
  if (onLimit) return `${VERDICTS[verdict]}: equal to the limit`;
  return `${VERDICTS[verdict]}${verdict === "at-risk" ? ":" : " by"} ${show(Math.abs(margin))}`;
}
