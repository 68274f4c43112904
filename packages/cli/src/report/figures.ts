import {
  type FileUnits,
  formatLength,
  formatMass,
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
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

export function otherUnits(units: FileUnits): FileUnits {
  return units === "mm" ? "in" : "mm";
}

/** To 1 g, or 0.1 oz. */
export function massText(grams: number, units: FileUnits): string {
  return units === "mm" ? `${fixed(grams, 0)} g` : formatMass(grams, "in", 0.1);
}

/** To 0.01 g or 0.01 oz, for masses that are to add up and for small differences. */
const fineMassText: Figure = (grams, units) =>
  units === "mm" ? `${fixed(grams, 2)} g` : formatMass(grams, "in", 0.01);

/** To 1 g, or in ounces to 0.01 below a pound, where 0.1 would leave parts that do not add up. */
export function partMassText(grams: number, units: FileUnits): string {
  return units === "in" && grams < GRAMS_PER_POUND ? fineMassText(grams, units) : massText(grams, units);
}

/** To 0.1 cm³, or 0.01 in³. */
export function volumeText(mm3: number, units: FileUnits): string {
  return units === "mm" ? `${fixed(mm3 / CM3, 1)} cm³` : `${fixed(mm3 / INCH3, 2)} in³`;
}

/** To 0.1 mm, or the nearest 1/64 in. */
export function lengthText(mm: number, units: FileUnits): string {
  return units === "mm" ? `${fixed(mm, 1)} mm` : formatLength(mm, "in", { remainder: false });
}

/** Coarse ones first: the first that shows a difference is enough. */
export const MASS_FIGURES: readonly Figure[] = [
  massText,
  fineMassText,
  (grams, units) => (units === "mm" ? `${fixed(grams, 4)} g` : formatMass(grams, "in", 0.0001)),
];

/** The same for lengths: tenths of a mm or 64ths of an inch, then what a micrometer shows. */
export const LENGTH_FIGURES: readonly Figure[] = [
  lengthText,
  (mm, units) => (units === "mm" ? `${fixed(mm, 2)} mm` : formatLength(mm, "in", { resolution: 0.001 })),
  (mm, units) => (units === "mm" ? `${fixed(mm, 4)} mm` : formatLength(mm, "in", { resolution: 0.0001 })),
];

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
