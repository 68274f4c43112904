import {
  type FileUnits,
  formatCaliper,
  formatLength,
  formatMass,
  mmToInches,
} from "@scantling/geometry/units";
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

/**
 * A size as it is called: mm to 0.01, and inches to 0.001, as a caliper shows them; what is a fraction stands as one, for so
 * drills and bars are called.
 */
export function sizeText(mm: number, units: SheetUnits): DualText {
  return dualText(units, (shown) => {
    if (shown === "mm") return formatLength(mm, "mm");
    return !inDecimals(units) && isFraction(mm)
      ? formatLength(mm, "in", { remainder: false })
      : formatCaliper(mm, "in");
  });
}

/** Sizes nearer to a 64th of an inch than this are that fraction, mm. */
const SAME_SIZE = 1e-4;

function isFraction(mm: number): boolean {
  const steps = mmToInches(mm) * 64;
  return Math.abs(steps - Math.round(steps)) < mmToInches(SAME_SIZE) * 64;
}

/** The same for a column of sizes, all with their last zeros, so that they are seen to be as fine. */
export const caliperCell = (mm: number, units: SheetUnits): DualText =>
  dualText(units, (shown) => formatCaliper(mm, shown));

/** A mass for the title block: g to 1 g, ounces to 0.1. */
export function massText(grams: number, units: SheetUnits): DualText {
  return dualText(units, (shown) => formatMass(grams, shown, shown === "mm" ? 1 : 0.1));
}

/** A figure line by line. */
export const linesOf = ({ main, other }: DualText): string[] =>
  other === undefined ? [main] : [main, other];

/** Both on one line: `225 mm [8 55/64"]`. */
export const onOneLine = (text: DualText): string => linesOf(text).join(" ");
