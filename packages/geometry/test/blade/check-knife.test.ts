import { describe, expect, it } from "vitest";
import { checkNumbers } from "../../src/blade/check-numbers.js";
import { withDefaultAllowances, withDefaultFinish, withDefaultForging } from "../../src/blade/defaults.js";
import { makeKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";
import type { Finding, Issue } from "../../src/errors/issue.js";
import { FINDING_LIMITS } from "../../src/limits/finding-limits.js";
import { boxKnife, p } from "./bodies.js";
import { at, DEGREE, heel, share, tip } from "./random-knives.js";

function issuesOf(spec: KnifeSpec): readonly Issue[] {
  try {
    makeKnife(spec);
  } catch (error) {
    if (error instanceof SpecError) return error.issues;
    throw error;
  }
  return [];
}

const bevel = (given: Partial<KnifeSpec["blade"]["bevel"]>): KnifeSpec["blade"]["bevel"] => ({
  form: "flat",
  height: "full",
  edgeThickness: 0.4,
  ...given,
});
const tangHole = (x: number, y: number, diameter: number, more = {}) =>
  boxKnife({}, { tang: { holes: [{ kind: "pin", at: p(x, y), diameter, ...more }] } });

const wrong: readonly (readonly [code: string, path: string, spec: KnifeSpec])[] = [
  ["not-positive", "steel.density", boxKnife({}, { steel: { name: "x", density: 0 } })],
  ["not-a-number", "steel.density", boxKnife({}, { steel: { name: "x", density: Number.NaN } })],
  ["unknown-material", "steel", boxKnife({}, { steel: { name: "no such steel" } })],
  ["negative", "blade.ricasso", boxKnife({ ricasso: -1 })],
  ["no-stations", "blade.thickness", boxKnife({ thickness: [] })],
  ["not-positive", "blade.thickness[1].is", boxKnife({ thickness: [heel(4), tip(0)] })],
  ["not-a-number", "blade.thickness[0].is", boxKnife({ thickness: [heel(Number.POSITIVE_INFINITY)] })],
  ["negative", "blade.flankTaper", boxKnife({ flankTaper: -0.1 })],
  ["negative", "blade.plunge.at", boxKnife({ plunge: { at: -3, length: 0 } })],
  ["negative", "blade.plunge.length", boxKnife({ plunge: { at: 0, length: -1 } })],
  ["not-positive", "blade.bevel.height", boxKnife({ bevel: bevel({ height: 0 }) })],
  ["negative", "blade.bevel.edgeThickness", boxKnife({ bevel: bevel({ edgeThickness: -0.2 }) })],
  ["negative", "blade.bevel.crown", boxKnife({ bevel: bevel({ form: "convex", crown: { mm: -0.1 } }) })],
  ["edge-angle-range", "blade.edgeAngle", boxKnife({ edgeAngle: 0 })],
  ["edge-angle-range", "blade.edgeAngle", boxKnife({ edgeAngle: Math.PI / 2 })],
  ["edge-angle-range", "blade.edgeAngle", boxKnife({ edgeAngle: Number.NaN })],
  ["not-positive", "tang.buttThickness", boxKnife({}, { tang: { buttThickness: 0 } })],
  [
    "two-tang-laws",
    "tang.buttThickness",
    boxKnife({}, { tang: { buttThickness: 2, thickness: [{ at: { kind: "butt" }, is: 2 }] } }),
  ],
  ["not-positive", "tang.holes[0].diameter", tangHole(-60, 20, 0)],
  ["not-a-number", "tang.holes[0].at", tangHole(Number.NaN, 20, 4)],
  ["pin-wider-than-hole", "tang.holes[0].pin", tangHole(-60, 20, 4, { pin: 4.1 })],
  ["hole-outside-steel", "tang.holes[0].at", tangHole(-60, 29, 4)],
  ["hole-outside-steel", "tang.holes[0].at", tangHole(-60, 200, 4)],
  [
    "holes-overlap",
    "tang.holes[1].at",
    boxKnife(
      {},
      {
        tang: {
          holes: [
            { kind: "pin", at: p(-60, 20), diameter: 5 },
            { kind: "pin", at: p(-56, 20), diameter: 5 },
          ],
        },
      },
    ),
  ],
  [
    "negative",
    "handle.slabs.edgeRadius",
    boxKnife(
      {},
      { handle: { slabs: { material: { name: "w", density: 0.0007 }, thickness: 8, edgeRadius: -1 } } },
    ),
  ],
  [
    "radius-over-slab",
    "handle.slabs.edgeRadius",
    boxKnife(
      {},
      { handle: { slabs: { material: { name: "w", density: 0.0007 }, thickness: 8, edgeRadius: 8.1 } } },
    ),
  ],
  [
    "unknown-material",
    "handle.slabs.material",
    boxKnife({}, { handle: { slabs: { material: { name: "no such wood" }, thickness: 8 } } }),
  ],
  [
    "unknown-material",
    "handle.pins.material",
    boxKnife({}, { handle: { pins: { material: { name: "no such metal" } } } }),
  ],
  [
    "negative",
    "handle.parts[0].mass",
    boxKnife({}, { handle: { parts: [{ name: "guard", mass: -1, at: p(0, 0) }] } }),
  ],
  [
    "not-a-number",
    "handle.parts[0].at",
    boxKnife({}, { handle: { parts: [{ name: "guard", mass: 1, at: p(Number.NaN, 0) }] } }),
  ],
  ["negative", "allowances.face", boxKnife({}, { allowances: { face: -0.1 } })],
  ["not-a-number", "allowances.minEdge", boxKnife({}, { allowances: { minEdge: Number.NaN } })],
  ["negative", "forging.heats", boxKnife({}, { forging: { heats: -1 } })],
  ["station-outside", "blade.thickness[1].at", boxKnife({ thickness: [heel(4), at(121, 3)] })],
  ["station-outside", "blade.thickness[0].at", boxKnife({ thickness: [at(-1, 4), tip(3)] })],
  [
    "station-outside",
    "tang.thickness[0].at",
    boxKnife({}, { tang: { thickness: [{ at: { kind: "distance", mm: 81 }, is: 3 }] } }),
  ],
  [
    "station-outside",
    "blade.bevel.crown[1].at",
    boxKnife({ bevel: bevel({ form: "convex", crown: { mm: [heel(0.1), at(130, 0.1)] } }) }),
  ],
  ["station-twice", "blade.thickness[1].at", boxKnife({ thickness: [tip(4), share(1, 3)] })],
  [
    "station-twice",
    "blade.bevel.crown[1].at",
    boxKnife({ bevel: bevel({ form: "convex", crown: { share: [heel(0.1), at(0, 0.2)] } }) }),
  ],
  ["plunge-past-tip", "blade.plunge", boxKnife({ plunge: { at: 100, length: 20 } })],
  [
    "edge-thicker-than-blade",
    "blade.bevel.edgeThickness",
    boxKnife({ bevel: bevel({ edgeThickness: 4.1 }) }),
  ],
  [
    "edge-thicker-than-blade",
    "blade.bevel.edgeThickness",
    boxKnife({ thickness: [heel(4), tip(0.8)], flankTaper: 0.5, bevel: bevel({ height: 14 }) }),
  ],
];

describe("a description that cannot be made", () => {
  it.each(wrong)("%s at %s", (code, path, spec) => {
    expect(issuesOf(spec).map((issue) => [issue.code, issue.path])).toContainEqual([code, path]);
  });

  it("names every placeholder of its text, and only numbers that can be shown", () => {
    for (const [, , spec] of wrong) {
      for (const { text, values = {} } of issuesOf(spec)) {
        for (const [, name = ""] of text.matchAll(/\{(\w+)\}/g)) expect(Object.keys(values)).toContain(name);
      }
    }
  });

  it("is told of everything at once", () => {
    const spec = boxKnife(
      { thickness: [heel(-4)], edgeAngle: 0, flankTaper: Number.NaN },
      { tang: { buttThickness: -1 }, forging: { heats: -2 } },
    );
    expect(checkNumbers(spec).map(({ path }) => path)).toEqual([
      "blade.thickness[0].is",
      "blade.flankTaper",
      "blade.edgeAngle",
      "tang.buttThickness",
      "forging.heats",
    ]);
  });

  it("is not refused at the limits: a hole that touches, a station at either end, a pin as wide as its hole", () => {
    expect(issuesOf(tangHole(-60, 28, 4))).toEqual([]);
    expect(issuesOf(tangHole(-60, 20, 4, { pin: 4 }))).toEqual([]);
    expect(issuesOf(boxKnife({ thickness: [at(0, 4), at(120, 3)] }))).toEqual([]);
    expect(issuesOf(boxKnife({ bevel: bevel({ edgeThickness: 0 }) }))).toEqual([]);
    expect(issuesOf(boxKnife({ bevel: bevel({ edgeThickness: 4 }), edgeAngle: 1 }))).toEqual([]);
  });
});

const findingsOf = (spec: KnifeSpec): readonly Finding[] => makeKnife(spec).findings;
const codes = (spec: KnifeSpec): string[] => findingsOf(spec).map(({ code }) => code);
const numberIn = (finding: Finding | undefined, name: string): number => {
  const value = finding?.values?.[name];
  return typeof value === "object" ? value.value : Number.NaN;
};

describe("what is legal but unwise", () => {
  it("a hole near the side, with its numbers", () => {
    // The tang lies between y = 10 and 30. 1.5 d is the least, 2 d is good.
    const near = (y: number, d: number): Finding | undefined =>
      findingsOf(tangHole(-60, y, d)).find(({ path }) => path === "tang.holes[0].at");
    expect(near(20, 4)).toBeUndefined();
    expect(near(30 - 5.9, 4)).toMatchObject({ code: "hole-too-near-edge", severity: "stop" });
    expect(numberIn(near(30 - 5.9, 4), "distance")).toBeCloseTo(5.9, 9);
    expect(numberIn(near(30 - 5.9, 4), "limit")).toBeCloseTo(6, 12);
    expect(near(30 - 6, 4)).toMatchObject({ code: "hole-near-edge", severity: "warn" });
    expect(near(30 - 7.99, 4)).toMatchObject({ code: "hole-near-edge" });
    expect(near(30 - 8, 4)).toBeUndefined();
    // A small hole may be 2 d in and still leave less than the least wall.
    expect(FINDING_LIMITS.holeWall.value).toBe(3);
    expect(near(30 - 3.9, 1.9)).toMatchObject({ code: "hole-near-edge" });
    expect(near(30 - 3.96, 1.9)).toBeUndefined();
  });

  it("a tang too thin at a pin", () => {
    const tapered = (butt: number): KnifeSpec =>
      boxKnife({}, { tang: { buttThickness: butt, holes: [{ kind: "pin", at: p(-60, 20), diameter: 4 }] } });
    // Half way down the tang: (4 + butt)/2.
    expect(codes(tapered(0.2))).not.toContain("tang-thin-at-pin");
    const thin = boxKnife(
      { thickness: [heel(2)] },
      { tang: { buttThickness: 1.1, holes: [{ kind: "pin", at: p(-60, 20), diameter: 4 }] } },
    );
    const finding = findingsOf(thin).find(({ code }) => code === "tang-thin-at-pin");
    expect(numberIn(finding, "thickness")).toBeCloseTo(1.55, 9);
  });

  it("a bevel that stands too steep", () => {
    // atan((4 − 0.4)/2/b): 5° at b = 20.574.
    const height = 1.8 / Math.tan(5 * DEGREE);
    expect(codes(boxKnife({ bevel: bevel({ height: height * 1.001 }) }))).not.toContain("bevel-steep");
    const finding = findingsOf(boxKnife({ bevel: bevel({ height: height * 0.999 }) })).find(
      ({ code }) => code === "bevel-steep",
    );
    expect(numberIn(finding, "angle") / DEGREE).toBeCloseTo(5, 1);
  });

  it("a crown larger than the arc that is level at the bevel line", () => {
    // R = (30² + 1.8²)/3.6 and its sagitta over the chord: 0.4496.
    const R = (900 + 1.8 ** 2) / 3.6;
    const most = R - Math.sqrt(R * R - (900 + 1.8 ** 2) / 4);
    const crowned = (mm: number): KnifeSpec => boxKnife({ bevel: bevel({ form: "convex", crown: { mm } }) });
    expect(codes(crowned(most - 1e-6))).not.toContain("crown-too-large");
    const finding = findingsOf(crowned(most + 1e-6)).find(({ code }) => code === "crown-too-large");
    expect(finding?.severity).toBe("stop");
    expect(numberIn(finding, "most")).toBeCloseTo(most, 9);
    const shared = (part: number): KnifeSpec =>
      boxKnife({ bevel: bevel({ form: "convex", crown: { share: part } }) });
    expect(codes(shared((most - 1e-6) / 3.6))).not.toContain("crown-too-large");
    expect(codes(shared((most + 1e-6) / 3.6))).toContain("crown-too-large");
  });

  it("a convex face where nothing bulges", () => {
    const spec = boxKnife({ edgeAngle: 1, bevel: bevel({ form: "convex", edgeThickness: 4 }) });
    expect(codes(spec)).toContain("convex-is-flat");
    expect(codes(boxKnife({ bevel: bevel({ form: "convex" }) }))).not.toContain("convex-is-flat");
  });

  it("a sharpening bevel that runs up past the bevel line, also from an edge of nothing", () => {
    // The plane reaches the bevel line's half-thickness of 2 where 20·tan θ = 2.
    const limit = Math.atan(2 / 20);
    for (const edgeThickness of [0.4, 0]) {
      const ground = (edgeAngle: number): KnifeSpec =>
        boxKnife({ edgeAngle, bevel: bevel({ height: 20, edgeThickness }) });
      expect(codes(ground(limit * 1.001))).not.toContain("edge-bevel-over-bevel-line");
      expect(codes(ground(limit * 0.999))).toContain("edge-bevel-over-bevel-line");
    }
  });

  it("carries a basis and every number of its text", () => {
    const many = [tangHole(-60, 25, 4), boxKnife({ bevel: bevel({ height: 5 }) })];
    for (const { basis, text, values = {} } of many.flatMap(findingsOf)) {
      expect(basis.length).toBeGreaterThan(3);
      for (const [, name = ""] of text.matchAll(/\{(\w+)\}/g)) expect(Object.keys(values)).toContain(name);
    }
  });
});

describe("defaults", () => {
  it("fill in what is left out and nothing else", () => {
    expect(withDefaultAllowances({ face: 0.7, tang: "parallel" })).toEqual({
      face: 0.7,
      outline: 1.5,
      tip: 3,
      butt: 3,
      forgedEdge: 1.6,
      forgedBevel: "line",
      afterHardening: 0.1,
      minEdge: 0.6,
      tang: "parallel",
    });
    expect(withDefaultFinish({ flats: "forged" })).toEqual({ flats: "forged", bevels: "ground" });
    expect(withDefaultForging()).toEqual({ heats: 9, weldingHeats: 3 });
  });
});
