import type { FitKind } from "@scantling/geometry";
import {
  type FileUnits,
  formatAngle,
  formatCaliper,
  formatDensity,
  formatLength,
  formatMass,
  formatShare,
  parseQuantity,
} from "@scantling/geometry/units";
import { type Figure, LENGTH_FIGURES, MASS_FIGURES, otherUnits } from "./figures.js";

/** mm, g: what rounding may do to a size without anyone seeing it. */
const UNSEEN = 1e-6;

/** A size with as few digits as show it whole; where none does, with those of a caliper or a fine scale. */
export function sizeText(kind: FitKind, value: number, units: FileUnits): string {
  switch (kind) {
    case "length":
      return exactly(LENGTH_FIGURES, "length", value, units);
    case "mass":
      return exactly(MASS_FIGURES, "mass", value, units);
    case "angle":
      return formatAngle(value, 0.01);
    case "density":
      return formatDensity(value, units);
    case "share":
      return formatShare(value);
  }
}

/**
 * A length as it is likely to have been written: in the units of the file where it is whole in them, else in the other ones with
 * those of the file in brackets.
 *
 * @example
 * asWritten(1, "in"); // '1 mm (0.039")'
 */
export function asWritten(mm: number, units: FileUnits): string {
  const caliper = formatCaliper(mm, units);
  const own = [formatLength(mm, units), caliper];
  const exact = own.find((text) => readsAs(text, "length", mm, units));
  if (exact !== undefined) return exact;
  const foreign = formatLength(mm, otherUnits(units));
  if (!readsAs(foreign, "length", mm, otherUnits(units))) return caliper;
  return `${foreign} (${caliper})`;
}

const readsAs = (text: string, kind: "length" | "mass", value: number, units: FileUnits): boolean => {
  const read = parseQuantity(text, kind, units);
  return read.ok && Math.abs(read.quantity.value - value) <= UNSEEN;
};

function exactly(
  figures: readonly Figure[],
  kind: "length" | "mass",
  value: number,
  units: FileUnits,
): string {
  const shown = figures.map((figure) => figure(value, units));
  const exact = shown.find((text) => readsAs(text, kind, value, units));
  return exact ?? shown[1] ?? formatMass(value, units);
}
