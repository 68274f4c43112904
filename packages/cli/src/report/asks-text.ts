import { invariant } from "@scantling/geometry";
import {
  type FileUnits,
  formatAngle,
  formatCaliper,
  inchesToMm,
  parseQuantity,
} from "@scantling/geometry/units";
import { type AskAnswer, type Asked, limitsOf, type Standing } from "../asks.js";
import { ASK_KINDS, type Ask } from "../file/index.js";
import { ASK_WORDS } from "../wishes.js";
import {
  type Figure,
  fixed,
  LENGTH_FIGURES,
  lengthText,
  MASS_FIGURES,
  massText,
  percentText,
} from "./figures.js";
import { layOutTable, REPORT_WIDTH, wrap } from "./layout.js";
import { asWritten } from "./size-text.js";

/** Sizes below this are measured with a caliper, mm. */
const CALIPER_RANGE = inchesToMm(1 / 2);
/** Bands below this are told in thousandths of an inch, not in 64ths of which they are too few, mm: 1/32 in. */
const LEAST_IN_FRACTIONS = inchesToMm(1 / 32) - 1e-6;

export const VERDICTS: Readonly<Record<Standing, string>> = {
  met: "met",
  "met-within-band": "met in band",
  "at-risk": "at risk",
  "not-met": "NOT MET",
};

/**
 * One line for each ask: what was asked, what was computed with its band, the verdict and by how much.
 *
 * @param others - Rows of what was asked but is not computed.
 */
export function askTable(
  answers: readonly AskAnswer[],
  units: FileUnits,
  others: readonly string[][] = [],
): string[] {
  const rows = [...askRows(answers, units), ...others];
  if (rows.length === 0) return ["Nothing was asked for: see order.asks in the knife file."];
  const wish = rows.some(([name]) => name?.endsWith("*") === true) ? [WISH_NOTE] : [];
  return [...fourColumns(rows), ...wish];
}

/** A line for each row, or two where one would be too wide: what was asked, then what came of it. */
function fourColumns(rows: readonly string[][]): string[] {
  const lines = layOutTable(rows, ["left", "left", "left", "left"]);
  if (lines.every((line) => line.length <= REPORT_WIDTH)) return lines;
  const heads = layOutTable(
    rows.map((row) => row.slice(0, 2)),
    ["left", "left"],
  );
  const tails = layOutTable(
    rows.map((row) => ["  ", ...row.slice(2)]),
    ["left", "left", "left"],
  );
  return heads.flatMap((head, i) => [head, tails[i] ?? ""]);
}

/** What a star behind an ask means. */
export const WISH_NOTE = "* wished for, not required";

/** The same as rows: what, what was asked, what was computed, the verdict. */
export function askRows(answers: readonly AskAnswer[], units: FileUnits): string[][] {
  return answers.map((answer) => {
    const { condition, value, verdict } = answerCells(answer, ASK_KINDS[answer.ask.name], units);
    return [`${askLabel(answer.ask, units)}${answer.ask.should ? "*" : ""}`, condition, value, verdict];
  });
}

/** What was asked, what was computed with its band, and the verdict. */
export interface AnswerCells {
  readonly condition: string;
  readonly value: string;
  readonly verdict: string;
}

/** An answer as text, with the fewest digits in which its figure and its limits differ. */
export function answerCells(answer: AskAnswer<Asked>, kind: FigureKind, units: FileUnits): AnswerCells {
  const { limit, value } = figuresFor(answer, kind, units);
  const band = bandFigure(answer, kind, value(answer.figure.value), units);
  return {
    condition: conditionText(answer, limit),
    value: valueText(answer, kind, value, band),
    verdict: verdictText(answer, value),
  };
}

/** What it means that an ask is met within its band; nothing where none is. */
export function withinBandRemark(answers: readonly AskAnswer[], units: FileUnits): string[] {
  const close = answers.filter(({ standing }) => standing === "met-within-band");
  if (close.length === 0) return [];
  return wrap(
    `Met in band: ${names(close, units)}, as long as every size keeps to its tolerance. A band twice as wide would not fit.`,
  );
}

