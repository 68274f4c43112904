import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import type { BevelSpec, KnifeSpec, StationSpec } from "../../src/blade/spec.js";
import type { Finding } from "../../src/errors/issue.js";
import { boxKnife } from "./bodies.js";
import { at, DEGREE, heel, tip } from "./random-knives.js";

// Blades of 120 × 30, 4 thick, 0.4 at the edge, so that every limit has a closed form: chord c, rise g = 1.8 a side.
const bevel = (given: Partial<BevelSpec>): BevelSpec => ({
  form: "flat",
  height: 30,
  edgeThickness: 0.4,
  ...given,
});
const RISE = 1.8;

/** The value in the middle of the blade differs from both ends: whatever is wrong is wrong there only. */
const only = (middle: number, ends: number): readonly StationSpec[] => [
  heel(ends),
  at(60, middle),
  tip(ends),
];

const find = (spec: KnifeSpec, code: string): Finding | undefined =>
  makeKnife(spec).findings.find((finding) => finding.code === code);
const numberIn = (finding: Finding | undefined, name: string): number => {
  const value = finding?.values?.[name];
  return typeof value === "object" ? value.value : Number.NaN;
};
const codes = (spec: KnifeSpec): string[] => makeKnife(spec).findings.map(({ code }) => code);

describe("a wheel that is too small", () => {
  const least = (height: number): number => (height ** 2 + RISE ** 2) / (2 * RISE);
  const hollow = (wheelRadius: number, more: Partial<BevelSpec> = {}): KnifeSpec =>
    boxKnife({ bevel: bevel({ form: "hollow", wheelRadius, ...more }) });

  it("leaves the blade thinner above its edge than at it, and is named with the least that does not", () => {
    expect(codes(hollow(least(30) * 1.001))).toEqual([]);
    const finding = find(hollow(least(30) * 0.99), "wheel-too-small");
    expect(finding).toMatchObject({ severity: "stop", path: "blade.bevel.wheelRadius" });
    expect(numberIn(finding, "least")).toBeCloseTo(least(30), 9);
    // What it says of the blade itself: just above the edge it is thinner than 0.4 with one wheel, not with the other.
    for (const [radius, thinner] of [
      [least(30) * 1.001, false],
      [least(30) * 0.99, true],
    ] as const) {
      const section = makeKnife(hollow(radius)).body("unsharpened").sectionAt(60);
      expect(2 * section.valueAt(0.05) < 0.4).toBe(thinner);
    }
  });

  it("at one station only, and there it says where", () => {
    const finding = find(hollow(least(25), { height: only(30, 21) }), "wheel-too-small");
    expect(numberIn(finding, "x")).toBe(60);
    expect(codes(hollow(least(25), { height: only(24.9, 21) }))).toEqual([]);
  });

  it("on the left face only, with the path of the key that says so", () => {
    const own = hollow(least(30) * 1.1, { left: { wheelRadius: least(30) * 0.99 } });
    expect(find(own, "wheel-too-small")?.path).toBe("blade.bevel.left.wheelRadius");
    const higher = hollow(least(25), { height: 24, left: { height: 28 } });
    expect(find(higher, "wheel-too-small")?.path).toBe("blade.bevel.wheelRadius");
    expect(codes(higher)).toEqual(["wheel-too-small"]);
  });

  it("on the back of a single bevel, where the hollow may not go deeper than the front rises", () => {
    // The right face is the flat back (apex on it). Over a chord of 30 the sagitta is about 900/8R.
    const back = (wheelRadius: number): KnifeSpec =>
      boxKnife({
        bevel: bevel({ apex: 1, right: { form: "hollow", wheelRadius } }),
        edgeAngle: { right: "flat", left: 15 * DEGREE },
      });
    // The front rises 3.6 over 30, the hollow falls 15/R at the edge: level where R = 15·30/3.6 = 125.
    expect(codes(back(130))).toEqual([]);
    expect(find(back(115), "wheel-too-small")).toMatchObject({
      severity: "stop",
      path: "blade.bevel.right.wheelRadius",
    });
  });
});

describe("a crown that is too large", () => {
  // The level arc's sagitta: (c/2)·tan(λ/2), λ = atan(g/b).
  const most = (height: number): number =>
    (Math.hypot(height, RISE) / 2) * Math.tan(Math.atan2(RISE, height) / 2);
  const convex = (mm: number | readonly StationSpec[], more: Partial<BevelSpec> = {}): KnifeSpec =>
    boxKnife({ bevel: bevel({ form: "convex", crown: { mm }, ...more }) });

  it("at one station only", () => {
    expect(codes(convex(only(most(30) - 1e-6, 0.1)))).toEqual([]);
    const finding = find(convex(only(most(30) + 1e-6, 0.1)), "crown-too-large");
    expect(finding).toMatchObject({ severity: "stop", path: "blade.bevel.crown" });
    expect(numberIn(finding, "x")).toBe(60);
    expect(numberIn(finding, "most")).toBeCloseTo(most(30), 9);
  });

  it("on the left face only", () => {
    const left = { crown: { mm: most(30) * 1.01 } };
    expect(find(convex(0.2, { left }), "crown-too-large")?.path).toBe("blade.bevel.left.crown");
    expect(codes(convex(0.2, { left: { crown: { mm: most(30) * 0.99 } } }))).toEqual([]);
    const form = boxKnife({ bevel: bevel({ left: { form: "convex", crown: { share: 0.2 } } }) });
    expect(find(form, "crown-too-large")?.path).toBe("blade.bevel.left.crown");
  });
});

