import { formatLength, inchesToMm, mmToInches } from "@scantling/geometry/units";
import { type Figure, fixed } from "./figures.js";

/** Inches on hot steel are told to this. */
const INCH_STEP = 1 / 16;
/** A length this little over a step, in steps, is a double's last digit. */
const HAIR = 1e-6;

/** A length laid off on hot steel: whole mm, or sixteenths of an inch. */
export const anvilText: Figure = (mm, units) =>
  units === "mm" ? `${fixed(mm, 0)} mm` : formatLength(mm, "in", { resolution: INCH_STEP, remainder: false });

/** What a bar is held against a rule for: halves of a mm, 1/32 in. */
const RULE_MM = 0.5;
const RULE_INCH = 1 / 32;

/** A height along the preform: halves of a mm, or 1/32 in. */
export const ruleText: Figure = (mm, units) =>
  units === "mm"
    ? `${fixed(Math.round(mm / RULE_MM) * RULE_MM, 1)} mm`
    : formatLength(mm, "in", { resolution: RULE_INCH, remainder: false });

/** The same as {@link anvilText}, never shorter than it is: for marks that part what both sides need. */
export const anvilUpText: Figure = (mm, units) => {
  const step = units === "mm" ? 1 : inchesToMm(INCH_STEP);
  return anvilText(Math.ceil(mm / step - HAIR) * step, units);
};

/** A thickness that is hammered or ground to: tenths of a mm, hundredths of an inch. */
export const hammeredText: Figure = (mm, units) =>
  units === "mm" ? `${fixed(mm, 1)} mm` : `${fixed(mmToInches(mm), 2)}"`;

/** A number in a table whose head says the unit. */
export const unitless = (text: string): string => text.replace(/(?: mm|")$/u, "");
