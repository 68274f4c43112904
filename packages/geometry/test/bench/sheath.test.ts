import { describe, expect, it } from "vitest";
import { randomKnife } from "../../../../tests/reference/random/knives.js";
import { checkSheath } from "../../src/bench/check-sheath.js";
import { foldOverSheath, type Sheath } from "../../src/bench/sheath.js";
import { SHEATH_DEFAULTS } from "../../src/bench/sheath-defaults.js";
import { type Knife, makeKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";
import { areaMoments } from "../../src/plane/measure.js";
import { nearestOnPath } from "../../src/plane/nearest.js";
import { pointAt, type Segment } from "../../src/plane/segment.js";
import type { Vec2 } from "../../src/plane/vec2.js";
import { describeIssue } from "../../src/units/index.js";

const { leather, welt, trim, stitchInset } = SHEATH_DEFAULTS;

/** A rectangle 200 × 40 of 4 mm: a square front, level all round. */
const plain = (changes: Partial<KnifeSpec["blade"]> = {}): Knife =>
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
      bevel: { form: "flat", height: 20, edgeThickness: 0.4 },
      edgeAngle: 0.3,
      ...changes,
    },
    tang: { form: "full" },
  });

/** ∫₀² √(14² − u²) du: between the upper corner's level and the fold. */
const ARC = (2 * Math.sqrt(14 * 14 - 4)) / 2 + ((14 * 14) / 2) * Math.asin(2 / 14);

const points = (run: readonly Segment[]): Vec2[] =>
  run.flatMap((segment) => Array.from({ length: 25 }, (_, i) => pointAt(segment, i / 24)));
const gap = (run: readonly Segment[], p: Vec2): number =>
  nearestOnPath({ segments: run, closed: false }, p)?.distance ?? Number.NaN;
const knives: readonly [string, Knife][] = Array.from({ length: 60 }, (_, index) => {
  const { kind, knife } = randomKnife(index);
  return [`${index} ${kind}`, knife];
});

describe("a sheath for a rectangle of 210 × 40 × 4 mm", () => {
  const sheath = foldOverSheath(plain());

  it("has halves of height + half the thickness + welt + trim", () => {
    expect(sheath.fold).toBeCloseTo(42, 12);
    expect(sheath.halfWidth).toBeCloseTo(40 + 2 + 12 + 2, 9);
    expect(sheath.mouth).toBe(-10);
    // An arc of 14 about the corner, 2 below the fold.
    expect(sheath.foldEnd).toBeCloseTo(200 + Math.sqrt(14 * 14 - 2 * 2), 6);
  });

  it("has the area of a rectangle less what the rounded corners lose, by hand", () => {
    // Two halves: 210 wide, 14 in front with a rounded corner, and what the arc about the upper corner leaves up to the fold.
    const half = 210 * 56 + 40 * 14 + (Math.PI * 14 * 14) / 4 + ARC;
    expect(Math.abs(areaMoments(sheath.blank).area)).toBeCloseTo(2 * half, 4);
  });

  it("has a welt of as many layers as reach the blade's thickness", () => {
    expect(sheath.weltLayers).toBe(2);
    expect(leather.value * sheath.weltLayers).toBeGreaterThanOrEqual(sheath.bladeThickness);
    expect(foldOverSheath(plain(), { leather: 4 }).weltLayers).toBe(1);
    // One side 210 long and 14 wide with the corner, up the front to the fold.
    const strip = 210 * 14 + (Math.PI * 14 * 14) / 4 + 40 * 14 + ARC;
    expect(Math.abs(areaMoments(sheath.welt).area)).toBeCloseTo(strip, 4);
  });

  it("has stitches at the pitch, as nearly as the seam's length allows, clear of mouth and fold", () => {
    // 210 along the edge, a quarter circle of 8, and up the front to 4 below the fold.
    const seam = 210 + (Math.PI * 8) / 2 + 38;
    const count = Math.round((seam - 4) / 4);
    expect(sheath.stitches).toHaveLength(count + 1);
    expect(sheath.stitchPitch).toBeCloseTo((seam - 4) / count, 6);
    expect(sheath.stitches[10]?.at.x).toBeCloseTo(-6 + 10 * sheath.stitchPitch, 6);
    expect(sheath.stitches[10]?.at.y).toBeCloseTo(-8, 9);
    expect(sheath.stitches.at(-1)?.at.x).toBeCloseTo(208, 6);
    expect(sheath.stitches.at(-1)?.at.y).toBeCloseTo(38, 6);
  });
});

describe("the highest part of the blade", () => {
  const bladed = (edge: string, front: string, spine: string): Knife => {
    const { spec } = plain();
    const tang = { tangTop: "L-110 40", butt: "L-110 15", tangBottom: "L-10 15" };
    return makeKnife({
      ...spec,
      blade: { ...spec.blade, outline: { runs: { edge, front, spine, ...tang } } },
    });
  };

  it("is told at the heel of one that falls all along: 40 at the mouth, 35 less over 210", () => {
    expect(foldOverSheath(bladed("M0 0 H200", "L200 5", "L-10 40")).bladeHeight).toBeCloseTo(40 - 35 / 21, 9);
  });

  it("is told at a corner of one that is highest there", () => {
    expect(foldOverSheath(bladed("M0 0 H200", "L200 5", "L77.7 50 L-10 40")).bladeHeight).toBeCloseTo(50, 9);
  });

  it("is told where rims that both bend are farthest apart", () => {
    // Edge and spine as parabolas over 200 mm, 10 and 12 high in their middles: 40 + 22 − 0 apart at 100.
    const spine = "C133.3333333333333 56 66.6666666666667 56 0 40 L-10 40";
    const edge = "M0 0 C66.6666666666667 -13.3333333333333 133.3333333333333 -13.3333333333333 200 0";
    expect(foldOverSheath(bladed(edge, "L200 40", spine)).bladeHeight).toBeCloseTo(62, 9);
  });
});

