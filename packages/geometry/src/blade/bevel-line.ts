import type { Side } from "./knife-faces.js";
import { SectionLaw } from "./section-law.js";
import type { SteelBody } from "./steel-body.js";

/** y of a face's bevel line at x, mm: where the distance from the edge is the bevel height. */
export function lineHeight(body: SteelBody, x: number, side: Side = "right"): number {
  const top = body.footprint.topAt(x) ?? 0;
  body.section.at(x, body.edgeRun.nearest(x, top));
  const b = bevelHeight(body, side);
  let low = body.footprint.spansAt(x)[0]?.[0] ?? 0;
  let high = top;
  if (body.edgeRun.nearest(x, top) <= b) return top;
  for (let pass = 0; pass < 100 && high - low > 1e-13 * Math.max(1, Math.abs(high)); pass++) {
    const y = (low + high) / 2;
    if (body.edgeRun.nearest(x, y) < b) low = y;
    else high = y;
  }
  return (low + high) / 2;
}

/** Of the last station. */
function bevelHeight({ section }: SteelBody, side: Side): number {
  if (side === "right" || !(section instanceof SectionLaw)) return section.bevelHeight;
  return section.leftFace?.bevelHeight ?? section.bevelHeight;
}
