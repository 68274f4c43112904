import { type FitProblem, findConflict, fitKnife } from "@scantling/geometry";
import { expect, test } from "vitest";
import { KnifeText } from "../../packages/cli/src/file/index.js";
import { changesOf } from "../../packages/cli/src/fit/changes.js";
import { fitReport } from "../../packages/cli/src/fit/fit-report.js";
import { orderTargets } from "../../packages/cli/src/fit/order-targets.js";
import { measure } from "../../packages/cli/src/measure.js";
import { loadOrder } from "../orders/load.js";

// Order SL-2602 by hand: 29 g more at the middle of the handle just reach a balance of +25 mm, at 193 g; +20 mm needs 39 g, at
// 203 g, which is over the 200 g asked for. So only the top 2 to 3 mm of the window from 10 to 25 mm can be reached.

/** g and mm of the hand sums, and what they may be off: 2 % and 2 mm, as all of them. */
const HAND = { moreForTop: 29, massAtTop: 193, moreForTwenty: 39, massAtTwenty: 203 };
const MASS_SHARE = 0.02;

async function slicer() {
  const { job, knife } = await loadOrder("long-slicer");
  const text = new KnifeText(job.texts.knife, job.knife.units);
  const changes = changesOf(knife, ["handle.parts.mass@1=47..120g"], text, job.knife.units);
  const drawn = measure(job);
  return { drawn, changes, targets: orderTargets(drawn, []) };
}

test("the long slicer meets its asks with a heavier handle, and only at the top of its window", async () => {
  const { drawn, changes, targets } = await slicer();
  expect(targets.map(({ name }) => name)).toEqual(["mass", "balance"]);
  const report = fitReport(drawn, changes, targets, false);
  expect(report.isMet).toBe(true);
  const [handle = 0] = report.answer.knife.dimensions[0]?.sizes ?? [];
  expect(Math.abs(handle - 47 - HAND.moreForTop)).toBeLessThanOrEqual(3);
  expect(report.fitted.weight.knife.mass / HAND.massAtTop).toBeCloseTo(1, 1);
  const reach = report.answer.reaches.find(({ ask }) => ask.name === "balance");
  expect(reach?.high).toBeCloseTo(25, 6);
  const reachable = (reach?.high ?? 0) - (reach?.low ?? 0);
  expect(reachable).toBeGreaterThan(1.5);
  expect(reachable).toBeLessThan(3);
});

test("a balance of 20 mm and 200 g exclude each other on the long slicer, and either can give way", async () => {
  const { drawn, changes } = await slicer();
  const problem: FitProblem = {
    spec: changes.spec,
    dimensions: changes.dimensions,
    asks: [
      { name: "mass", figure: { kind: "mass" }, atMost: 200, scale: 2 },
      { name: "balance", figure: { kind: "balance" }, atMost: 20, scale: 1 },
    ],
  };
  const conflict = findConflict(problem);
  expect(conflict?.asks.map(({ name }) => name)).toEqual(["mass", "balance"]);
  const [ofMass, ofBalance] = conflict?.relaxations ?? [];
  expect(Math.abs((ofMass?.to ?? 0) / HAND.massAtTwenty - 1)).toBeLessThan(MASS_SHARE);
  expect(
    Math.abs((ofMass?.knife?.dimensions[0]?.sizes?.[0] ?? 0) - 47 - HAND.moreForTwenty),
  ).toBeLessThanOrEqual(3);
  // The sums of the parts, with the program's own blade: what 200 g leave for the handle.
  const { mass, balanceFromHeel } = drawn.weight.knife;
  const more = 200 - mass;
  const reachable = (mass * balanceFromHeel - 73 * more) / 200;
  expect(ofBalance?.to).toBeGreaterThan(reachable - 1e-6);
  expect(ofBalance?.to).toBeLessThan(reachable + 1);
  expect(fitKnife(problem)?.isMet).toBe(false);
});