/** What a verdict that is not plain means, in a sentence each. */
export function askRemarks(answers: readonly AskAnswer[], units: FileUnits): string[] {
  const atRisk = answers.filter(({ verdict }) => verdict === "at-risk");
  const near = answers.filter(({ verdict, limitInBand }) => verdict === "not-met" && limitInBand);
  return [
    ...(atRisk.length === 0
      ? []
      : wrap(
          `At risk: computed inside, but the limit lies within the band of ${names(atRisk, units)}. Leave more room, or measure more closely.`,
        )),
    ...(near.length === 0
      ? []
      : wrap(
          `Not met as computed, though the limit lies within the band of ${names(near, units)}: change the design, do not hope.`,
        )),
  ];
}

const names = (answers: readonly AskAnswer[], units: FileUnits): string =>
  answers.map(({ ask }) => askLabel(ask, units)).join(", ");

/** What was asked for, with its place on the blade where that is not the heel: `thickness at the tip`. */
export function askLabel({ name, at, up }: Ask, units: FileUnits): string {
  const place =
    at === undefined || at.kind === "heel" || name === "coreLine"
      ? ""
      : at.kind === "distance"
        ? ` at ${lengthText(at.mm, units)}`
        : at.kind === "fraction"
          ? ` at ${percentText(at.share)}`
          : ` at the ${at.kind}`;
  return `${up === undefined ? ASK_WORDS[name] : `${asWritten(up, units)} above edge`}${place}`;
}

type Show = (value: number) => string;
/** What a figure that is asked for is measured in; what is thin is a length for a caliper. */
export type FigureKind = (typeof ASK_KINDS)[keyof typeof ASK_KINDS] | "thin";

/** A plain number, whole. */
const countText: Figure = (value) => fixed(value, 0);

/** Coarse ones first. */
const FIGURES: Readonly<Record<FigureKind, readonly Figure[]>> = {
  mass: MASS_FIGURES,
  length: LENGTH_FIGURES,
  thin: LENGTH_FIGURES.slice(1),
  angle: [0.1, 0.01, 0.0001].map(
    (step): Figure =>
      (value) =>
        formatAngle(value, step),
  ),
  count: [countText],
};

/** How one line is shown: its limits, and its value with what follows from it. */
interface Shows {
  readonly limit: Show;
  readonly value: Show;
}

/** With the fewest digits in which value and limit differ, so that no verdict hangs on rounding, and no limit is moved by it. */
function figuresFor(
  { ask, figure, margin, band }: AskAnswer<Asked>,
  kind: FigureKind,
  units: FileUnits,
): Shows {
  const shows = FIGURES[kind].map(
    (each): Show =>
      (value) =>
        each(value, units),
  );
  const { atLeast, atMost } = limitsOf(ask.test);
  const limits = [atLeast, atMost].filter(Number.isFinite);
  const tells = (show: Show): boolean =>
    show(Math.abs(margin)) !== show(0) && limits.every((limit) => show(limit) !== show(figure.value));
  const exact = (show: Show): boolean => limits.every((limit) => isExact(show(limit), limit, kind, units));
  // Where none tells them apart they are equal, and that is said.
  // What is thin and no fraction is told as a caliper has it: 0.224 in is not 7/32 in.
  const isThin =
    kind === "length" &&
    units === "in" &&
    Math.abs(figure.value) < CALIPER_RANGE &&
    band < LEAST_IN_FRACTIONS;
  const least = isThin && !isExact(lengthText(figure.value, units), figure.value, kind, units) ? 1 : 0;
  const telling = Math.max(least, shows.findIndex(tells));
  // A limit from the other units is none of these to the last digit: that of a caliper, or of a fine scale, will do.
  const sharp = kind === "count" ? 0 : shows.findIndex(exact);
  const limitIndex = Math.max(telling, sharp < 0 ? 1 : sharp);
  // A fraction beside a decimal limit cannot be compared at sight.
  const valueIndex = kind === "length" && units === "in" && limitIndex > 0 ? Math.max(telling, 1) : telling;
  const at = (index: number): Show => shows[index] ?? shows[0] ?? String;
  const inches = kind === "length" && units === "in";
  return {
    limit: (value) => `${at(limitIndex)(value)}${inches ? markOf(at(limitIndex)(value), value) : ""}`,
    value: at(valueIndex),
  };
}

