import type { Arc, Vec2 } from "@scantling/geometry";

// A cubic that takes the place of an arc of angle φ, its handles 4/3·tan(φ/4) radii long, strays from the circle by
// about 4/27·sin⁶(φ/4)/cos²(φ/4) radii: 5.5·10⁻¹⁰ for 9°, 0.05 µm on a wheel of 100 m. PDF knows no arcs.
const PIECES_PER_TURN = 40;
const LONGEST_PIECE = (2 * Math.PI) / PIECES_PER_TURN;

/** A cubic that goes on from where the last one ended. */
export interface CubicPiece {
  readonly control1: Vec2;
  readonly control2: Vec2;
  readonly to: Vec2;
}

/** An arc as cubics of at most 9° each, within 10⁻⁹ of its radius; its ends are kept as they are. */
export function arcCubics(arc: Arc): CubicPiece[] {
  const { centre, radius, startAngle, sweep } = arc;
  // A quarter turn that came out a rounding step longer is still cut as one.
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / LONGEST_PIECE - 1e-9));
  const step = sweep / count;
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  const at = (index: number): Vec2 => {
    if (index === 0) return arc.from;
    if (index === count) return arc.to;
    const angle = startAngle + index * step;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  };
  return Array.from({ length: count }, (_, index) => {
    const first = startAngle + index * step;
    const last = first + step;
    const from = at(index);
    const to = at(index + 1);
    return {
      control1: { x: from.x - handle * Math.sin(first), y: from.y + handle * Math.cos(first) },
      control2: { x: to.x + handle * Math.sin(last), y: to.y - handle * Math.cos(last) },
      to,
    };
  });
}
