import type { RackBar } from "@scantling/geometry";
import { type FileUnits, formatNumber, mmToInches } from "@scantling/geometry/units";
import { barSize } from "../file/bar-size.js";
import { item } from "./layout.js";

/** Sizes that differ by less are one, mm. */
const SAME_SIZE = 1e-6;

/**
 * Bars as lines of a shop file's rack, ready to be put there: `  - { size: 1/4 x 2 in, steel: "1084", length: 505 mm }`.
 *
 * @param units - Of the shop file.
 */
export function rackLines(bars: readonly RackBar[], units: FileUnits): string[] {
  return bars.flatMap((bar) => item("  - ", `{ ${fieldsOf(bar, units).join(", ")} }`));
}

function fieldsOf(bar: RackBar, units: FileUnits): string[] {
  const { length, count, steel, pricePerKg } = bar;
  return [
    ...sizeFields(bar, units),
    ...(steel === undefined ? [] : [`steel: ${JSON.stringify(steel)}`]),
    ...(length === undefined ? [] : [`length: ${lengthField(length, units)}`]),
    ...(count === undefined ? [] : [`count: ${count}`]),
    ...(pricePerKg === undefined ? [] : [`price: ${pricePerKg}`]),
  ];
}

/** A bar that is called by its size is entered by it; any other by its name, width and thickness. */
function sizeFields({ name, width, thickness }: RackBar, units: FileUnits): string[] {
  const read = barSize(units).safeParse(name);
  const isSize =
    read.success &&
    Math.abs(read.data.width - width) < SAME_SIZE &&
    Math.abs(read.data.thickness - thickness) < SAME_SIZE;
  if (isSize) return [`size: ${/^[\w ./]+$/u.test(name) ? name : JSON.stringify(name)}`];
  return [
    `name: ${JSON.stringify(name)}`,
    `width: ${lengthField(width, units)}`,
    `thickness: ${lengthField(thickness, units)}`,
  ];
}

/** To 0.001 mm or 0.0001 in. */
const lengthField = (mm: number, units: FileUnits): string =>
  units === "mm" ? `${formatNumber(mm, 0.001)} mm` : `${formatNumber(mmToInches(mm), 0.0001)} in`;
