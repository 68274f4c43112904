import type { Fraction } from "fraction.js";
import { RADIANS_PER_DEGREE } from "./constants.js";
import { exactly, readNumber } from "./fraction.js";
import { normaliseQuantity } from "./normalise.js";
import type { QuantityError, QuantityErrorCode } from "./quantity-error.js";
import {
  findUnit,
  isGradian,
  measureOfForeignUnit,
  nearestUnit,
  type QuantityKind,
  type Unit,
} from "./unit-table.js";

/** The units that bare numbers of a file are in: mm, g, °C, g/cm³ or inches, ounces, °F, lb/in³; angles in degrees, times in hours. */
export type FileUnits = "mm" | "in";

/** A value with its tolerance, in mm, g, rad, °C, g/mm³, seconds or as a share; `plus` and `minus` are not negative. */
export interface Measured {
  readonly value: number;
  readonly plus: number;
  readonly minus: number;
}

/** A quantity that was read, or what is wrong with it. */
export type QuantityReading =
  | { readonly ok: true; readonly quantity: Measured }
  | { readonly ok: false; readonly error: QuantityError };

const BARE_UNITS: Readonly<Record<FileUnits, Readonly<Record<Exclude<QuantityKind, "share">, string>>>> = {
  mm: { length: "mm", mass: "g", angle: "deg", temperature: "C", density: "g/cm3", time: "h" },
  in: { length: "in", mass: "oz", angle: "deg", temperature: "F", density: "lb/in3", time: "h" },
};

const LONGEST = 80;

/** Stops a reading from inside; caught by {@link parseQuantity} and by nothing else. */
class Unreadable extends Error {
  readonly code: QuantityErrorCode;
  readonly details: Pick<QuantityError, "unit" | "nearest" | "found">;

  constructor(code: QuantityErrorCode, details: Pick<QuantityError, "unit" | "nearest" | "found"> = {}) {
    super(code);
    this.code = code;
    this.details = details;
  }
}

/** What may be written in several parts, the larger unit first: `6' 2"`, `1 lb 2 oz`, `1 h 30 min`. */
const IN_PARTS: readonly QuantityKind[] = ["length", "mass", "time"];

/** One number with the unit written after it. */
interface Term {
  readonly number: Fraction;
  readonly unit: string | undefined;
  readonly asFraction: boolean;
}

/**
 * Reads a quantity as a smith writes it: `190 mm`, `7-1/2"`, `7⅞ in`, `6'2"`, `1 lb 2 oz`, `15°`, `1500 °F`,
 * `7.83 g/cm3`, `1 h 30 min`, `60 %`, with or without a tolerance: `6.4 ± 0.2 mm`, `6.4 +0.3/-0.1 mm`, `480 g ± 2 %`.
 *
 * A bare number is in the file's units, angles in degrees, times in hours, shares as they stand. A unit after the value holds for
 * its tolerance too; one after the tolerance alone is taken where it is the file's own or a part of it (thou in a file in
 * inches), and refused where nobody can tell what the value is in: `8 ± 0.02 in` in a file in mm. A bare fraction in a file in mm is refused: it nearly always is an
 * inch size without its mark. Ranges are the caller's business.
 *
 * @returns the value and tolerance in mm, g, rad, °C, g/mm³, seconds or as a share, or what is wrong as data.
 *
 * @example
 * parseQuantity("7-1/2 in", "length", "mm"); // { ok: true, quantity: { value: 190.5, plus: 0, minus: 0 } }
 */
export function parseQuantity(
  input: string | number,
  kind: QuantityKind,
  fileUnits: FileUnits,
): QuantityReading {
  const read = String(input);
  try {
    return { ok: true, quantity: readQuantity(input, kind, fileUnits) };
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    return { ok: false, error: { code: error.code, kind, read, ...error.details } };
  }
}

