import { type FileUnits, formatAngle, formatLength, formatMass } from "@scantling/geometry/units";
import type { Measured } from "../../measure.js";
import { besideUnits } from "../sheet-units.js";

/** The lowest and the highest that is promised. */
export type Limits = readonly [low: number, high: number];

/** How a value and its limits are written. */
export interface Shows {
  readonly value: (value: number) => string;
  readonly within: (limits: Limits) => string;
}

/** A figure, and the same in the other units in brackets where the sheets show both. */
const inUnits = (
  write: (units: FileUnits) => string,
  units: FileUnits,
  beside: FileUnits | undefined,
): string => (beside === undefined ? write(units) : `${write(units)} (${write(beside)})`);

export const lengthIn = (mm: number, units: FileUnits, step: number): string =>
  formatLength(mm, units, units === "mm" ? { resolution: step } : { remainder: false });

export const lengths = (units: FileUnits, beside: FileUnits | undefined): Shows => ({
  value: (mm) => inUnits((shown) => lengthIn(mm, shown, 0.1), units, beside),
  within: ([low, high]) => `${lengthIn(low, units, 0.1)} to ${lengthIn(high, units, 0.1)}`,
});

/** What a caliper shows; what is thinner than its own tenths in finer steps. */
export const thinLengths = (
  units: FileUnits,
  beside: FileUnits | undefined,
  steps: Readonly<Record<FileUnits, number>> = { mm: 0.1, in: 0.005 },
): Shows => {
  const thinIn = (mm: number, shown: FileUnits): string =>
    formatLength(mm, shown, { resolution: steps[shown] });
  return {
    value: (mm) => inUnits((shown) => thinIn(mm, shown), units, beside),
    within: ([low, high]) => `${thinIn(low, units)} to ${thinIn(high, units)}`,
  };
};

/** Behind the edge a tenth of a millimetre is a quarter of the whole. */
export const BEHIND_EDGE_STEPS: Readonly<Record<FileUnits, number>> = { mm: 0.01, in: 0.001 };

export function masses({ units, shopPlaces }: Measured["job"]): Shows {
  const massIn = (grams: number, shown: FileUnits): string =>
    formatMass(grams, shown, shown === "mm" ? 1 : 0.1);
  const beside = besideUnits({ units, shopPlaces });
  return {
    value: (grams) => inUnits((shown) => massIn(grams, shown), units, beside),
    within: ([low, high]) => `${massIn(low, units)} to ${massIn(high, units)}`,
  };
}

export const places = (units: FileUnits, beside: FileUnits | undefined): Shows => {
  const size = (mm: number, shown: FileUnits): string => lengthIn(Math.abs(mm), shown, 1);
  const side = (mm: number): string => (mm < 0 ? "behind" : "ahead of");
  return {
    value: (mm) => `${inUnits((shown) => size(mm, shown), units, beside)} ${side(mm)} the heel`,
    within: ([low, high]) =>
      low < 0 === high < 0
        ? `${size(low < 0 ? high : low, units)} to ${size(low < 0 ? low : high, units)} ${side(low)} it`
        : `${size(low, units)} behind to ${size(high, units)} ahead of it`,
  };
};

export const angles: Shows = {
  value: (angle) => formatAngle(angle, 0.5),
  within: ([low, high]) => `${formatAngle(low, 0.1)} to ${formatAngle(high, 0.1)}`,
};

export const counts: Shows = { value: String, within: ([low, high]) => `${low} to ${high}` };
