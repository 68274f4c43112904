import { type KnifeSpec, makeKnife, weighKnife } from "@scantling/geometry";
import { describe, expect, test } from "vitest";

// Solids whose volume anyone can check, made as knives and weighed by the same kernel as every knife. Each is the part
// ahead of the heel, or the butt; the plain block that the knife needs besides is taken off again by hand.

interface Bar {
  readonly length: number;
  readonly widths: readonly [number, number];
  readonly thicknesses: readonly [number, number];
}

const BLOCK = 50;

/** An unground bar that tapers straight in width and thickness from the heel to its end, on a plain block of a tang. */
function weighBar({ length, widths: [w1, w2], thicknesses: [t1, t2] }: Bar): number {
  const spec: KnifeSpec = {
    steel: { name: "plain", density: 0.00785 },
    blade: {
      outline: {
        runs: {
          edge: `M0 0 L${length} 0`,
          front: `M${length} 0 L${length} ${w2}`,
          spine: `M${length} ${w2} L0 ${w1}`,
          tangTop: `M0 ${w1} L${-BLOCK} ${w1}`,
          butt: `M${-BLOCK} ${w1} L${-BLOCK} 0`,
          tangBottom: `M${-BLOCK} 0 L0 0`,
        },
      },
      thickness: [
        { at: { kind: "heel" }, is: t1 },
        { at: { kind: "tip" }, is: t2 },
      ],
      // The bevels begin a hair from where the bar ends: there are none to speak of.
      plunge: { at: length * (1 - 1e-12), length: 0 },
      bevel: { form: "flat", height: w2 / 2, edgeThickness: t2 / 2 },
      edgeAngle: 0.3,
    },
    tang: { form: "full" },
  };
  return weighKnife(makeKnife(spec)).steel.volume - BLOCK * w1 * t1;
}

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);
const ROUNDING = 1e-11;

describe("prismatoids", () => {
  // Source: prismatoid rule V = (h/6)(A₁ + 4Aₘ + A₂), Weisstein, "Prismatoid"; the middle section of a straight taper is
  // the mean width by the mean thickness.
  const prismatoid = ({ length, widths: [w1, w2], thicknesses: [t1, t2] }: Bar): number =>
    (length / 6) * (w1 * t1 + (w1 + w2) * (t1 + t2) + w2 * t2);

  test("a bar that tapers in width and thickness: 25 333.333 mm³, and neither of the two wrong rules", () => {
    // L 200, 40 × 6 to 20 × 2: (L/6)(2w₁t₁ + w₁t₂ + w₂t₁ + 2w₂t₂), the prismatoid rule written out.
    const volume = weighBar({ length: 200, widths: [40, 20], thicknesses: [6, 2] });
    expect(relative(volume, 76_000 / 3)).toBeLessThan(ROUNDING);
    // Average of the end areas: 28 000. Frustum rule for similar ends, which these are not: 25 198.64.
    const averageEnds = (200 * (40 * 6 + 20 * 2)) / 2;
    const similarEnds = (200 / 3) * (240 + 40 + Math.sqrt(240 * 40));
    expect(averageEnds).toBe(28_000);
    expect(similarEnds).toBeCloseTo(25_198.64, 2);
    expect(relative(averageEnds, volume)).toBeGreaterThan(0.1);
    expect(relative(similarEnds, volume)).toBeGreaterThan(0.005);
    // 198.8667 g at 7.85 g/cm³.
    expect(volume * 0.00785).toBeCloseTo(198.8667, 4);
  });

  test("square frustum 4 → 2, height 6: 56", () => {
    // Moscow Mathematical Papyrus, problem 14 (citation from memory; the arithmetic is (6/3)(16 + 8 + 4)).
    expect(relative(weighBar({ length: 6, widths: [4, 2], thicknesses: [4, 2] }), 56)).toBeLessThan(ROUNDING);
  });

  test("wedge with base 60 × 20, top edge 40, height 30: 16 000", () => {
    // Prismatoid special case V = bh(2a + c)/6. A blade cannot be of no thickness at its end: a millionth of a mm stands
    // in for none and adds (30/6)(60 + 2·40)·1e-6 = 7e-4 mm³.
    const end = 1e-6;
    const volume = weighBar({ length: 30, widths: [60, 40], thicknesses: [20, end] });
    expect(relative(volume - (30 / 6) * (60 + 2 * 40) * end, 16_000)).toBeLessThan(ROUNDING);
  });

  test.each([
    { length: 120, widths: [30, 30], thicknesses: [5, 1] },
    { length: 90, widths: [12, 48], thicknesses: [3, 3] },
    { length: 310, widths: [25, 61], thicknesses: [9, 2.5] },
  ] as const)("$length long, $widths wide, $thicknesses thick", (bar) => {
    expect(relative(weighBar(bar), prismatoid(bar))).toBeLessThan(ROUNDING);
  });
});

