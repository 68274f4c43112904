import {
  degreesToRadians,
  type FileUnits,
  formatCaliper,
  GRAMS_PER_OUNCE,
  inchesToMm,
  radiansToDegrees,
  roundHalves,
} from "@scantling/geometry/units";
import type { FigureKind } from "./asks-text.js";
import { fixed, LENGTH_FIGURES, lengthText, MASS_FIGURES, massText } from "./figures.js";

/** In what steps a limit is told, in mm, g and rad. */
const STEPS: Readonly<Record<FileUnits, Readonly<Record<FigureKind, number>>>> = {
  mm: { mass: 1, length: 0.1, thin: 0.01, angle: degreesToRadians(0.1), count: 1 },
  in: {
    mass: GRAMS_PER_OUNCE / 10,
    length: inchesToMm(1 / 64),
    thin: inchesToMm(0.001),
    angle: degreesToRadians(0.1),
    count: 1,
  },
};

/** What a value on a step is off it by, as a share of the step. */
const ROUNDING = 1e-6;
/** How much finer than usual a limit can be told. */
const FINER = [1, 10, 100] as const;

/**
 * A limit that has to give way, and what it becomes: rounded the way in which that stays true, so that nothing which meets the
 * figure misses the text, with the fewest digits that tell the two apart.
 */
export function relaxedText(
  kind: FigureKind,
  from: number,
  to: number,
  units: FileUnits,
): { readonly from: string; readonly to: string } {
  const way = to > from ? "up" : "down";
  const shown = FINER.map((finer) => ({
    from: limitText(kind, from, "nearest", units, finer),
    to: limitText(kind, to, way, units, finer),
  }));
  return shown.find((each) => each.from !== each.to) ?? (shown[0] as (typeof shown)[number]);
}

/**
 * A limit as text.
 *
 * @param finer - how many times finer than usual.
 */
export function limitText(
  kind: FigureKind,
  value: number,
  way: "up" | "down" | "nearest",
  units: FileUnits,
  finer: (typeof FINER)[number] = 1,
): string {
  const step = STEPS[units][kind] / finer;
  const count = value / step;
  const whole = way === "up" ? Math.ceil(count - ROUNDING) : Math.floor(count + ROUNDING);
  const rounded = (way === "nearest" ? roundHalves(count) : whole) * step;
  const level = FINER.indexOf(finer);
  switch (kind) {
    case "mass":
      return (MASS_FIGURES[level] ?? massText)(rounded, units);
    case "length":
      return (LENGTH_FIGURES[level] ?? lengthText)(rounded, units);
    case "thin":
      return (LENGTH_FIGURES[Math.min(2, level + 1)] ?? formatCaliper)(rounded, units);
    case "angle":
      return `${fixed(radiansToDegrees(rounded), level + 1)}°`;
    case "count":
      return fixed(rounded, 0);
  }
}
