import { Fraction } from "fraction.js";
import { invariant } from "../errors/errors.js";
import { editDistance } from "../words/edit-distance.js";
import {
  FAHRENHEIT_AT_ZERO_CELSIUS,
  FAHRENHEIT_PER_CELSIUS,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  MM_PER_INCH,
} from "./constants.js";
import { exactly } from "./fraction.js";
import { unitLibrary } from "./unit-library.js";

/** Kinds of quantity that a file can hold. Money and counts have no units and are read elsewhere. */
export type QuantityKind = "length" | "mass" | "angle" | "temperature" | "density" | "time" | "share";

/**
 * A unit of measure. A value becomes mm, g, degrees, °C, g/mm³, seconds or a share as `(value − offset) · factor`; a
 * difference, such as a tolerance, by the factor alone.
 */
export interface Unit {
  readonly abbreviation: string;
  readonly singular: string;
  readonly plural: string;
  readonly kind: QuantityKind;
  readonly factor: Fraction;
  readonly offset: Fraction;
}

const INCH = exactly(MM_PER_INCH);

/** Units whose size is ours: the library's are off in the eighth digit (inch) or the seventh (pound, ounce). */
const EXACT_FACTORS: Readonly<Record<string, Fraction>> = {
  in: INCH,
  ft: INCH.mul(12),
  oz: exactly(GRAMS_PER_OUNCE),
  lb: exactly(GRAMS_PER_POUND),
  F: new Fraction(1).div(exactly(FAHRENHEIT_PER_CELSIUS)),
  C: new Fraction(1),
};

const OFFSETS: Readonly<Record<string, number>> = { F: FAHRENHEIT_AT_ZERO_CELSIUS };

/**
 * What is taken of the library's units: those that a knife or a rack is measured in. It has more, and to take them in silence is
 * to guess: a grad is 0.9° there and a degree in some workshops, `t` is a short ton, `mi` nobody means.
 */
const TAKEN = {
  length: ["mm", "cm", "m", "in", "ft"],
  mass: ["g", "kg", "oz", "lb"],
  angle: ["deg", "rad"],
  temperature: ["C", "F"],
  time: ["min", "h", "d", "week"],
} as const;

/** Densities, without the exponent's other spellings. */
const DENSITIES = ["g/cm3", "g/cc", "kg/m3", "lb/in3", "lb/ft3"] as const;

const BASES = { length: "mm", mass: "g", angle: "deg", temperature: "C", time: "s" } as const;

function fromLibrary(kind: keyof typeof BASES): Unit[] {
  return unitLibrary()
    .list(kind)
    .filter(({ abbr }) => TAKEN[kind].some((taken) => taken === abbr))
    .map(({ abbr, singular, plural }) => ({
      abbreviation: abbr,
      singular: singular.toLowerCase().replace(/celsius|fahrenheit/u, capital),
      plural: plural.toLowerCase().replace(/celsius|fahrenheit/u, capital),
      kind,
      factor: EXACT_FACTORS[abbr] ?? exactly(unitLibrary(1).from(abbr).to(BASES[kind])),
      offset: exactly(OFFSETS[abbr] ?? 0),
    }));
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}

const SHOP_UNITS: readonly Unit[] = [
  {
    abbreviation: "thou",
    singular: "thousandth of an inch",
    plural: "thousandths of an inch",
    kind: "length",
    factor: INCH.div(1000),
    offset: new Fraction(0),
  },
  {
    abbreviation: "%",
    singular: "per cent",
    plural: "per cent",
    kind: "share",
    factor: new Fraction(1, 100),
    offset: new Fraction(0),
  },
];

const SIMPLE_UNITS: readonly Unit[] = [
  ...fromLibrary("length"),
  ...fromLibrary("mass"),
  ...fromLibrary("angle"),
  ...fromLibrary("temperature"),
  ...fromLibrary("time"),
  ...SHOP_UNITS,
];

/** Spellings of the shop beside abbreviations and names. */
const ALIASES: Readonly<Record<string, string>> = {
  '"': "in",
  "'": "ft",
  lbs: "lb",
  ozs: "oz",
  ins: "in",
  gm: "g",
  gms: "g",
  kilo: "kg",
  kilos: "kg",
  "°": "deg",
  degs: "deg",
  "°c": "C",
  "°f": "F",
  degc: "C",
  degf: "F",
  celsius: "C",
  fahrenheit: "F",
  percent: "%",
  pct: "%",
  thous: "thou",
  mins: "min",
  hr: "h",
  hrs: "h",
};

const BY_NAME: ReadonlyMap<string, Unit> = new Map(
  SIMPLE_UNITS.flatMap((unit) => {
    const names = [unit.abbreviation, unit.singular, unit.plural];
    const british = names
      .filter((name) => name.includes("meter"))
      .map((name) => name.replace("meter", "metre"));
    const aliases = Object.entries(ALIASES).filter(([, target]) => target === unit.abbreviation);
    return [...names, ...british, ...aliases.map(([alias]) => alias)].map(
      (name) => [name.toLowerCase(), unit] as const,
    );
  }),
);

