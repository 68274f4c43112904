import { describe, expect, it } from "vitest";
import { grooveMoments } from "../../src/blade/groove-moments.js";
import { grooveVolume } from "../../src/blade/groove-volume.js";
import { makeKnife, rebuildKnife } from "../../src/blade/knife.js";
import { measureBody } from "../../src/blade/measure-body.js";
import { VOLUME, X } from "../../src/blade/moments.js";
import { type Reading, Reweigher } from "../../src/blade/reweigher.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { changedAt, readAt } from "../../src/blade/spec-path.js";
import { weighInterval } from "../../src/blade/weigh-interval.js";
import { knifeParts, weighKnife } from "../../src/blade/weigh-knife.js";
import { weighMoments } from "../../src/blade/weight.js";
import { withHandleMoved } from "../../src/blade/with-handle-moved.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import {
  BLOCK_KNIFE,
  NOTHING_UNCERTAIN,
  numberPaths,
  RICH_BLOCK,
  RICH_SLABS,
  SINGLE_BEVEL,
  SLAB_KNIFE,
} from "./interval-knives.js";

const RICH: readonly (readonly [string, KnifeSpec])[] = [
  ["a full tang", RICH_SLABS],
  ["a hidden tang", RICH_BLOCK],
  ["slabs", SLAB_KNIFE],
  ["a block and a guard", BLOCK_KNIFE],
  ["a single bevel", SINGLE_BEVEL],
];

/** How far a number is moved: little enough for every knife here to stay one. */
const stepAt = (spec: KnifeSpec, path: string): number =>
  Math.min(0.05, 0.01 * Math.abs(readAt(spec, path) as number));

/** What may change neither mass nor the balance along x: heights of what is the same all the way up. */
const NO_EFFECT = /\.at\.y$|\.centre$|fullers\[0\]\.(?:from|to)\.y$/u;

/** Mass and balance of a knife that is built and weighed as if nothing were known of it. */
function weighedAnew(spec: KnifeSpec): Reading {
  const knife = rebuildKnife(spec);
  const steel = weighMoments(measureBody(knife.body("finished"), 1e-9), knife.steelDensity);
  const parts = knifeParts(knife, steel);
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  return { mass, balance: parts.reduce((sum, part) => sum + part.mass * part.centre.x, 0) / mass };
}

describe("a knife with one number moved", () => {
  for (const [name, spec] of RICH) {
    const filled = rebuildKnife(spec).spec;
    const front = makeKnife(spec).outline.handleFront;
    const scale = new Reweigher(rebuildKnife(spec));

    it(`${name}: weighs what it weighs when it is built and weighed anew, number by number`, () => {
      for (const path of numberPaths(filled)) {
        const changed = changedAt(filled, path, stepAt(filled, path));
        const knife = rebuildKnife(changed);
        const whole = weighedAnew(withHandleMoved(changed, knife.outline.handleFront - front));
        const { mass, balance } = scale.read(changed);
        expectRelative(mass, whole.mass, 3e-7, path);
        expectWithin(balance, whole.balance, 1e-4, path);
      }
    });

    it(`${name}: every number that is uncertain moves the interval`, () => {
      const paths = numberPaths(spec);
      const tolerances = paths.map((path) => {
        const limit = stepAt(spec, path);
        return { path, plus: limit, minus: limit };
      });
      const { contributions } = weighInterval(spec, tolerances, NOTHING_UNCERTAIN);
      expect(contributions.map(({ input }) => input).sort()).toEqual([...paths].sort());
      for (const { input, share, balanceShare } of contributions) {
        if (NO_EFFECT.test(input) || (input === "tang.drop" && spec.tang.form === "hidden")) continue;
        // The least of them is the place of a shallow fuller.
        expect(Math.max(share, balanceShare), input).toBeGreaterThan(1e-11);
      }
    });
  }

  it("moves moisture by the wood's own law", () => {
    const at = (moisture: number): number =>
      weighKnife(
        makeKnife({
          ...RICH_BLOCK,
          handle: {
            ...RICH_BLOCK.handle,
            ...(RICH_BLOCK.handle?.block === undefined
              ? {}
              : { block: { ...RICH_BLOCK.handle.block, material: { name: "beech", moisture } } }),
          },
        }),
      ).knife.mass;
    const { massInterval } = weighInterval(
      RICH_BLOCK,
      [{ path: "handle.block.material.moisture", plus: 0.03, minus: 0.02 }],
      NOTHING_UNCERTAIN,
    );
    expectRelative(massInterval[1], at(0.13), 1e-7);
    expectRelative(massInterval[0], at(0.08), 1e-7);
    expect(at(0.13) - at(0.08)).toBeGreaterThan(0.3);
  });

  it("does not let a handle run into a guard that moves back from the handle front", () => {
    const { massInterval } = weighInterval(
      BLOCK_KNIFE,
      [{ path: "handle.guard.at", plus: 0.5, minus: 0.5 }],
      NOTHING_UNCERTAIN,
    );
    // Without care the handle begins under the guard: 8 mm more of wood, above 2 g.
    expect(massInterval[1] - massInterval[0]).toBeLessThan(1);
  });
});

describe("volume of a groove by itself", () => {
  const body = makeKnife(boxKnife({ bevel: { form: "flat", height: 8, edgeThickness: 0.4 } })).body(
    "finished",
  );
  for (const [name, depth, faces] of [
    ["shallow, both faces", 0.6, "both"],
    ["as deep as its radius, right face", 1.5, "right"],
    ["deeper, left face", 1.7, "left"],
  ] as const) {
    it(`is what the body's integrals give: ${name}`, () => {
      const groove = { from: p(20, 20), to: p(70, 22), radius: depth < 1 ? 5 : 1.5, depth, faces };
      const { volume, x } = grooveVolume(groove);
      const { value } = grooveMoments(body, groove);
      expectRelative(volume, value[VOLUME] as number, 1e-4);
      expectWithin(x, (value[X] as number) / (value[VOLUME] as number), 1e-6);
    });
  }

  it("is a ball's cap where the line has no length", () => {
    // Cap of height h on a ball of radius R: πh²(3R − h)/3.
    const groove = { from: p(50, 20), to: p(50, 20), radius: 5, depth: 0.6, faces: "right" } as const;
    expectRelative(grooveVolume(groove).volume, (Math.PI * 0.36 * (15 - 0.6)) / 3, 1e-12);
  });
});
