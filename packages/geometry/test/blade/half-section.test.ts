import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FaceAtStation, groundFace, levelCrown } from "../../src/blade/face-section.js";
import { HalfSection } from "../../src/blade/half-section.js";
import { expectWithin } from "../numeric/close.js";
import { halves } from "./independent.js";
import { between, SEED } from "./random-knives.js";

/** A face by the full thicknesses of a section that is the same on both sides. */
const face = (given: Partial<FaceAtStation>): FaceAtStation => {
  const full = {
    edge: 0.4,
    bevelHeight: 30,
    bevelLineBelow: 4,
    bevelLineAbove: 4,
    spine: 4,
    spineDistance: 30,
    crown: Number.NaN,
    wheelRadius: Number.POSITIVE_INFINITY,
    ...given,
  };
  return {
    ...full,
    edge: full.edge / 2,
    bevelLineBelow: full.bevelLineBelow / 2,
    bevelLineAbove: full.bevelLineAbove / 2,
    spine: full.spine / 2,
  };
};

/** Area of the full section up to `top`, mm². */
const area = (section: HalfSection, top: number): number =>
  halves((v) => [2 * section.valueAt(v)], 0, top, [1e-9], 20)[0] as number;

describe("the ground face", () => {
  it("flat, 30 high, 4 and 0.4 thick: 66 mm²", () => {
    // Project's sheet of published values, section 11 (closed form).
    expectWithin(area(groundFace(face({}), "flat", new HalfSection()), 30), 66, 1e-9);
  });

  it("convex with radius 500: 75.051097 mm²", () => {
    // The same sheet: two circular segments over the chord √(30² + 1.8²). Its sagitta is R − √(R² − c²/4).
    const crown = 500 - Math.sqrt(500 ** 2 - (30 ** 2 + 1.8 ** 2) / 4);
    const section = groundFace(face({ crown }), "convex", new HalfSection());
    expectWithin(area(section, 30), 75.051097, 5e-7);
    const chord = Math.hypot(30, 1.8);
    const half = Math.asin(chord / 1000);
    expectWithin(area(section, 30), 66 + 500 ** 2 * (2 * half - Math.sin(2 * half)), 1e-8);
  });

  it("convex without a crown is level at the bevel line, and bulges by the level crown", () => {
    const section = groundFace(face({ bevelHeight: 20, spineDistance: 25 }), "convex", new HalfSection());
    expectWithin(section.valueAt(20 - 1e-9), 2, 1e-9);
    expectWithin(section.pieceSlope(0, 20), 0, 1e-12);
    // Level at its upper end: R = (b² + r²)/(2r); sagitta over the chord c: R − √(R² − c²/4).
    const R = (400 + 1.8 ** 2) / 3.6;
    expectWithin(levelCrown(20, 1.8), R - Math.sqrt(R * R - (400 + 1.8 ** 2) / 4), 1e-12);
  });

  it("passes through edge, bevel line and spine, and is level beyond it", () => {
    for (const form of ["flat", "convex"] as const) {
      const given = face({ bevelHeight: 18, bevelLineBelow: 3.6, bevelLineAbove: 3.6 });
      const section = groundFace(given, form, new HalfSection());
      expectWithin(section.valueAt(0), 0.2, 1e-15);
      expectWithin(section.valueAt(18), 1.8, 1e-13);
      expectWithin(section.valueAt(24), 1.9, 1e-13);
      expectWithin(section.valueAt(30), 2, 1e-13);
      expect(section.valueAt(77)).toBe(2);
    }
  });

  it("keeps its digits on an arc of a very great radius", () => {
    // Sagitta s over a chord c: the area between is 2/3·c·s to within (s/c)².
    for (const crown of [1e-3, 1e-6, 1e-9]) {
      const section = groundFace(face({ crown }), "convex", new HalfSection());
      const middle = section.valueAt(15) - (0.2 + 1.8 / 2);
      // The sagitta leans with the chord: along z it is s/cos of the lean.
      expectWithin(middle, (crown * Math.hypot(30, 1.8)) / 30, 1e-5 * crown + 2e-15);
    }
  });

  it("is flat where nothing can bulge: no rise, or no crown", () => {
    expect(groundFace(face({ bevelLineBelow: 0.4 }), "convex", new HalfSection()).isArc(0)).toBe(false);
    expect(groundFace(face({ crown: 0 }), "convex", new HalfSection()).isArc(0)).toBe(false);
  });

  it("never leans out over the edge, however much crown is asked for", () => {
    fc.assert(
      fc.property(between(0.5, 40), between(0.5, 8), between(0, 3), (b, spine, crown) => {
        const given = face({
          bevelHeight: b,
          bevelLineBelow: spine,
          bevelLineAbove: spine,
          spine,
          spineDistance: b,
          crown,
        });
        const section = groundFace(given, "convex", new HalfSection());
        let before = 0.2;
        for (let k = 0; k <= 50; k++) {
          const h = section.valueAt((b * k) / 50);
          const flat = 0.2 + ((spine / 2 - 0.2) * k) / 50;
          expect(Number.isFinite(h)).toBe(true);
          expect(h).toBeGreaterThanOrEqual(flat - 1e-12);
          before = h;
        }
        expectWithin(before, spine / 2, 1e-12);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

interface Pieces {
  readonly starts: readonly number[];
  readonly lines: readonly (readonly [number, number])[];
}

const straightPieces: fc.Arbitrary<Pieces> = fc
  .tuple(
    fc.array(between(0.2, 8), { maxLength: 3 }),
    fc.array(fc.tuple(between(-1, 3), between(-0.4, 0.6)), { minLength: 4, maxLength: 4 }),
  )
  .map(([steps, lines]) => {
    let start = 0;
    return { starts: [0, ...steps.map((step) => (start += step))], lines };
  });

const built = ({ starts, lines }: Pieces): HalfSection => {
  const section = new HalfSection();
  starts.forEach((start, i) => {
    const [a, b] = lines[i] as readonly [number, number];
    section.addLine(start, a, b);
  });
  return section;
};

describe("the smaller and the larger of two sections", () => {
  const holds = (first: HalfSection, other: HalfSection): void => {
    const smaller = new HalfSection().combine(first, other, "smaller");
    const larger = new HalfSection().combine(first, other, "larger");
    const knots = [...first.start.slice(0, first.count), ...other.start.slice(0, other.count)];
    for (let v = 0; v < 40; v += 0.0917) {
      if (knots.some((knot) => Math.abs(knot - v) < 1e-9)) continue;
      const [a, b] = [first.valueAt(v), other.valueAt(v)];
      expectWithin(smaller.valueAt(v), Math.min(a, b), 1e-9, `smaller at ${v}`);
      expectWithin(larger.valueAt(v), Math.max(a, b), 1e-9, `larger at ${v}`);
    }
    for (const mixed of [smaller, larger]) {
      for (let i = 1; i < mixed.count; i++) {
        expect(mixed.start[i]).toBeGreaterThan(mixed.start[i - 1] as number);
      }
    }
  };

  it("of straight pieces, at every distance", () => {
    fc.assert(
      fc.property(straightPieces, straightPieces, (a, b) => holds(built(a), built(b))),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("of an arc and straight pieces, at every distance", () => {
    fc.assert(
      fc.property(
        between(2, 30),
        between(1, 7),
        between(0.01, 2),
        straightPieces,
        (b, spine, crown, pieces) => {
          const given = face({
            bevelHeight: b,
            bevelLineBelow: spine - 0.3,
            bevelLineAbove: spine - 0.3,
            spine,
            spineDistance: b + 6,
            crown,
          });
          holds(groundFace(given, "convex", new HalfSection()), built(pieces));
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("finds both crossings of an arc and a plane, where a hand finds them", () => {
    // Arc of radius 25 about (20, −14), so 1 at v = 0, and the line h = 1 + v/4.
    const arc = new HalfSection().addArc(0, 1, 20, 15, 1).addLine(40, 1, 0);
    const plane = new HalfSection().addLine(0, 1.5, 0.3);
    const mixed = new HalfSection().combine(arc, plane, "smaller");
    // (v − 20)² + (0.3 v + 15.5)² = 625 → 1.09 v² − 30.7 v + 15.25 = 0
    const root = Math.sqrt(30.7 ** 2 - 4 * 1.09 * 15.25);
    const crossings = [(30.7 - root) / 2.18, (30.7 + root) / 2.18];
    expect(mixed.count).toBe(4);
    expectWithin(mixed.start[1] as number, crossings[0] as number, 1e-12);
    expectWithin(mixed.start[2] as number, crossings[1] as number, 1e-12);
    expect([0, 1, 2].map((i) => mixed.isArc(i))).toEqual([true, false, true]);
  });
});
