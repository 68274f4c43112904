import { endTangent, reverseSegment, type Segment } from "../plane/segment.js";
import type { Outline } from "./outline.js";

/** Height of a tang at a place: y of its lower and its upper side; mm. */
export interface TangHeight {
  readonly x: number;
  readonly low: number;
  readonly high: number;
}

/** Places along x nearer than this are one, mm. */
const SAME_PLACE = 1e-6;
/** A curve whose direction leans from upright by less than this stands upright, rad. */
const UPRIGHT = 1e-3;

/**
 * Height of a tang at the handle front where fillets stand in the corners of its shoulders: as the file gives it, and as a
 * caliper finds it beside them. Its sides are drawn on to the handle front; undefined where there is no fillet.
 *
 * @example
 * heightBesideFillets(outline); // undefined: a full tang has no shoulder
 */
export function heightBesideFillets({ runs, handleFront }: Outline): TangHeight | undefined {
  const [top, bottom] = sidesOf({ runs, handleFront });
  if (top === undefined || bottom === undefined || !(top.fillet || bottom.fillet)) return undefined;
  return { x: handleFront, low: bottom.y, high: top.y };
}

/**
 * The greatest radius of the fillets in the corners of a tang's shoulders, mm; undefined where none of them is an arc.
 *
 * @example
 * tangFilletRadius(outline); // undefined: a full tang has no shoulder
 */
export function tangFilletRadius(outline: Outline): number | undefined {
  const radii = sidesOf(outline).flatMap((side) => (side?.radius === undefined ? [] : [side.radius]));
  return radii.length === 0 ? undefined : Math.max(...radii);
}

/**
 * x behind the fillets in the corners of a tang's shoulders, where its own sides begin, mm; the handle front where there are
 * none.
 *
 * @example
 * behindFillets(outline); // -10: a full tang has no shoulder, its front is the ricasso's rear end
 */
export function behindFillets(outline: Outline): number {
  const ends = sidesOf(outline).flatMap((side) => (side?.rear === undefined ? [] : [side.rear]));
  return Math.min(outline.handleFront, ...ends);
}

interface TangSide {
  readonly y: number;
  /** x at which its fillet ends. */
  readonly rear?: number;
  readonly fillet: boolean;
  readonly radius?: number;
}

/** The upper and the lower side at the handle front. */
const sidesOf = ({ runs, handleFront }: Pick<Outline, "runs" | "handleFront">): (TangSide | undefined)[] => [
  sideAt(handleFront, runs.tangTop),
  sideAt(handleFront, [...runs.tangBottom].reverse().map(reverseSegment)),
];

/** y at which a side of the tang, its segments from the handle front back, meets the handle front. */
function sideAt(front: number, side: readonly Segment[]): TangSide | undefined {
  const [first, next] = side.filter(({ from, to }) => Math.abs(from.x - to.x) > SAME_PLACE);
  if (first === undefined) return undefined;
  const start = endTangent(first, "from");
  const upright = start !== undefined && Math.abs(start.x) < UPRIGHT * Math.abs(start.y);
  const atFront = Math.abs(first.from.x - front) < SAME_PLACE;
  if (next === undefined || first.kind === "line" || !upright || !atFront) {
    return { y: first.from.y, fillet: false };
  }
  const { from, to } = next;
  const slope = next.kind === "line" ? (to.y - from.y) / (to.x - from.x) : 0;
  const y = from.y + slope * (front - from.x);
  return { y, fillet: true, rear: from.x, ...(first.kind === "arc" ? { radius: first.radius } : {}) };
}
