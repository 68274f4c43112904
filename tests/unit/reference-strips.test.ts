import type { BladeSpec, KnifeSpec, Outline, Segment } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { referenceKnives } from "../reference/blades.js";
import { referenceBody } from "../reference/body.js";
import { hardKnives } from "../reference/hard-blades.js";
import { integrateBody } from "../reference/integrate.js";
import { makeNearest } from "../reference/nearest.js";
import { outlineOf, p, polyline } from "../reference/outlines.js";
import { Chance } from "../reference/random/chance.js";
import { randomKnife } from "../reference/random/knives.js";
import { Field } from "../reference/strips/field.js";
import { stripModel } from "../reference/strips/model.js";
import { sumStrips } from "../reference/strips/strips.js";
import { Thickness } from "../reference/strips/thickness.js";

// The strips that the kernel is held against are only worth something if they are right themselves: closed forms done by
// hand, an older reference that reads the model on its own, and their own estimate against a finer run.

const CLOSE = 13;

/** A bar 200 × 30, edge below, with a tang so short that it is nothing. */
const BAR: Outline = outlineOf(
  {
    edge: polyline(p(0, 0), p(200, 0)),
    front: polyline(p(200, 0), p(200, 30)),
    spine: polyline(p(200, 30), p(0, 30)),
    heelFace: polyline(p(0, 30), p(0, 0)),
  },
  200,
  0,
  0,
);

const bar = (blade: Partial<BladeSpec>): KnifeSpec => ({
  steel: { name: "plain", density: 0.00785 },
  blade: {
    outline: { runs: { edge: "M0 0 L200 0" } },
    thickness: [{ at: { kind: "heel" }, is: 4 }],
    bevel: { form: "flat", height: "full", edgeThickness: 0.4 },
    edgeAngle: { right: "flat", left: "flat" },
    ...blade,
  },
  tang: { form: "full" },
});

const sums = (blade: Partial<BladeSpec>, outline = BAR): readonly number[] =>
  Array.from(sumStrips(bar(blade), outline, 1e-14).value);

const PLAIN: BladeSpec["bevel"] = { form: "flat", height: 1e-6, edgeThickness: 4 };
const volume = (blade: Partial<BladeSpec>): number => sums(blade)[0] ?? Number.NaN;

