import { materialDensity } from "../../materials/material-density.js";
import { isSameMaterial } from "../../materials/materials.js";
import { piecesFromBar } from "../nesting.js";
import { flatSection } from "../search.js";
import type { RackBar } from "../shop.js";
import { SAME_SIZE } from "./core-advice.js";
import { type MixedStackSpec, stackBars } from "./spec.js";

/** Bars of one steel and thickness to cut for a stack; mm, g. */
export interface MixedBar {
  readonly steel: string;
  readonly thickness: number;
  readonly width: number;
  readonly pieces: number;
  readonly cutLength: number;
  /** All pieces, by the steel's own density. */
  readonly mass: number;
  /** Entry of the rack that they are sawn from; left out where it has none of that steel and size. */
  readonly rackIndex?: number;
  readonly bar?: RackBar;
  /** Whether the bars in hand hold all pieces. */
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
  const kinds: {
    readonly name: string;
    readonly density: number;
    readonly thickness: number;
    pieces: number;
  }[] = [];
  for (const { steel, thickness } of stackBars(stack)) {
    const known = kinds.find(
      (kind) => isSameMaterial(kind.name, steel.name) && Math.abs(kind.thickness - thickness) < SAME_SIZE,
    );
    if (known !== undefined) known.pieces++;
    else
      kinds.push({ name: steel.name, density: materialDensity(steel) ?? Number.NaN, thickness, pieces: 1 });
  }
  return kinds.map(({ name, density, thickness, pieces }) => {
    const section = thickness * stack.width;
    const found = rack
      .flatMap((bar, rackIndex) => {
        const size = flatSection(bar);
        const fits =
          bar.steel !== undefined &&
          isSameMaterial(bar.steel, name) &&
          Math.abs(size.thickness - thickness) < SAME_SIZE &&
          Math.abs(size.width - stack.width) < SAME_SIZE;
        return fits ? [{ bar, rackIndex, inHand: piecesInHand(bar, cutLength, kerf) }] : [];
      })
      // Bars that hold all pieces first, then the cheapest.
      .sort(
        (a, b) =>
          Math.min(pieces, b.inHand) - Math.min(pieces, a.inHand) ||
          (a.bar.pricePerKg ?? Number.MAX_VALUE) - (b.bar.pricePerKg ?? Number.MAX_VALUE),
      )[0];
    const price = found?.bar.pricePerKg;
    return {
      steel: name,
      thickness,
      width: stack.width,
      pieces,
      cutLength,
      mass: pieces * section * cutLength * density,
      enough: found !== undefined && found.inHand >= pieces,
      ...(found === undefined ? {} : { rackIndex: found.rackIndex, bar: found.bar }),
      ...(price === undefined
        ? {}
        : { cost: ((pieces * section * (cutLength + kerf) * density) / 1000) * price }),
    };
  });
}

function piecesInHand(bar: RackBar, piece: number, kerf: number): number {
  if (bar.length === undefined) return Number.POSITIVE_INFINITY;
  return (bar.count ?? 1) * piecesFromBar(bar.length, piece, kerf);
}
