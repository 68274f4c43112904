import { describe, expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import { ledgerBodies } from "../../../src/blade/ledger-bodies.js";
import { SIMILAR_CHANGES } from "../../../src/blade/similar-knife.js";
import type { KnifeSpec } from "../../../src/blade/spec.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../../src/stock/defaults.js";
import { largestSimilar } from "../../../src/stock/gates/largest-similar.js";
import {
  GATE_STAGES,
  type GateRoute,
  type GateStage,
  stageNeed,
} from "../../../src/stock/gates/stage-need.js";
import { DRAWN, LANDMARKS, RUNS } from "../../blade/similar-fixtures.js";

const ROUTE: GateRoute = {
  losses: DEFAULT_LOSSES,
  limits: DEFAULT_LIMITS,
  forging: { heats: 9, weldingHeats: 3 },
  stack: { bars: 5, width: 50.8, thickness: 6.35 },
};
/** A knife that is found needs what is in hand to this, g. */
const SAME_MASS = 1e-6;
/** With skin losses the need goes with surfaces, which are known to 1e-7 of some 15 000 mm² on a convex blade, g. */
const SAME_BY_SURFACE = 3e-5;

/** Weighed apart from the solver: every state of the knife built from its description, the whole ledger from them. */
const needOf = (spec: KnifeSpec, stage: GateStage, route = ROUTE): number =>
  stageNeed(ledgerBodies(makeKnife(spec)), route, stage)?.value ?? Number.NaN;

const look = (spec: KnifeSpec, stage: GateStage, mass: number, route = ROUTE) => {
  const question = { knife: makeKnife(spec), route, stage, mass, least: 0.5 };
  return SIMILAR_CHANGES.map((change) => largestSimilar(question, change));
};

describe.each([
  ["landmarks", "billet", LANDMARKS],
  ["runs", "forged", RUNS],
  ["a drawing", "ready", DRAWN],
] as const)("%s, short at %s", (_, stage, spec) => {
  const inHand = 0.96 * needOf(spec, stage);
  const all = look(spec, stage, inHand);

  test("each knife that is found needs just what is in hand, and is smaller in its own way", () => {
    let found = 0;
    for (const one of all) {
      if (!one.possible) continue;
      found++;
      expect(Math.abs(needOf(one.spec, stage) - inHand), one.change).toBeLessThan(SAME_MASS);
      expect(one.to).toBeLessThan(one.from);
      expect(one.to / one.from).toBeCloseTo(one.share, 6);
      // What is sure at high losses is smaller again.
      if (one.toBeSure !== undefined) expect(one.toBeSure).toBeLessThanOrEqual(one.to);
    }
    expect(found).toBeGreaterThanOrEqual(2);
  });

  test("none is larger: a hair more of it does not feed", () => {
    for (const one of all) {
      if (!one.possible) continue;
      const more = look(spec, stage, inHand + 0.01).find(({ change }) => change === one.change);
      expect(more?.possible === true && more.to > one.to, one.change).toBe(true);
    }
  });
});

test("at every gate, skin of the bars in the plan as well as shares", () => {
  const skin: GateRoute = { ...ROUTE, losses: { ...DEFAULT_LOSSES, scaleModel: "skin" } };
  for (const stage of GATE_STAGES) {
    const inHand = 0.985 * needOf(DRAWN, stage, skin);
    const question = { knife: makeKnife(DRAWN), route: skin, stage, mass: inHand, least: 0.5 };
    const found = largestSimilar(question, "shorter");
    expect(found.possible, stage).toBe(true);
    if (found.possible)
      expect(Math.abs(needOf(found.spec, stage, skin) - inHand), stage).toBeLessThan(SAME_BY_SURFACE);
  }
});

test("more steel never makes a shorter knife", () => {
  const whole = needOf(DRAWN, "forged");
  const question = { knife: makeKnife(DRAWN), route: ROUTE, stage: "forged", least: 0.5 } as const;
  const sizes = [0.86, 0.9, 0.94, 0.98].map((share) => {
    const found = largestSimilar({ ...question, mass: share * whole }, "shorter");
    return found.possible ? found.to : Number.NaN;
  });
  for (const [i, size] of sizes.slice(1).entries()) expect(size).toBeGreaterThan(sizes[i] ?? 0);
});

describe("where none can be made it is said why", () => {
  test("far too little steel: even half of it needs more", () => {
    for (const one of look(RUNS, "forged", 0.2 * needOf(RUNS, "forged"))) {
      expect(one.possible).toBe(false);
      if (one.possible) continue;
      expect(["too-small", "not-drawn"]).toContain(one.issue.code);
    }
  });

  test("a tip that would be thinner than its edge breaks the knife's own rules", () => {
    const fine: KnifeSpec = {
      ...RUNS,
      blade: {
        ...RUNS.blade,
        thickness: [
          { at: { kind: "heel" }, is: 4 },
          { at: { kind: "tip" }, is: 0.5 },
        ],
      },
    };
    const whole = needOf(fine, "ready");
    const found = look(fine, "ready", whole - 1.5).find(({ change }) => change === "thinner-tip");
    expect(found?.possible).toBe(false);
    if (found?.possible === false) expect(found.issue.text).not.toBe("");
  });

  test("steel that is enough asks for no smaller knife", () => {
    const [one] = look(RUNS, "forged", needOf(RUNS, "forged") + 1);
    expect(one?.possible === false && one.issue.code).toBe("enough-as-drawn");
  });

  test("skin without the section of the bars", () => {
    const { stack: _stack, ...rest } = ROUTE;
    const route = { ...rest, losses: { ...DEFAULT_LOSSES, scaleModel: "skin" as const } };
    const [one] = look(RUNS, "billet", 100, route);
    expect(one?.possible === false && one.issue.code).toBe("need-unknown");
  });
});
