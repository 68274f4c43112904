import { type Banded, type FigurePath, figureOf } from "@scantling/geometry";
import { type FileUnits, formatNumber, MM_PER_INCH, roundHalves } from "@scantling/geometry/units";

/** How a figure is written: as many of its own units to one that is shown, the unit, and the step it is rounded to. */
interface Form {
  readonly per: number;
  readonly unit: string;
  readonly step: number;
}

/** Steps of lengths in a file in inches, per step of a millimetre in one in mm: a fiftieth, rounded to what callipers show. */
const INCH_STEPS = 0.05;

function formOf(path: FigurePath, units: FileUnits): Form {
  const { quantity, step } = figureOf(path);
  if (quantity === "share") return { per: 0.01, unit: "%", step: step * 100 };
  if (quantity === "hours") return { per: 1, unit: "h", step };
  return units === "in"
    ? { per: MM_PER_INCH, unit: "in", step: step * INCH_STEPS }
    : { per: 1, unit: "mm", step };
}

/** Rounds to whole steps; the way there is exact in the last digit that is written. */
const rounded = (value: number, { per, step }: Form): number => roundHalves(value / per / step) * step;

/**
 * A number of a figure as a report shows it.
 *
 * @example
 * shownFigure("losses.scalePerHeat", 0.01234, "mm"); // "1.23 %"
 */
export function shownFigure(path: FigurePath, value: number, units: FileUnits): string {
  const form = formOf(path, units);
  return `${formatNumber(rounded(value, form), form.step)} ${form.unit}`;
}

/** Fine enough that reading a figure again gives the same one. */
const FINEST = 1e-6;

/** A figure as it stood, to be read again later: nothing of it is rounded away. */
export function exactFigureText(path: FigurePath, figure: Banded, units: FileUnits): string {
  return figureIn({ ...formOf(path, units), step: FINEST }, path, figure);
}

/**
 * A figure as the shop file writes it, with its band where the file keeps one: `1.48 % +0.4/-0.31 %`. A band is never rounded
 * to none. Its low side ends at nothing, unless the figure itself is less than that, as scale at a weld may seem to be.
 *
 * @example
 * figureText("losses.scalePerHeat", { value: 0.0148, low: 0.0117, high: 0.0188 }, "mm"); // "1.48 % +0.4/-0.31 %"
 */
export function figureText(path: FigurePath, figure: Banded, units: FileUnits): string {
  return figureIn(formOf(path, units), path, figure);
}

function figureIn(form: Form, path: FigurePath, figure: Banded): string {
  const show = (number: number): string => formatNumber(number, form.step);
  const value = rounded(figure.value, form);
  const text = `${show(value)} ${form.unit}`;
  if (!figureOf(path).banded || !(figure.high > figure.low)) return text;
  const plus = Math.max(form.step, rounded(figure.high, form) - value);
  const under = Math.max(form.step, value - rounded(figure.low, form));
  const minus = value < 0 ? under : Math.min(value, under);
  return show(plus) === show(minus)
    ? `${text} ± ${show(plus)} ${form.unit}`
    : `${text} +${show(plus)}/-${show(minus)} ${form.unit}`;
}
