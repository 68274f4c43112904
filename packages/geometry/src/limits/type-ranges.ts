import type { Quantity } from "../errors/issue.js";
import { inRadians, PRACTICE, SHOP_BASIS } from "./limit.js";

/** How a knife is used, which decides what is too steep, too thin or too hard for it. */
export type KnifeUse = "kitchen" | "field" | "chopper";

/** What a type of knife usually has; `edge` is the thickness before sharpening, `angle` the sharpening angle per side. */
export type UsualName = "length" | "height" | "spine" | "edge" | "angle" | "hardness" | "mass" | "balance";

/** From and to, mm, rad, g or HRC; balance is ahead of the heel. */
export interface UsualRange {
  readonly low: number;
  readonly high: number;
  readonly basis: string;
}

/** Kinds of the numbers of a range. */
export const USUAL_QUANTITIES: Readonly<Record<UsualName, Quantity>> = {
  length: "length",
  height: "length",
  spine: "length",
  edge: "length",
  angle: "angle",
  hardness: "count",
  mass: "mass",
  balance: "length",
};

/** A type of knife by the name that the trade gives it. */
export interface KnifeType {
  readonly use: KnifeUse;
  /** With its article, as sentences have it. */
  readonly words: string;
  /** Left out where the type is no more than a use. */
  readonly usual?: Readonly<Record<UsualName, UsualRange>>;
}

type Cell = readonly [low: number, high: number, basis?: string];

/** Lengths of the edge, mm; angles in degrees per side, HRC, g. For warnings, not for design. */
const usual = (cells: Readonly<Record<UsualName, Cell>>): Readonly<Record<UsualName, UsualRange>> => {
  const range = (name: UsualName): UsualRange => {
    const [low, high, basis = PRACTICE] = cells[name];
    return name === "angle" ? { low: inRadians(low), high: inRadians(high), basis } : { low, high, basis };
  };
  return {
    length: range("length"),
    height: range("height"),
    spine: range("spine"),
    edge: range("edge"),
    angle: range("angle"),
    hardness: range("hardness"),
    mass: range("mass"),
    balance: range("balance"),
  };
};

const RETAILER = `${PRACTICE}; a retailer's page on thickness has about the same`;
const CLEAVERS = "a retailer's sizes of Chinese cleavers; the rest common practice, no source";
const SEAXES = `${PRACTICE}; makers' notes on large originals tell of 7 to 8 mm`;

