import {
  type FileUnits,
  formatMass,
  formatNumber,
  formatShare,
  formatVolume,
  GRAMS_PER_POUND,
  mmToInches,
} from "@scantling/geometry/units";
import { type DualText, dualText } from "../../label-text.js";
import { mainUnits, type SheetUnits } from "../../sheet-units.js";

/** A length in the unit of an axis. */
export const axisLength = (mm: number, units: SheetUnits): number =>
  mainUnits(units) === "mm" ? mm : mmToInches(mm);

/** An area in the unit of an axis. */
export const axisArea = (mm2: number, units: SheetUnits): number =>
  mainUnits(units) === "mm" ? mm2 : mmToInches(mmToInches(mm2));

/** A mass in the unit of an axis: g, or ounces. */
export const axisMass = (grams: number, units: SheetUnits): number =>
  mainUnits(units) === "mm" ? grams : (16 * grams) / GRAMS_PER_POUND;

/** What an axis of lengths counts. */
export const lengthUnit = (units: SheetUnits): string => (mainUnits(units) === "mm" ? "mm" : "inches");

/** Below these a mass has one digit more. */
const SMALL_GRAMS = 10;

/** A row of the ledger: to 1 g, below 10 g to 0.1 g; to 0.1 oz, below a pound to 0.01 oz; less is said to be less. */
export function rowMass(grams: number, units: FileUnits): string {
  const fine = grams < (units === "mm" ? SMALL_GRAMS : GRAMS_PER_POUND);
  const step = units === "mm" ? (fine ? 0.1 : 1) : fine ? 0.01 : 0.1;
  const text = formatMass(grams, units, step);
  return grams > 0 && !/[1-9]/.test(text) ? `<${formatMass(inGrams(step, units), units, step)}` : text;
}

const inGrams = (value: number, units: FileUnits): number =>
  units === "mm" ? value : (value * GRAMS_PER_POUND) / 16;

/** A volume in the sheet's unit, and in the other one: to 0.1 cm³ and 0.01 in³. */
export const volumeText = (mm3: number, units: SheetUnits): DualText =>
  dualText(units, (shown) => formatVolume(mm3, shown, shown === "mm" ? 0.1 : 0.01));

/** Below this a share is only said to be small. */
const SMALLEST_SHARE = 0.0005;

/** A share to whole per cent; below one to a tenth. */
export function percent(share: number): string {
  if (!Number.isFinite(share)) return "out of reach";
  if (share > 0 && share < SMALLEST_SHARE) return "<0.1 %";
  return formatShare(share, share < 0.01 ? 0.1 : 1);
}

/** Money to two decimals. */
export const money = (cost: number, currency: string | undefined): string =>
  `${cost.toFixed(2)}${currency === undefined ? "" : ` ${currency}`}`;

/** A plain count or size without trailing zeros. */
export const plainNumber = (value: number): string => formatNumber(value, 1);
