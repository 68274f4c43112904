import { describe, expect, it } from "vitest";
import { QuadraticModel, type Sampled } from "../../src/numeric/quadratic-model.js";
import { expectWithin } from "./close.js";

const BOX = { low: [0, 0, -1], high: [1, 2, 1] };

/** Two quadratics in three variables, with slopes and bends by hand. */
const quadratics: Sampled = ([x = 0, y = 0, z = 0]) => [3 + x - 2 * y + x * x - x * y + 2 * z * z, y * z];

describe("a quadratic model", () => {
  it("of quadratics is exact wherever its centre lies, on the rim of the box too", () => {
    for (const centre of [
      [0.5, 1, 0],
      [0, 0, -1],
      [1, 2, 1],
      [0.97, 0, 0.99],
    ]) {
      const model = QuadraticModel.around(quadratics, centre, 0.1, BOX);
      for (const point of [
        [0.2, 1.7, 0.4],
        [1, 0, -1],
      ]) {
        const [first = 0, second = 0] = quadratics(point) ?? [];
        expectWithin(model?.valueAt(0, point) ?? Number.NaN, first, 1e-9);
        expectWithin(model?.valueAt(1, point) ?? Number.NaN, second, 1e-9);
        const [x = 0, y = 0, z = 0] = point;
        for (const [i, slope] of [1 + 2 * x - y, -2 - x, 4 * z].entries())
          expectWithin(model?.slopesAt(0, point)[i] ?? Number.NaN, slope, 1e-9);
      }
    }
  });

  it("takes no sample outside the box", () => {
    const asked: (readonly number[])[] = [];
    const watched: Sampled = (point) => {
      asked.push(point);
      return quadratics(point);
    };
    const model = QuadraticModel.around(watched, [0.95, 0.02, -1], 0.1, BOX);
    model?.recentred(watched, [1, 2, 1], 0.1, BOX);
    // Centre, two along each axis, one for each pair; then centre and one along each axis.
    expect(asked).toHaveLength(1 + 6 + 3 + 4);
    for (const point of asked)
      for (const [i, value] of point.entries()) {
        expect(value).toBeGreaterThanOrEqual((BOX.low[i] ?? 0) - 1e-12);
        expect(value).toBeLessThanOrEqual((BOX.high[i] ?? 0) + 1e-12);
      }
  });

  it("keeps its bends when it is taken elsewhere, and is exact again where they do not change", () => {
    const model = QuadraticModel.around(quadratics, [0.5, 1, 0], 0.1, BOX);
    const moved = model?.recentred(quadratics, [0.1, 1.9, 0.9], 0.02, BOX);
    expectWithin(moved?.valueAt(0, [1, 0, -1]) ?? Number.NaN, quadratics([1, 0, -1])?.[0] ?? 0, 1e-9);
  });

  it("steps less far where there are no values, and is none where there is none at its centre", () => {
    const holed: Sampled = (point) => ((point[0] ?? 0) > 0.52 ? undefined : quadratics(point));
    const model = QuadraticModel.around(holed, [0.5, 1, 0], 0.1, BOX);
    expectWithin(
      model?.valueAt(0, [0.2, 0.3, 0.4]) ?? Number.NaN,
      quadratics([0.2, 0.3, 0.4])?.[0] ?? 0,
      1e-8,
    );
    expect(QuadraticModel.around(holed, [0.6, 1, 0], 0.1, BOX)).toBeUndefined();
  });
});
