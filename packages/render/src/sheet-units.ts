import type { FileUnits } from "@scantling/geometry/units";

/** How the figures of a sheet are written. */
export interface FigureStyle {
  /** Units that come first, and in which steps and axes are chosen. */
  readonly main: FileUnits;
  /** Whether the other units follow in brackets. */
  readonly both: boolean;
  /** `7 7/8"`, or `7.875"`. */
  readonly inches: "fractions" | "decimals";
}

/** Units of a sheet. A plain word stands for those units with the others in brackets, inches as fractions. */
export type SheetUnits = FileUnits | FigureStyle;

/** The style that the units of a sheet stand for. */
export const styleOf = (units: SheetUnits): FigureStyle =>
  typeof units === "string" ? { main: units, both: true, inches: "fractions" } : units;

/** The units that come first. */
export const mainUnits = (units: SheetUnits): FileUnits => styleOf(units).main;

/** The units in brackets; undefined on a sheet that has none. */
export function besideUnits(units: SheetUnits): FileUnits | undefined {
  const { main, both } = styleOf(units);
  if (!both) return undefined;
  return main === "mm" ? "in" : "mm";
}

/** Whether inches are written without fractions. */
export const inDecimals = (units: SheetUnits): boolean => styleOf(units).inches === "decimals";

/** What the title block says of the units. */
export function unitsWords(units: SheetUnits): string {
  const [main, other] = mainUnits(units) === "mm" ? ["mm", "inches"] : ["inches", "mm"];
  return besideUnits(units) === undefined ? main : `${main} [${other}]`;
}
