import { materialDensity } from "../../materials/material-density.js";
import { isSameMaterial } from "../../materials/materials.js";
import { nestFromBars, piecesFromBar, piecesFromBars } from "../nesting.js";
import { groupRack, type RackGroup } from "../rack-groups.js";
import { flatSection } from "../search.js";
import type { RackBar } from "../shop.js";
import { SAME_SIZE } from "./core-advice.js";
import { type MixedStackSpec, stackBars } from "./spec.js";

/** Thicknesses that are written in other units differ in the last digits of a double, mm. */
const SAME_BAR = 1e-6;

/** Bars of one steel and thickness to cut for a stack; mm, g. */
export interface MixedBar {
  readonly steel: string;
  readonly thickness: number;
  readonly width: number;
  readonly pieces: number;
  readonly cutLength: number;
  /** All pieces, by the steel's own density. */
  readonly mass: number;
  /**
   * Entry of the rack that they are sawn from, of several the first that is cut: entries of one section, steel and price
   * are one stock. Left out where the rack has none of that steel and size.
   */
  readonly rackIndex?: number;
  readonly bar?: RackBar;
  /** Whether the bars in hand of that stock hold all pieces. */
  readonly enough: boolean;
  /** Price of what is sawn off, kerf included; left out where the bar has no price. */
  readonly cost?: number;
}

/**
 * The bars to cut for a stack, by steel and thickness, in the order in which they first lie in it, each with the entry
 * of the rack that holds it: same steel, thickness and width.
 *
 * @param cutLength - Length of every piece, mm.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const bars = mixedBars({ kind: "clad", core, cladding, width: 30 }, 100, [], 1.5);
 * bars.map(({ pieces }) => pieces); // [2, 1]
 */
export function mixedBars(
  stack: MixedStackSpec,
  cutLength: number,
  rack: readonly RackBar[],
  kerf: number,
): readonly MixedBar[] {
  const groups = groupRack(rack);
  // Two thicknesses that are near each other may come from one stock: its pieces are given away once.
  const given = new Map<RackGroup, number>();
  return barKinds(stack).map(({ name, density, thickness, pieces }) => {
    const section = thickness * stack.width;
    const inHand = (group: RackGroup): number =>
      Math.min(pieces, piecesFromBars(group.lengths, cutLength, kerf) - (given.get(group) ?? 0));
    const off = (group: RackGroup): number => Math.abs(flatSection(group.bar).thickness - thickness);
    const [group] = groups
      .filter((each) => isOf(each.bar, name, thickness, stack.width))
      // Those that hold most pieces first, then the size that was meant, then the cheapest.
      .sort(
        (a, b) =>
          inHand(b) - inHand(a) ||
          Number(off(a) > SAME_BAR) - Number(off(b) > SAME_BAR) ||
          (a.bar.pricePerKg ?? Number.MAX_VALUE) - (b.bar.pricePerKg ?? Number.MAX_VALUE),
      );
    const enough = group !== undefined && inHand(group) >= pieces;
    if (group !== undefined) given.set(group, (given.get(group) ?? 0) + pieces);
    const price = group?.bar.pricePerKg;
    return {
      steel: name,
      thickness,
      width: stack.width,
      pieces,
      cutLength,
      mass: pieces * section * cutLength * density,
      enough,
      ...(group === undefined ? {} : entryOf(group, pieces, cutLength, rack, kerf)),
      ...(price === undefined
        ? {}
        : { cost: ((pieces * section * (cutLength + kerf) * density) / 1000) * price }),
    };
  });
}

interface BarKind {
  readonly name: string;
  readonly density: number;
  readonly thickness: number;
  readonly pieces: number;
}

/** Bars of a stack by steel and thickness. */
function barKinds(stack: MixedStackSpec): readonly BarKind[] {
  const kinds: { -readonly [Key in keyof BarKind]: BarKind[Key] }[] = [];
  for (const { steel, thickness } of stackBars(stack)) {
    const known = kinds.find(
      (kind) => isSameMaterial(kind.name, steel.name) && Math.abs(kind.thickness - thickness) < SAME_BAR,
    );
    if (known !== undefined) known.pieces++;
    else
      kinds.push({ name: steel.name, density: materialDensity(steel) ?? Number.NaN, thickness, pieces: 1 });
  }
  return kinds;
}

function isOf(bar: RackBar, steel: string, thickness: number, width: number): boolean {
  const size = flatSection(bar);
  return (
    bar.steel !== undefined &&
    isSameMaterial(bar.steel, steel) &&
    Math.abs(size.thickness - thickness) < SAME_SIZE &&
    Math.abs(size.width - width) < SAME_SIZE
  );
}

/** The first entry that pieces are sawn from; where none holds any, the first of that stock. */
function entryOf(
  { lengths, barIndex }: RackGroup,
  pieces: number,
  cutLength: number,
  rack: readonly RackBar[],
  kerf: number,
): Pick<MixedBar, "rackIndex" | "bar"> {
  const holding = lengths.find(
    ({ length }) => length === undefined || piecesFromBar(length, cutLength, kerf) > 0,
  );
  const cut = nestFromBars(lengths, pieces, cutLength, kerf)?.[0] ?? holding;
  const rackIndex = cut?.barIndex ?? barIndex;
  const bar = rack[rackIndex];
  return bar === undefined ? {} : { rackIndex, bar };
}
