import { type FileUnits, formatLength, formatMass } from "@scantling/geometry/units";
import { besideUnits, inDecimals, mainUnits, type SheetUnits } from "./sheet-units.js";

/** A figure in the sheet's own unit, and the same in the other one where the sheet shows both. */
export interface DualText {
  readonly main: string;
  readonly other?: string;
}

/** A figure as the sheet shows it: in its own unit, and in brackets in the other one where it has both. */
export function dualText(units: SheetUnits, write: (units: FileUnits) => string): DualText {
  const other = besideUnits(units);
  const main = trueMinus(write(mainUnits(units)));
  return other === undefined ? { main } : { main, other: `[${trueMinus(write(other))}]` };
}

const trueMinus = (text: string): string => text.replace(/^-/, "−");

/** Step of inches that are not fractions: what a caliper tells. */
const DECIMALS = { resolution: 0.001 } as const;

/** A length to be laid off with a tape: mm, and inches to the nearest 1/64 or 0.001. */
export function lengthText(mm: number, units: SheetUnits): DualText {
  return dualText(units, (shown) =>
    formatLength(mm, shown, shown === "in" && inDecimals(units) ? DECIMALS : { remainder: false }),
  );
}

/** A size to be read off a caliper: mm to 0.01, and inches as a fraction where that is exact, else to 0.001. */
export function caliperText(mm: number, units: SheetUnits): DualText {
  return dualText(units, (shown) =>
    shown === "mm" ? formatLength(mm, "mm") : caliperInches(mm, inDecimals(units)),
  );
}

function caliperInches(mm: number, decimals: boolean): string {
  const fraction = formatLength(mm, "in");
  return decimals || /[+−]$/.test(fraction) ? formatLength(mm, "in", DECIMALS) : fraction;
}

/** A mass for the title block: g to 1 g, ounces to 0.1. */
export function massText(grams: number, units: SheetUnits): DualText {
  return dualText(units, (shown) => formatMass(grams, shown, shown === "mm" ? 1 : 0.1));
}

/** A figure line by line. */
export const linesOf = ({ main, other }: DualText): string[] => (other === undefined ? [main] : [main, other]);

/** Both on one line: `225 mm [8 55/64"]`. */
export const onOneLine = (text: DualText): string => linesOf(text).join(" ");
