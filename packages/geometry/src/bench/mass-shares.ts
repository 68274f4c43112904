import { cutoutPath } from "../blade/cutout-path.js";
import type { Knife } from "../blade/knife.js";
import { VOLUME } from "../blade/moments.js";
import { slabMoments } from "../blade/slab-moments.js";
import type { KnifeWeight } from "../blade/weigh-knife.js";
import type { Path } from "../plane/path.js";
import { closedThrough, piecesBetween } from "./clip-x.js";

/** What a part has of the whole knife's mass, g and 0 to 1. */
export interface MassShare {
  readonly name: string;
  readonly mass: number;
  readonly share: number;
}

/**
 * Where the mass of a knife is: the steel parted at the handle front into blade and tang, then the other parts.
 *
 * @param weight - Of the same knife.
 *
 * @example
 * massShares(knife, weighKnife(knife)).map(({ name }) => name); // ["blade", "tang", "slabs"]
 */
export function massShares(knife: Knife, weight: KnifeWeight): MassShare[] {
  const tang = tangVolume(knife) * knife.steelDensity;
  const [, ...others] = weight.parts;
  return [
    { name: "blade", mass: weight.steel.mass - tang },
    { name: "tang", mass: tang },
    ...others.map(({ name, mass }) => ({ name, mass })),
  ].map((part) => ({ ...part, share: part.mass / weight.knife.mass }));
}

/** Steel behind the handle front, holes taken out, mm³. Nothing is ground there but the taper. */
function tangVolume({ outline, holes, body }: Knife): number {
  const { slab } = body("finished");
  const volume = (path: Path): number => slabMoments(path, slab).value[VOLUME] as number;
  const behind = closedThrough(
    piecesBetween(outline.path.segments, Number.NEGATIVE_INFINITY, outline.handleFront),
  );
  return holes
    .filter(({ at }) => at.x < outline.handleFront)
    .reduce(
      (sum, { at, to, diameter }) =>
        sum - volume(cutoutPath({ centre: at, radius: diameter / 2, ...(to === undefined ? {} : { to }) })),
      volume(behind),
    );
}
