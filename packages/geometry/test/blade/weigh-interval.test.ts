import { describe, expect, it } from "vitest";
import { makeKnife, rebuildKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { changedAt, readAt } from "../../src/blade/spec-path.js";
import { weighInterval } from "../../src/blade/weigh-interval.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { heel, SEED, tip } from "./random-knives.js";

/** No input uncertain but those that a test names. */
const NOTHING = {
  forgedThickness: 0,
  groundThickness: 0,
  edgeThickness: 0,
  outline: 0,
  steelDensity: 0,
  handleDensity: 0,
};
const even = (path: string, limit: number) => ({ path, plus: limit, minus: limit });
const massOf = (spec: KnifeSpec): number => weighKnife(makeKnife(spec)).knife.mass;

describe("the interval of one input", () => {
  it("is what the two limits weigh: thickness", () => {
    const spec = boxKnife({ thickness: [heel(4), tip(3)] });
    const { massInterval, contributions } = weighInterval(
      spec,
      [{ path: "blade.thickness", plus: 0.3, minus: 0.1 }],
      NOTHING,
    );
    const moved = (by: number): number => massOf(boxKnife({ thickness: [heel(4 + by), tip(3 + by)] }));
    expectRelative(massInterval[1], moved(0.3), 1e-8);
    expectRelative(massInterval[0], moved(-0.1), 1e-8);
    expect(contributions).toEqual([{ input: "blade.thickness", share: 1 }]);
  });

  it("density: the same share of the mass, and the balance does not move", () => {
    const spec = boxKnife();
    const { massInterval, balanceInterval } = weighInterval(spec, [], { ...NOTHING, steelDensity: 0.01 });
    const mass = massOf(spec);
    expectRelative(massInterval[0], 0.99 * mass, 1e-8);
    expectRelative(massInterval[1], 1.01 * mass, 1e-8);
    expectWithin(balanceInterval[1], balanceInterval[0], 1e-8);
  });

  it("outline: a strip of steel all round, by hand", () => {
    // Sides 0.5 wide, ends drawn on with their section. The bevel goes with the edge: the section gains what the body has
    // at its spine, 4; in a bevel that runs to the spine half of that and half of the sharpened rim, which is nothing.
    const spec = boxKnife({ edgeAngle: 1.5, bevel: { form: "flat", height: 20, edgeThickness: 4 } });
    const { massInterval } = weighInterval(spec, [], { ...NOTHING, outline: 0.5 });
    const mass = massOf(spec);
    const density = 0.00785;
    const strips = 0.5 * (2 * 120 * 4 + 2 * 100 * 4);
    const tipEnd = 0.5 * (30 * 4 + 2 * 0.5 * 4);
    const buttEnd = 0.5 * (20 * 4 + 2 * 0.5 * 4);
    expectRelative(massInterval[1] - mass, density * (strips + tipEnd + buttEnd), 1e-6);
    expectRelative(mass - massInterval[0], density * (strips + tipEnd + buttEnd), 1e-6);
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
    const { massInterval } = weighInterval(spec, [even("tang.holes[0].at.x", 10)], NOTHING);
    const mass = massOf(spec);
    expectWithin(massInterval[0], mass, 1e-6);
    expect(massInterval[1]).toBeGreaterThan(mass + 0.1);
  });

  it("that cannot go below nothing stays where it is", () => {
    const spec = boxKnife({ bevel: { form: "flat", height: "full", edgeThickness: 0 } });
    const { massInterval } = weighInterval(spec, [even("blade.bevel.edgeThickness", 0.05)], NOTHING);
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
    const alone = inputs.map((input) => weighInterval(spec, [input], NOTHING).massInterval);
    const { massInterval } = weighInterval(spec, inputs, NOTHING);
    const root = (side: 0 | 1): number => Math.hypot(...alone.map((interval) => interval[side] - mass));
    expectRelative(massInterval[1] - mass, root(1), 1e-8);
    expectRelative(mass - massInterval[0], root(0), 1e-8);
  });

  it("names where it comes from, largest first, in shares that sum to 1", () => {
    for (const { contributions } of [weighInterval(spec, inputs, NOTHING), weighInterval(spec, [])]) {
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

  it("agrees with 4,000 knives drawn at random", { timeout: 60_000 }, () => {
    // Limits of 95 % of a normal error lie 1.96 of its deviations out. Seeded mulberry32, Box and Muller.
    let state = SEED;
    const uniform = (): number => {
      state = (state + 0x6d2b79f5) | 0;
      let t = Math.imul(state ^ (state >>> 15), 1 | state);
      t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
      return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
    const masses: number[] = [];
    const balances: number[] = [];
    for (let i = 0; i < 4000; i++) {
      const drawn = inputs.reduce(
        (knife, { path, plus }) => changedAt(knife, path, (plus / 1.959964) * normal()),
        spec,
      );
      const { knife } = weighBoxes(drawn);
      masses.push(knife.mass);
      balances.push(knife.balance);
    }
    const spread = (values: readonly number[]): number => {
      const mean = values.reduce((a, b) => a + b, 0) / values.length;
      return 1.959964 * Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1));
    };
    const { massInterval, balanceInterval } = weighInterval(spec, inputs, NOTHING);
    expectRelative((massInterval[1] - massInterval[0]) / 2, spread(masses), 0.05, "mass");
    expectRelative((balanceInterval[1] - balanceInterval[0]) / 2, spread(balances), 0.05, "balance");
  });

  it("the closed form that those knives are weighed by is the kernel's", () => {
    const { mass, balance } = weighBoxes(spec).knife;
    const { knife } = weighKnife(makeKnife(spec));
    expectRelative(mass, knife.mass, 1e-9);
    expectWithin(balance, knife.balanceFromHeel, 1e-7);
  });
});

/** Mass and balance of the box knife by closed form, so that thousands cost nothing. */
function weighBoxes(spec: KnifeSpec): {
  readonly knife: { readonly mass: number; readonly balance: number };
} {
  const [front, end] = spec.blade.thickness.map(({ is }) => is) as [number, number];
  const e = spec.blade.bevel.edgeThickness as number;
  const butt = spec.tang.buttThickness as number;
  const slabs = spec.handle?.slabs;
  if (slabs === undefined || slabs.material.density === undefined) throw new Error("the box knife has slabs");
  const steel = spec.steel.density as number;
  const tan = Math.tan(spec.blade.edgeAngle as number);
  // Sharpening takes (e²/4)/(tan θ − (T − e)/60) a millimetre: Gauss with three points along the taper.
  let volume = 0;
  let moment = 0;
  const piece = (v: number, x: number): void => {
    volume += v;
    moment += v * x;
  };
  [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)].forEach((u, i) => {
    const T = front + (end - front) * u;
    const area = 15 * (T + e) - (e * e) / 4 / (tan - (T - e) / 60);
    piece(((i === 1 ? 8 : 5) / 18) * 120 * area, 120 * u);
  });
  piece(20 * 20 * front, -10);
  piece((80 * 20 * (front + butt)) / 2, -20 - (80 * (front + 2 * butt)) / (3 * (front + butt)));
  const r = slabs.edgeRadius ?? 0;
  const wood =
    80 * (2 * 20 * (slabs.thickness as number) - 4 * r * r * (1 - Math.PI / 4)) * slabs.material.density;
  const mass = volume * steel + wood;
  return { knife: { mass, balance: (moment * steel - 60 * wood) / mass } };
}

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
