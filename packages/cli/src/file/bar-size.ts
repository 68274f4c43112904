import type { RackBar } from "@scantling/geometry";
import { type FileUnits, formatLength, formatNumber, mmToInches } from "@scantling/geometry/units";
import { z } from "zod";
import { type Reading, readQuantity } from "./fields.js";
import { showText } from "./problem.js";
import { twoSides } from "./two-sides.js";

/** Section of a flat bar, mm, and its name in the units that it was written in. */
export interface BarSize {
  readonly name: string;
  readonly width: number;
  readonly thickness: number;
}

const EXPECTED = "needs a bar size, such as 1/4 x 1 1/2 in or 6 x 40 mm";

/** A bar's section as the rack's label says it: `1/4 x 1 1/2 in`, `6 x 40 mm`. The smaller side is the thickness. */
export function barSize(units: FileUnits) {
  return z
    .string({ error: EXPECTED })
    .transform((text, ctx) => {
      const complain = (code: string, message: string): void => {
        ctx.addIssue({ code: "custom", message, params: { code } });
      };
      return readBarSize(text, units, complain) ?? z.NEVER;
    })
    .meta({ description: "Thickness and width of a flat bar: 1/4 x 1 1/2 in, 6 x 40 mm" });
}

const INCH_MARK = /["'\u2018-\u201D\u2032\u2033]|in(?:ch|ches)?\.?$|f(?:oo|ee)?t\.?$/iu;

function readBarSize(
  text: string,
  units: FileUnits,
  complain: (code: string, message: string) => void,
): BarSize | undefined {
  const sides = twoSides(text);
  if (typeof sides === "number") {
    const length = sides === 3 ? "; a bar's length goes under length" : "";
    complain(
      "bar-size",
      `"${showText(text)}" is not a bar size; write it 1/4 x 1 1/2 in or 6 x 40 mm${length}`,
    );
    return undefined;
  }
  const { first, second, unit } = sides;
  const rule = { above: 0, tolerance: false, about: "" };
  const a = readQuantity(first, "length", units, rule, complain);
  const b = a === undefined ? undefined : readQuantity(second, "length", units, rule, complain);
  if (a === undefined || b === undefined) return undefined;
  const thickness = Math.min(a.value, b.value);
  const width = Math.max(a.value, b.value);
  const inches = unit === undefined ? units === "in" : INCH_MARK.test(second);
  return { name: nameOfSize(thickness, width, inches ? "in" : "mm"), width, thickness };
}

/** `1/4 x 1 1/2 in`, `6 x 40 mm`; inch sizes that are no 64ths in thousandths. */
function nameOfSize(thickness: number, width: number, units: FileUnits): string {
  const side = (mm: number): string => {
    if (units === "mm") return formatNumber(mm, 0.01);
    const fraction = formatLength(mm, "in");
    return fraction.endsWith('"') ? fraction.slice(0, -1) : formatNumber(mmToInches(mm), 0.001);
  };
  return `${side(thickness)} x ${side(width)} ${units}`;
}

interface GivenBar {
  readonly name?: string | undefined;
  readonly size?: BarSize | undefined;
  readonly width?: Reading | undefined;
  readonly thickness?: Reading | undefined;
  readonly length?: Reading | undefined;
  readonly count?: number | undefined;
  readonly steel?: string | undefined;
  readonly price?: number | undefined;
}

/** A bar from what the file gives of it, or the sentence that says what is missing. */
export function makeBar(given: GivenBar, units: FileUnits): RackBar | string {
  const { size, width, thickness, length, count, steel, price } = given;
  if (size !== undefined && (width !== undefined || thickness !== undefined)) {
    return "has its size twice; give size, or width and thickness";
  }
  const section = size ?? sectionOf(width, thickness, units);
  if (section === undefined) return "needs its size, such as size: 6 x 40 mm, or width and thickness";
  if (section.thickness > section.width) return "is thicker than wide; swap width and thickness";
  if (count !== undefined && length === undefined)
    return "has a count without a length; give the length of one";
  return {
    name: given.name ?? section.name,
    width: section.width,
    thickness: section.thickness,
    ...(length === undefined ? {} : { length: length.value }),
    ...(count === undefined ? {} : { count }),
    ...(steel === undefined ? {} : { steel }),
    ...(price === undefined ? {} : { pricePerKg: price }),
  };
}

function sectionOf(
  width: Reading | undefined,
  thickness: Reading | undefined,
  units: FileUnits,
): BarSize | undefined {
  if (width === undefined || thickness === undefined) return undefined;
  return {
    name: nameOfSize(thickness.value, width.value, units),
    width: width.value,
    thickness: thickness.value,
  };
}
