import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alternateBars, countLayers, layerThickness } from "../../../src/stock/mixed/layers.js";
import { BOWIE_STACK } from "./stacks.js";

/** The stack layer by layer, pieces laid on each other the same way up; layers of one steel that touch are one. */
function stackUp(
  steels: readonly string[],
  pieces: readonly number[],
): { nominal: number; distinct: number } {
  let layers = [...steels];
  for (const m of pieces) layers = Array.from({ length: m }, () => layers).flat();
  return {
    nominal: layers.length,
    distinct: layers.filter((steel, i) => i === 0 || steel !== layers[i - 1]).length,
  };
}

const STEELS = ["1084", "15N20", "1095", "80CrV2"];

describe("layers", () => {
  test("of the bowie: 13 × 16 = 208 as multiplied up, 4(4·13 − 3) − 3 = 193 that can be told apart", () => {
    const steels = BOWIE_STACK.layers.map(({ steel }) => steel.name);
    expect(countLayers(steels, [4, 4])).toEqual({ nominal: 208, distinct: 193, equalMeet: true });
    expect(stackUp(steels, [4, 4])).toEqual({ nominal: 208, distinct: 193 });
    // By hand 0.047 mm in a blade forged 9.0 mm thick.
    expect(layerThickness(9, 193)).toBeCloseTo(0.047, 3);
  });

  test("an even stack has different steels outside: none are lost at the joints", () => {
    expect(countLayers(["1084", "15N20"], [5, 3])).toEqual({ nominal: 30, distinct: 30, equalMeet: false });
  });

  test("two names of one steel are one steel", () => {
    expect(countLayers(["15N20", "1084", "75Ni8"], [2])).toEqual({
      nominal: 6,
      distinct: 5,
      equalMeet: true,
    });
  });

  test("any stack, restacked any way: as counted layer by layer", () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...STEELS), { minLength: 2, maxLength: 12 }),
        fc.array(fc.integer({ min: 2, max: 6 }), { maxLength: 4 }),
        (steels, pieces) => {
          const { nominal, distinct } = countLayers(steels, pieces);
          expect({ nominal, distinct }).toEqual(stackUp(steels, pieces));
        },
      ),
      { seed: 2606, numRuns: 300 },
    );
  });
});

describe("bars in turn", () => {
  const bar = (name: string, count: number) => ({ steel: { name }, thickness: 3, count });
  const names = (kinds: Parameters<typeof alternateBars>[0]) =>
    alternateBars(kinds)?.map(({ steel }) => steel.name);

  test("the kind of which there is one more lies on both outsides, in whatever order they are written", () => {
    expect(names([bar("15N20", 2), bar("1084", 3)])).toEqual(["1084", "15N20", "1084", "15N20", "1084"]);
    expect(names([bar("1084", 2), bar("15N20", 2)])).toEqual(["1084", "15N20", "1084", "15N20"]);
  });

  test("three kinds go round", () => {
    expect(names([bar("1084", 2), bar("15N20", 2), bar("1095", 1)])).toEqual([
      "1084",
      "15N20",
      "1095",
      "1084",
      "15N20",
    ]);
  });

  test("counts that differ by two do not go in turn", () => {
    expect(names([bar("1084", 4), bar("15N20", 2)])).toBeUndefined();
  });
});
