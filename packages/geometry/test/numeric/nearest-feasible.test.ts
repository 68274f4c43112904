import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestFeasible } from "../../src/numeric/nearest-feasible.js";
import { expectWithin } from "./close.js";

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
const squared = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + (value - (b[i] ?? 0)) ** 2, 0);

describe("the point of a polyhedron nearest to another", () => {
  it("is the point itself where it lies inside", () => {
    expect(nearestFeasible([1, 2], [[1, 0]], [0])).toEqual({ point: [1, 2], multipliers: [0] });
  });

  it("is the foot on one side: by hand", () => {
    // 3x + 4y = 25 is 5 away from the origin, along (3, 4)/5.
    const found = nearestFeasible([0, 0], [[3, 4]], [25]);
    expectWithin(found?.point[0] ?? Number.NaN, 3, 1e-12);
    expectWithin(found?.point[1] ?? Number.NaN, 4, 1e-12);
    expectWithin(found?.multipliers[0] ?? Number.NaN, 1, 1e-12);
  });

  it("is a corner where two sides push", () => {
    const found = nearestFeasible(
      [0, 0],
      [
        [1, 0],
        [0, 1],
      ],
      [2, 3],
    );
    expect(found?.point).toEqual([2, 3]);
  });

  it("lets a side go that another one makes idle", () => {
    // x + y ≥ 2 is taken in first from (0, 0) for it is missed by most; x ≥ 1.9 moves along it, and y ≥ 1.5 leaves it behind.
    const found = nearestFeasible(
      [0, 0],
      [
        [1, 1],
        [1, 0],
        [0, 1],
      ],
      [2.2, 1.5, 1.5],
    );
    expect(found?.point.map((value) => Number(value.toFixed(9)))).toEqual([1.5, 1.5]);
    expect(found?.multipliers[0]).toBe(0);
  });

  it("is none where two sides exclude each other, or a row has no direction", () => {
    expect(nearestFeasible([0], [[1], [-1]], [1, 0])).toBeUndefined();
    expect(nearestFeasible([0], [[0]], [1])).toBeUndefined();
    expect(nearestFeasible([0], [[0]], [-1])?.point).toEqual([0]);
  });

  const number = fc.integer({ min: -20, max: 20 }).map((value) => value / 4);
  const problem = fc.integer({ min: 1, max: 4 }).chain((size) =>
    fc.record({
      target: fc.array(number, { minLength: size, maxLength: size }),
      rows: fc.array(fc.array(number, { minLength: size, maxLength: size }), { maxLength: 8 }),
      inside: fc.array(number, { minLength: size, maxLength: size }),
      room: fc.array(
        fc.integer({ min: 0, max: 8 }).map((value) => value / 4),
        { minLength: 8, maxLength: 8 },
      ),
    }),
  );

  it("meets all rows, and its multipliers prove that no point is nearer: random polyhedra that are not empty", () => {
    fc.assert(
      fc.property(problem, ({ target, rows, inside, room }) => {
        const limits = rows.map((row, i) => dot(row, inside) - (room[i] ?? 0));
        const found = nearestFeasible(target, rows, limits);
        expect(found).toBeDefined();
        if (found === undefined) return;
        const { point, multipliers } = found;
        for (const [i, row] of rows.entries()) {
          expect(dot(row, point)).toBeGreaterThanOrEqual((limits[i] ?? 0) - 1e-8);
          expect(multipliers[i] ?? -1).toBeGreaterThanOrEqual(0);
          // A side that is not touched does not push.
          expectWithin((multipliers[i] ?? 0) * (dot(row, point) - (limits[i] ?? 0)), 0, 1e-6);
        }
        // The pull of the target is the push of the sides: with the above the proof (Kuhn and Tucker).
        for (const [k, value] of point.entries()) {
          const push = rows.reduce((sum, row, i) => sum + (multipliers[i] ?? 0) * (row[k] ?? 0), 0);
          expectWithin(value - (target[k] ?? 0), push, 1e-7);
        }
        expect(squared(point, target)).toBeLessThanOrEqual(squared(inside, target) + 1e-8);
      }),
      { seed: 20260, numRuns: 2000 },
    );
  });

  it("finds that there is none: random rows and one that contradicts them", () => {
    fc.assert(
      fc.property(problem, ({ target, rows, inside }) => {
        const [row] = rows;
        fc.pre(row !== undefined && dot(row, row) > 0);
        const limits = rows.map((each) => dot(each, inside));
        const first = row as readonly number[];
        const against = first.map((value) => -value);
        expect(
          nearestFeasible(target, [...rows, against], [...limits, 1 - (limits[0] ?? 0)]),
        ).toBeUndefined();
      }),
      { seed: 20261, numRuns: 500 },
    );
  });
});
