import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { fitKnife } from "../../src/fitting/fit-knife.js";
import type { FitAsk, FitProblem } from "../../src/fitting/fit-problem.js";
import { BLOCK_KNIFE, SINGLE_BEVEL, SLAB_KNIFE } from "../blade/interval-knives.js";
import { LANDMARKS, RUNS } from "../blade/similar-fixtures.js";
import { expectWithin } from "../numeric/close.js";
import { balance, dimension, mass, missOf, searchGrid } from "./grid.js";

const HEEL = "blade.thickness[0].is";
const TIP = "blade.thickness[1].is";
const BUTT = "tang.buttThickness";
const SLABS = "handle.slabs.thickness";
const HEIGHT = "blade.bevel.height";
const EDGE = "blade.bevel.edgeThickness";

const angle = (limits: Pick<FitAsk, "atLeast" | "atMost">, side: "right" | "left" = "right"): FitAsk => ({
  name: "angle",
  figure: { kind: "bevel-angle", side },
  scale: 0.002,
  ...limits,
});

const behindEdge = (limits: Pick<FitAsk, "atLeast" | "atMost">): FitAsk => ({
  name: "behind edge",
  figure: { kind: "behind-edge", above: 1 },
  scale: 0.02,
  ...limits,
});

// As drawn, g and mm ahead of the heel: slabs 163.4 and −27.8, block 199.4 and 10.5, single bevel 150.3 and −36.0 with its bevel
// at 0.176 rad, landmarks 594.1 and 70.4, runs 154.1 and −13.2.
const CASES: readonly (readonly [name: string, problem: FitProblem, canBeMet?: boolean])[] = [
  [
    "lighter by thickness at heel and tip",
    {
      spec: SLAB_KNIFE,
      dimensions: [dimension(SLAB_KNIFE, HEEL, 3, 5), dimension(SLAB_KNIFE, TIP, 1.2, 2.8)],
      asks: [mass({ atMost: 150 })],
    },
  ],
  [
    "heavier and farther back by taper of the tang and slabs",
    {
      spec: SLAB_KNIFE,
      dimensions: [
        dimension(SLAB_KNIFE, BUTT, 2, 4.2, 0.2),
        dimension(SLAB_KNIFE, SLABS, 6, 10, 0.25),
        dimension(SLAB_KNIFE, TIP, 1.4, 2.4, 0.2),
      ],
      asks: [mass({ atLeast: 168, atMost: 172 }), balance({ atMost: -31 })],
    },
  ],
  [
    "forward by a lighter handle",
    {
      spec: BLOCK_KNIFE,
      dimensions: [
        dimension(BLOCK_KNIFE, "handle.parts[0].mass", 0, 20, 1, "mass"),
        dimension(BLOCK_KNIFE, "handle.guard.length", 4, 10, 0.5),
      ],
      asks: [balance({ atLeast: 16.5 })],
    },
  ],
  [
    "a bevel angle and a mass at once, one hollow bevel",
    {
      spec: SINGLE_BEVEL,
      dimensions: [dimension(SINGLE_BEVEL, HEEL, 2.6, 4.2), dimension(SINGLE_BEVEL, HEIGHT, 14, 24, 0.5)],
      asks: [angle({ atLeast: 0.14, atMost: 0.145 }, "left"), mass({ atMost: 146 })],
    },
  ],
  [
    "thin behind the edge, with the angle held",
    {
      spec: SLAB_KNIFE,
      dimensions: [
        dimension(SLAB_KNIFE, EDGE, 0.2, 0.8, 0.05),
        dimension(SLAB_KNIFE, HEIGHT, 14, 20, 0.25),
        dimension(SLAB_KNIFE, HEEL, 3.8, 4.6),
      ],
      asks: [behindEdge({ atMost: 0.55 }), angle({ atLeast: 0.1, atMost: 0.106 })],
    },
  ],
  [
    "a narrow window of mass, by runs",
    {
      spec: RUNS,
      dimensions: [dimension(RUNS, HEEL, 3, 5), dimension(RUNS, BUTT, 2, 4)],
      asks: [mass({ atLeast: 149, atMost: 149.8 }), balance({ atMost: -14 })],
    },
  ],
  [
    "a drawing outside its ranges",
    {
      spec: SLAB_KNIFE,
      dimensions: [dimension(SLAB_KNIFE, HEEL, 3, 3.6), dimension(SLAB_KNIFE, SLABS, 8.5, 10)],
      asks: [mass({ atMost: 158 }), balance({ atMost: -32 })],
    },
  ],
  [
    "a height of the outline and a thickness",
    {
      spec: LANDMARKS,
      dimensions: [
        dimension(LANDMARKS, "blade.outline.heelHeight", 84, 94, 1),
        dimension(LANDMARKS, HEEL, 4, 5, 0.2),
        dimension(LANDMARKS, BUTT, 2, 3, 0.2),
      ],
      asks: [mass({ atMost: 560 })],
    },
  ],
  [
    "two asks that cannot both be met",
    {
      spec: SLAB_KNIFE,
      dimensions: [
        dimension(SLAB_KNIFE, HEEL, 3.4, 4.6),
        dimension(SLAB_KNIFE, SLABS, 6, 10, 0.5),
        dimension(SLAB_KNIFE, BUTT, 2.6, 3.8, 0.2),
      ],
      asks: [mass({ atMost: 150 }), balance({ atMost: -36 })],
    },
    false,
  ],
  [
    "64ths of an inch",
    {
      spec: SLAB_KNIFE,
      dimensions: [
        dimension(SLAB_KNIFE, HEEL, 2.5, 5.6, 25.4 / 64),
        dimension(SLAB_KNIFE, SLABS, 5, 11, 25.4 / 64),
        dimension(SLAB_KNIFE, BUTT, 1.6, 4, 25.4 / 64),
      ],
      asks: [mass({ atMost: 156 }), balance({ atLeast: -31, atMost: -25 })],
    },
  ],
];

