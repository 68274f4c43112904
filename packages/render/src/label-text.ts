import { type FileUnits, formatLength, formatMass } from "@scantling/geometry/units";

/** A figure in the sheet's own unit, and the same in the other one. */
export interface DualText {
  readonly main: string;
  readonly other: string;
}

const otherUnits = (units: FileUnits): FileUnits => (units === "mm" ? "in" : "mm");

const dual = (units: FileUnits, write: (units: FileUnits) => string): DualText => ({
  main: trueMinus(write(units)),
  other: `[${trueMinus(write(otherUnits(units)))}]`,
});

const trueMinus = (text: string): string => text.replace(/^-/, "−");

/** A length to be laid off with a tape: mm, and inches to the nearest 1/64. */
export function lengthText(mm: number, units: FileUnits): DualText {
  return dual(units, (shown) => formatLength(mm, shown, { remainder: false }));
}

/** A size to be read off a caliper: mm to 0.01, and inches as a fraction where that is exact, else to 0.001. */
export function caliperText(mm: number, units: FileUnits): DualText {
  return dual(units, (shown) => (shown === "mm" ? formatLength(mm, "mm") : caliperInches(mm)));
}

function caliperInches(mm: number): string {
  const fraction = formatLength(mm, "in");
  return /[+−]$/.test(fraction) ? formatLength(mm, "in", { resolution: 0.001 }) : fraction;
}

/** A mass for the title block: g to 1 g, ounces to 0.1. */
export function massText(grams: number, units: FileUnits): DualText {
  return dual(units, (shown) => formatMass(grams, shown, shown === "mm" ? 1 : 0.1));
}

/** Both on one line: `225 mm [8 55/64"]`. */
export const onOneLine = (text: DualText): string => `${text.main} ${text.other}`;
