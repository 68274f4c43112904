import { type IntegerModel, planCutList } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { loadSolver } from "../src/integer-solver.js";

const solve = await loadSolver();
const NO_LIMIT = Number.POSITIVE_INFINITY;

describe("the solver of integer programs", () => {
  // 3x + 5y of at least 13 at cost 4x + 7y: x = 1, y = 2 costs 18; in broken numbers x = 13/3 would cost 17.3.
  const model: IntegerModel = {
    columns: [
      { cost: 4, most: NO_LIMIT },
      { cost: 7, most: NO_LIMIT },
    ],
    rows: [
      {
        terms: [
          [0, 3],
          [1, 5],
        ],
        least: 13,
        most: NO_LIMIT,
      },
    ],
  };

  it("finds whole numbers and proves them", () => {
    const answer = solve(model);
    expect(answer).toMatchObject({ status: "optimal", objective: 18, bound: 18 });
    expect(answer.values?.map(Math.round)).toEqual([1, 2]);
  });

  it("proves that nothing holds every rule", () => {
    const columns = model.columns.map(({ cost }) => ({ cost, most: 1 }));
    expect(solve({ ...model, columns })).toEqual({ status: "infeasible" });
  });

  it("can be asked again and again", () => {
    for (let i = 0; i < 60; i++) expect(solve(model).status).toBe("optimal");
  });

  // The worked instance of the encyclopedias' article on the cutting-stock problem: 73 rolls of 5600 mm.
  it("cuts a published list from the least number of bars", () => {
    const widths = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200];
    const counts = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20];
    const pieces = widths.map((length, i) => ({ order: "paper", length, count: counts[i] ?? 0 }));
    const bars = [{ name: "roll", length: 5600, count: 400 }];
    const list = planCutList({ pieces, bars, kerf: 0, minKeep: 500 }, solve);
    expect(list.bars).toHaveLength(73);
    expect(list.proof.optimal).toBe(true);
  });
});
