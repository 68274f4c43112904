import { type Finding, length, type Quantity, type QuantityValue } from "../errors/issue.js";
import { findingLimit } from "../limits/finding-limits.js";
import type { Limit } from "../limits/limit.js";
import {
  ANY_KNIFE,
  KNIFE_TYPES,
  USUAL_QUANTITIES,
  type UsualName,
  type UsualRange,
  usualRanges,
} from "../limits/type-ranges.js";
import type { Knife } from "./knife.js";

/** Mass of the whole knife, g, and its balance ahead of the heel, mm. */
export interface WeightFigures {
  readonly mass?: number;
  readonly balance?: number;
}

/** One figure of a knife that its type has a usual range for. */
interface Figure {
  readonly name: UsualName;
  readonly path: string;
  readonly value: number;
  /** What it is called, at the beginning of a sentence. */
  readonly words: string;
}

/** A way to put a size down wrong: what was meant is so many times what was read. */
export interface SizeSlip {
  readonly times: number;
  /** What was meant and what was taken: `inches, not mm`. */
  readonly words: string;
}

/** Slips that are thought of, by what kind of number is put down. */
export type SizeSlips = Readonly<Partial<Record<Quantity, readonly SizeSlip[]>>>;

/** Looks for no slips. */
const NO_SLIPS: SizeSlips = {};

/**
 * Sizes that are not usual for the type of knife, and those that one slip of the pen would explain: a point put wrong, another
 * unit. A knife of no type is only asked whether a size is one that no knife has and a slip would explain it.
 *
 * @param weight - Of the whole knife; what is left out is not looked at.
 * @param slips - Of lengths and angles: units are known where the file is read, not here.
 *
 * @example
 * typeFindings(knife, { mass: 150, balance: -12 }).map(({ code }) => code); // []
 */
export function typeFindings(knife: Knife, weight: WeightFigures = {}, slips = NO_SLIPS): Finding[] {
  const { type, ranges, limits } = knife;
  const usual = type === undefined ? {} : usualRanges(type, ranges);
  return figuresOf(knife, weight).flatMap((figure): Finding[] => {
    const { name, value } = figure;
    // A spine this thick has a finding of its own.
    if (name === "spine" && value > limits.thickSpine.value) return [];
    const range = usual[name];
    const slip = slipOf(figure, knife, range, slips);
    if (slip.length > 0 || type === undefined || range === undefined || isWithin(value, range)) return slip;
    return [unusual(figure, range, KNIFE_TYPES[type].words)];
  });
}

/**
 * Only the slips of the pen among the sizes, a spine too thick for any knife with them: what is to be told first of a knife that
 * cannot be built, for what is wrong with it may come of one.
 *
 * @example
 * sizeSlips(knife, { length: [{ times: 1 / 25.4, words: "mm, not inches" }] }); // []
 */
export function sizeSlips(knife: Knife, slips: SizeSlips): Finding[] {
  const usual = knife.type === undefined ? {} : usualRanges(knife.type, knife.ranges);
  return figuresOf(knife, {}).flatMap((figure) => slipOf(figure, knife, usual[figure.name], slips));
}

/**
 * What one slip makes of a figure, by the type's range or by that of any knife: what is no size of any knife is a slip even where
 * it would not bring the figure into the type's own range.
 */
function slipOf(figure: Figure, { type }: Knife, range: UsualRange | undefined, slips: SizeSlips): Finding[] {
  const known = slips[USUAL_QUANTITIES[figure.name]];
  const any = (): Finding[] => slipFinding(figure, ANY_KNIFE[figure.name], "a knife", known);
  if (type === undefined || range === undefined) return any();
  if (isWithin(figure.value, range)) return [];
  const slip = slipFinding(figure, range, KNIFE_TYPES[type].words, known);
  return slip.length > 0 ? slip : any();
}

/** Rounding of computed sizes. */
const HAIR = 1e-9;
const isWithin = (value: number, { low, high }: Pick<UsualRange, "low" | "high">): boolean =>
  value >= low - HAIR && value <= high + HAIR;