describe("fit against every knife on a grid", () => {
  it("has ten cases", () => {
    expect(CASES).toHaveLength(10);
  });

  for (const [name, problem, canBeMet = true] of CASES) {
    it(name, () => {
      const grid = searchGrid(problem);
      expect(grid.points).toBeGreaterThan(50);
      const answer = fitKnife(problem);
      expect(answer).toBeDefined();
      if (answer === undefined) return;
      const { knife, ideal } = answer;
      // The figures are those of the knife that is handed over, by a weighing that knows nothing of the search.
      const weight = weighKnife(makeKnife(knife.spec)).knife;
      for (const [i, { name: ask }] of problem.asks.entries()) {
        if (ask === "mass") expectWithin(knife.figures[i] ?? Number.NaN, weight.mass, 1e-6);
        if (ask === "balance") expectWithin(knife.figures[i] ?? Number.NaN, weight.balanceFromHeel, 1e-6);
      }
      const miss = Math.max(...problem.asks.map((ask, i) => missOf(ask, knife.figures[i] ?? Number.NaN)));
      expectWithin(knife.miss, miss <= 1e-7 ? 0 : miss, 1e-6, "miss");
      expect(grid.change !== undefined).toBe(canBeMet);
      expect(answer.isMet).toBe(canBeMet);
      if (grid.change === undefined) {
        // Nothing on the grid comes nearer, and what lies between its steps no farther away.
        if (knife.fineness === 0) expectWithin(knife.miss, grid.miss, 1e-5, "least miss");
        else expect(knife.miss).toBeLessThan(grid.miss);
        expect(ideal.miss).toBeLessThanOrEqual(knife.miss + 1e-5);
        return;
      }
      expect(knife.fineness).toBe(0);
      // The least change of all knives on the grid, not only as little as one of them.
      expectWithin(knife.change, grid.change, 1e-9, "least change");
      expect(ideal.change).toBeLessThanOrEqual(grid.change + 1e-6);
    });
  }
});
