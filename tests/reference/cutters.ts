// A knife's steel for the general modellers: the body as forged and ground, and what is cut out of it afterwards by tools
// of exact shape.
import type { KnifeSpec, Outline, Vec2 } from "@scantling/geometry";
import { facesOf } from "./faces.js";
import type { Faced, Side } from "./layout.js";

/** A round hole, or the same drawn out to a slot, straight through. */
export interface Drill {
  readonly at: Vec2;
  readonly to: Vec2;
  readonly radius: number;
}

/** A cylinder with spherical ends that lies along a face: what a groove of circular section with round ends leaves. */
export interface Groove extends Drill {
  readonly depth: number;
  /** z of its axis, mm. */
  readonly z: number;
}

export interface Steel {
  readonly body: Faced;
  readonly drills: readonly Drill[];
  readonly grooves: readonly Groove[];
}

/** Takes holes, slots and fullers out of the description, builds the body without them, and says where the tools stand. */
export function steelOf(spec: KnifeSpec, outline: Outline): Steel {
  const { holes = [], fullers = [], ...blade } = spec.blade;
  const { holes: tangHoles = [], ...tang } = spec.tang;
  const body = facesOf({ ...spec, blade, tang }, outline);
  const drills = [...holes, ...tangHoles].map(
    ({ at, to = at, diameter }): Drill => ({ at, to, radius: diameter / 2 }),
  );
  const grooves = fullers.flatMap(({ from, to, radius, depth, faces = "both" }) => {
    const sides: readonly Side[] = faces === "both" ? ["right", "left"] : [faces];
    return sides.map((side): Groove => {
      const outward = side === "right" ? 1 : -1;
      const height = flatHeight(body, from, to, side);
      return { at: from, to, radius, depth, z: outward * (height + radius - depth) };
    });
  });
  return { body, drills, grooves };
}

/** Height of a face that is level along a line. */
function flatHeight(body: Faced, from: Vec2, to: Vec2, side: Side): number {
  const height = body.face(from.x, from.y, side);
  if (Math.abs(body.face(to.x, to.y, side) - height) > 1e-12)
    throw new Error("a groove cut by a straight tool needs a level face");
  return height;
}
