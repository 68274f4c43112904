import { describe, expect, it } from "vitest";
import { searchModel } from "../../src/fitting/approach.js";
import type { Band } from "../../src/fitting/misses.js";
import { QuadraticModel, type Sampled } from "../../src/numeric/quadratic-model.js";
import { expectWithin } from "../numeric/close.js";

const BOX = { low: [-0.5, -0.5], high: [0.5, 0.5] };

function search(functions: Sampled, bands: readonly Band[], box = BOX): readonly number[] {
  const model = QuadraticModel.around(functions, [0.05, -0.02], 0.1, box);
  if (model === undefined) throw new Error("the functions have values everywhere");
  return searchModel(model, bands, box);
}

const atLeast = (low: number): Band => ({ low, high: Number.POSITIVE_INFINITY });
const atMost = (high: number): Band => ({ low: Number.NEGATIVE_INFINITY, high });

function expectPoint(found: readonly number[], wanted: readonly number[], within = 1e-6): void {
  for (const [i, value] of wanted.entries()) expectWithin(found[i] ?? Number.NaN, value, within);
}

describe("least change on a model", () => {
  it("is none where nothing is missed", () => {
    expectPoint(
      search(([x = 0, y = 0]) => [x + y], [atMost(0.1)]),
      [0, 0],
      1e-12,
    );
  });

  it("shares a straight ask in proportion to its slopes: by hand", () => {
    // 3x + 4y ≥ 1: the foot of the perpendicular from the origin.
    expectPoint(
      search(([x = 0, y = 0]) => [3 * x + 4 * y], [atLeast(1)]),
      [3 / 25, 4 / 25],
    );
  });

  it("stops at the end of a range and takes the rest from the other: by hand", () => {
    const narrow = { low: [-0.5, -0.5], high: [0.1, 0.5] };
    expectPoint(
      search(([x = 0, y = 0]) => [x + y], [atLeast(0.5)], narrow),
      [0.1, 0.4],
    );
  });

  it("finds the nearest point of a bent ask: xy ≥ 1/16 by hand, both ways round", () => {
    const found = search(([x = 0, y = 0]) => [x * y], [atLeast(1 / 16)]);
    expectPoint(found.map(Math.abs), [0.25, 0.25]);
    expect(Math.sign(found[0] ?? 0)).toBe(Math.sign(found[1] ?? 0));
  });

  it("finds the nearest point of a circle's outside and inside", () => {
    // (x + 0.3)² + y² ≤ 0.04: from the origin straight left to −0.1.
    expectPoint(
      search(([x = 0, y = 0]) => [(x + 0.3) ** 2 + y * y], [atMost(0.04)]),
      [-0.1, 0],
    );
    // Outside of one around (−0.1, 0): straight right to 0.2.
    expectPoint(
      search(([x = 0, y = 0]) => [(x + 0.1) ** 2 + y * y], [atLeast(0.09)]),
      [0.2, 0],
      1e-5,
    );
  });

  it("keeps between two limits, both of which push", () => {
    // x + y = 0.4 as a band of no width, x − y ≥ 0.2.
    const found = search(([x = 0, y = 0]) => [x + y, x - y], [{ low: 0.4, high: 0.4 }, atLeast(0.2)]);
    expectPoint(found, [0.3, 0.1]);
  });
});

describe("least miss on a model", () => {
  it("is shared by two asks that exclude each other: by hand", () => {
    // x ≥ 0.4 and x ≤ 0.2: both missed by 0.1; y does not help and stays.
    expectPoint(
      search(([x = 0]) => [x, x], [atLeast(0.4), atMost(0.2)]),
      [0.3, 0],
    );
  });

  it("goes to the corner of the box where an ask is out of reach", () => {
    expectPoint(
      search(([x = 0, y = 0]) => [x + 2 * y], [atLeast(9)]),
      [0.5, 0.5],
    );
  });

  it("gives way where it may and holds where it has to", () => {
    // y ≥ 0.3 has to hold, x + y ≤ 0.1 may be missed: the least of it, then the least change.
    const functions: Sampled = ([x = 0, y = 0]) => [y, x + y];
    const narrow = { low: [-0.1, -0.5], high: [0.5, 0.5] };
    const found = search(functions, [{ ...atLeast(0.3), isHard: true }, atMost(0.1)], narrow);
    expectPoint(found, [-0.1, 0.3]);
  });

  it("makes least what has to hold where that is out of reach itself", () => {
    const found = search(([x = 0]) => [x, x], [{ ...atLeast(2), isHard: true }, atMost(0)]);
    expectPoint(found, [0.5, 0]);
  });
});