function readQuantity(input: string | number, kind: QuantityKind, fileUnits: FileUnits): Measured {
  if (typeof input === "number") {
    if (!Number.isFinite(input)) throw new Unreadable("not-finite");
    return { value: convertValue(exactly(input), bareUnit(kind, fileUnits), kind), plus: 0, minus: 0 };
  }
  if (input.length > LONGEST) throw new Unreadable("too-long");
  if (input.trim() === "") throw new Unreadable("empty");
  const text = normaliseQuantity(input);
  if (text.includes(",")) throw new Unreadable("comma");

  const negative = text.startsWith("-");
  const amount = readTerms(/^[+-]/u.test(text) ? text.slice(1).trimStart() : text);
  const tolerance = readTolerance(amount.rest);
  const valueTerms = lendUnit(amount.terms, tolerance, kind, fileUnits);
  const only = valueTerms.length === 1 ? valueTerms[0] : undefined;
  const bare = only !== undefined && only.unit === undefined;
  if (bare && only.asFraction && kind === "length" && fileUnits === "mm") {
    throw new Unreadable("fraction-without-unit");
  }
  const value = sumTerms(valueTerms, kind, fileUnits, negative);
  if (tolerance === undefined) return { value, plus: 0, minus: 0 };
  const lent = valueTerms.at(-1)?.unit;
  return {
    value,
    plus: toleranceSize(tolerance.plus, lent, value, kind, fileUnits),
    minus: toleranceSize(tolerance.minus, lent, value, kind, fileUnits),
  };
}

/** The numbers with units that a text starts with, and what follows them. */
function readTerms(text: string): { terms: Term[]; rest: string } {
  const terms: Term[] = [];
  let rest = text;
  do {
    const number = readNumber(rest);
    if (!number.ok) throw new Unreadable(number.code);
    rest = rest.slice(number.length).trimStart();
    const unit = UNIT.exec(rest)?.[0];
    if (unit !== undefined) rest = rest.slice(unit.length).trimStart();
    terms.push({ number: number.value, unit, asFraction: number.asFraction });
  } while (/^[\d.]/u.test(rest));
  return { terms, rest };
}

