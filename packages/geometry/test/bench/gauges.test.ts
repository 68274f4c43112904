import { describe, expect, it } from "vitest";
import { convexByDefault, hollow, singleBevel, twoFaces } from "../../../../tests/reference/form-blades.js";
import { handleKnives } from "../../../../tests/reference/handle-knives.js";
import { randomKnife } from "../../../../tests/reference/random/knives.js";
import { gaugeSet } from "../../src/bench/gauges.js";
import { bevelAt } from "../../src/blade/bevel-at.js";
import { type Knife, makeKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { findingLimits } from "../../src/limits/finding-limits.js";
import { nearestOnPath } from "../../src/plane/nearest.js";
import { pointAt, type Segment } from "../../src/plane/segment.js";

const base = (blade: Partial<KnifeSpec["blade"]> = {}, rest: Partial<KnifeSpec> = {}): Knife =>
  makeKnife({
    steel: { name: "1084" },
    blade: {
      outline: {
        runs: {
          edge: "M0 0 H200",
          front: "L200 40",
          spine: "L-10 40",
          tangTop: "L-110 40",
          butt: "L-110 15",
          tangBottom: "L-10 15",
        },
      },
      thickness: [{ at: { kind: "heel" }, is: 4 }],
      bevel: { form: "flat", height: 25, edgeThickness: 0.4 },
      edgeAngle: 0.3,
      ...blade,
    },
    tang: { form: "full" },
    ...rest,
  });

/** Radius of the circle through three points of a segment. */
function radiusThrough(segment: Segment): number {
  const [a, b, c] = [pointAt(segment, 0), pointAt(segment, 0.5), pointAt(segment, 1)];
  const side = (p: typeof a, q: typeof a): number => Math.hypot(q.x - p.x, q.y - p.y);
  const area = Math.abs((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)) / 2;
  return (side(a, b) * side(b, c) * side(c, a)) / (4 * area);
}

describe("bevel gauges", () => {
  it("of a flat bevel are straight from the edge to the bevel line, at the same place where nothing changes", () => {
    const { bevels, radii } = gaugeSet(base());
    expect(bevels).toHaveLength(1);
    expect(bevels[0]?.at).toEqual([0, 100, 150]);
    for (const [side, sign] of [
      ["right", 1],
      ["left", -1],
    ] as const) {
      const { kind, from, to } = bevels[0]?.[side].profile ?? {};
      expect(kind).toBe("line");
      expect(from?.x).toBeCloseTo(sign * 0.2, 12);
      expect(to?.x).toBeCloseTo(sign * 2, 12);
      expect(to?.y).toBe(25);
    }
    expect(bevels[0]?.right.angle).toBeCloseTo(Math.atan(1.8 / 25), 12);
    expect(radii).toEqual([]);
  });

  it("of a convex bevel have R = c²/(t − e), level at the bevel line, bulging outward", () => {
    const { bevels, radii, flatFaces } = gaugeSet(
      base({ bevel: { form: "convex", height: 25, edgeThickness: 0.4 } }),
    );
    const expected = (25 ** 2 + 1.8 ** 2) / (4 - 0.4);
    const { right, left } = bevels[0] ?? { right: undefined, left: undefined };
    if (right === undefined || left === undefined) throw new Error("there is a bevel");
    expect(radiusThrough(right.profile)).toBeCloseTo(expected, 6);
    expect(radiusThrough(left.profile)).toBeCloseTo(expected, 6);
    expect(pointAt(right.profile, 0.5).x).toBeGreaterThan(1.1);
    expect(pointAt(left.profile, 0.5).x).toBeLessThan(-1.1);
    // A quarter of what the bevel rises, 1.8, is its bulge: too flat for a card.
    expect(radii).toEqual([]);
    expect(flatFaces).toMatchObject([{ use: "convex", faces: "both", at: [0, 100, 150] }]);
    expect(flatFaces[0]?.radius).toBeCloseTo(expected, 9);
    expect(flatFaces[0]?.light).toBeCloseTo(1.8 / 4, 2);
  });

  it("of a hollow bevel have the wheel's radius, caving inward", () => {
    const { bevels, radii } = gaugeSet(
      base({ bevel: { form: "hollow", height: 25, edgeThickness: 0.4, wheelRadius: 97 } }),
    );
    const right = bevels[0]?.right;
    if (right === undefined) throw new Error("there is a bevel");
    expect(radiusThrough(right.profile)).toBeCloseTo(97, 6);
    expect(pointAt(right.profile, 0.5).x).toBeLessThan(1.1);
    expect(radii).toMatchObject([{ use: "hollow", faces: "both" }]);
    expect(radii[0]?.radius).toBeCloseTo(97, 9);
  });

  it.each([convexByDefault(), hollow(), singleBevel(), twoFaces()])(
    "run from the edge to the bevel line of the model: $name",
    ({ spec }) => {
      const knife = makeKnife(spec);
      const { bevels } = gaugeSet(knife);
      let compared = 0;
      for (const gauge of bevels) {
        const x = gauge.at[0] ?? 0;
        for (const side of ["right", "left"] as const) {
          const { height, rise, bevelLine } = bevelAt(knife, x, side);
          const { profile } = gauge[side];
          const sign = side === "right" ? 1 : -1;
          expect(profile.to.y).toBeCloseTo(height, 9);
          expect(sign * profile.to.x).toBeCloseTo(bevelLine / 2, 9);
          expect(sign * (profile.to.x - profile.from.x)).toBeCloseTo(rise, 9);
          // The unsharpened body itself, half way up the bevel, where the edge below is the nearest.
          const body = knife.body("unsharpened");
          const middle = pointAt(profile, 0.5);
          const edge = { segments: knife.outline.runs.edge, closed: false };
          if (Math.abs((nearestOnPath(edge, { x, y: middle.y })?.distance ?? 0) - middle.y) > 1e-9) continue;
          compared++;
          expect(body.faceAt({ x, y: middle.y }, side)).toBeCloseTo(sign * middle.x, 9);
        }
      }
      expect(compared).toBeGreaterThan(0);
    },
  );
});

describe("faces that bulge less than scissors can follow", () => {
  it("have the light under a straight edge instead of a gauge: half of what the bevel rises is four times the bulge", () => {
    // Level at the bevel line, rising by 0.45 over 25: about 0.45 / 4 from the chord, by hand.
    const { radii, flatFaces } = gaugeSet(
      base({ bevel: { form: "convex", height: 25, edgeThickness: 3.1 } }),
    );
    expect(radii).toEqual([]);
    expect(flatFaces).toMatchObject([{ use: "convex", faces: "both", at: [0, 100, 150] }]);
    expect(flatFaces[0]?.light).toBeCloseTo(0.45 / 4, 3);
    expect(flatFaces[0]?.chord).toBeCloseTo(Math.hypot(25, 0.45), 9);
  });

  it("are told by what the arc bulges, not by its radius: 0.8 mm", () => {
    // s = R − √(R² − c²/4): c = 25.06 over R = 97 gives 0.813, over R = 100 0.788.
    const wheel = (wheelRadius: number) =>
      gaugeSet(base({ bevel: { form: "hollow", height: 25, edgeThickness: 0.4, wheelRadius } }));
    expect([wheel(97).radii.length, wheel(97).flatFaces.length]).toEqual([1, 0]);
    expect([wheel(100).radii.length, wheel(100).flatFaces.length]).toEqual([0, 1]);
    const chord = Math.hypot(25, 1.8);
    // A shop with sharper eyes cuts it, one with less does not cut the other.
    const byShop = (wheelRadius: number, value: number) => {
      const { spec } = base({ bevel: { form: "hollow", height: 25, edgeThickness: 0.4, wheelRadius } });
      return gaugeSet(makeKnife(spec, { limits: findingLimits({ gaugeBulge: value }) })).radii.length;
    };
    expect([byShop(100, 0.78), byShop(97, 0.82)]).toEqual([1, 0]);
    expect(wheel(100).flatFaces[0]?.light).toBeCloseTo(100 - Math.sqrt(100 ** 2 - chord ** 2 / 4), 9);
  });
});

describe("edge gauges", () => {
  it("have the angle per side, and a microbevel's own", () => {
    expect(gaugeSet(base()).edges).toEqual([{ use: "edge", right: 0.3, left: 0.3 }]);
    const fine = base({ microbevel: { height: 0.3, angle: 0.4 } });
    expect(gaugeSet(fine).edges[1]).toEqual({ use: "microbevel", right: 0.4, left: 0.4 });
  });

  it("of a single bevel stand upright on the flat side where the apex lies on it", () => {
    const single = base({
      bevel: { form: "flat", height: 25, edgeThickness: 0.4, apex: -1 },
      edgeAngle: { right: 0.3, left: "flat" },
    });
    expect(gaugeSet(single).edges).toEqual([{ use: "edge", right: 0.3, left: 0 }]);
  });
});

describe("handle gauges", () => {
  it("are those of front, middle and butt, joined where the handle is the same", () => {
    const slabs = { material: { name: "European ash" }, thickness: 8, edgeRadius: 6 };
    const { handle, radii } = gaugeSet(base({ easedSpine: 1 }, { handle: { slabs } }));
    expect(handle).toHaveLength(1);
    expect(handle[0]?.places).toEqual([
      { place: "front", behindFront: 0 },
      { place: "middle", behindFront: 50 },
      { place: "butt", behindFront: 100 },
    ]);
    expect(radii).toMatchObject([
      { use: "spine", radius: 1 },
      { use: "handle", radius: 6 },
    ]);
  });

  it("have one of their own where the handle swells between its ends", () => {
    const [oval] = handleKnives();
    if (oval === undefined) throw new Error("there is an oval handle");
    const { handle } = gaugeSet(makeKnife(oval.spec));
    expect(handle.map(({ places }) => places.map(({ place }) => place))).toContainEqual(["middle"]);
    const widths = handle.map(({ width }) => width);
    expect(Math.max(...widths)).toBeGreaterThan(24.5);
    for (const { half, width, height, area } of handle) {
      expect(area).toBeCloseTo((Math.PI / 4) * width * height, 4);
      expect(half.every(({ kind }) => kind === "cubic")).toBe(true);
    }
  });

  it("are none without slabs or block", () => {
    expect(gaugeSet(base()).handle).toEqual([]);
  });
});

it("every random knife has its gauges, each profile from the edge up", () => {
  for (let index = 0; index < 60; index++) {
    const { bevels, edges } = gaugeSet(randomKnife(index).knife);
    expect(edges.length).toBeLessThanOrEqual(2);
    for (const { right, left, height, edge } of bevels) {
      expect(right.profile.to.y).toBeCloseTo(height, 9);
      expect(right.profile.from.x - left.profile.from.x).toBeCloseTo(edge, 6);
    }
  }
});
