import { formatDecimals, formatRule, formatRuleUp, mmToInches } from "@scantling/geometry/units";
import { type DualText, dualText } from "../../label-text.js";
import { inDecimals, type SheetUnits } from "../../sheet-units.js";

/** Step of a rule where inches are not fractions. */
const HUNDREDTH = 0.01;

const inchStep = (units: SheetUnits): number | undefined => (inDecimals(units) ? HUNDREDTH : undefined);

/** A length laid off with a rule on hot steel, as the bench card tells it. */
export const ruleText = (mm: number, units: SheetUnits): DualText =>
  dualText(units, (shown) => formatRule(mm, shown, inchStep(units)));

/** The same, never shorter than it is: for a mark that parts what both sides need. */
export const ruleUpText = (mm: number, units: SheetUnits): DualText =>
  dualText(units, (shown) => formatRuleUp(mm, shown, inchStep(units)));

/**
 * A size that is hammered to, tenths of a mm or hundredths of an inch, with its last zeros, so that all are seen to be as
 * fine: `0.20"` beside `0.18"`.
 */
export const hammeredText = (mm: number, units: SheetUnits): DualText =>
  dualText(units, (shown) =>
    shown === "mm" ? `${formatDecimals(mm, 1)} mm` : `${formatDecimals(mmToInches(mm), 2)}"`,
  );
