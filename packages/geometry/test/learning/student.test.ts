import { expect, test } from "vitest";
import { NORMAL_LIMIT, studentLimit, studentShare } from "../../src/learning/student.js";

/** 97.5 % points of Student's distribution. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2. */
test.each([
  [1, 12.706],
  [2, 4.303],
  [3, 3.182],
  [4, 2.776],
  [5, 2.571],
  [9, 2.262],
  [10, 2.228],
  [30, 2.042],
  [100, 1.984],
])("with %d freedoms 95 of 100 lie within ± %d", (freedoms, limit) => {
  expect(Math.abs(studentLimit(freedoms) - limit)).toBeLessThan(0.0006);
});

test("with one freedom it is Cauchy's distribution, half of which lies within ± 1", () => {
  expect(studentShare(1, 1)).toBeCloseTo(0.5, 14);
});

test("with two freedoms the share is t/√(2 + t²)", () => {
  for (const t of [0.2, 1, 3, 8]) expect(studentShare(t, 2)).toBeCloseTo(t / Math.sqrt(2 + t * t), 14);
});

/** The density integrated: (1 + t²/ν)^(−(ν + 1)/2), normalised by its own integral. */
test.each([3, 4, 7, 12, 25])("with %d freedoms the limit holds 95 %% of the density", (freedoms) => {
  const density = (t: number): number => (1 + (t * t) / freedoms) ** (-(freedoms + 1) / 2);
  // t = tan u covers the whole line.
  const integral = (to: number): number => {
    const end = Math.atan(to);
    const steps = 20_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const u = ((i + 0.5) * end) / steps;
      sum += density(Math.tan(u)) / Math.cos(u) ** 2;
    }
    return (sum * end) / steps;
  };
  const share = integral(studentLimit(freedoms)) / integral(Number.POSITIVE_INFINITY);
  expect(Math.abs(share - 0.95)).toBeLessThan(1e-6);
});

test("with very many it is the normal distribution's, without a step", () => {
  expect(studentLimit(401)).toBe(NORMAL_LIMIT);
  expect(Math.abs(studentLimit(400) - NORMAL_LIMIT)).toBeLessThan(0.007);
});