describe("strips against closed forms", () => {
  test("flat wedge: volume and moments of a trapezoid section", () => {
    const [v = 0, x = 0, y = 0, xx = 0, yy = 0, zz = 0, xy = 0, z, yz, zx] = sums({});
    // Width e + (T − e)·y/H: the integrals of 1, y, y² over it, and of w³/12.
    const area = ((4 + 0.4) / 2) * 30;
    const first = 30 ** 2 * (0.4 / 2 + 3.6 / 3);
    const second = 30 ** 3 * (0.4 / 3 + 3.6 / 4);
    expect(v / (200 * area)).toBeCloseTo(1, CLOSE);
    expect(x / (200 * area * 100)).toBeCloseTo(1, CLOSE);
    expect(y / (200 * first)).toBeCloseTo(1, CLOSE);
    expect(xx / ((200 ** 3 / 3) * area)).toBeCloseTo(1, CLOSE);
    expect(yy / (200 * second)).toBeCloseTo(1, CLOSE);
    expect(xy / ((200 ** 2 / 2) * first)).toBeCloseTo(1, CLOSE);
    expect(zz / ((200 / 12) * ((30 * (4 ** 4 - 0.4 ** 4)) / (4 * 3.6)))).toBeCloseTo(1, CLOSE);
    expect([z, yz, zx]).toEqual([0, 0, 0]);
  });

  test("single bevel: a wedge on the left face, its centre to the right", () => {
    // Apex on the right face, no plane: half-thickness 2 on the right, from −2 to 2 on the left.
    const [v = 0, , , , , , , z = 0] = sums({
      bevel: { form: "flat", height: "full", edgeThickness: 0, apex: 1 },
    });
    expect(v / (200 * 30 * 2)).toBeCloseTo(1, CLOSE);
    // Mean of (4 − h²)/2 over h from −2 to 2 is 4/3.
    expect(z / (200 * 30 * (4 / 3))).toBeCloseTo(1, CLOSE);
  });

  test("convex and hollow: the wedge plus or less a circular segment on each face", () => {
    const chord = Math.hypot(30, 1.8);
    const segment = (r: number): number => {
      const angle = 2 * Math.asin(chord / 2 / r);
      return ((angle - Math.sin(angle)) * r * r) / 2;
    };
    const crown = 500 - Math.sqrt(500 ** 2 - chord ** 2 / 4);
    const convex = volume({
      bevel: { form: "convex", height: "full", edgeThickness: 0.4, crown: { mm: crown } },
    });
    expect(convex / (200 * (66 + 2 * segment(500)))).toBeCloseTo(1, 12);
    const hollow = volume({
      bevel: { form: "hollow", height: "full", edgeThickness: 0.4, wheelRadius: 300 },
    });
    expect(hollow / (200 * (66 - 2 * segment(300)))).toBeCloseTo(1, 12);
    // Level at the bevel line by default: R = s²/2g.
    const level = volume({ bevel: { form: "convex", height: "full", edgeThickness: 0.4 } });
    expect(level / (200 * (66 + 2 * segment(chord ** 2 / 3.6)))).toBeCloseTo(1, 12);
  });

  test("sharpening planes and microbevel: prisms under the face", () => {
    const slope = 1.8 / 30;
    const tan = Math.tan(0.3);
    const crossing = 0.2 / (tan - slope);
    const sharp = volume({ edgeAngle: 0.3 });
    expect((13_200 - sharp) / (200 * 0.2 * crossing)).toBeCloseTo(1, 11);
    // Below m the plane is steeper; above it runs on at 0.3, lifted by m·(tan μ − tan θ).
    const m = 0.2;
    const micro = Math.tan(0.5);
    const meets = (0.2 - m * (micro - tan)) / (tan - slope);
    const left = m * m * (micro / 2) + (m * micro * (meets - m) + ((meets - m) ** 2 * tan) / 2);
    const whole = meets * 0.2 + (slope * meets ** 2) / 2;
    const small = volume({ edgeAngle: 0.3, microbevel: { height: m, angle: 0.5 } });
    expect((13_200 - small) / (400 * (whole - left))).toBeCloseTo(1, 10);
  });

  test("flank taper, plunge, swedge, eased spine", () => {
    // Bevel 15 high; flank from 3 at the line to 4 at the spine; 4·(30 − 15)/30 is more than 1, so the taper is whole.
    const flank = volume({ bevel: { form: "flat", height: 15, edgeThickness: 0.4 }, flankTaper: 1 });
    expect(flank / (200 * (15 * 1.7 + 15 * 3.5))).toBeCloseTo(1, CLOSE);
    // Eased in over 50: w = 3u² − 2u³ has mean 1/2.
    const eased = volume({ plunge: { at: 20, length: 50 } });
    expect(eased / (30 * (4 * 20 + 50 * (4 + 2.2) * 0.5 + 2.2 * 130))).toBeCloseTo(1, CLOSE);
    const round = volume({ bevel: PLAIN, easedSpine: 1.5 });
    expect((24_000 - round) / (200 * 2 * 1.5 ** 2 * (1 - Math.PI / 4))).toBeCloseTo(1, 9);
    // From 1 mm at the spine at 30°: a triangle (2 − 0.5) wide on each face, over 80 mm.
    const swedge = volume({
      bevel: PLAIN,
      swedge: {
        from: { kind: "distance", mm: 100 },
        to: { kind: "distance", mm: 180 },
        angle: Math.PI / 6,
        thickness: 1,
      },
    });
    expect((24_000 - swedge) / (80 * 1.5 * (1.5 / Math.tan(Math.PI / 6)))).toBeCloseTo(1, 9);
  });

  test("hole, slot and fuller", () => {
    const hole = volume({ bevel: PLAIN, holes: [{ kind: "pin", at: p(60, 15), diameter: 8 }] });
    expect((24_000 - hole) / (4 * 16 * Math.PI)).toBeCloseTo(1, 9);
    const slot = volume({
      bevel: PLAIN,
      holes: [{ kind: "lightening", at: p(60, 10), to: p(72, 19), diameter: 8 }],
    });
    expect((24_000 - slot) / (4 * (16 * Math.PI + 15 * 8))).toBeCloseTo(1, 9);
    // Groove of radius 10, 1 deep: its segment drawn along 50 mm, and a spherical cap of the same radius as its two ends.
    const angle = 2 * Math.acos(0.9);
    const segment = (100 / 2) * (angle - Math.sin(angle));
    const cap = (Math.PI / 3) * 1 * (3 * 10 - 1);
    const fuller = volume({
      bevel: PLAIN,
      fullers: [{ from: p(40, 15), to: p(80, 15), radius: 10, depth: 1, faces: "left" }],
    });
    expect((24_000 - fuller) / (40 * segment + cap)).toBeCloseTo(1, 9);
  });
});

describe.each([...referenceKnives(), ...hardKnives()])(
  "strips against the older reference: $name",
  ({ spec, outline }) => {
    test("volume and moments", () => {
      const { value, scale } = sumStrips(spec, outline, 1e-12);
      const other = integrateBody(referenceBody(spec, outline), 1e-9);
      [other.volume, other.x, other.y, other.xx, other.yy, other.zz, other.xy].forEach((m, i) => {
        expect(Math.abs(m - (value[i] ?? 0)) / (scale[i] ?? 0), `integral ${i}`).toBeLessThan(2e-9);
      });
    });
  },
);

