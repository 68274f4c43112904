import { type Outline, outlineOfRuns } from "../../src/blade/outline.js";
import { SlabLaw } from "../../src/blade/slab-law.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { Law } from "../../src/numeric/law.js";
import { line, type Segment } from "../../src/plane/segment.js";
import { type Vec2, vec2 } from "../../src/plane/vec2.js";

export const polyline = (...points: readonly Vec2[]): Segment[] =>
  points.slice(1).map((to, i) => line(points[i] as Vec2, to));

/** A plain blade 100 long and 30 high, no ricasso, with the given runs of the tang behind x = 0. */
export function outlineWith(tang: {
  readonly top: readonly Segment[];
  readonly butt: readonly Segment[];
  readonly bottom: readonly Segment[];
}): Outline {
  const front = tang.top[0] as Segment;
  const end = tang.bottom[tang.bottom.length - 1] as Segment;
  return outlineOfRuns({
    edge: polyline(vec2(0, 0), vec2(100, 0)),
    front: polyline(vec2(100, 0), vec2(100, 30)),
    spine: polyline(vec2(100, 30), front.from),
    tangTop: tang.top,
    butt: tang.butt,
    tangBottom: tang.bottom,
    heelFace: end.to.x === 0 && end.to.y === 0 ? [] : polyline(end.to, vec2(0, 0)),
  });
}

/** A full tang: `length` long, from y = 30 − height up to y = 30. */
export function fullTang(length: number, height: number): Outline {
  const low = 30 - height;
  return outlineWith({
    top: polyline(vec2(0, 30), vec2(-length, 30)),
    butt: polyline(vec2(-length, 30), vec2(-length, low)),
    bottom: polyline(vec2(-length, low), vec2(0, low)),
  });
}

/** A hidden tang about y = 15, straight from `front` high at the shoulders to `rear` high at its end. */
export function hiddenTang(length: number, front: number, rear: number): Outline {
  return outlineWith({
    top: polyline(vec2(0, 30), vec2(0, 15 + front / 2), vec2(-length, 15 + rear / 2)),
    butt: polyline(vec2(-length, 15 + rear / 2), vec2(-length, 15 - rear / 2)),
    bottom: polyline(vec2(-length, 15 - rear / 2), vec2(0, 15 - front / 2)),
  });
}

/** Steel as thick as `front` at the handle front and `rear` at the end of the tang, straight between. */
export function steelLaw(outline: Outline, front: number, rear = front): SlabLaw {
  const { handleFront, butt } = outline;
  return new SlabLaw({
    spine: Law.constant(front),
    tang: Law.straight([
      { at: 0, is: front },
      { at: handleFront - butt, is: rear },
    ]),
    handleFront,
    onFlats: 0,
    onTang: 0,
  });
}

/** A description whose tang has the given form; the checks of handles look at nothing else of it. */
export const knifeWith = (form: KnifeSpec["tang"]["form"], handle: KnifeSpec["handle"]): KnifeSpec => ({
  steel: { name: "1084" },
  blade: {
    outline: { family: "drop-point", edgeLength: 100, heelHeight: 30 },
    thickness: [{ at: { kind: "heel" }, is: 4 }],
    bevel: { form: "flat", height: "full", edgeThickness: 0.4 },
    edgeAngle: 0.3,
  },
  tang: { form, length: 100 },
  ...(handle === undefined ? {} : { handle }),
});

export const relative = (value: number, truth: number): number => Math.abs(value / truth - 1);
