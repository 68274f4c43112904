import type { Vec2 } from "../plane/vec2.js";
import type { Knife } from "./knife.js";
import { CHOIL_HEIGHTS, type SectionView, sectionAt } from "./section-report.js";
import type { SteelBody } from "./steel-body.js";
import type { PieceState } from "./weigh-state.js";

/** A section square to x in a size state that can be held in hand, with what a caliper reads on it; mm, mm². */
export interface StateSection extends SectionView {
  readonly state: PieceState;
  /** Thickness at the lower rim: at the edge, or along the underside of the tang. */
  readonly edgeThickness: number;
  /** Thickness at heights straight above the lower rim of this state. */
  readonly aboveEdge: readonly { readonly above: number; readonly thickness: number }[];
}

/**
 * The section of the knife in a size state. Of the forged blade the strips below and above the profile are part of it, as
 * thick as the rims that they lie along.
 *
 * @param x - mm from the finished heel, between the ends of the finished outline.
 * @param heights - mm above the lower rim; where the piece is not that high the entry is left out.
 *
 * @example
 * const [finished, forged] = [stateSection(knife, 50, "finished"), stateSection(knife, 50, "forged")];
 * forged.height - finished.height; // 3, 1.5 mm on either side
 */
export function stateSection(
  knife: Knife,
  x: number,
  state: PieceState,
  heights: readonly number[] = CHOIL_HEIGHTS,
): StateSection {
  const body = knife.body(state);
  const view = sectionAt(knife, x, state);
  const spans = body.footprint.spansAt(x);
  const low = spans[0]?.[0] ?? 0;
  const high = spans[spans.length - 1]?.[1] ?? 0;
  const strip = state === "forged" ? knife.allowances.outline : 0;
  const thicknessAt = (y: number): number =>
    body.thicknessIgnoringOutline({ x, y: Math.min(high, Math.max(low, y)) });
  const rims = thicknessAt(low) + thicknessAt(high);
  return {
    ...view,
    state,
    contours: strip > 0 ? withStrips(view.contours, body, x, { low, high, strip }) : view.contours,
    area: view.area + strip * rims,
    height: view.height + 2 * strip,
    edgeThickness: thicknessAt(low),
    aboveEdge: heights
      .filter((above) => low - strip + above <= high + strip)
      .map((above) => ({ above, thickness: thicknessAt(low - strip + above) })),
  };
}

/** The lowest contour carried on downward and the highest upward; both ends of a contour lie at the middle of its list. */
function withStrips(
  contours: readonly (readonly Vec2[])[],
  body: SteelBody,
  x: number,
  { low, high, strip }: { readonly low: number; readonly high: number; readonly strip: number },
): (readonly Vec2[])[] {
  const corner = (y: number, to: number, side: "right" | "left"): Vec2 => ({
    x: (side === "right" ? 1 : -1) * body.faceAt({ x, y }, side),
    y: to,
  });
  return contours.map((contour, i) => {
    const half = contour.length / 2;
    const below = i === 0;
    const above = i === contours.length - 1;
    return [
      ...(below ? [corner(low, low - strip, "right")] : []),
      ...contour.slice(0, half),
      ...(above ? [corner(high, high + strip, "right"), corner(high, high + strip, "left")] : []),
      ...contour.slice(half),
      ...(below ? [corner(low, low - strip, "left")] : []),
    ];
  });
}
