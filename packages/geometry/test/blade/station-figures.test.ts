import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { edgeBevelAt, sectionAt, thicknessAbove } from "../../src/blade/section-report.js";
import type { BevelSpec, KnifeSpec } from "../../src/blade/spec.js";
import { reportStations, stationFigures } from "../../src/blade/station-figures.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import type { Vec2 } from "../../src/plane/vec2.js";
import { boxKnife } from "./bodies.js";
import { DEGREE, heel, tip } from "./random-knives.js";

// A blade of 120 × 30, 4 thick, 0.4 at the edge, flat to the spine: the face stands 0.2 + 0.06 v from the middle.
const THETA = 15 * DEGREE;
const box = (blade: Partial<KnifeSpec["blade"]> = {}, bevel: Partial<BevelSpec> = {}): KnifeSpec =>
  boxKnife({ bevel: { form: "flat", height: 30, edgeThickness: 0.4, ...bevel }, edgeAngle: THETA, ...blade });
const figures = (spec: KnifeSpec, x = 60) => stationFigures(makeKnife(spec), x);

/** mm and mm²: a station is read 10⁻⁹ mm beside the corner that it may stand at. */
const DIGITS = 8;

const shoelace = (ring: readonly Vec2[]): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);

describe("a station of a flat bevel, by closed form", () => {
  const meets = 0.2 / (Math.tan(THETA) - 0.06);
  const { thickness, height, area, edgeThickness, aboveEdge, right, left } = figures(box());

  it("has its thickness, height and area: the trapezoid of 66 mm² less two triangles", () => {
    expect(thickness).toBeCloseTo(4, DIGITS);
    expect(height).toBeCloseTo(30, DIGITS);
    expect(area).toBeCloseTo(66 - 2 * (0.2 * meets) * 0.5, DIGITS);
    expect(edgeThickness).toBe(0.4);
  });

  it("is 2(0.2 + 0.06 v) thick above the edge, and the plane's 2 v·tan θ below where they meet", () => {
    expect(aboveEdge.map(({ above }) => above)).toEqual([1, 5, 10, 20]);
    for (const { above, thickness: found } of aboveEdge) {
      const expected = above < meets ? 2 * above * Math.tan(THETA) : 0.4 + 0.12 * above;
      expect(found).toBeCloseTo(expected, DIGITS);
    }
  });

  it("has bevel angle, sharpening bevel and thickness behind the edge on both faces", () => {
    for (const face of [right, left]) {
      expect(face?.bevelHeight).toBeCloseTo(30, DIGITS);
      expect(face?.bevelAngle).toBeCloseTo(Math.atan(1.8 / 30), DIGITS);
      expect(face?.sharpeningAngle).toBe(THETA);
      expect(face?.edgeBevel?.height).toBeCloseTo(meets, DIGITS);
      expect(face?.edgeBevel?.width).toBeCloseTo(meets / Math.cos(THETA), DIGITS);
      expect(face?.edgeBevel?.behind).toBeCloseTo(2 * meets * Math.tan(THETA), DIGITS);
    }
  });

  it("has its section drawn with the area that it is said to have", () => {
    const section = sectionAt(makeKnife(box()), 60);
    const drawn = section.contours.reduce((sum, contour) => sum + shoelace(contour), 0);
    // The corner between plane and face falls between two points of the contour.
    expect(Math.abs(drawn - section.area)).toBeLessThan(1e-3);
    expect(section.contours).toHaveLength(1);
  });
});

describe("a station under a swedge and over a hole", () => {
  const swedge = {
    from: { kind: "distance", mm: 50 },
    to: { kind: "tip" },
    angle: 20 * DEGREE,
    thickness: 1.5,
  } as const;

  it("tells the spine without the swedge, and what a caliper reads there", () => {
    const found = [40, 60].map((x) => figures(box({ swedge }), x));
    expect(found.map(({ thickness }) => thickness)).toEqual([4, 4]);
    expect(found.map(({ atSwedge }) => atSwedge)).toEqual([undefined, 1.5]);
  });

  it("has no thickness above the edge where that is a hole", () => {
    const holes = [{ kind: "lightening", at: { x: 60, y: 10 }, diameter: 4 }] as const;
    expect(figures(box({ holes }), 60).aboveEdge.map(({ above }) => above)).toEqual([1, 5, 20]);
  });
});

