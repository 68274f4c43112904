import { describe, expect, test } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import type { HoleSpec, KnifeSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";

const plain = (change: {
  heel?: number;
  tip?: number;
  height?: number;
  slab?: number;
  holes?: readonly HoleSpec[];
  steel?: string;
}): KnifeSpec => ({
  steel: { name: change.steel ?? "1084" },
  blade: {
    outline: { family: "vegetable", edgeLength: 200, heelHeight: 60, straightEdge: 150, tipHeight: 52 },
    ricasso: 10,
    thickness: [
      { at: { kind: "heel" }, is: change.heel ?? 4 },
      { at: { kind: "tip" }, is: change.tip ?? 2 },
    ],
    bevel: { form: "flat", height: change.height ?? 40, edgeThickness: 0.4 },
    edgeAngle: 0.28,
  },
  tang: {
    form: "full",
    length: 120,
    heights: { front: 30, middle: 30, butt: 30 },
    holes: change.holes ?? [],
  },
  ...(change.slab === undefined
    ? {}
    : { handle: { slabs: { material: { name: "European ash" }, thickness: change.slab } } }),
});

const codes = (spec: KnifeSpec): string[] => makeKnife(spec).findings.map(({ code }) => code);
const pin = (x: number, y: number, diameter = 4, kind: HoleSpec["kind"] = "pin"): HoleSpec => ({
  kind,
  at: { x, y },
  diameter,
});
const issueCodes = (spec: KnifeSpec): string[] => {
  try {
    makeKnife(spec);
  } catch (error) {
    if (error instanceof SpecError) return error.issues.map(({ code }) => code);
    throw error;
  }
  return [];
};

describe("likely slips", () => {
  test("a sound knife has none", () => {
    expect(codes(plain({ slab: 8, holes: [pin(-40, 45), pin(-90, 45)] }))).toEqual([]);
  });

  test("a bevel higher than the blade is ground to the spine, and said", () => {
    expect(codes(plain({ height: 400 }))).toEqual(["bevel-over-spine"]);
    expect(codes(plain({ height: 59.9 }))).toEqual([]);
  });

  test("thicker at the tip than at the heel", () => {
    expect(codes(plain({ heel: 3, tip: 5 }))).toEqual(["thicker-at-tip"]);
  });

  test("a spine of 36 mm, a slab of 203 mm", () => {
    expect(codes(plain({ heel: 36 }))).toContain("spine-very-thick");
    expect(codes(plain({ slab: 203.2 }))).toEqual(["slab-very-thick"]);
  });
});

describe("holes", () => {
  test("1 mm of steel between two is too little, none at all is refused", () => {
    expect(codes(plain({ holes: [pin(-40, 45), pin(-45, 45)] }))).toEqual(["holes-close"]);
    expect(issueCodes(plain({ holes: [pin(-40, 45), pin(-44, 45)] }))).toEqual(["holes-overlap"]);
  });

  test("a pin needs 1.5 diameters to the side of the tang; a lightening hole only its wall", () => {
    // The tang reaches from y = 30 to 60: a centre at 44 is 14 mm from its lower side, 1.4 diameters of a 10 mm hole.
    expect(codes(plain({ holes: [pin(-60, 44, 10)] }))).toEqual(["hole-too-near-edge"]);
    expect(codes(plain({ holes: [pin(-60, 45, 10)] }))).toEqual(["hole-near-edge"]);
    expect(codes(plain({ holes: [pin(-60, 44, 10, "lightening")] }))).toEqual([]);
    expect(codes(plain({ holes: [pin(-60, 37, 10, "lightening")] }))).toEqual(["hole-near-edge"]);
  });
});

test("an unknown material is answered with the nearest name and a density that fits its place", () => {
  try {
    makeKnife(plain({ steel: "80CrV3" }));
    expect.unreachable();
  } catch (error) {
    const issue = (error as SpecError).issues[0];
    expect(issue).toMatchObject({ code: "unknown-material", path: "steel" });
    expect(issue?.values).toMatchObject({ near: expect.stringContaining("80CrV2"), like: "7.85" });
  }
});
