import { moveSides } from "./move-sides.js";
import type { RunName } from "./outline.js";
import type { Reading, Reweigher } from "./reweigher.js";
import type { InputTolerance } from "./tolerances.js";

/** Sides of an outline that err together. */
export interface UncertainSides {
  /** Their name in results. */
  readonly input: string;
  readonly runs: readonly RunName[];
}

const TANG: readonly RunName[] = ["tangTop", "butt", "tangBottom"];
const BLADE: readonly RunName[] = ["edge", "front", "spine", "heelFace"];

/** The sides that err together by the outline's own tolerance: a height with one of its own takes the place of theirs. */
export function uncertainSides(given: readonly InputTolerance[]): UncertainSides | undefined {
  const isBladeGiven = given.some(({ path }) => path === "blade.outline.heelHeight");
  const isTangGiven = given.some(({ path }) => path.startsWith("tang.heights."));
  if (isBladeGiven && isTangGiven) return undefined;
  if (isBladeGiven) return { input: "outline.tang", runs: TANG };
  if (isTangGiven) return { input: "outline.blade", runs: BLADE };
  return { input: "outline", runs: [...BLADE, ...TANG] };
}

/** Most times that a way is halved which a small piece of the outline cannot go. */
const MOST_HALVINGS = 10;

/**
 * The knife with sides of its outline moved out (or in). Where a piece is too small to go all the way, they go a part of it
 * and the change is scaled up: it grows evenly with the way.
 */
export function sidesMoved(scale: Reweigher, runs: readonly RunName[], by: number): Reading {
  const { middle, outline } = scale;
  for (let halved = 1; halved <= 2 ** MOST_HALVINGS; halved *= 2) {
    const way = by / halved;
    const drawn = moveSides(outline, (run) => (runs.includes(run) ? way : 0));
    if (drawn === undefined) continue;
    const { mass, balance } = scale.read(scale.spec, drawn);
    return {
      mass: middle.mass + halved * (mass - middle.mass),
      balance: middle.balance + halved * (balance - middle.balance),
    };
  }
  return middle;
}