describe("sizes that make no sheath", () => {
  it("are a welt that leaves no more than half the blade beside the stitches: 6 − 4 for a blade of 4", () => {
    expect(checkSheath(plain(), { welt: 6.001 })).toEqual([]);
    const [issue, ...more] = checkSheath(plain(), { welt: 6 });
    expect(more).toEqual([]);
    expect(issue).toMatchObject({ code: "sheath-no-seam", path: "sheath.welt" });
    expect(describeIssue(issue ?? { text: "" }, "mm")).toMatch(
      /^A welt of 6 mm with stitches 4 mm in leaves 2 mm beside a blade 4 mm thick: the seam needs more than 2 mm\./u,
    );
    expect(checkSheath(plain(), { stitchInset: 11 })[0]?.path).toBe("sheath.stitchInset");
    // The welt is the shop's, the stitches are this knife's own.
    const mixed = { welt: 12, stitchInset: 11 };
    expect(checkSheath(plain(), mixed, { stitchInset: 11 })[0]?.path).toBe("sheath.stitchInset");
    expect(checkSheath(plain(), mixed, { leather: 3 })[0]?.path).toBe("sheath.welt");
    expect(() => foldOverSheath(plain(), { welt: 5 })).toThrow(SpecError);
  });

  it("are those that are nothing, all of them told", () => {
    expect(checkSheath(plain(), { leather: 0, stitchPitch: -1 }).map(({ path }) => path)).toEqual([
      "sheath.leather",
      "sheath.stitchPitch",
    ]);
  });
});

/** Places of the blade, on its rim. */
const rim = (sheath: Sheath): Vec2[] => points(sheath.blade);

describe.each(knives)("random knife %s", (_, knife) => {
  const sheath = foldOverSheath(knife);

  it("is the same on both sides of the fold", () => {
    const whole = sheath.blank.segments;
    const turned = points(whole).map(({ x, y }) => ({ x, y: 2 * sheath.fold - y }));
    expect(Math.max(...turned.map((p) => gap(whole, p)))).toBeLessThan(1e-6);
  });

  it("keeps the blade a welt away from the finished edge, and touches that distance somewhere", () => {
    const gaps = rim(sheath).map((p) => gap(sheath.finished, p));
    expect(Math.min(...gaps)).toBeGreaterThan(welt.value - 1e-3);
    const other = points(sheath.finished).map((p) => gap(sheath.blade, p));
    expect(Math.min(...other)).toBeGreaterThan(welt.value - 1e-3);
    expect(Math.min(...other)).toBeLessThan(welt.value + 0.05);
    const stitches = sheath.stitches.flatMap(({ at }) => gap(sheath.blade, at));
    expect(Math.min(...stitches)).toBeGreaterThan(welt.value - stitchInset.value - 1e-3);
    const cut = points(sheath.blank.segments).filter(
      ({ x, y }) => x > sheath.mouth + 1e-6 && y <= sheath.fold,
    );
    const cuts = cut.map((p) => gap(sheath.blade, p));
    expect(Math.min(...cuts)).toBeGreaterThan(welt.value + trim.value - 1e-3);
    expect(Math.min(...cuts)).toBeLessThan(welt.value + trim.value + 0.05);
  });

  it("lets every part of the blade out through the mouth: drawn straight back it stays as far from the edge", () => {
    const length = knife.outline.edgeLength - sheath.mouth;
    for (const share of [0.1, 0.25, 0.5, 0.75, 0.9]) {
      const drawn = rim(sheath)
        .map(({ x, y }) => ({ x: x - share * length, y }))
        .filter(({ x }) => x > sheath.mouth);
      for (const p of drawn) expect(gap(sheath.finished, p)).toBeGreaterThan(welt.value - 1e-3);
    }
    // The blade's own height, by the other way of reading an outline.
    const { footprint } = knife.body("finished");
    const heights = Array.from({ length: 1500 }, (_, i) => {
      const spans = footprint.spansAt(sheath.mouth + (length * (i + 0.5)) / 1500);
      return (spans.at(-1)?.[1] ?? 0) - (spans[0]?.[0] ?? 0);
    });
    const highest = Math.max(...heights);
    expect(sheath.bladeHeight).toBeGreaterThan(highest - 1e-9);
    expect(sheath.bladeHeight).toBeLessThan(highest + 0.3);
    expect(sheath.mouthHeight).toBeGreaterThan(highest - 1e-9);
  });

  it("has the whole blade under the fold", () => {
    const high = Math.max(...rim(sheath).map(({ y }) => y));
    expect(sheath.fold - high).toBeGreaterThan(sheath.bladeThickness / 2 - 1e-9);
  });
});
