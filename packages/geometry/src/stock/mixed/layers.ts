import { isSameMaterial } from "../../materials/materials.js";
import type { StackBar } from "./spec.js";

/** Bars of one kind in a stack that alternates. */
export interface AlternatingBars extends StackBar {
  readonly count: number;
}

/**
 * Bars of two or more kinds laid in turn, from bottom to top: the kind of which there are most begins, so that with one
 * more of it than of the others it lies on both outsides.
 *
 * @returns undefined where the counts do not go in turn: they may differ by one.
 *
 * @example
 * const a = { steel: { name: "1084" }, thickness: 3.175, count: 2 };
 * const b = { steel: { name: "15N20" }, thickness: 1.57, count: 1 };
 * alternateBars([a, b])?.map(({ steel }) => steel.name); // ["1084", "15N20", "1084"]
 */
export function alternateBars(kinds: readonly AlternatingBars[]): readonly StackBar[] | undefined {
  const turn = [...kinds].sort((a, b) => b.count - a.count);
  const most = turn[0]?.count ?? 0;
  const least = turn.at(-1)?.count ?? 0;
  if (most - least > 1 || least < 1) return undefined;
  return Array.from({ length: most }, (_, round) =>
    turn.filter(({ count }) => round < count).map(({ steel, thickness }) => ({ steel, thickness })),
  ).flat();
}

/** Layers of a billet: as they are multiplied up, and as they can be told apart. */
export interface LayerCount {
  /** Bars of the first stack times the pieces of every restack. */
  readonly nominal: number;
  /** Layers of one steel that lie on each other are one. */
  readonly distinct: number;
  /** Whether equal steels meet at the joints of a restack. */
  readonly equalMeet: boolean;
}

/**
 * Counts the layers after every restack, pieces stacked the same way up: `N' = m·N − (m − 1)` where the outer steels
 * are equal, else `m·N`. Equal steels that lie on each other in the first stack are one layer too.
 *
 * @param steels - Steels of the first stack, from bottom to top.
 * @param pieces - Pieces of each restack.
 *
 * @example
 * const steels = Array.from({ length: 13 }, (_, i) => (i % 2 === 0 ? "1084" : "15N20"));
 * countLayers(steels, [4, 4]); // { nominal: 208, distinct: 193, equalMeet: true }
 */
export function countLayers(steels: readonly string[], pieces: readonly number[]): LayerCount {
  const [bottom = "", top = bottom] = [steels[0], steels.at(-1)];
  const equalMeet = isSameMaterial(bottom, top);
  let nominal = steels.length;
  let distinct = steels.filter((steel, i) => i === 0 || !isSameMaterial(steel, steels[i - 1] ?? "")).length;
  for (const m of pieces) {
    nominal *= m;
    distinct = m * distinct - (equalMeet ? m - 1 : 0);
  }
  return { nominal, distinct, equalMeet };
}

/**
 * Thickness of a layer at the face of the forged blade, mm: all layers taken as equally thick.
 *
 * @param thickness - Forged thickness, mm.
 *
 * @example
 * layerThickness(9, 193); // 0.047
 */
export function layerThickness(thickness: number, distinct: number): number {
  return thickness / distinct;
}