describe("circular segments", () => {
  // Standard tables: A = (R²/2)(θ − sin θ), chord 2R sin(θ/2), centroid from the centre 4R sin³(θ/2)/(3(θ − sin θ)).
  // The figures for R 10 are exact arithmetic by these.
  test.each([
    [60, 9.058607, 9.199354],
    [90, 28.539816, 8.258717],
    [120, 61.418485, 7.050202],
    [180, 157.079633, 4.244132],
  ])("R 10, %d°: %d mm², centroid %d mm from the centre", (degrees, area, centroid) => {
    const angle = (degrees / 180) * Math.PI;
    const chord = 20 * Math.sin(angle / 2);
    const thickness = 5;
    const weigh = (butt: string) => {
      const spec: KnifeSpec = {
        steel: { name: "plain", density: 0.00785 },
        blade: {
          outline: {
            runs: {
              edge: "M0 0 L40 0",
              front: `M40 0 L40 ${chord}`,
              spine: `M40 ${chord} L0 ${chord}`,
              tangTop: `M0 ${chord} L-30 ${chord}`,
              butt: `M-30 ${chord} ${butt} -30 0`,
              tangBottom: "M-30 0 L0 0",
            },
          },
          thickness: [{ at: { kind: "heel" }, is: thickness }],
          bevel: { form: "flat", height: chord / 2, edgeThickness: 0.5 },
          edgeAngle: 0.3,
        },
        tang: { form: "full" },
      };
      return weighKnife(makeKnife(spec)).steel;
    };
    const round = weigh("A10 10 0 0 1");
    const square = weigh("L");
    const volume = round.volume - square.volume;
    expect(volume / thickness).toBeCloseTo(area, 6);
    const x = (round.volume * round.centre.x - square.volume * square.centre.x) / volume;
    // The chord is at x = −30, and the centre of the circle R cos(θ/2) ahead of it.
    expect(-30 + 10 * Math.cos(angle / 2) - x).toBeCloseTo(centroid, 5);
  });
});

describe("sections of constant shape", () => {
  // Width 30, spine 4, edge 0.4, 200 long: exact arithmetic, the trapezoid (4 + 0.4)/2 · 30 and segments on its legs.
  const weighSection = (bevel: KnifeSpec["blade"]["bevel"]): number => {
    const spec: KnifeSpec = {
      steel: { name: "plain", density: 0.00785 },
      blade: {
        outline: {
          runs: {
            edge: "M0 0 L200 0",
            front: "M200 0 L200 30",
            spine: "M200 30 L0 30",
            tangTop: "M0 30 L-50 30",
            butt: "M-50 30 L-50 0",
            tangBottom: "M-50 0 L0 0",
          },
        },
        thickness: [{ at: { kind: "heel" }, is: 4 }],
        bevel,
        // Planes so steep that they take nothing: 0.2² · cot of the angle, 4e-8 mm² of the section.
        edgeAngle: Math.PI / 2 - 1e-6,
      },
      tang: { form: "full" },
    };
    return (weighKnife(makeKnife(spec)).steel.volume - 50 * 30 * 4) / 200;
  };

  test("flat: A = 66 mm²", () => {
    expect(weighSection({ form: "flat", height: "full", edgeThickness: 0.4 })).toBeCloseTo(66, 6);
  });

  test("convex, R 500 on both faces: A = 75.051097 mm²", () => {
    // The trapezoid of 66 mm² and on each face a segment of 4.525548 mm² on the chord √(30² + 1.8²).
    const chord = Math.hypot(30, 1.8);
    const crown = 500 - Math.sqrt(500 ** 2 - chord ** 2 / 4);
    const area = weighSection({ form: "convex", height: "full", edgeThickness: 0.4, crown: { mm: crown } });
    expect(area).toBeCloseTo(75.051097, 6);
    expect((area - 66) / 2).toBeCloseTo(4.525548, 6);
  });

  test("convex by default is level at the bevel line: half a segment of twice the chord", () => {
    // Radius (b² + d²)/2d with b 30, d 1.8; the arc from its top down to 30 mm aside is half of a segment of chord 60
    // and sagitta 1.8, on top of the edge's half-thickness 0.2.
    const radius = (30 ** 2 + 1.8 ** 2) / 3.6;
    const angle = 2 * Math.asin(30 / radius);
    const segment = (radius ** 2 / 2) * (angle - Math.sin(angle));
    expect(weighSection({ form: "convex", height: "full", edgeThickness: 0.4 })).toBeCloseTo(
      0.4 * 30 + segment,
      6,
    );
  });
});
