import { type FileUnits, formatLength, inchesToMm } from "@scantling/geometry/units";
import type { DualText } from "../../label-text.js";

/** What can be told on hot steel: halves of a mm along and across, tenths through; 1/32 in, hundredths of an inch. */
const RULE = { mm: 0.5, in: 1 / 32 } as const;
const THICK = { mm: 0.1, in: 0.01 } as const;

const dual = (units: FileUnits, write: (units: FileUnits) => string): DualText => ({
  main: write(units),
  other: `[${write(units === "mm" ? "in" : "mm")}]`,
});

/** A length laid off with a rule on hot steel. */
export const ruleText = (mm: number, units: FileUnits): DualText =>
  dual(units, (shown) => formatLength(mm, shown, { resolution: RULE[shown], remainder: false }));

/** The same, never shorter than it is: for a mark that parts what both sides need. */
export function ruleUpText(mm: number, units: FileUnits): DualText {
  const step = units === "mm" ? RULE.mm : inchesToMm(RULE.in);
  return ruleText(Math.ceil(mm / step - HAIR) * step, units);
}

/** A length this little over a step, in steps, is a double's last digit. */
const HAIR = 1e-6;

/** A thickness that is hammered to. */
export const thickText = (mm: number, units: FileUnits): DualText =>
  dual(units, (shown) => formatLength(mm, shown, { resolution: THICK[shown], remainder: false }));
