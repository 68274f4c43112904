import {
  type FileUnits,
  formatCaliper,
  formatDecimals,
  formatLength,
  formatMass,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  MM_PER_INCH,
} from "@scantling/geometry/units";

/**
 * Numbers as reports show them: with no more digits than the computation or the work can mean. The first unit is
 * that of the reader; the other one stands behind it in brackets where both help.
 */

const CM3 = 1000;
const INCH3 = MM_PER_INCH ** 3;

/** A fixed number of decimals, without a negative zero. */
export const fixed = (value: number, decimals: number): string => formatDecimals(value, decimals);

export function otherUnits(units: FileUnits): FileUnits {
  return units === "mm" ? "in" : "mm";
}

/** To 1 g, or 0.1 oz: of a whole knife, a bar, and what is known no better. */
export function massText(grams: number, units: FileUnits): string {
  return units === "mm" ? `${fixed(grams, 0)} g` : formatMass(grams, "in", 0.1);
}

/** Below this a mass of a ledger has one digit more, g: a tenth of it would otherwise be rounded away. */
const SMALL_MASS = 10;
/** The same of volumes, cm³ and in³. */
const SMALL_VOLUME: Readonly<Record<FileUnits, number>> = { mm: 1, in: 0.1 };

/**
 * A mass of a ledger, a part, or a difference of two: to 1 g, below 10 g to 0.1 g; to 0.1 oz, below a pound to 0.01 oz. Only what
 * is nothing at all is `0`.
 */
export function fineMassText(grams: number, units: FileUnits): string {
  if (isNothing(grams)) return units === "mm" ? "0 g" : "0 oz";
  if (units === "mm") return `${stepped(grams, SMALL_MASS, 1)} g`;
  return Math.abs(grams) < GRAMS_PER_POUND ? hundredths(grams, "in") : massText(grams, "in");
}

/** To 0.01 g or 0.01 oz, with both decimals where there are no pounds. */
const hundredths: Figure = (grams, units) => {
  if (units === "mm") return `${fixed(grams, 2)} g`;
  const ounces = fixed(grams / GRAMS_PER_OUNCE, 2);
  return Math.abs(Number(ounces)) < OUNCES_PER_POUND ? `${ounces} oz` : formatMass(grams, "in", 0.01);
};

const OUNCES_PER_POUND = 16;

/** To 0.1 cm³, below 1 cm³ to 0.01; to 0.01 in³, below 0.1 in³ to 0.001. Only what is nothing at all is `0`. */
export function volumeText(mm3: number, units: FileUnits): string {
  const unit = units === "mm" ? "cm³" : "in³";
  if (isNothing(mm3)) return `0 ${unit}`;
  const value = mm3 / (units === "mm" ? CM3 : INCH3);
  return `${stepped(value, SMALL_VOLUME[units], units === "mm" ? 2 : 3)} ${unit}`;
}

/** With `decimals` below `small`, with one fewer from there on. */
function stepped(value: number, small: number, decimals: number): string {
  const fine = fixed(value, decimals);
  return Math.abs(Number(fine)) < small ? fine : fixed(value, decimals - 1);
}

/** g, mm³: the last digits of sums. */
const isNothing = (value: number): boolean => Math.abs(value) < 1e-9;

/** To 0.1 mm, or the nearest 1/64 in. */
export function lengthText(mm: number, units: FileUnits): string {
  const text = units === "mm" ? `${fixed(mm, 1)} mm` : formatLength(mm, "in", { remainder: false });
  return text.replace(/^-/u, "−");
}

/** Coarse ones first: the first that shows a difference is enough. */
export const MASS_FIGURES: readonly Figure[] = [
  massText,
  hundredths,
  (grams, units) => (units === "mm" ? `${fixed(grams, 4)} g` : formatMass(grams, "in", 0.0001)),
];

/** The same for lengths: tenths of a mm or 64ths of an inch, then what a micrometer shows. */
export const LENGTH_FIGURES: readonly Figure[] = [
  lengthText,
  formatCaliper,
  (mm, units) => `${fixed(units === "mm" ? mm : mm / MM_PER_INCH, 4)}${units === "mm" ? " mm" : '"'}`,
];

/** With `+` or `−` before it; what is shown as nothing has no sign. */
export function signedText(figure: Figure, value: number, units: FileUnits): string {
  const size = figure(Math.abs(value), units);
  if (!/[1-9]/u.test(size)) return size;
  return `${value < 0 ? "−" : "+"}${size}`;
}

/** `12.5 mm ahead of the heel`, `12.5 mm behind the heel`, `at the heel`. */
export function placeText(x: number, units: FileUnits, place = "the heel"): string {
  const size = lengthText(Math.abs(x), units);
  if (!/[1-9]/u.test(size)) return `at ${place}`;
  return `${size} ${x < 0 ? "behind" : "ahead of"} ${place}`;
}

/** A share as whole per cent; what is not nothing but rounds to it is `<1 %`. */
export function percentText(share: number): string {
  const percent = fixed(share * 100, 0);
  return percent === "0" && share > 0 ? "<1 %" : `${percent} %`;
}

export type Figure = (value: number, units: FileUnits) => string;

/** In the reader's units, then the other ones: `545 g (1 lb 3.2 oz)`. */
export function inBoth(figure: Figure, value: number, units: FileUnits): string {
  return `${figure(value, units)} (${figure(value, otherUnits(units))})`;
}

/** `521 g to 569 g`. */
export function range(figure: Figure, [low, high]: readonly [number, number], units: FileUnits): string {
  return `${figure(low, units)} to ${figure(high, units)}`;
}