describe("the strips' own estimate", () => {
  test("covers what a much finer run finds, on forty random knives", () => {
    for (let i = 2000; i < 2040; i++) {
      const { spec, knife } = randomKnife(i);
      const fine = sumStrips(spec, knife.outline, 1e-12);
      const rough = sumStrips(spec, knife.outline, 1e-10);
      fine.value.forEach((v, j) => {
        const sure = (rough.error[j] ?? 0) + (fine.error[j] ?? 0) + 1e-14 * (fine.scale[j] ?? 0);
        expect(Math.abs(v - (rough.value[j] ?? 0)), `knife ${i}, integral ${j}`).toBeLessThanOrEqual(sure);
      });
    }
  });
});

describe("thickness of both faces", () => {
  test("is that of the older reference, which reads the model on its own, on random knives", () => {
    const chance = new Chance(12);
    for (let i = 4000; i < 4080; i++) {
      const { spec, knife } = randomKnife(i);
      const { outline } = knife;
      const thickness = new Thickness(stripModel(spec, outline));
      const body = referenceBody(spec, outline);
      for (let k = 0; k < 40; k++) {
        const x = chance.between(outline.butt, outline.edgeLength);
        thickness.stand(x);
        const { heights } = thickness;
        const y = chance.between(heights[0] ?? 0, heights[1] ?? 0);
        thickness.prepare(y, y);
        thickness.at(y);
        const where = `knife ${i} at ${x}, ${y}`;
        expect(Math.abs(thickness.right - body.face(x, y, "right")), where).toBeLessThan(1e-9);
        expect(Math.abs(thickness.left - body.face(x, y, "left")), where).toBeLessThan(1e-9);
      }
    }
  });
});

describe("distance to the edge", () => {
  test("is that of the older search, on edges of random knives", () => {
    const chance = new Chance(11);
    for (let i = 3000; i < 3060; i++) {
      const { outline } = randomKnife(i).knife;
      const { edge } = outline.runs;
      const last = edge[edge.length - 1];
      const field = new Field(edge, 200);
      const nearest = makeNearest(edge);
      for (let k = 0; k < 60; k++) {
        const x = chance.between(-20, outline.edgeLength);
        const y = chance.between(0.2, 60);
        const here = field.nearest(x, y);
        // The older one always prolongs the edge: nearer there only where the edge has turned back at its end.
        const old = nearest(x, y);
        if (last !== undefined && old.piece === edge.length && turnedBack(last)) continue;
        expect(Math.abs(here - old.distance), `knife ${i} at ${x}, ${y}`).toBeLessThan(1e-9 * (1 + here));
      }
    }
  });
});

function turnedBack(segment: Segment): boolean {
  if (segment.kind === "line") return segment.to.x < segment.from.x;
  if (segment.kind === "cubic") return segment.to.x < segment.control2.x;
  const angle = segment.startAngle + segment.sweep;
  return -Math.sign(segment.sweep) * Math.sin(angle) < 0;
}

describe("whether a ridge runs inside the steel", () => {
  const ridged = (edge: readonly Segment[], height = 30): boolean => {
    const end = edge[edge.length - 1]?.to ?? p(0, 0);
    const outline = outlineOf(
      {
        edge,
        front: polyline(end, p(end.x, height)),
        spine: polyline(p(end.x, height), p(0, height)),
        heelFace: polyline(p(0, height), p(0, 0)),
      },
      end.x,
      0,
      0,
    );
    return sumStrips(bar({}), outline, 1e-8).ridged;
  };
  const belly = (radius: number): Segment[] => {
    const turn = 0.8;
    return [
      ...polyline(p(0, 0), p(100, 0)),
      {
        kind: "arc",
        from: p(100, 0),
        to: p(100 + radius * Math.sin(turn), radius * (1 - Math.cos(turn))),
        centre: p(100, radius),
        radius,
        startAngle: -Math.PI / 2,
        sweep: turn,
      },
    ];
  };

  test("a straight edge and one that turns away have none, a corner toward the steel has one", () => {
    expect(ridged(polyline(p(0, 0), p(150, 0)))).toBe(false);
    expect(ridged(polyline(p(0, 0), p(80, 8), p(150, 4)))).toBe(false);
    expect(ridged(polyline(p(0, 0), p(80, 0), p(150, 10)))).toBe(true);
  });

  test("an arc has one if its centre lies in the steel", () => {
    expect(ridged(belly(20))).toBe(true);
    expect(ridged(belly(40))).toBe(false);
  });
});
