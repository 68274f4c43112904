import type { BlockSection } from "../blade/handle-section.js";
import type { Segment } from "../plane/segment.js";
import { ellipsePart } from "./ellipse-part.js";
import { leads } from "./slab-contour.js";

/**
 * Right-hand half of a block's section, from the top of the centre plane round to its foot, as (z, y): straight pieces, arcs
 * where corners are round, cubics within 1e-6 mm where they are elliptic.
 *
 * @param centre - y of the block's middle line, mm.
 */
export function blockContour(section: BlockSection, centre: number): Segment[] {
  const { halfHeight: a, halfWidth: b, corner } = section;
  const [high, wide] = corner === "square" ? [0, 0] : [section.cornerHeight, section.cornerWidth];
  const top = { x: b - wide, y: centre + a };
  const upper = { x: b, y: centre + a - high };
  const lower = { x: b, y: centre - a + high };
  const foot = { x: b - wide, y: centre - a };
  const round = (y: number, from: number): Segment[] =>
    ellipsePart({ x: b - wide, y }, { x: wide, y: high }, from, -Math.PI / 2);
  const isRound = corner === "round" && high > 0 && wide > 0;
  return [
    ...leads({ x: 0, y: centre + a }, top),
    ...(isRound ? round(upper.y, Math.PI / 2) : leads(top, upper)),
    ...leads(upper, lower),
    ...(isRound ? round(lower.y, 0) : leads(lower, foot)),
    ...leads(foot, { x: 0, y: centre - a }),
  ];
}