describe("published edge geometry", () => {
  // Bevel of a parallel edge, t thick, at α a side: width t/(2 sin α), height t/(2 tan α); exact, tabulated to 1e-4.
  it.each([
    [0.25, 10, 0.7198, 0.7089],
    [0.4, 15, 0.7727, 0.7464],
    [0.5, 20, 0.731, 0.6869],
    [0.8, 25, 0.9465, 0.8578],
  ])("%s mm at %s°: %s wide, %s high", (t, alpha, width, height) => {
    // A bevel as thick at its line as at the edge is that parallel edge.
    const knife = makeKnife(box({ thickness: [heel(t)], edgeAngle: alpha * DEGREE }, { edgeThickness: t }));
    const bevel = edgeBevelAt(knife, 60);
    expect(bevel?.width).toBeCloseTo(width, 4);
    expect(bevel?.height).toBeCloseTo(height, 4);
    expect(bevel?.behind).toBeCloseTo(t, 9);
  });
});

describe("other stations", () => {
  it("of a single bevel have a sharpening bevel on one face", () => {
    const single = figures(box({ edgeAngle: { right: THETA, left: "flat" } }, { apex: -1 }));
    const meets = 0.4 / (Math.tan(THETA) - 3.6 / 30);
    expect(single.left?.edgeBevel).toBeUndefined();
    expect(single.left?.sharpeningAngle).toBeUndefined();
    expect(single.right?.edgeBevel?.height).toBeCloseTo(meets, DIGITS);
    expect(single.right?.bevelAngle).toBeCloseTo(Math.atan(3.6 / 30), DIGITS);
  });

  it("ground to no thickness at the edge, flatter than it would be sharpened, have no sharpening bevel", () => {
    const { right } = figures(box({}, { edgeThickness: 0 }));
    expect(right?.edgeBevel).toBeUndefined();
    expect(right?.bevelAngle).toBeCloseTo(Math.atan(2 / 30), DIGITS);
  });

  it("with a microbevel count both planes' widths", () => {
    const micro = { height: 0.3, angle: 25 * DEGREE };
    const lift = 0.3 * (Math.tan(micro.angle) - Math.tan(THETA));
    const meets = (0.2 - lift) / (Math.tan(THETA) - 0.06);
    const bevel = figures(box({ microbevel: micro })).right?.edgeBevel;
    expect(bevel?.height).toBeCloseTo(meets, DIGITS);
    expect(bevel?.width).toBeCloseTo(0.3 / Math.cos(micro.angle) + (meets - 0.3) / Math.cos(THETA), DIGITS);
  });

  it("in tang and ricasso have a section and no bevel", () => {
    const tang = figures(box(), -60);
    expect(tang).toMatchObject({ x: -60, aboveEdge: [] });
    expect([tang.thickness, tang.height, tang.area]).toEqual([4, 20, 80]);
    expect(tang.right).toBeUndefined();
    expect(tang.edgeThickness).toBeUndefined();
  });

  it("on the plunge are measured as they are ground so far, and have no bevel of their own yet", () => {
    const half = figures(box({ plunge: { at: 20, length: 40 } }), 40);
    expect(half.right).toBeUndefined();
    // Half way, 3u² − 2u³ = ½: half of what the bevel takes at 10 mm, 2 − 0.8, is off.
    const ten = half.aboveEdge.find(({ above }) => above === 10);
    expect(ten?.thickness).toBeCloseTo(4 - (4 - 1.6) / 2, DIGITS);
  });

  it("leave out heights that the blade does not have", () => {
    const knife = makeKnife({
      ...box({ thickness: [heel(3), tip(1)] }),
      blade: {
        outline: { family: "petty", edgeLength: 120, heelHeight: 22 },
        thickness: [heel(3), tip(1)],
        bevel: { form: "flat", height: "full", edgeThickness: 0.2 },
        edgeAngle: THETA,
      },
      tang: { form: "full", length: 100 },
    });
    const x = 0.95 * 120;
    const [low = 0, high = 0] = knife.body("finished").footprint.spansAt(x)[0] ?? [];
    expect(high - low).toBeGreaterThan(1);
    expect(high - low).toBeLessThan(10);
    const reached = [1, 5, 10, 20].filter((above) => above <= high - low);
    expect(thicknessAbove(knife, x).map(({ above }) => above)).toEqual(reached);
    expect(stationFigures(knife, 120).height).toBeLessThan(1e-6);
  });
});

describe("stations of a report", () => {
  it("go from where the bevels begin to just behind the tip", () => {
    expect(reportStations(makeKnife(box()))).toEqual([0, 30, 60, 90, 114]);
    expect(reportStations(makeKnife(box({ plunge: { at: 10, length: 25 } })))).toEqual([35, 60, 90, 114]);
  });

  it("have areas that add up to the volume of the blade", () => {
    // Simpson's rule over the box: its sections are all alike, and the tang is 80 × 20 × 4, the ricasso 20 × 20 × 4.
    const knife = makeKnife(box());
    const areas = [0, 60, 120].map((x) => stationFigures(knife, x).area);
    const [a = 0, m = 0, b = 0] = areas;
    expect((120 / 6) * (a + 4 * m + b) + 100 * 20 * 4).toBeCloseTo(weighKnife(knife).steel.volume, 5);
  });
});
