import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import type { BevelSpec, KnifeSpec, StationPlace, StationSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";
import { boxKnife } from "./bodies.js";
import { at, heel, tip } from "./random-knives.js";

const issuesOf = (spec: KnifeSpec): readonly (readonly [code: string, path: string])[] => {
  try {
    makeKnife(spec);
  } catch (error) {
    if (error instanceof SpecError) return error.issues.map(({ code, path }) => [code, path]);
    throw error;
  }
  return [];
};
const ground = (given: Partial<BevelSpec>): KnifeSpec =>
  boxKnife({ bevel: { form: "flat", height: 25, edgeThickness: 0.4, ...given } });

describe("keys of a face that change nothing", () => {
  it.each<[string, string, Partial<BevelSpec>]>([
    ["crown-unused", "blade.bevel.crown", { crown: { mm: 0.2 } }],
    ["crown-unused", "blade.bevel.crown", { form: "hollow", wheelRadius: 300, crown: { share: 0.1 } }],
    ["wheel-unused", "blade.bevel.wheelRadius", { wheelRadius: 100 }],
    ["wheel-unused", "blade.bevel.wheelRadius", { form: "convex", wheelRadius: 100 }],
    ["crown-unused", "blade.bevel.left.crown", { left: { crown: { mm: 0.2 } } }],
    ["wheel-unused", "blade.bevel.right.wheelRadius", { right: { form: "convex", wheelRadius: 100 } }],
    [
      "wheel-unused",
      "blade.bevel.left.wheelRadius",
      { form: "hollow", wheelRadius: 300, left: { form: "flat", wheelRadius: 200 } },
    ],
    [
      "crown-unused",
      "blade.bevel.crown",
      { crown: { mm: 0.2 }, right: { form: "convex", crown: { mm: 0.1 } } },
    ],
  ])("%s at %s", (code, path, given) => {
    expect(issuesOf(ground(given))).toEqual([[code, path]]);
  });

  it("are used where one face takes them over, or both have their own", () => {
    expect(issuesOf(ground({ crown: { mm: 0.2 }, left: { form: "convex" } }))).toEqual([]);
    expect(issuesOf(ground({ wheelRadius: 300, right: { form: "hollow" } }))).toEqual([]);
    const own = { left: { wheelRadius: 310 }, right: { wheelRadius: 320 } };
    expect(issuesOf(ground({ form: "hollow", wheelRadius: 300, ...own }))).toEqual([]);
    expect(issuesOf(ground({ form: "hollow", ...own }))).toEqual([]);
  });

  it("are missing where a hollow face has no wheel", () => {
    expect(issuesOf(ground({ form: "hollow" }))).toEqual([["no-wheel", "blade.bevel"]]);
    expect(issuesOf(ground({ left: { form: "hollow" } }))).toEqual([["no-wheel", "blade.bevel.left"]]);
    const right = { form: "hollow", right: { wheelRadius: 300 } } as const;
    expect(issuesOf(ground(right))).toEqual([["no-wheel", "blade.bevel"]]);
  });
});

describe("numbers of one face", () => {
  it.each<[string, string, Partial<BevelSpec>]>([
    ["negative", "blade.bevel.left.crown", { left: { form: "convex", crown: { mm: -0.1 } } }],
    ["not-positive", "blade.bevel.right.height", { right: { height: 0 } }],
    ["not-positive", "blade.bevel.right.height[1].is", { right: { height: [heel(20), tip(-1)] } }],
    ["not-positive", "blade.bevel.left.wheelRadius", { left: { form: "hollow", wheelRadius: 0 } }],
    ["not-a-number", "blade.bevel.left.crown", { left: { form: "convex", crown: { share: Number.NaN } } }],
  ])("%s at %s", (code, path, given) => {
    expect(issuesOf(ground(given))).toContainEqual([code, path]);
  });
});

describe("stations", () => {
  type Build = (law: readonly StationSpec[]) => KnifeSpec;
  const laws: readonly (readonly [path: string, build: Build])[] = [
    ["blade.thickness", (thickness) => boxKnife({ thickness })],
    ["blade.flankTaper", (flankTaper) => boxKnife({ flankTaper })],
    ["blade.bevel.height", (height) => ground({ height })],
    ["blade.bevel.edgeThickness", (edgeThickness) => ground({ edgeThickness })],
    ["blade.bevel.crown", (mm) => ground({ form: "convex", crown: { mm } })],
    ["blade.bevel.left.height", (height) => ground({ left: { height } })],
    ["blade.bevel.right.height", (height) => ground({ right: { height } })],
    ["blade.bevel.left.crown", (share) => ground({ left: { form: "convex", crown: { share } } })],
    ["blade.bevel.right.crown", (mm) => ground({ right: { form: "convex", crown: { mm } } })],
    [
      "blade.swedge.thickness",
      (thickness) => boxKnife({ swedge: { from: heel(0).at, to: tip(0).at, angle: 0.5, thickness } }),
    ],
  ];
  // A value that is right for every one of these laws.
  const IS = 0.1;
  const place = (kind: "handle" | "butt"): StationSpec => ({ at: { kind }, is: IS });

  it.each(laws)("of %s stand on the blade, no two at one place, in any order", (path, build) => {
    expect(issuesOf(build([]))).toEqual([["no-stations", path]]);
    const outside: readonly StationSpec[] = [
      at(120.1, IS),
      at(-0.1, IS),
      at(Number.NaN, IS),
      place("handle"),
      place("butt"),
    ];
    for (const station of outside) {
      expect(issuesOf(build([station]))).toContainEqual(["station-outside", `${path}[0].at`]);
    }
    expect(issuesOf(build([heel(IS), at(0, 0.2)]))).toContainEqual(["station-twice", `${path}[1].at`]);
    const places = (found: readonly (readonly [string, string])[]) =>
      found.filter(([code]) => code.startsWith("station"));
    expect(places(issuesOf(build([tip(IS), at(60, 0.12), heel(0.11)])))).toEqual([]);
  });

  it("of the tang stand behind the handle front, whatever they are called", () => {
    const tang = (...places: readonly StationPlace[]): KnifeSpec =>
      boxKnife({}, { tang: { thickness: places.map((where, i) => ({ at: where, is: 4 - i })) } });
    expect(issuesOf(tang({ kind: "handle" }, { kind: "butt" }))).toEqual([]);
    for (const kind of ["heel", "tip"] as const) {
      expect(issuesOf(tang({ kind }))).toEqual([["station-outside", "tang.thickness[0].at"]]);
    }
    expect(issuesOf(tang({ kind: "handle" }, { kind: "fraction", share: 0 }))).toEqual([
      ["station-twice", "tang.thickness[1].at"],
    ]);
    expect(issuesOf(boxKnife({}, { tang: { thickness: [] } }))).toEqual([["no-stations", "tang.thickness"]]);
  });

  it("mean the same in any order", () => {
    const volume = (thickness: readonly StationSpec[]): number =>
      makeKnife(boxKnife({ thickness })).laws.spine.valueAt(45);
    const [a, b, c] = [heel(4), at(50, 3), tip(2)];
    expect(volume([c, a, b])).toBe(volume([a, b, c]));
  });
});
