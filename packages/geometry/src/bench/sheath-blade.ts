import { handleLayout } from "../blade/handle-layout.js";
import type { Knife } from "../blade/knife.js";

/** x of a sheath's mouth, mm: it ends at the handle front, or at a guard or bolster ahead of it. */
export function sheathMouth({ spec, outline }: Knife): number {
  const { fittings } = handleLayout(spec.handle, outline);
  const fronts = fittings.map(({ block }) => block.front).filter((x) => x < outline.edgeLength / 2);
  return Math.max(outline.handleFront, ...fronts);
}

/** Thickest place of the blade ahead of x, mm. A law never leaves the range of its stations: its thickest place is at one of them, or at an end. */
export function thickestAhead(knife: Knife, mouth: number): number {
  const { slab } = knife.body("finished");
  const { edgeLength } = knife.outline;
  const places = [mouth, edgeLength, ...slab.breaks].filter((x) => x >= mouth && x <= edgeLength);
  return Math.max(...places.map((x) => slab.thicknessAt(x)));
}
