import { describe, expect, it } from "vitest";
import { findConflict } from "../../src/fitting/fit-knife.js";
import type { FitAsk, FitProblem } from "../../src/fitting/fit-problem.js";
import { BLOCK_KNIFE, SINGLE_BEVEL, SLAB_KNIFE } from "../blade/interval-knives.js";
import { balance, dimension, mass, searchGrid } from "./grid.js";
import { balanceAsk, massAsk, PRISM, thickness, weight } from "./prism.js";

const HEEL = "blade.thickness[0].is";
const angle = (limits: Pick<FitAsk, "atLeast" | "atMost">): FitAsk => ({
  name: "angle",
  figure: { kind: "bevel-angle", side: "left" },
  scale: 0.002,
  ...limits,
});

/** Problems whose asks quarrel two by two, each of which can be had alone. */
const CASES: readonly (readonly [name: string, problem: FitProblem])[] = [
  [
    "light, and balanced far back, by slabs and spine",
    {
      spec: SLAB_KNIFE,
      dimensions: [
        dimension(SLAB_KNIFE, HEEL, 3.4, 4.6),
        dimension(SLAB_KNIFE, "handle.slabs.thickness", 6, 10, 0.25),
      ],
      asks: [mass({ atMost: 148 }), balance({ atMost: -31 })],
    },
  ],
  [
    "heavy, and balanced far ahead, by a weight in the handle and the spine",
    {
      spec: BLOCK_KNIFE,
      dimensions: [
        dimension(BLOCK_KNIFE, "handle.parts[0].mass", 4, 30, 1, "mass"),
        dimension(BLOCK_KNIFE, HEEL, 2.6, 3.4),
      ],
      asks: [mass({ atLeast: 215 }), balance({ atLeast: 12 })],
    },
  ],
  [
    "light, and a steep bevel, by spine and bevel height",
    {
      spec: SINGLE_BEVEL,
      dimensions: [
        dimension(SINGLE_BEVEL, HEEL, 3, 5),
        dimension(SINGLE_BEVEL, "blade.bevel.height", 12, 20, 0.25),
      ],
      asks: [mass({ atMost: 146 }), angle({ atLeast: 0.2 })],
    },
  ],
];

/** Far enough for any search; with bounds, as `check` does it. */
const BOUNDS = { mostKnives: 1000 };

/** What a figure differs by from one knife of the grid to the next, at the most, in its scale. */
const GRID_STEP = 1.5;

/** What the grid says once one ask has another limit. */
const withLimit = (problem: FitProblem, ask: FitAsk, limit: "atLeast" | "atMost", to: number) =>
  searchGrid({ ...problem, asks: problem.asks.map((one) => (one === ask ? { ...one, [limit]: to } : one)) });

describe.each(CASES)("%s", (_name, problem) => {
  const conflict = findConflict(problem, BOUNDS);

  it("is a conflict where no knife of the grid meets both, though some meet each", () => {
    expect(searchGrid(problem).change).toBeUndefined();
    for (const ask of problem.asks) {
      expect(searchGrid({ ...problem, asks: [ask] }).change).toBeDefined();
      expect(findConflict({ ...problem, asks: [ask] }, BOUNDS)).toBeUndefined();
    }
    expect(conflict?.asks).toEqual(problem.asks);
    expect(conflict?.isWhole).toBe(true);
  });

  it("is settled by each relaxation, and by the grid by no less", () => {
    expect(conflict?.relaxations.map(({ ask }) => ask)).toEqual(problem.asks);
    for (const { ask, limit, to, by } of conflict?.relaxations ?? []) {
      expect(by).toBeGreaterThan(0);
      const way = limit === "atMost" ? 1 : -1;
      // The grid is coarse: a knife on it lies within a step's worth of the best one between its steps.
      expect(withLimit(problem, ask, limit, to + way * GRID_STEP * ask.scale).change, ask.name).toBeDefined();
      expect(withLimit(problem, ask, limit, to - way * 1e-3 * ask.scale).change, ask.name).toBeUndefined();
    }
  });

  it("is the same as the search finds that is not bounded", () => {
    const far = findConflict(problem);
    expect(far?.asks).toEqual(conflict?.asks);
    for (const [i, { ask }] of (far?.relaxations ?? []).entries()) {
      // Settled on steps of the bench it gives way by as much or a little more.
      const [own, other] = [conflict?.relaxations[i]?.by ?? 0, far?.relaxations[i]?.by ?? 0];
      expect(other).toBeGreaterThan(own - 1e-3 * ask.scale);
      expect(other).toBeLessThan(own + ask.scale);
    }
  });
});

describe("a quarrel of three", () => {
  it("is told as two where two of them quarrel by themselves", () => {
    const third = { ...massAsk({ atLeast: 100 }), name: "a third" };
    const [light, back] = [massAsk({ atMost: 140 }), balanceAsk({ atMost: -15 })];
    const problem = { spec: PRISM, dimensions: [weight(0, 60)], asks: [third, light, back] };
    expect(findConflict(problem, BOUNDS)?.asks).toEqual([light, back]);
  });
});

describe("a bounded search", () => {
  const problem = {
    spec: PRISM,
    dimensions: [weight(0, 60), thickness(3.9, 4.1)],
    asks: [massAsk({ atMost: 136 }), balanceAsk({ atMost: -15 })],
  };

  it("says nothing that it does not know", () => {
    const whole = findConflict(problem, BOUNDS);
    expect(whole?.asks).toHaveLength(2);
    for (let mostKnives = 1; mostKnives < 60; mostKnives++) {
      const found = findConflict(problem, { mostKnives });
      expect(found).toBeDefined();
      if (found?.isWhole === true) expect(found.asks).toEqual(whole?.asks);
      for (const { ask, to } of found?.relaxations ?? []) {
        const same = whole?.relaxations.find((one) => one.ask === ask);
        expect(Math.abs(to - (same?.to ?? 0))).toBeLessThan(1e-2);
      }
      expect([0, 2]).toContain(found?.asks.length);
      expect(found?.outOfReach).toEqual([]);
    }
    expect(findConflict(problem, { mostKnives: 1 })).toMatchObject({ asks: [], isWhole: false });
  });

  it("never calls a conflict what can be met", () => {
    const easy = { ...problem, asks: [massAsk({ atMost: 150 }), balanceAsk({ atMost: -10 })] };
    for (let mostKnives = 1; mostKnives < 40; mostKnives++) {
      const found = findConflict(easy, { mostKnives });
      if (found !== undefined) expect(found).toMatchObject({ asks: [], outOfReach: [], isWhole: false });
    }
  });
});