function figuresOf(knife: Knife, { mass, balance }: WeightFigures): Figure[] {
  const { outline, laws, spec } = knife;
  const landmarks = "family" in spec.blade.outline;
  const place = (key: string): string => (landmarks ? `blade.outline.${key}` : "blade.outline");
  const { edgeAngle } = spec.blade;
  const sides = typeof edgeAngle === "number" ? [edgeAngle] : [edgeAngle.right, edgeAngle.left];
  const angles = sides.filter((side) => side !== "flat");
  return [
    { name: "length", path: place("edgeLength"), value: outline.edgeLength, words: "An edge of {value}" },
    { name: "height", path: place("heelHeight"), value: heelHeight(knife), words: "A heel {value} high" },
    {
      name: "spine",
      path: "blade.thickness",
      value: laws.spine.valueAt(0),
      words: "A spine of {value} at the heel",
    },
    {
      name: "edge",
      path: "blade.bevel.edgeThickness",
      value: laws.edgeThickness.valueAt(0),
      words: "An edge {value} thick before sharpening",
    },
    ...(angles.length === 0
      ? []
      : [
          {
            name: "angle",
            path: "blade.edgeAngle",
            value: Math.max(...angles),
            words: "A sharpening angle of {value} per side",
          } as const,
        ]),
    ...(mass === undefined
      ? []
      : [{ name: "mass", path: "", value: mass, words: "A mass of {value}" } as const]),
    ...(balance === undefined
      ? []
      : [
          {
            name: "balance",
            path: "",
            value: balance,
            words: "A balance {value} ahead of the heel",
          } as const,
        ]),
  ];
}

function heelHeight({ body }: Knife): number {
  const spans = body("finished").footprint.spansAt(HAIR);
  return spans.at(-1)?.[1] ?? 0;
}

/** What one slip makes of a figure outside its range, where that lies inside. */
function slipFinding(
  { name, path, value, words: what }: Figure,
  range: UsualRange,
  words: string,
  slips: readonly SizeSlip[] = [],
): Finding[] {
  // Nobody writes down where a knife balances.
  if (isWithin(value, range) || name === "balance") return [];
  const kind = USUAL_QUANTITIES[name];
  const fits = slips.filter(({ times }) => isWithin(value * times, range));
  if (fits.length === 0) return [];
  const show = (number: number): QuantityValue => ({ quantity: kind, value: number });
  return [
    {
      code: "size-slip",
      severity: "warn",
      path,
      text: `${what} is not that of ${words}, {low} to {high}. Did you mean ${fits
        .map(({ words: meant }, i) => `{as${i}} (${meant})`)
        .join(", or ")}?`,
      values: {
        value: show(value),
        low: show(range.low),
        high: show(range.high),
        ...Object.fromEntries(fits.map(({ times }, i) => [`as${i}`, show(value * times)])),
      },
      basis: range.basis,
    },
  ];
}

function unusual({ name, path, value, words: what }: Figure, range: UsualRange, words: string): Finding {
  const show = (number: number): QuantityValue => ({ quantity: USUAL_QUANTITIES[name], value: number });
  return {
    code: "unusual-for-type",
    severity: "note",
    path,
    text: `${what} is unusual for ${words}: {low} to {high} is usual. If it is meant, nothing is to be done; tell the customer.`,
    values: { value: show(value), low: show(range.low), high: show(range.high) },
    basis: range.basis,
  };
}

/** What the order asks of lengths, mm; a side that is not asked for is infinite. */
export interface AskedLengths {
  readonly overall: { readonly low: number; readonly high: number };
  readonly edge: { readonly low: number; readonly high: number };
  readonly handle: { readonly low: number; readonly high: number };
}

/**
 * Whether the lengths that were asked for add up: edge, ricasso and handle are the whole.
 *
 * @param ricasso - mm
 * @param apart - how far they may miss adding up, mm.
 *
 * @example
 * const asked = {
 *   overall: { low: 330, high: 340 },
 *   edge: { low: 200, high: 210 },
 *   handle: { low: 140, high: Infinity },
 * };
 * askedLengthFindings(asked, 10)[0]?.code; // "asked-lengths-disagree"
 */
export function askedLengthFindings(
  { overall, edge, handle }: AskedLengths,
  ricasso: number,
  apart: Limit = findingLimit("lengthsApart"),
): Finding[] {
  const least = edge.low + handle.low + ricasso;
  const most = edge.high + handle.high + ricasso;
  const tooLong = least > overall.high + apart.value + HAIR;
  if (!tooLong && !(most < overall.low - apart.value - HAIR)) return [];
  return [
    {
      code: "asked-lengths-disagree",
      severity: "stop",
      path: "order.asks.overallLength",
      text: tooLong
        ? "The lengths that were asked for do not add up: edge {edge}, ricasso {ricasso} and handle {handle} are {sum} at the least, and {whole} over all is the most. Ask which of them gives way."
        : "The lengths that were asked for do not add up: edge {edge}, ricasso {ricasso} and handle {handle} are {sum} at the most, and {whole} over all is the least. Ask which of them gives way.",
      values: {
        edge: length(tooLong ? edge.low : edge.high),
        handle: length(tooLong ? handle.low : handle.high),
        ricasso: length(ricasso),
        sum: length(tooLong ? least : most),
        whole: length(tooLong ? overall.high : overall.low),
      },
      basis: apart.basis,
    },
  ];
}
