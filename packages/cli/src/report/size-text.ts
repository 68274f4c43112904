import type { FitKind } from "@scantling/geometry";
import {
  type FileUnits,
  formatAngle,
  formatDensity,
  formatMass,
  formatShare,
  parseQuantity,
} from "@scantling/geometry/units";
import { type Figure, LENGTH_FIGURES, MASS_FIGURES } from "./figures.js";

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

function exactly(
  figures: readonly Figure[],
  kind: "length" | "mass",
  value: number,
  units: FileUnits,
): string {
  const shown = figures.map((figure) => figure(value, units));
  const exact = shown.find((text) => {
    const read = parseQuantity(text, kind, units);
    return read.ok && Math.abs(read.quantity.value - value) <= UNSEEN;
  });
  return exact ?? shown[1] ?? formatMass(value, units);
}
