import {
  type FileUnits,
  formatLength,
  formatRule,
  formatRuleUp,
  inchesToMm,
  mmToInches,
} from "@scantling/geometry/units";
import { type Figure, fixed } from "./figures.js";

/** A length or height on the bar, laid off with a rule; the preform's sheet tells the same. */
export const ruleText: Figure = (mm, units) => formatRule(mm, units);

/** The same, never shorter than it is: for marks that part what both sides need. */
export const ruleUpText: Figure = (mm, units) => formatRuleUp(mm, units);

/** The same in a column whose head says the unit, mm with its last zero. */
export const ruleCell: Figure = (mm, units) => {
  const text = unitless(ruleText(mm, units));
  return units === "mm" ? fixed(Number(text), 1) : text;
};

/** A place along the bar in such a column. */
export const placeCell: Figure = (mm, units) => unitless(ruleText(mm, units)).replace(/^-/u, "−");

/** What is sawn, or has to take something in, is told in whole mm or to this. */
const INCH_STEP = 1 / 16;
/** A length this little over a step, in steps, is a double's last digit. */
const HAIR = 1e-6;

/** Room that is wanted, never less than it is: wood to saw, an oven, a depth of oil. */
export const roomText: Figure = (mm, units) =>
  formatLength(roomSize(mm, units), units, { resolution: units === "mm" ? 1 : INCH_STEP, remainder: false });

function roomSize(mm: number, units: FileUnits): number {
  const step = units === "mm" ? 1 : inchesToMm(INCH_STEP);
  return Math.ceil(mm / step - HAIR) * step;
}

/**
 * A block for a pair of slabs: two as each is told to be sawn, so that both come out of it, and the saw cut between them.
 *
 * @param one - Thickness of a slab, mm.
 * @param pair - Of both with the cut, mm.
 */
export const pairText = (one: number, pair: number, units: FileUnits): string =>
  roomText(2 * roomSize(one, units) + (pair - 2 * one), units);

/** A thickness that is hammered or ground to: tenths of a mm, hundredths of an inch. */
export const hammeredText: Figure = (mm, units) =>
  units === "mm" ? `${fixed(mm, 1)} mm` : `${fixed(mmToInches(mm), 2)}"`;

/** A number in a table whose head says the unit. */
export const unitless = (text: string): string => text.replace(/(?: mm|")$/u, "");