const UNIT =
  /^(?:["'%]|°\s?[CFcf]?(?![A-Za-z])|[A-Za-zµ]+(?:\s*\/\s*[A-Za-z]+(?:\^?3|³)?|\^?[23](?![\d./"']|\s*[A-Za-z])|[²³])?\.?)/u;

/** `± a` or `+a/-b`, either side first; undefined where nothing is left to read. */
function readTolerance(text: string): { plus: Term; minus: Term } | undefined {
  if (text === "") return undefined;
  const sign = text.charAt(0);
  if (!"±+-".includes(sign)) throw new Unreadable("number-unreadable");
  const first = readSide(text.slice(1));
  if (sign === "±") {
    if (first.rest !== "") throw new Unreadable("tolerance-unreadable");
    return { plus: first.term, minus: first.term };
  }
  const other = /^\/?\s*([+-]?)(.+)$/su.exec(first.rest);
  const otherSign = other?.[1] ?? "";
  const second = other === null ? undefined : readSide(other[2] ?? "");
  if (second === undefined || second.rest !== "" || otherSign === sign)
    throw new Unreadable("tolerance-unreadable");
  // Only nought has no direction.
  if (otherSign === "" && !second.term.number.equals(0)) throw new Unreadable("tolerance-unreadable");
  const a = { ...first.term, unit: first.term.unit ?? second.term.unit };
  const b = { ...second.term, unit: second.term.unit ?? first.term.unit };
  return sign === "+" ? { plus: a, minus: b } : { plus: b, minus: a };
}

function readSide(text: string): { term: Term; rest: string } {
  const number = readNumber(text.trimStart());
  if (!number.ok) throw new Unreadable("tolerance-unreadable");
  const { terms, rest } = readTerms(text.trimStart());
  const [term] = terms;
  if (term === undefined || terms.length > 1) throw new Unreadable("tolerance-unreadable");
  return { term, rest };
}

/**
 * A value without a unit before a tolerance with one is in the file's units, if the two go together; a share takes the per
 * cent after it.
 */
function lendUnit(
  terms: Term[],
  tolerance: { plus: Term } | undefined,
  kind: QuantityKind,
  fileUnits: FileUnits,
): Term[] {
  const [only] = terms;
  const lent = tolerance?.plus.unit;
  if (only === undefined || terms.length > 1 || only.unit !== undefined || lent === undefined) return terms;
  if (kind === "share") return [{ ...only, unit: lent }];
  if (lent === "%") return terms;
  const bare = BARE_UNITS[fileUnits][kind];
  if (!goTogether(resolveUnit(lent, kind), bare)) {
    throw new Unreadable("tolerance-other-unit", { unit: lent, found: bare });
  }
  return [{ ...only, unit: bare }];
}

/** Finer units in which the tolerance of a bare value is told, by the unit of the value. */
const FINER: Readonly<Record<string, readonly string[]>> = { in: ["thou"] };

/** Whether a unit is the one that bare numbers are in, or a finer one beside which no other can be meant. */
const goTogether = (unit: Unit, bare: string): boolean =>
  unit.abbreviation === findUnit(bare)?.abbreviation || (FINER[bare]?.includes(unit.abbreviation) ?? false);

function sumTerms(
  terms: readonly Term[],
  kind: QuantityKind,
  fileUnits: FileUnits,
  negative: boolean,
): number {
  const [first, ...others] = terms;
  if (first === undefined) throw new Unreadable("number-unreadable");
  let unit = first.unit === undefined ? bareUnit(kind, fileUnits) : resolveUnit(first.unit, kind);
  if (others.length === 0) return convertValue(negative ? first.number.neg() : first.number, unit, kind);
  if (first.unit === undefined) throw new Unreadable("number-unreadable");
  let sum = unit === undefined ? first.number : first.number.mul(unit.factor);
  for (const term of others) {
    if (term.unit === undefined) throw new Unreadable("unit-missing");
    const next = resolveUnit(term.unit, kind);
    const descends = unit !== undefined && next.factor.lt(unit.factor);
    if (!descends || !IN_PARTS.includes(kind)) throw new Unreadable("parts-out-of-order");
    sum = sum.add(term.number.mul(next.factor));
    unit = next;
  }
  return (negative ? sum.neg() : sum).valueOf();
}

function toleranceSize(
  term: Term,
  lent: string | undefined,
  value: number,
  kind: QuantityKind,
  fileUnits: FileUnits,
): number {
  if (term.unit === "%" && kind !== "share" && kind !== "temperature") {
    return (term.number.valueOf() / 100) * Math.abs(value);
  }
  const name = term.unit ?? lent;
  const unit = name === undefined ? bareUnit(kind, fileUnits) : resolveUnit(name, kind);
  return toInternal(unit === undefined ? term.number : term.number.mul(unit.factor), kind);
}

function bareUnit(kind: QuantityKind, fileUnits: FileUnits): Unit | undefined {
  return kind === "share" ? undefined : findUnit(BARE_UNITS[fileUnits][kind]);
}

function resolveUnit(name: string, kind: QuantityKind): Unit {
  const unit = findUnit(name);
  if (unit?.kind === kind) return unit;
  if (unit !== undefined) throw new Unreadable("unit-wrong-kind", { unit: name, found: unit.kind });
  if (kind === "angle" && isGradian(name)) throw new Unreadable("unit-gradian", { unit: name });
  const foreign = measureOfForeignUnit(name);
  if (foreign === kind) throw new Unreadable("unit-not-taken", { unit: name });
  if (foreign !== undefined) throw new Unreadable("unit-wrong-kind", { unit: name, found: foreign });
  const nearest = nearestUnit(name, kind);
  throw new Unreadable("unit-unknown", { unit: name, ...(nearest === undefined ? {} : { nearest }) });
}

function convertValue(number: Fraction, unit: Unit | undefined, kind: QuantityKind): number {
  return toInternal(unit === undefined ? number : number.sub(unit.offset).mul(unit.factor), kind);
}

function toInternal(exact: Fraction, kind: QuantityKind): number {
  return kind === "angle" ? exact.valueOf() * RADIANS_PER_DEGREE : exact.valueOf();
}