describe("a sharpening plane", () => {
  // A bevel of 14 stands at atan(1.8/14) = 7.33°; at 8.2° a side the plane meets it 12.9 up, below the line at 14.
  const grazing = 8.2 * DEGREE;
  const spec = (edgeAngle: KnifeSpec["blade"]["edgeAngle"], given: Partial<BevelSpec> = {}): KnifeSpec =>
    boxKnife({ edgeAngle, bevel: bevel(given) });

  it("that grazes the face at one station only is told, with the place", () => {
    const finding = find(spec(grazing, { height: only(14, 30) }), "edge-bevel-grazes");
    expect(finding).toMatchObject({ severity: "warn", path: "blade.edgeAngle" });
    expect(Math.abs(numberIn(finding, "x") - 60)).toBeLessThan(2);
    expect(codes(spec(9.5 * DEGREE, { height: only(14, 30) }))).not.toContain("edge-bevel-grazes");
  });

  it("that grazes the left face only", () => {
    const left = { right: 15 * DEGREE, left: grazing };
    expect(find(spec(left, { height: 14 }), "edge-bevel-grazes")?.path).toBe("blade.edgeAngle.left");
    const lower = spec({ right: grazing, left: grazing }, { left: { height: 14 } });
    const found = makeKnife(lower).findings.filter(({ code }) => code === "edge-bevel-grazes");
    expect(found.map(({ path }) => path)).toEqual(["blade.edgeAngle.left"]);
  });

  it("that meets a hollow face twice is told before anything else", () => {
    // R = 260: the face is 0.2 at the edge and 2 at the bevel line, the plane 1.9 there.
    const twice = spec(Math.atan(1.9 / 30), { form: "hollow", wheelRadius: 260 });
    expect(find(twice, "edge-bevel-grazes")?.text).toContain("more than once");
    expect(codes(spec(Math.atan(2.3 / 30), { form: "hollow", wheelRadius: 260 }))).toEqual([]);
  });

  it("that runs past the bevel line at one station only", () => {
    const finding = find(spec(8.2 * DEGREE, { height: only(10, 30) }), "edge-bevel-over-bevel-line");
    expect(Math.abs(numberIn(finding, "x") - 60)).toBeLessThan(11);
    expect(codes(spec(15 * DEGREE, { height: only(10, 30) }))).not.toContain("edge-bevel-over-bevel-line");
  });

  it("leaves no knife with a point alone in having a steep end", () => {
    const pointed: KnifeSpec = {
      ...boxKnife({}),
      blade: {
        outline: { family: "slicer", edgeLength: 240, heelHeight: 32 },
        thickness: [heel(2.2), tip(1)],
        bevel: { form: "flat", height: "full", edgeThickness: 0.2 },
        edgeAngle: 10 * DEGREE,
      },
      tang: { form: "full", length: 120 },
    };
    expect(codes(pointed)).toEqual([]);
  });
});

describe("an edge that does not come out as written", () => {
  it("a side without a plane leaves the edge blunt unless the apex lies on it", () => {
    const single = (apex: number): KnifeSpec =>
      boxKnife({ bevel: bevel({ apex }), edgeAngle: { right: 15 * DEGREE, left: "flat" } });
    expect(codes(single(-1))).toEqual([]);
    for (const [apex, blunt] of [
      [0, 0.2],
      [1, 0.4],
      [-0.5, 0.1],
    ] as const) {
      const knife = makeKnife(single(apex));
      const finding = knife.findings.find(({ code }) => code === "edge-stays-blunt");
      expect(finding).toMatchObject({ severity: "warn", path: "blade.edgeAngle.left" });
      expect(numberIn(finding, "blunt")).toBeCloseTo(blunt, 12);
      // The same, measured on the finished blade at its very edge.
      expect(knife.body("finished").thicknessIgnoringOutline({ x: 60, y: 0 })).toBeCloseTo(blunt, 12);
    }
    const right = boxKnife({ edgeAngle: { right: "flat", left: 15 * DEGREE } });
    expect(find(right, "edge-stays-blunt")?.path).toBe("blade.edgeAngle.right");
  });

  it("a microbevel that takes up the whole sharpening bevel", () => {
    // At 20° the plane meets the face 0.2/(tan 20° − 0.06) up.
    const meets = 0.2 / (Math.tan(20 * DEGREE) - RISE / 30);
    const micro = (height: number): KnifeSpec =>
      boxKnife({ bevel: bevel({}), edgeAngle: 15 * DEGREE, microbevel: { height, angle: 20 * DEGREE } });
    expect(codes(micro(meets * 0.99))).toEqual([]);
    expect(codes(micro(meets * 1.01))).toEqual(["microbevel-over-edge-bevel"]);
  });

  it("a swedge that takes nothing off, and a spine eased rounder than it is thick", () => {
    const swedge = (thickness: number): KnifeSpec =>
      boxKnife({ swedge: { from: { kind: "heel" }, to: { kind: "tip" }, angle: 0.5, thickness } });
    expect(codes(swedge(3.9))).toEqual([]);
    expect(codes(swedge(4))).toEqual(["swedge-cuts-nothing"]);
    const eased = (easedSpine: number): KnifeSpec => boxKnife({ easedSpine, thickness: [heel(4), tip(2)] });
    expect(codes(eased(1))).toEqual([]);
    const finding = find(eased(1.2), "eased-spine-over-half");
    expect(finding?.severity).toBe("note");
    expect(numberIn(finding, "half")).toBeCloseTo(1, 12);
  });
});