/**
 * The unit that goes by this abbreviation, name or mark, in any case; a trailing full stop is ignored.
 *
 * @example
 * findUnit("Inches")?.abbreviation; // "in"
 * findUnit("lb/in3")?.kind; // "density"
 */
export function findUnit(name: string): Unit | undefined {
  const key = name.trim().toLowerCase().replace(/\.$/u, "");
  return BY_NAME.get(key) ?? findDensityUnit(key);
}

/** Mass per cube of a length: `g/cm3`, `lb/in³`, `kg/m^3`, `g/cc`. */
function findDensityUnit(key: string): Unit | undefined {
  const plain = key.replace(/\s/gu, "").replace(/\^?3$|³$/u, "3");
  if (!DENSITIES.some((density) => density === plain)) return undefined;
  const [ofMass = "", ofVolume = ""] = plain.split("/");
  const mass = BY_NAME.get(ofMass);
  const side = BY_NAME.get(ofVolume === "cc" ? "cm" : ofVolume.replace(/3$/u, ""));
  invariant(mass !== undefined && side !== undefined, `the units of ${plain} are in the table`);
  return {
    abbreviation: `${mass.abbreviation}/${side.abbreviation}³`,
    singular: `${mass.singular} per cubic ${side.singular}`,
    plural: `${mass.plural} per cubic ${side.singular}`,
    kind: "density",
    factor: mass.factor.div(side.factor.pow(3)),
    offset: new Fraction(0),
  };
}

/** Names of the library's units that measure what a file can hold and are not taken, in small letters. */
const REFUSED: ReadonlyMap<string, QuantityKind> = new Map(
  (Object.keys(TAKEN) as (keyof typeof TAKEN)[]).flatMap((kind) =>
    unitLibrary()
      .list(kind)
      .flatMap(({ abbr, singular, plural }) => [abbr, singular, plural])
      .map((name) => [name.toLowerCase(), kind] as const)
      .filter(([name]) => !BY_NAME.has(name)),
  ),
);

/**
 * What a unit measures that is known but has no place in a shop's files, for example "pressure" for `psi`, "length" for `mi`.
 *
 * @returns the measure's name, or undefined for a word that is no unit at all.
 */
export function measureOfForeignUnit(name: string): string | undefined {
  const refused = REFUSED.get(name.toLowerCase().replace(/\.$/u, ""));
  if (refused !== undefined) return refused;
  const known = unitLibrary()
    .possibilities()
    .find((unit) => unit === name);
  return known === undefined ? undefined : unitLibrary().describe(known).measure;
}

/** Words for a hundredth of a right angle, and one that means a degree as well. */
const GRADIANS = new Set(["grad", "grads", "gradian", "gradians", "gon", "gons"]);

/** Whether a unit is the gradian, or may be one. */
export function isGradian(name: string): boolean {
  return GRADIANS.has(name.toLowerCase().replace(/\.$/u, ""));
}

/**
 * Abbreviations of a kind, for messages.
 *
 * @example
 * unitNames("mass").includes("oz");
 */
export function unitNames(kind: QuantityKind): readonly string[] {
  if (kind === "density") return DENSITIES;
  return SIMPLE_UNITS.filter((unit) => unit.kind === kind).map((unit) => unit.abbreviation);
}

/**
 * Every word and mark that a unit of this kind may be written with, in small letters; there are no others.
 *
 * @example
 * unitWords("angle"); // ["rad", "radian", "radians", "deg", "degree", "degrees", "°", "degs"]
 */
export function unitWords(kind: QuantityKind): readonly string[] {
  if (kind === "density") return DENSITIES.flatMap((unit) => spellings(unit));
  // Names of more than one word are for messages.
  return [...BY_NAME]
    .filter(([word, unit]) => unit.kind === kind && !word.includes(" "))
    .map(([word]) => word);
}

const spellings = (density: string): string[] =>
  density.endsWith("3") ? [density, density.replace("3", "³"), density.replace("3", "^3")] : [density];

/**
 * The known unit of this kind spelled most like `name`, or undefined where none is near.
 *
 * @example
 * nearestUnit("mmm", "length"); // "mm"
 */
export function nearestUnit(name: string, kind: QuantityKind): string | undefined {
  const key = name.toLowerCase();
  const spellings: readonly (readonly [string, string])[] =
    kind === "density"
      ? unitNames(kind).map((unit) => [unit, unit] as const)
      : [...BY_NAME]
          .filter(([, unit]) => unit.kind === kind)
          .map(([word, unit]) => [word, unit.abbreviation]);
  let best: { unit: string; distance: number } | undefined;
  for (const [word, unit] of spellings) {
    const distance = editDistance(key, word);
    const allowed = Math.max(1, Math.floor(word.length / 3));
    if (distance <= allowed && (best === undefined || distance < best.distance)) best = { unit, distance };
  }
  return best?.unit;
}
