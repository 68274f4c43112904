import type { FitKind } from "@scantling/geometry";
import {
  degreesToRadians,
  type FileUnits,
  findUnit,
  formatLength,
  inchesToMm,
  radiansToDegrees,
} from "@scantling/geometry/units";

/** How a size stands in a file: in which unit, as a fraction or not, and what follows the number. */
export interface WrittenSize {
  readonly kind: FitKind;
  /** Abbreviation of its unit; empty for a plain share. */
  readonly unit: string;
  /** mm, g, degrees, g/mm³ or shares in one of its unit. */
  readonly factor: number;
  readonly isFraction: boolean;
  /** Unit and tolerance as they are written behind the number. */
  readonly suffix: string;
}

const BARE: Readonly<Record<FileUnits, Readonly<Record<FitKind, string>>>> = {
  mm: { length: "mm", mass: "g", angle: "deg", density: "g/cm3", share: "" },
  in: { length: "in", mass: "oz", angle: "deg", density: "lb/in3", share: "" },
};

const NUMBER = String.raw`\d+(?:\s+|-)\d+\/\d+|\d+\s*[¼-¾⅐-⅞]|[¼-¾⅐-⅞]|\d+\/\d+|\d*\.?\d+`;
const UNIT = String.raw`(?:\s*(?:["'%°]|[a-zA-Z][\w/³^]*))?`;
const TERMS = new RegExp(
  String.raw`^\s*((?:(?:${NUMBER})${UNIT}\s*)*?)(${NUMBER})(${UNIT})((?:\s*[±+-].*)?)$`,
  "u",
);

/**
 * How a size is written.
 *
 * @param source - as it stands in the file, quotes off; undefined where it is not there yet.
 * @returns undefined where it is written in a way that is not known here.
 */
export function readWritten(
  source: string | undefined,
  kind: FitKind,
  units: FileUnits,
): WrittenSize | undefined {
  if (source === undefined) return written(kind, BARE[units][kind], units === "in", "");
  const [, before = "", number, unit = "", tolerance = ""] = TERMS.exec(source) ?? [];
  if (number === undefined) return undefined;
  // A unit behind the tolerance alone is that of the file, or a part of it; only a share takes its per cent.
  const ofShare = kind === "share" && tolerance.includes("%") ? "%" : BARE[units][kind];
  const name = unit.trim() || ofShare;
  // Of "1 lb 2 oz" only the ounces are written from then on.
  const isFraction = /[/¼-¾⅐-⅞]/u.test(`${before}${number}`);
  return written(kind, name, isFraction, `${unit}${tolerance}`);
}

function written(kind: FitKind, name: string, isFraction: boolean, suffix: string): WrittenSize | undefined {
  if (name === "") return { kind, unit: "", factor: 1, isFraction, suffix };
  const unit = findUnit(name);
  if (unit === undefined || unit.kind !== kind) return undefined;
  return { kind, unit: unit.abbreviation, factor: unit.factor.valueOf(), isFraction, suffix };
}

/** A size as it is written, in the same unit and with the same tolerance. mm, g, rad, g/mm³ or a share. */
export function writeSize({ kind, unit, factor, isFraction, suffix }: WrittenSize, size: number): string {
  const plain = (kind === "angle" ? radiansToDegrees(size) : size) / factor;
  const fraction = isFraction && unit === "in" ? exactFraction(size) : undefined;
  return `${fraction ?? decimalText(plain)}${suffix}`;
}

/** Digits of a size as it is set: no tool shows more. */
const DIGITS = 9;

const decimalText = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** `5/32` where a length is a whole number of 64ths of an inch. */
function exactFraction(mm: number): string | undefined {
  const text = formatLength(mm, "in");
  const inches = Math.round(mm / inchesToMm(1 / 64)) * inchesToMm(1 / 64);
  return Math.abs(inches - mm) < SAME ? text.replace(/["+−]/gu, "") : undefined;
}

/** mm: rounding of what is written. */
const SAME = 1e-6;

/** What a tool shows of a size, coarse first, in units of the file: mm or inches, g or oz, degrees, g/cm³ or lb/in³. */
const STEPS: Readonly<Record<string, readonly number[]>> = {
  mm: [0.1, 0.05, 0.01],
  in: [1 / 64, 0.005, 0.001],
  g: [1, 0.5, 0.1],
  oz: [0.1, 0.05, 0.01],
  deg: [0.5, 0.25, 0.1],
  "g/cm³": [0.01, 0.005, 0.001],
  "lb/in³": [0.001, 0.0005, 0.0001],
  share: [0.01, 0.005, 0.001],
};
/** Of what is thin: an edge is ground by hundredths. */
const THIN_STEPS: Readonly<Record<string, readonly number[]>> = {
  mm: [0.05, 0.02, 0.01],
  in: [0.002, 0.001, 0.0005],
};
/** mm: what is thinner is thin. */
const THIN = 1;

/**
 * What a size can be set to, coarse first; mm, g, rad, g/mm³ or a share. It goes by the unit that it is written in.
 *
 * @param written - left out: by the file's own units.
 */
export function stepsOf(
  written: WrittenSize | undefined,
  kind: FitKind,
  drawn: number,
  units: FileUnits,
): readonly number[] {
  const isInch = written === undefined ? units === "in" : /^(?:in|ft|thou|oz)$|lb/u.test(written.unit);
  const metric = { length: "mm", mass: "g", angle: "deg", density: "g/cm³", share: "share" }[kind];
  const inch = { length: "in", mass: "oz", angle: "deg", density: "lb/in³", share: "share" }[kind];
  const name = isInch ? inch : metric;
  const steps =
    (kind === "length" && drawn > 0 && drawn < THIN ? THIN_STEPS[name] : undefined) ?? STEPS[name] ?? [];
  const factor = name === "share" ? 1 : (findUnit(name)?.factor.valueOf() ?? 1);
  return steps.map((step) => (kind === "angle" ? degreesToRadians(step) : step * factor));
}
