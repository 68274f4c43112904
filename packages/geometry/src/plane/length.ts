import { Bezier } from "bezier-js";
import { bernsteinRoots, differentiateBernstein, multiplyBernstein } from "../numeric/polynomial.js";
import type { Path } from "./path.js";
import type { Cubic, Segment } from "./segment.js";
import { splitSegment } from "./split.js";
import { distance } from "./vec2.js";

/** Change on halving, as a share of the whole cubic, at which the length of a piece is taken as found. */
const AGREEMENT = 1e-13;
const MOST_HALVINGS = 40;

/**
 * Length of a segment, mm; lines and arcs in closed form, cubics to about 1e-12 of their length.
 *
 * bezier-js integrates the speed of a cubic by 24 Gauss points, which is exact to rounding on ordinary curves but off by
 * 1e-3 where the speed all but vanishes inside: at a cusp, or where the curve doubles back on itself. So a cubic is
 * first cut where its speed is least, and then halved until halving changes nothing.
 *
 * @example
 * segmentLength(cubic({ x: 0, y: 0 }, { x: 0, y: 1 }, { x: 1, y: 1 }, { x: 1, y: 0 })); // 2
 */
export function segmentLength(segment: Segment): number {
  switch (segment.kind) {
    case "line":
      return distance(segment.from, segment.to);
    case "arc":
      return segment.radius * Math.abs(segment.sweep);
    case "cubic":
      return cubicLength(segment);
  }
}

/**
 * Sum of the lengths of all segments, mm.
 *
 * @example
 * pathLength({ segments: segmentsFromPathData("M0 0 H4 V3"), closed: false }); // 7
 */
export const pathLength = (path: Path): number =>
  path.segments.reduce((sum, segment) => sum + segmentLength(segment), 0);

function cubicLength(segment: Cubic): number {
  // Of the whole: a tiny piece beside a cusp is all rounding and would never agree with itself.
  const enough = AGREEMENT * handlesLength(segment);
  const cuts = [0, ...slowestParameters(segment), 1];
  let total = 0;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const piece = splitSegment(segment, cuts[i] as number, cuts[i + 1] as number) as Cubic;
    total += halvedLength(piece, gaussLength(piece), enough, MOST_HALVINGS);
  }
  return total;
}

/** Where the squared speed stands still, inside. */
function slowestParameters(segment: Cubic): number[] {
  const slopes = (axis: "x" | "y"): number[] => differentiateBernstein(values(segment, axis));
  const speed = (axis: "x" | "y"): number[] => multiplyBernstein(slopes(axis), slopes(axis));
  const squaredY = speed("y");
  const squared = speed("x").map((value, i) => value + (squaredY[i] as number));
  return bernsteinRoots(differentiateBernstein(squared)).filter((t) => t > 1e-9 && t < 1 - 1e-9);
}

const values = (segment: Cubic, axis: "x" | "y"): number[] => [
  segment.from[axis],
  segment.control1[axis],
  segment.control2[axis],
  segment.to[axis],
];

const gaussLength = ({ from, control1, control2, to }: Cubic): number =>
  new Bezier(from.x, from.y, control1.x, control1.y, control2.x, control2.y, to.x, to.y).length();

/** Length of the control polygon: the curve is no longer than this. */
const handlesLength = ({ from, control1, control2, to }: Cubic): number =>
  distance(from, control1) + distance(control1, control2) + distance(control2, to);

function halvedLength(piece: Cubic, whole: number, enough: number, halvings: number): number {
  const left = splitSegment(piece, 0, 0.5) as Cubic;
  const right = splitSegment(piece, 0.5, 1) as Cubic;
  const a = gaussLength(left);
  const b = gaussLength(right);
  if (halvings === 0 || Math.abs(a + b - whole) <= Math.max(enough, 1e-15 * whole)) return a + b;
  return halvedLength(left, a, enough, halvings - 1) + halvedLength(right, b, enough, halvings - 1);
}
