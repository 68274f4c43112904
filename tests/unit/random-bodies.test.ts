import { FAMILY_NAMES, type KnifeSpec } from "@scantling/geometry";
import { beforeAll, describe, expect, test } from "vitest";
import { SHAPES } from "../reference/random/drawn.js";
import { type RandomKnife, randomKnife, SEED } from "../reference/random/knives.js";

// What the 1,000 random bodies are: a sweep says little if something is never in it.
const COUNT = 1000;

describe(`1,000 random knives (seed ${SEED})`, () => {
  let knives: readonly RandomKnife[] = [];
  beforeAll(() => {
    knives = Array.from({ length: COUNT }, (_, i) => randomKnife(i));
  });

  test("every family and every drawn shape is among them, ten times at least", () => {
    const counts = new Map<string, number>();
    for (const { kind } of knives) counts.set(kind, (counts.get(kind) ?? 0) + 1);
    expect([...counts.keys()].sort()).toEqual([...FAMILY_NAMES, ...Object.keys(SHAPES)].sort());
    for (const [kind, count] of counts) expect(count, kind).toBeGreaterThanOrEqual(10);
  });

  const features: Readonly<Record<string, (spec: KnifeSpec) => boolean>> = {
    "flat bevel": ({ blade }) => blade.bevel.form === "flat",
    "convex bevel": ({ blade }) => blade.bevel.form === "convex",
    "convex bevel with a crown": ({ blade }) =>
      blade.bevel.form === "convex" && blade.bevel.crown !== undefined,
    "hollow bevel": ({ blade }) => blade.bevel.form === "hollow",
    "bevel to the spine": ({ blade }) => blade.bevel.height === "full",
    "bevel of part height": ({ blade }) => typeof blade.bevel.height === "number",
    "bevel by stations": ({ blade }) => typeof blade.bevel.height === "object",
    "faces that differ": ({ blade }) => (blade.bevel.left ?? blade.bevel.right) !== undefined,
    "apex off centre": ({ blade }) =>
      Math.abs(blade.bevel.apex ?? 0) > 0 && Math.abs(blade.bevel.apex ?? 0) < 1,
    "single bevel": ({ blade }) => Math.abs(blade.bevel.apex ?? 0) === 1,
    "edge angles that differ": ({ blade }) => typeof blade.edgeAngle === "object",
    microbevel: ({ blade }) => blade.microbevel !== undefined,
    "flank taper": ({ blade }) => blade.flankTaper !== undefined,
    "plunge wall": ({ blade }) => blade.plunge?.length === 0,
    "plunge with a length": ({ blade }) => (blade.plunge?.length ?? 0) > 0,
    swedge: ({ blade }) => blade.swedge !== undefined,
    "eased spine": ({ blade }) => blade.easedSpine !== undefined,
    fuller: ({ blade }) => blade.fullers !== undefined,
    "fuller in one face": ({ blade }) =>
      blade.fullers?.some(({ faces }) => faces === "left" || faces === "right") === true,
    "round hole in the blade": ({ blade }) => blade.holes?.some(({ to }) => to === undefined) === true,
    "slot in the blade": ({ blade }) => blade.holes?.some(({ to }) => to !== undefined) === true,
    choil: ({ blade }) => blade.choil !== undefined,
    "smooth thickness": ({ blade }) => blade.between === "smooth",
    "full tang": ({ tang }) => tang.form === "full",
    "hidden tang": ({ tang }) => tang.form === "hidden",
    "through tang": ({ tang }) => tang.form === "through",
    "shoulder radius": ({ tang }) => tang.shoulderRadius !== undefined,
    "tapered tang": ({ tang }) => tang.buttThickness !== undefined,
    "tang by stations": ({ tang }) => tang.thickness !== undefined,
  };

  test.each(Object.keys(features))("%s, at least twenty of them", (name) => {
    const has = features[name];
    expect(knives.filter(({ spec }) => has?.(spec)).length).toBeGreaterThanOrEqual(20);
  });

  test("the same number gives the same knife", () => {
    expect(randomKnife(7).spec).toEqual(knives[7]?.spec);
    expect(randomKnife(7, SEED + 1).spec).not.toEqual(knives[7]?.spec);
  });
});
