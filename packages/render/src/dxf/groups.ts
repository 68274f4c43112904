import { invariant } from "@scantling/geometry";

/** One group of a DXF file: a code that says what follows, and the value on the next line. */
export type Group = readonly [code: number, value: string | number];

/** Decimals of lengths: 10⁻⁶ mm. */
const LENGTH_DECIMALS = 6;
/** Decimals of angles and bulges: on an arc of 100 m radius still within 10⁻⁵ mm. */
const TURN_DECIMALS = 12;

/** A length or coordinate in mm, always with a decimal point, as readers of old files ask for. */
export const lengthValue = (mm: number): string => decimals(mm, LENGTH_DECIMALS);

/** An angle in degrees, or a bulge. */
export const turnValue = (value: number): string => decimals(value, TURN_DECIMALS);

function decimals(value: number, count: number): string {
  invariant(
    Number.isFinite(value) && Math.abs(value) < 1e9,
    `a drawing's coordinate is finite, got ${value}`,
  );
  const text = value.toFixed(count).replace(/0+$/, "").replace(/\.$/, ".0");
  return text === "-0.0" ? "0.0" : text;
}

/** A point: x, y and z of 0 under the codes `first`, `first` + 10 and `first` + 20. */
export const pointGroups = ({ x, y }: { readonly x: number; readonly y: number }, first = 10): Group[] => [
  [first, lengthValue(x)],
  [first + 10, lengthValue(y)],
  [first + 20, lengthValue(0)],
];

/** The groups as lines, codes set flush right in three places as the format's own writer does. */
export const groupLines = (groups: readonly Group[]): string =>
  groups.map(([code, value]) => `${String(code).padStart(3)}\n${value}\n`).join("");
