import { type FileUnits, formatLength, inchesToMm, mmToInches } from "@scantling/geometry/units";

/** A size with how it is written into a file: what is computed and what is read back are the same. */
export interface Size {
  readonly mm: number;
  readonly text: string;
}

/** To what a size is rounded in each of the units. */
export interface Steps {
  readonly mm: number;
  /** A fraction of an inch such as 1/16, or a decimal one such as 0.005. */
  readonly in: number;
}

/** Lengths that are measured with a rule. */
export const COARSE: Steps = { mm: 1, in: 1 / 8 };
/** Places and sizes of parts. */
export const FINE: Steps = { mm: 0.5, in: 1 / 16 };
/** Thicknesses of steel and slabs. */
export const THICKNESS: Steps = { mm: 0.1, in: 1 / 64 };
/** Edges. */
export const EDGE: Steps = { mm: 0.05, in: 0.005 };

/**
 * A size rounded to a step of the units, as a bare number in them.
 *
 * @example
 * sizeIn(107.9, "in", COARSE); // { mm: 107.95, text: "4 1/4" }
 */
export function sizeIn(mm: number, units: FileUnits, steps: Steps): Size {
  const step = steps[units];
  if (units === "mm") return metric(Math.round(mm / step) * step);
  const inches = Math.round(mmToInches(mm) / step) * step;
  const isBinary = Number.isInteger(Math.log2(1 / step));
  // Decimals as a micrometer shows them.
  const text = isBinary
    ? bare(formatLength(inchesToMm(inches), "in", { resolution: step }))
    : inches.toFixed(THOUSANDTHS);
  return { mm: inchesToMm(inches), text };
}

/** The same, never less than it is. */
export function sizeAtLeast(mm: number, units: FileUnits, steps: Steps): Size {
  const step = units === "mm" ? steps.mm : inchesToMm(steps.in);
  return sizeIn(Math.ceil(mm / step - SAME) * step, units, steps);
}

/** Steps that a size may be over without being more. */
const SAME = 1e-9;

/** A size that is not rounded, for what follows from others. */
export function exactSize(mm: number, units: FileUnits): Size {
  return units === "mm" ? metric(mm) : { mm, text: trimmed(mmToInches(mm), 5) };
}

const THOUSANDTHS = 3;

const metric = (mm: number): Size => ({ mm, text: trimmed(mm, 4) });

/** `[x, y]` as a file has it. */
export const placeText = (x: Size, y: Size): string => `[${x.text}, ${y.text}]`;

const bare = (text: string): string => text.replace(/["+−]+$/u, "");

const trimmed = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));
