import { type FitFigure, type Knife, knifeFigure, type StationPlace } from "@scantling/geometry";
import {
  degreesToRadians,
  describeQuantityError,
  type FileUnits,
  GRAMS_PER_OUNCE,
  inchesToMm,
  parseQuantity,
} from "@scantling/geometry/units";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { type AskTest, showText } from "../file/index.js";
import type { Measured } from "../measure.js";
import type { FitOptions } from "../options.js";
import type { FigureKind } from "../report/asks-text.js";
import { asWritten } from "../report/size-text.js";
import { placeOn, readPlace } from "../stations.js";
import { steelRoute } from "./steel-route.js";

/** Something that a fitted knife has to be. */
export interface FitTarget {
  /** Unique: the name of its option or of the order's ask, and the face where it is of one. */
  readonly name: string;
  /** What reports call it. */
  readonly words: string;
  readonly kind: FigureKind;
  readonly test: AskTest;
  readonly figure: FitFigure;
  /** What a miss is counted in; mm, g, rad. */
  readonly scale: number;
  /** From the command line, or an ask of the order that is to stay met. */
  readonly source: "command" | "order";
  /** Where an ask of the order stands in the file. */
  readonly path?: string;
}

/** How near is near enough where a figure is asked for without a tolerance, and what misses are counted in. mm, rad, shares. */
const NEAR = {
  mass: 0.01,
  /** A hundredth is rounded to what a scale shows. g */
  massStep: { mm: 1, in: GRAMS_PER_OUNCE / 10 },
  balance: { mm: 1, in: inchesToMm(1 / 32) },
  angle: degreesToRadians(0.1),
  thin: { mm: 0.02, in: inchesToMm(0.001) },
} as const;

/** The option, what it takes, and an example of it. */
type Taken = readonly [option: string, kind: "mass" | "length" | "angle", example: string];

const TAKEN = {
  mass: ["--mass", "mass", "480g"],
  balance: ["--balance", "length", "20..30mm"],
  bevelAngle: ["--bevel-angle", "angle", "3.5deg"],
  behindEdge: ["--behind-edge", "length", "0.4mm"],
  steel: ["--steel", "mass", '"<700g"'],
} as const satisfies Readonly<Record<string, Taken>>;

/**
 * What the command line asks for.
 *
 * @throws {CommandFailure} exit code 2 with what cannot be read, or what the knife does not have.
 */
export function targetsOf(options: FitOptions, measured: Measured): readonly FitTarget[] {
  const { knife, job } = measured;
  const { units } = job.knife;
  const read = (key: keyof typeof TAKEN, near: (value: number) => number): AskTest | undefined => {
    const text = options[key];
    return text === undefined ? undefined : readTest(text, TAKEN[key], units, near);
  };
  const found: FitTarget[] = [];
  const add = (test: AskTest | undefined, target: Omit<FitTarget, "test" | "source">): void => {
    if (test !== undefined) found.push({ ...target, test, source: "command" });
  };
  const nearMass = (value: number): number => {
    const step = NEAR.massStep[units];
    return Math.max(1, Math.round((NEAR.mass * value) / step)) * step;
  };
  const mass = read("mass", nearMass);
  add(mass, { name: "mass", words: "mass", kind: "mass", figure: { kind: "mass" }, scale: massScale(mass) });
  add(
    read("balance", () => NEAR.balance[units]),
    {
      name: "balance",
      words: "balance",
      kind: "length",
      figure: { kind: "balance" },
      scale: NEAR.balance.mm,
    },
  );
  const at = placeGiven(options, knife, units);
  const place = options.at === undefined ? "" : ` at ${options.at.trim()}`;
  const angle = read("bevelAngle", () => NEAR.angle);
  if (angle !== undefined)
    for (const [side, face] of askedFaces(knife))
      add(angle, {
        name: `bevel-angle${face.replaceAll(" ", "-")}`,
        words: `bevel angle${face}${place}`,
        kind: "angle",
        figure: { kind: "bevel-angle", side, ...at },
        scale: NEAR.angle,
      });
  const above = options.above === undefined ? 1 : readAbove(options.above, units);
  const behind: FitFigure = { kind: "behind-edge", above, ...at };
  const thin = read("behindEdge", () => NEAR.thin[units]);
  if (thin !== undefined) requireFigure(behind, knife, above, units);
  add(thin, {
    name: "behind-edge",
    words: `${asWritten(above, units)} above the edge${place}`,
    kind: "thin",
    figure: behind,
    scale: NEAR.thin.mm,
  });
  const steel = read("steel", nearMass);
  if (steel !== undefined)
    add(steel, {
      name: "steel",
      words: "steel to cut",
      kind: "mass",
      figure: { kind: "steel", route: steelRoute(measured) },
      scale: massScale(steel),
    });
  return found;
}

/** What misses of a mass are counted in: a hundredth of its limit. */
export const massScale = (test: AskTest | undefined): number => NEAR.mass * Math.max(1, ...limitsIn(test));
/** What misses of anything else are counted in; mm, rad. */
export const SCALES = { length: NEAR.balance.mm, thin: NEAR.thin.mm, angle: NEAR.angle } as const;

