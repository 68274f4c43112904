import { describe, expect, it } from "vitest";
import { makeKnife, rebuildKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { changedAt, readAt } from "../../src/blade/spec-path.js";
import { DEFAULT_TOLERANCES } from "../../src/blade/tolerances.js";
import { uncertainInputs } from "../../src/blade/uncertain-inputs.js";
import { weighInterval } from "../../src/blade/weigh-interval.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { BLOCK_KNIFE, NOTHING_UNCERTAIN } from "./interval-knives.js";
import { heel, tip } from "./random-knives.js";

const even = (path: string, limit: number) => ({ path, plus: limit, minus: limit });
const massOf = (spec: KnifeSpec): number => weighKnife(makeKnife(spec)).knife.mass;

describe("the interval of one input", () => {
  it("is what the two limits weigh: thickness", () => {
    const spec = boxKnife({ thickness: [heel(4), tip(3)] });
    const { massInterval, contributions } = weighInterval(
      spec,
      [{ path: "blade.thickness", plus: 0.3, minus: 0.1 }],
      NOTHING_UNCERTAIN,
    );
    const moved = (by: number): number => massOf(boxKnife({ thickness: [heel(4 + by), tip(3 + by)] }));
    expectRelative(massInterval[1], moved(0.3), 1e-8);
    expectRelative(massInterval[0], moved(-0.1), 1e-8);
    expect(contributions).toEqual([{ input: "blade.thickness", share: 1, balanceShare: 1 }]);
  });

  it("density: the same share of the mass, and the balance does not move", () => {
    const spec = boxKnife();
    const { massInterval, balanceInterval } = weighInterval(spec, [], {
      ...NOTHING_UNCERTAIN,
      steelDensity: 0.01,
    });
    const mass = massOf(spec);
    expectRelative(massInterval[0], 0.99 * mass, 1e-8);
    expectRelative(massInterval[1], 1.01 * mass, 1e-8);
    expectWithin(balanceInterval[1], balanceInterval[0], 1e-8);
  });

  it("outline: more steel all round, by hand", () => {
    // As thick as 4 up to the very edge: what counts is the area in the flats. It grows by its perimeter of 500, and by
    // 0.25 for each of five corners that stand out, less one that stands in. The planes at the edge take e²/(4·tan θ) for
    // each millimetre of edge, of which there is one more.
    const spec = boxKnife({ edgeAngle: 1.5, bevel: { form: "flat", height: 20, edgeThickness: 4 } });
    const { massInterval } = weighInterval(spec, [], { ...NOTHING_UNCERTAIN, outline: 0.5 });
    const mass = massOf(spec);
    const planes = 4 / Math.tan(1.5);
    expectRelative(massInterval[1] - mass, 0.00785 * (4 * (250 + 1) - planes), 1e-6);
    expectRelative(mass - massInterval[0], 0.00785 * (4 * (250 - 1) - planes), 1e-6);
  });

  it("that can only make the knife heavier has no lower side", () => {
    // A hole at the thickest place of the tang: wherever it moves, less steel is gone.
    const spec = boxKnife(
      {},
      {
        tang: {
          thickness: [
            { at: { kind: "handle" }, is: 3 },
            { at: { kind: "distance", mm: 40 }, is: 5 },
            { at: { kind: "butt" }, is: 3 },
          ],
          holes: [{ kind: "lightening", at: p(-60, 20), diameter: 8 }],
        },
      },
    );
    const { massInterval } = weighInterval(spec, [even("tang.holes[0].at.x", 10)], NOTHING_UNCERTAIN);
    const mass = massOf(spec);
    expectWithin(massInterval[0], mass, 1e-6);
    expect(massInterval[1]).toBeGreaterThan(mass + 0.1);
  });

  it("that cannot go below nothing stays where it is", () => {
    const spec = boxKnife({ bevel: { form: "flat", height: "full", edgeThickness: 0 } });
    const { massInterval } = weighInterval(
      spec,
      [even("blade.bevel.edgeThickness", 0.05)],
      NOTHING_UNCERTAIN,
    );
    expectWithin(massInterval[0], massOf(spec), 1e-6);
    expect(massInterval[1]).toBeGreaterThan(massOf(spec));
  });
});

describe("the interval of several inputs", () => {
  const spec: KnifeSpec = boxKnife(
    { thickness: [heel(4), tip(3)] },
    {
      tang: { buttThickness: 2.5 },
      handle: { slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8, edgeRadius: 2 } },
    },
  );
  const inputs = [
    even("blade.thickness", 0.2),
    even("blade.bevel.edgeThickness", 0.1),
    even("tang.buttThickness", 0.25),
    even("steel.density", 0.00785 * 0.01),
    even("handle.slabs.thickness", 0.5),
    even("handle.slabs.material.density", 0.00007),
  ];

  it("adds what each does alone in squares", () => {
    const mass = massOf(spec);
    const alone = inputs.map((input) => weighInterval(spec, [input], NOTHING_UNCERTAIN).massInterval);
    const { massInterval } = weighInterval(spec, inputs, NOTHING_UNCERTAIN);
    const root = (side: 0 | 1): number => Math.hypot(...alone.map((interval) => interval[side] - mass));
    expectRelative(massInterval[1] - mass, root(1), 1e-8);
    expectRelative(mass - massInterval[0], root(0), 1e-8);
  });

  it("takes small inputs one way only, and is off by less than a thousandth of its width", () => {
    const given = uncertainInputs(BLOCK_KNIFE, [], DEFAULT_TOLERANCES).map(({ input, plus }) =>
      even(input, plus),
    );
    const { massInterval, balanceInterval } = weighInterval(BLOCK_KNIFE, given, NOTHING_UNCERTAIN);
    // Alone an input is the whole, and moved both ways.
    const alone = given.map((input) => weighInterval(BLOCK_KNIFE, [input], NOTHING_UNCERTAIN));
    const { knife } = weighKnife(makeKnife(BLOCK_KNIFE));
    for (const side of [0, 1] as const) {
      const mass = Math.hypot(...alone.map((one) => one.massInterval[side] - knife.mass));
      const balance = Math.hypot(...alone.map((one) => one.balanceInterval[side] - knife.balanceFromHeel));
      expectRelative(Math.abs(massInterval[side] - knife.mass), mass, 1e-3);
      expectRelative(Math.abs(balanceInterval[side] - knife.balanceFromHeel), balance, 1e-3);
    }
  });

  it("names where it comes from, largest first, in shares that sum to 1", () => {
    for (const { contributions } of [
      weighInterval(spec, inputs, NOTHING_UNCERTAIN),
      weighInterval(spec, []),
    ]) {
      expect(contributions.length).toBeGreaterThanOrEqual(6);
      expectWithin(
        contributions.reduce((sum, { share }) => sum + share, 0),
        1,
        1e-12,
      );
      for (let i = 1; i < contributions.length; i++) {
        expect(contributions[i]?.share).toBeLessThanOrEqual(contributions[i - 1]?.share ?? 0);
      }
    }
  });
});