/** Types of knives with what they usually measure: common practice, no source, but where another basis stands. */
export const KNIFE_TYPES = {
  kitchen: { use: "kitchen", words: "a kitchen knife" },
  field: { use: "field", words: "a knife for the field" },
  chopper: { use: "chopper", words: "a knife that chops" },
  chef: {
    use: "kitchen",
    words: "a chef's knife",
    usual: usual({
      length: [180, 270],
      height: [44, 56],
      spine: [2, 3.5, RETAILER],
      edge: [0.15, 0.45, RETAILER],
      angle: [10, 17],
      hardness: [59, 63],
      mass: [140, 280],
      balance: [0, 30],
    }),
  },
  slicer: {
    use: "kitchen",
    words: "a slicer",
    usual: usual({
      length: [240, 320],
      height: [30, 42],
      spine: [1.5, 2.8, RETAILER],
      edge: [0.15, 0.35, RETAILER],
      angle: [10, 15],
      hardness: [58, 62],
      mass: [110, 220],
      balance: [0, 40],
    }),
  },
  petty: {
    use: "kitchen",
    words: "a petty",
    usual: usual({
      length: [110, 160],
      height: [24, 34],
      spine: [1.6, 2.6],
      edge: [0.15, 0.3],
      angle: [10, 16],
      hardness: [59, 63],
      mass: [50, 110],
      balance: [-20, 10],
    }),
  },
  nakiri: {
    use: "kitchen",
    words: "a nakiri",
    usual: usual({
      length: [150, 190],
      height: [48, 58],
      spine: [1.8, 3.5],
      edge: [0.15, 0.35],
      angle: [10, 15],
      hardness: [59, 64],
      mass: [130, 220],
      balance: [15, 45, `${PRACTICE}; one maker's of 185 × 50 mm balances at 30 mm`],
    }),
  },
  "vegetable-cleaver": {
    use: "kitchen",
    words: "a vegetable cleaver",
    usual: usual({
      length: [180, 220, CLEAVERS],
      height: [90, 110, CLEAVERS],
      spine: [2, 4],
      edge: [0.2, 0.4],
      angle: [12, 17],
      hardness: [58, 62],
      mass: [300, 900, CLEAVERS],
      balance: [25, 60],
    }),
  },
  boning: {
    use: "kitchen",
    words: "a boning knife",
    usual: usual({
      length: [120, 170],
      height: [16, 26],
      spine: [2, 3.2],
      edge: [0.2, 0.4],
      angle: [14, 20],
      hardness: [57, 60],
      mass: [80, 160],
      balance: [-40, -10],
    }),
  },
  hunter: {
    use: "field",
    words: "a hunter",
    usual: usual({
      length: [75, 120],
      height: [22, 32],
      spine: [2.8, 4.5],
      edge: [0.3, 0.6],
      angle: [16, 22],
      hardness: [58, 62],
      mass: [100, 220],
      balance: [-30, 0, `${PRACTICE}; an article on balance aims at the guard`],
    }),
  },
  camp: {
    use: "chopper",
    words: "a camp knife",
    usual: usual({
      length: [180, 260, `${PRACTICE}; a bladesmiths' society has 10 in as the most of a test knife`],
      height: [36, 50],
      spine: [5, 7],
      edge: [0.5, 0.9],
      angle: [18, 25],
      hardness: [56, 59],
      mass: [350, 600],
      balance: [0, 50],
    }),
  },
  bowie: {
    use: "field",
    words: "a bowie",
    usual: usual({
      length: [180, 280],
      height: [36, 52],
      spine: [5, 9],
      edge: [0.5, 0.9],
      angle: [18, 24],
      hardness: [56, 60],
      mass: [350, 700],
      balance: [10, 60],
    }),
  },
  seax: {
    use: "field",
    words: "a seax",
    usual: usual({
      length: [150, 400],
      height: [25, 50],
      spine: [4, 8, SEAXES],
      edge: [0.5, 1],
      angle: [18, 24],
      hardness: [55, 60],
      mass: [150, 700],
      balance: [20, 90],
    }),
  },
  machete: {
    use: "chopper",
    words: "a machete",
    usual: usual({
      length: [300, 500],
      height: [40, 75],
      spine: [1.25, 5, "general articles on machetes: 1.25 to 3 mm; forged ones to 5 mm by common practice"],
      edge: [0.5, 1],
      angle: [20, 28],
      hardness: [53, 57],
      mass: [350, 1000],
      balance: [60, 140],
    }),
  },
} as const satisfies Readonly<Record<string, KnifeType>>;

/** A type of knife as the knife file names it. */
export type KnifeTypeName = keyof typeof KNIFE_TYPES;

/** Names of all types. */
export const KNIFE_TYPE_NAMES = Object.keys(KNIFE_TYPES) as readonly KnifeTypeName[];

/** What a knife of no stated type is held against, for slips of the pen only; common practice, no source. */
export const ANY_KNIFE: Readonly<Record<UsualName, UsualRange>> = usual({
  length: [40, 1000],
  height: [10, 130],
  spine: [0.8, 12],
  edge: [0, 2],
  angle: [6, 40],
  hardness: [45, 68],
  mass: [20, 2000],
  balance: [-100, 300],
});

/** What a shop sets itself of the usual sizes of types: low and high, mm, rad, g, HRC. */
export type GivenRanges = Readonly<
  Partial<Record<KnifeTypeName, Readonly<Partial<Record<UsualName, Pick<UsualRange, "low" | "high">>>>>>
>;

/**
 * What a type usually measures: the shop's own figures where it gives some; nothing of a type that is no more than a use
 * and of which the shop says nothing.
 *
 * @example
 * usualRanges("slicer").length?.high; // 320
 * usualRanges("slicer", { slicer: { length: { low: 200, high: 400 } } }).length?.basis; // "the shop's own limit"
 */
export function usualRanges(
  type: KnifeTypeName,
  given: GivenRanges = {},
): Partial<Readonly<Record<UsualName, UsualRange>>> {
  const published: KnifeType = KNIFE_TYPES[type];
  const own = Object.entries(given[type] ?? {}).map(
    ([name, range]) => [name, { ...range, basis: SHOP_BASIS }] as const,
  );
  return { ...published.usual, ...Object.fromEntries(own) };
}