/** Lengths in mm, masses in g: what rounding may do to a limit without anyone seeing it. */
const UNSEEN = 1e-6;

const readBack = (shown: string, kind: Exclude<FigureKind, "count">, units: FileUnits): number => {
  const reading = parseQuantity(shown, kind === "thin" ? "length" : kind, units);
  invariant(reading.ok, `a report's ${shown} can be read back`);
  return reading.quantity.value;
};

/** Whether the figure that is shown is the limit itself. */
function isExact(shown: string, limit: number, kind: FigureKind, units: FileUnits): boolean {
  return kind === "count" || Math.abs(readBack(shown, kind, units) - limit) <= UNSEEN;
}

/** `+` or `−` behind inches that the limit is a little above or below. */
function markOf(shown: string, limit: number): string {
  const rest = limit - readBack(shown, "length", "in");
  return Math.abs(rest) <= UNSEEN ? "" : rest > 0 ? "+" : "−";
}

function conditionText({ ask }: AskAnswer<Asked>, show: Show): string {
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

const BAND_FIGURES: Readonly<Record<FigureKind, Figure>> = {
  mass: massText,
  length: lengthText,
  thin: formatCaliper,
  angle: (value) => formatAngle(value, 0.1),
  count: countText,
};

/** How a band is shown, and how it is shown at its coarsest. */
interface Band {
  readonly show: Show;
  readonly coarse: Show;
}

/** A band is known to no more digits than usual, but rounding may not make another one of it. */
function bandFigure({ band }: AskAnswer<Asked>, kind: FigureKind, shown: string, units: FileUnits): Band {
  const isFine = kind === "length" && units === "in" && (band < LEAST_IN_FRACTIONS || shown.includes("."));
  const usual = BAND_FIGURES[kind];
  const figure = isFine ? formatCaliper : usual;
  return { show: (value) => figure(value, units), coarse: (value) => usual(value, units) };
}

function valueText(
  { figure, band: half }: AskAnswer<Asked>,
  kind: FigureKind,
  show: Show,
  band: Band,
): string {
  const value = show(figure.value);
  if (figure.interval === undefined) return value;
  const sides = [figure.interval[1] - figure.value, figure.value - figure.interval[0]] as const;
  const [plus, minus] = [band.show(sides[0]), band.show(sides[1])];
  // Thousandths of an inch do not make two sides of what is even in 64ths.
  const coarse = kind === "length" && half >= LEAST_IN_FRACTIONS;
  const isEven = plus === minus || (coarse && band.coarse(sides[0]) === band.coarse(sides[1]));
  const even = plus === minus ? plus : band.show(half);
  if (isEven) return even === band.show(0) ? value : `${value} ± ${even}`;
  const unit = / \p{L}+$/u.exec(minus)?.[0] ?? "";
  const shared = unit !== "" && plus.endsWith(unit);
  return `${value} +${shared ? plus.slice(0, -unit.length) : plus}/−${minus}`;
}

function verdictText({ standing, margin, onLimit }: AskAnswer<Asked>, show: Show): string {
  if (onLimit) return `${VERDICTS[standing]}: equal to the limit`;
  return `${VERDICTS[standing]}${standing === "at-risk" ? ":" : " by"} ${show(Math.abs(margin))}`;
}