describe("numbers by their place in the description", () => {
  const spec = boxKnife({ thickness: [heel(4), tip(3)] }, { tang: { buttThickness: 2 } });

  it("reads and moves one number, a station, or a whole law", () => {
    expect(readAt(spec, "tang.buttThickness")).toBe(2);
    expect(readAt(spec, "blade.thickness[1].is")).toBe(3);
    expect(readAt(spec, "blade.nothing[3].there")).toBeUndefined();
    expect(readAt(changedAt(spec, "blade.thickness[1].is", 0.25), "blade.thickness")).toEqual([
      heel(4),
      tip(3.25),
    ]);
    expect(readAt(changedAt(spec, "blade.thickness", -0.5), "blade.thickness")).toEqual([
      heel(3.5),
      tip(2.5),
    ]);
    expect(readAt(changedAt(spec, "blade.edgeAngle", 0.05), "blade.edgeAngle")).toBeCloseTo(0.35, 12);
  });

  it("leaves the rest, and the description given, as they were", () => {
    const before = JSON.stringify(spec);
    const moved = changedAt(spec, "tang.buttThickness", 0.5);
    expect(JSON.stringify(spec)).toBe(before);
    expect(moved.blade).toEqual(spec.blade);
    expect(rebuildKnife(moved).laws.tang?.valueAt(80)).toBe(2.5);
  });
});
