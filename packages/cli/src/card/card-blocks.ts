import type { PressPasses, PressStop } from "@scantling/geometry";
import { type FileUnits, GRAMS_PER_OUNCE, radiansToDegrees } from "@scantling/geometry/units";
import type { CardBlock, CardCell } from "@scantling/render";
import { caliperText, fixed, lengthText } from "../report/figures.js";
import { laidText, passRows, stopsKnown } from "../report/setup-stops.js";

/** Rows of text, heads first, as a table of a card. */
export function tableBlock(rows: readonly (readonly CardCell[])[]): CardBlock {
  const [heads = [], ...body] = rows;
  return { kind: "table", heads: heads.map((head) => (typeof head === "string" ? head : "")), rows: body };
}

/** Words of a card. */
export const words = (text: string): CardBlock => ({ kind: "words", text });

/** Rows with one more column, heads first. */
export const withColumn = (
  rows: readonly (readonly CardCell[])[],
  head: string,
  cells: readonly CardCell[],
): CardCell[][] => rows.map((row, index) => [...row, index === 0 ? head : (cells[index - 1] ?? "")]);

/** Rows, heads first, with what to lay in behind each, where the shop's stops are known. */
export function withStops(
  rows: readonly (readonly CardCell[])[],
  stops: readonly (readonly PressStop[])[],
  units: FileUnits,
): CardCell[][] {
  if (!stopsKnown(stops.flat())) return rows.map((row) => [...row]);
  return withColumn(
    rows,
    "lay in",
    stops.map((each) => laidText(each, units)),
  );
}

/** The passes of a press as a table; the unit stands in the head of its panel. */
export function passBlock(pressing: PressPasses, units: FileUnits): CardBlock {
  const stops = pressing.passes.map((pass) => [pass]);
  return tableBlock(withStops(bareHeads(passRows(pressing, units)), stops, units));
}

/** Rows, heads first, without the units in their heads. */
export const bareHeads = (rows: readonly (readonly string[])[]): string[][] =>
  rows.map((row, index) => (index > 0 ? [...row] : row.map((head) => head.replace(/ (?:mm|in)$/u, ""))));

/** A mass whose unit stands in the head of its panel: whole g, or oz to 0.1. */
export const bareMass = (grams: number, units: FileUnits): string =>
  units === "mm" ? fixed(grams, 0) : fixed(grams / GRAMS_PER_OUNCE, 1);

/** An angle to 0.1°, from rad. */
export const degrees = (angle: number): string => `${fixed(radiansToDegrees(angle), 1)}°`;

const withoutUnit = (text: string): string => text.replace(/(?: mm|")$/u, "").replace(/^-/u, "−");

/** Lengths whose unit stands in the head of their column: as on a rule, as on a caliper. */
export const bareLength = (mm: number, units: FileUnits): string => withoutUnit(lengthText(mm, units));
export const bareCaliper = (mm: number, units: FileUnits): string => withoutUnit(caliperText(mm, units));