function limitsIn(test: AskTest | undefined): readonly number[] {
  switch (test?.kind) {
    case "below":
    case "above":
      return [test.limit];
    case "between":
      return [test.low, test.high];
    case "about":
      return [test.value];
    case undefined:
      return [];
  }
}

function placeGiven(
  { at, bevelAngle, behindEdge }: FitOptions,
  knife: Knife,
  units: FileUnits,
): { readonly at?: StationPlace } {
  if (at === undefined) return {};
  if (bevelAngle === undefined && behindEdge === undefined)
    throw wrong(
      "place-unused",
      "--at tells where --bevel-angle or --behind-edge is asked for, and neither is",
      "Leave --at out, or give one of them.",
    );
  placeOn(knife, at.trim(), units);
  return { at: readPlace(at.trim(), units) };
}

/** Faces whose angle is asked for: one for both where they are alike, else those that are sharpened. */
function askedFaces({ laws, spec }: Knife): readonly (readonly ["right" | "left", words: string])[] {
  if (laws.symmetric) return [["right", ""]];
  const { edgeAngle } = spec.blade;
  return (["right", "left"] as const)
    .filter((side) => typeof edgeAngle === "number" || edgeAngle[side] !== "flat")
    .map((side) => [side, ` ${side} face`]);
}

function requireFigure(
  figure: Extract<FitFigure, { kind: "behind-edge" }>,
  knife: Knife,
  above: number,
  units: FileUnits,
): void {
  if (Number.isFinite(knifeFigure(figure, knife))) return;
  throw wrong(
    "no-thickness-there",
    `there is no steel ${asWritten(above, units)} above the edge at that place`,
    "Give another --above or --at.",
  );
}

function readAbove(text: string, units: FileUnits): number {
  const value = readSize("--above", text, "length", units, "1mm").value;
  if (value > 0) return value;
  throw wrong(
    "not-positive",
    `--above "${showText(text)}" has to be more than nothing`,
    "Write it like 1mm.",
  );
}

/** `480g`, `480g ± 5g`, `<480g`, `>450g`, `450..480g`. */
function readTest(
  text: string,
  [option, kind, example]: Taken,
  units: FileUnits,
  near: (value: number) => number,
): AskTest {
  const read = (part: string) => readSize(option, part, kind, units, example);
  const [, sign, limit] = /^\s*(<=?|>=?|below\b|under\b|above\b|over\b)\s*(.+)$/iu.exec(text) ?? [];
  const isFine = (test: AskTest): AskTest => {
    if (option === "--balance" || limitsIn(test).every((value) => value > 0)) return test;
    throw wrong(
      "not-positive",
      `${option} "${showText(text)}" has to be more than nothing`,
      `Write it like ${example}.`,
    );
  };
  if (sign !== undefined && limit !== undefined) {
    const isBelow = /^(?:<|below|under)/iu.test(sign);
    return isFine({ kind: isBelow ? "below" : "above", limit: plain(option, text, read(limit)) });
  }
  const range = splitRange(text);
  if (range !== undefined) {
    const [low, high] = range.map((part) => plain(option, text, read(part)));
    if (low === undefined || high === undefined || low <= high)
      return isFine({ kind: "between", low: low ?? 0, high: high ?? 0 });
    throw wrong(
      "limits-swapped",
      `${option} "${showText(text)}" has the greater value first`,
      `Write it like ${example}.`,
    );
  }
  const { value, plus, minus } = read(text);
  const isBare = plus === 0 && minus === 0;
  return isFine({
    kind: "about",
    value,
    plus: isBare ? near(value) : plus,
    minus: isBare ? near(value) : minus,
  });
}

/** The two ends of `20..30mm`, each with its unit; undefined where it is no range. */
export function splitRange(text: string): readonly [string, string] | undefined {
  const at = text.indexOf("..");
  if (at < 0) return undefined;
  const [low, high] = [text.slice(0, at).trim(), text.slice(at + 2).trim()];
  const unit = /[^\d\s./-].*$/u.exec(high)?.[0] ?? "";
  return [/[^\d\s./+-]/u.test(low) || low === "" ? low : `${low}${unit}`, high];
}

interface Size {
  readonly value: number;
  readonly plus: number;
  readonly minus: number;
}

function readSize(
  option: string,
  text: string,
  kind: "mass" | "length" | "angle",
  units: FileUnits,
  example: string,
): Size {
  const parsed = parseQuantity(text, kind, units);
  if (parsed.ok) return parsed.quantity;
  throw wrong(
    "unreadable",
    `${option} "${showText(text)}": ${describeQuantityError(parsed.error)}`,
    `Write it like ${example}, "<${example.replace(/["<]|\d+\.\.(?=\d)/gu, "")}", or a range such as 10..20 with its unit.`,
  );
}

function plain(option: string, text: string, { value, plus, minus }: Size): number {
  if (plus === 0 && minus === 0) return value;
  throw wrong(
    "tolerance-not-taken",
    `${option} "${showText(text)}" has a tolerance behind a limit`,
    "Give one or the other.",
  );
}

/** The command was used in a way that makes no sense: exit code 2. */
export const wrong = (code: string, message: string, todo: string): CommandFailure =>
  new CommandFailure(EXIT.usage, code, message, todo);
