import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Affine, compose, mapPoint, stretchOf } from "../../src/drawing/affine.js";
import { readTransform } from "../../src/drawing/transform-list.js";
import { between, SEED } from "../plane/arbitraries.js";
import { codes } from "./drawings.js";

const at = (list: string, x: number, y: number): [number, number] => {
  const point = mapPoint(readTransform(list), { x, y });
  return [point.x, point.y];
};
const near = (found: readonly number[], wanted: readonly number[]): void => {
  found.forEach((value, i) => {
    expect(Math.abs(value - (wanted[i] ?? Number.NaN))).toBeLessThan(1e-12 * Math.max(1, Math.abs(value)));
  });
};

describe("a transform list", () => {
  // By hand, from the matrices of W3C, CSS Transforms Level 1, section 13.
  it.each<[string, number, number, [number, number]]>([
    ["translate(10 20)", 1, 2, [11, 22]],
    ["translate(10)", 1, 2, [11, 2]],
    ["scale(2)", 3, 4, [6, 8]],
    ["scale(2,-0.5)", 3, 4, [6, -2]],
    ["rotate(90)", 1, 0, [0, 1]],
    ["rotate(-30)", 2, 0, [Math.sqrt(3), -1]],
    ["rotate(90 5 5)", 6, 5, [5, 6]],
    ["skewX(45)", 1, 2, [3, 2]],
    ["skewY(45)", 1, 2, [1, 3]],
    ["matrix(1 2 3 4 5 6)", 1, 1, [9, 12]],
    // The last step is done first: scaled to (2, 2), then moved.
    ["translate(10,20) scale(2)", 1, 1, [12, 22]],
    ["scale(2) translate(10,20)", 1, 1, [22, 42]],
    ["translate(1e1-.5E1),\n rotate(180)\tscale(.5.25)", 4, 8, [8, -7]],
    ["", 3, 4, [3, 4]],
    ["none", 3, 4, [3, 4]],
  ])("%s", (list, x, y, wanted) => {
    near(at(list, x, y), wanted);
  });

  it.each([
    "translate(10px)",
    "translate(1 2 3)",
    "rotate(1 2)",
    "matrix(1 2 3)",
    "scale()",
    "spin(4)",
    "translate(1 2",
    "translate(1,,2)",
    "translate(1e999)",
    "rotate(45deg)",
    "Translate(1)",
    `translate(${"1".repeat(100_000)}`,
    "translate(1 2)".repeat(1000),
  ])("is not guessed at: %.40s", (list) => {
    expect(codes(() => readTransform(list))).toEqual(["drawing-transform-unreadable"]);
  });

  it("does its steps one after the other", () => {
    const numbers = between(-3, 3);
    const step = fc.oneof(
      fc.tuple(numbers, numbers).map(([x, y]) => `translate(${x} ${y})`),
      numbers.map((angle) => `rotate(${angle * 60})`),
      fc.tuple(numbers, numbers).map(([x, y]) => `scale(${x} ${y})`),
      numbers.map((angle) => `skewX(${angle * 20})`),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 6 }), numbers, numbers, (steps, x, y) => {
        const wanted = [...steps].reverse().reduce((p, each) => mapPoint(readTransform(each), p), { x, y });
        near(at(steps.join(" "), x, y), [wanted.x, wanted.y]);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe("the stretch of a map", () => {
  it("has the greatest and least lengths that unit vectors get, and the greater's direction", () => {
    const number = between(-3, 3);
    fc.assert(
      fc.property(number, number, number, number, (a, b, c, d) => {
        const map: Affine = { a, b, c, d, e: 0, f: 0 };
        const { greater, lesser, direction } = stretchOf(map);
        const lengths = Array.from({ length: 720 }, (_, i) => {
          const angle = (i / 720) * 2 * Math.PI;
          const image = mapPoint(map, { x: Math.cos(angle), y: Math.sin(angle) });
          return { size: Math.hypot(image.x, image.y), angle: Math.atan2(image.y, image.x) };
        });
        const longest = lengths.reduce((p, q) => (q.size > p.size ? q : p));
        // A step of half a degree is off by at most 1 − cos(¼°) along the ellipse.
        expect(longest.size).toBeLessThanOrEqual(greater * (1 + 1e-12));
        expect(longest.size).toBeGreaterThan(greater * (1 - 1e-5) - 1e-12);
        expect(Math.abs(greater * lesser - Math.abs(a * d - b * c))).toBeLessThan(1e-10);
        if (greater > 1.2 * lesser) {
          expect(Math.abs(Math.sin(longest.angle - direction))).toBeLessThan(0.03);
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("is the same along both axes of a similarity to the last bits", () => {
    const map = compose(readTransform("rotate(33.3) scale(0.37)"), readTransform("rotate(71) scale(1,-1)"));
    const { greater, lesser } = stretchOf(map);
    expect(greater / lesser - 1).toBeLessThan(1e-15);
  });
});
