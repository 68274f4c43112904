import { splitAtXExtremes } from "../plane/monotone.js";
import { endTangent, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import type { EdgeElement } from "./edge-element.js";
import { elementOf } from "./element-of.js";
import { RoundElement } from "./round-element.js";
import { StraightElement } from "./straight-element.js";

/** Where two pieces of a run meet, with the unit normals of both there, to the left of the way along it. */
export interface RunJoint {
  readonly at: Vec2;
  readonly normals: readonly Vec2[];
}

/** One long side of a handle as a distance field: it goes on straight past both its ends. */
export class HandleRun {
  readonly elements: readonly EdgeElement[];
  readonly joints: readonly RunJoint[];
  /** Index of the element that was nearest last. */
  element = 0;

  constructor(segments: readonly Segment[]) {
    const pieces = segments.flatMap((segment) => splitAtXExtremes(segment));
    const tangents = pieces.map((piece) => [tangent(piece, "from"), tangent(piece, "to")] as const);
    const first = pieces[0] as Segment;
    const last = pieces[pieces.length - 1] as Segment;
    const [start] = tangents[0] as (typeof tangents)[number];
    const [, end] = tangents[tangents.length - 1] as (typeof tangents)[number];
    const joints: RunJoint[] = [{ at: first.from, normals: [leftOf(start)] }];
    pieces.forEach((piece, i) => {
      const after = tangents[i + 1]?.[0];
      const before = (tangents[i] as (typeof tangents)[number])[1];
      joints.push({
        at: piece.to,
        normals: [leftOf(before), ...(after === undefined ? [] : [leftOf(after)])],
      });
    });
    this.joints = joints;
    // Every joint is an element too: seen from outside a corner the nearest point is the corner itself.
    this.elements = [
      new StraightElement(first.from, start, Number.NEGATIVE_INFINITY, 0),
      ...pieces.map((piece) => elementOf(piece)),
      new StraightElement(last.to, end, 0, Number.POSITIVE_INFINITY),
      ...joints.map(({ at }) => RoundElement.corner(at)),
    ];
  }

  /** Distance from (x, y), mm; sets `element`. */
  nearest(x: number, y: number): number {
    const { elements } = this;
    let best = Number.POSITIVE_INFINITY;
    for (let i = 0; i < elements.length; i++) {
      const d = (elements[i] as EdgeElement).distance(x, y, Number.NaN);
      // A corner takes over only where it is truly nearer.
      if (d < best - 1e-13) {
        best = d;
        this.element = i;
      }
    }
    return best;
  }
}

const leftOf = ({ x, y }: Vec2): Vec2 => ({ x: -y, y: x });

const tangent = (segment: Segment, end: "from" | "to"): Vec2 => endTangent(segment, end) ?? { x: 1, y: 0 };
