/**
 * The only place where conversion constants stand.
 *
 * Source: international yard and pound agreement, 1959: 1 yd = 0.9144 m exactly, so 1 in = 25.4 mm exactly;
 * 1 lb = 0.45359237 kg exactly, and 1 oz is a sixteenth of it.
 */

/** mm in an inch, exact. */
export const MM_PER_INCH = 25.4;
/** Grams in an avoirdupois pound, exact. */
export const GRAMS_PER_POUND = 453.59237;
/** Grams in an avoirdupois ounce, exact: a pound over 16. */
export const GRAMS_PER_OUNCE = 28.349523125;
/** Radians in a degree. */
export const RADIANS_PER_DEGREE = Math.PI / 180;
/** °F at 0 °C, exact by definition. */
export const FAHRENHEIT_AT_ZERO_CELSIUS = 32;
/** Fahrenheit degrees in a Celsius degree, exact by definition. */
export const FAHRENHEIT_PER_CELSIUS = 1.8;
