import { isSameMaterial } from "../materials/materials.js";
import type { StockLength } from "./nesting.js";
import type { RackBar } from "./shop.js";

/** Entries of the rack that are one stock in several lengths: whole bars and leftovers of one section, steel and price. */
export interface RackGroup {
  /** The first entry, which speaks for all of them but in its length. */
  readonly bar: RackBar;
  readonly barIndex: number;
  /** What is in hand, in the order of the rack. */
  readonly lengths: readonly StockLength[];
}

/** Sections that are written in other units differ in the last digits of a double, mm. */
const SAME_SIZE = 1e-6;

const isSameStock = (a: RackBar, b: RackBar): boolean =>
  Math.abs(Math.max(a.width, a.thickness) - Math.max(b.width, b.thickness)) < SAME_SIZE &&
  Math.abs(Math.min(a.width, a.thickness) - Math.min(b.width, b.thickness)) < SAME_SIZE &&
  a.pricePerKg === b.pricePerKg &&
  (a.steel === undefined || b.steel === undefined ? a.steel === b.steel : isSameMaterial(a.steel, b.steel));

/**
 * Puts the entries of the rack together that are one stock: same section whichever way it was entered, same steel by
 * name or alias, same price. A bar whose steel or price is not stated is not the same as one where it is.
 *
 * @returns In the order of their first entries.
 *
 * @example
 * const flat = { name: "6 x 40", width: 40, thickness: 6 };
 * groupRack([{ ...flat, length: 1000, count: 2 }, { ...flat, length: 310 }]).length; // 1
 */
export function groupRack(rack: readonly RackBar[]): RackGroup[] {
  const groups: { bar: RackBar; barIndex: number; lengths: StockLength[] }[] = [];
  rack.forEach((bar, barIndex) => {
    const inHand: StockLength =
      bar.length === undefined ? { barIndex } : { barIndex, length: bar.length, count: bar.count ?? 1 };
    const group = groups.find((other) => isSameStock(other.bar, bar));
    if (group === undefined) groups.push({ bar, barIndex, lengths: [inHand] });
    else group.lengths.push(inHand);
  });
  return groups;
}
