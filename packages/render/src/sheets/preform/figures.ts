import { formatLength, formatNumber, inchesToMm, mmToInches } from "@scantling/geometry/units";
import { type DualText, dualText } from "../../label-text.js";
import { inDecimals, mainUnits, type SheetUnits } from "../../sheet-units.js";

/**
 * What can be told on hot steel: halves of a mm along and across, tenths through; 1/32 in, hundredths of an inch, and these
 * both ways where inches are not fractions.
 */
const RULE = { mm: 0.5, in: 1 / 32 } as const;
const THICK = { mm: 0.1, in: 0.01 } as const;

const ruleOf = (units: SheetUnits): { readonly mm: number; readonly in: number } =>
  inDecimals(units) ? { ...RULE, in: THICK.in } : RULE;

/** A length laid off with a rule on hot steel. */
export const ruleText = (mm: number, units: SheetUnits): DualText =>
  dualText(units, (shown) => formatLength(mm, shown, { resolution: ruleOf(units)[shown], remainder: false }));

/** The same, never shorter than it is: for a mark that parts what both sides need. */
export function ruleUpText(mm: number, units: SheetUnits): DualText {
  const rule = ruleOf(units);
  const step = mainUnits(units) === "mm" ? rule.mm : inchesToMm(rule.in);
  return ruleText(Math.ceil(mm / step - HAIR) * step, units);
}

/** A length this little over a step, in steps, is a double's last digit. */
const HAIR = 1e-6;

/** A thickness that is hammered to, with its last zeros, so that all are seen to be as fine: `0.20"` beside `0.18"`. */
export const thickText = (mm: number, units: SheetUnits): DualText =>
  dualText(units, (shown) =>
    shown === "mm"
      ? `${Number(formatNumber(mm, THICK.mm)).toFixed(1)} mm`
      : `${Number(formatNumber(mmToInches(mm), THICK.in)).toFixed(2)}"`,
  );
