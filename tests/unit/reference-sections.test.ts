import { crossingsAtX, type KnifeSpec, makeKnife, sectionAt, type Vec2, vec2 } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { referenceBody } from "../reference/body.js";

const DEGREE = Math.PI / 180;
/** Strips across a section; one that a rim or a crease runs through is off by less than its own area. */
const STRIPS = 10_000;
/** mm²: strips of about 0.003 mm by 5 mm, a few of which hold a rim. */
const WITHIN = 0.03;
/** mm²: a contour has 160 points a face, and none of them need fall on a rim. */
const DRAWN = 0.3;

const spec = (blade: Partial<KnifeSpec["blade"]>, tang: Partial<KnifeSpec["tang"]> = {}): KnifeSpec => ({
  steel: { name: "any", density: 0.00785 },
  blade: {
    outline: { family: "drop-point", edgeLength: 120, heelHeight: 32 },
    ricasso: 14,
    thickness: [
      { at: { kind: "heel" }, is: 5 },
      { at: { kind: "tip" }, is: 3 },
    ],
    bevel: { form: "flat", height: 18, edgeThickness: 0.6 },
    edgeAngle: 18 * DEGREE,
    ...blade,
  },
  tang: { form: "full", length: 110, buttThickness: 2, ...tang },
});

/** Level and slanting slots, a round hole, slanting fullers of one face and of both, through bevel and flat. */
const knives: Readonly<Record<string, readonly [KnifeSpec, readonly number[]]>> = {
  "a slot along the tang": [
    spec({}, { holes: [{ kind: "lightening", at: vec2(-60, 22), to: vec2(-80, 22), diameter: 9 }] }),
    [-50, -57, -60, -70, -82],
  ],
  "slanting slots and a hole in the bevel": [
    spec({
      holes: [
        { kind: "lightening", at: vec2(15, 10), to: vec2(50, 22), diameter: 5 },
        { kind: "hanging", at: vec2(90, 16), diameter: 6 },
      ],
      easedSpine: 0.6,
    }),
    [13, 20, 40, 51, 88, 90],
  ],
  "fullers of both faces and of one": [
    spec({
      fullers: [
        { from: vec2(-5, 26), to: vec2(60, 24), radius: 4, depth: 1.2 },
        { from: vec2(10, 12), to: vec2(40, 17), radius: 3, depth: 0.5, faces: "left" },
      ],
      swedge: {
        from: { kind: "distance", mm: 70 },
        to: { kind: "tip" },
        angle: 20 * DEGREE,
        thickness: 1.5,
      },
    }),
    [-6, 0, 25, 41, 59, 61, 80, 100],
  ],
};

const ringArea = (ring: readonly Vec2[]): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);

describe.each(Object.entries(knives))("sections through %s", (_, [described, places]) => {
  const knife = makeKnife(described);
  const body = referenceBody(described, knife.outline);
  /** Steel over a strip of height, by the model's thickness function. */
  const byGrid = (x: number): number => {
    const ys = crossingsAtX(knife.outline.path, x).map(({ point }) => point.y);
    const low = Math.min(...ys);
    const step = (Math.max(...ys) - low) / STRIPS;
    let sum = 0;
    for (let i = 0; i < STRIPS; i++) {
      const y = low + (i + 0.5) * step;
      if (!body.isDrilled(x, y)) sum += 2 * body.half(x, y) * step;
    }
    return sum;
  };

  it.each(places)("at %s mm hold the steel that a grid counts, and enclose it", (x) => {
    const { area, contours } = sectionAt(knife, x);
    expect(Math.abs(area - byGrid(x)), `${area} against ${byGrid(x)}`).toBeLessThan(WITHIN);
    const drawn = contours.reduce((sum, contour) => sum + ringArea(contour), 0);
    expect(Math.abs(drawn - area), `drawn ${drawn}, ${area} computed`).toBeLessThan(DRAWN);
  });
});

describe("pieces of a section", () => {
  const pieces = (x: number): number =>
    sectionAt(makeKnife(knives["a slot along the tang"]?.[0] as KnifeSpec), x).contours.length;

  it("are two where a slot parts it, one before and behind it", () => {
    expect([-50, -70, -90].map(pieces)).toEqual([1, 2, 1]);
  });
});
