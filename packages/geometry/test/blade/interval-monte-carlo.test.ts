import { describe, it } from "vitest";
import { makeKnife, rebuildKnife } from "../../src/blade/knife.js";
import { moveSides } from "../../src/blade/move-sides.js";
import { Reweigher } from "../../src/blade/reweigher.js";
import { uncertainSides } from "../../src/blade/sides-moved.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { changedAt } from "../../src/blade/spec-path.js";
import { DEFAULT_TOLERANCES, type InputTolerance } from "../../src/blade/tolerances.js";
import { uncertainInputs } from "../../src/blade/uncertain-inputs.js";
import { weighInterval } from "../../src/blade/weigh-interval.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife } from "./bodies.js";
import { BLOCK_KNIFE, NOTHING_UNCERTAIN, SINGLE_BEVEL, SLAB_KNIFE } from "./interval-knives.js";
import { heel, SEED, tip } from "./random-knives.js";

// Limits of 95 % of a normal error lie this many of its deviations out.
const SIGMAS = 1.959964;
/** How far the half widths may be off: the issue's own limit. */
const AGREEMENT = 0.05;

/** Normal numbers, the same for the same seed: mulberry32, Box and Muller. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** An error within limits: each side of the normal curve is as wide as the limit on that side asks. */
const errorOf = ({ plus, minus }: { readonly plus: number; readonly minus: number }, z: number): number =>
  ((z > 0 ? plus : minus) * z) / SIGMAS;

/** Holds an interval against the middle 95 % of samples, upper and lower half each. */
function expectQuantiles(
  what: string,
  [low, high]: readonly [number, number],
  middle: number,
  samples: readonly number[],
): void {
  const sorted = Float64Array.from(samples).sort();
  const quantile = (share: number): number => {
    const place = share * (sorted.length - 1);
    const i = Math.floor(place);
    const [a, b] = [sorted[i] as number, sorted[Math.min(i + 1, sorted.length - 1)] as number];
    return a + (b - a) * (place - i);
  };
  const note = `${what}, seed ${SEED}`;
  expectRelative(high - low, quantile(0.975) - quantile(0.025), AGREEMENT, `${note}, whole width`);
  expectRelative(high - middle, quantile(0.975) - middle, AGREEMENT, `${note}, upper half`);
  expectRelative(middle - low, middle - quantile(0.025), AGREEMENT, `${note}, lower half`);
}

describe("the interval against 100,000 knives drawn at random, weighed by closed form", () => {
  const spec: KnifeSpec = boxKnife(
    { thickness: [heel(4), tip(3)] },
    {
      tang: { buttThickness: 2.5 },
      handle: { slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8, edgeRadius: 2 } },
    },
  );
  const even = (path: string, limit: number): InputTolerance => ({ path, plus: limit, minus: limit });
  const inputs = [
    even("blade.thickness", 0.2),
    even("blade.bevel.edgeThickness", 0.1),
    even("tang.buttThickness", 0.25),
    even("steel.density", 0.00785 * 0.01),
    even("handle.slabs.thickness", 0.5),
    even("handle.slabs.edgeRadius", 0.5),
    even("handle.slabs.material.density", 0.00007),
  ];
  const uneven = inputs.map((input) =>
    input.path === "handle.slabs.thickness" ? { ...input, plus: 0.6, minus: 0.4 } : input,
  );

  for (const [name, tolerances] of [
    ["even limits", inputs],
    ["one of them uneven", uneven],
  ] as const) {
    it(name, () => {
      const normal = normals(SEED);
      const masses: number[] = [];
      const balances: number[] = [];
      for (let i = 0; i < 100_000; i++) {
        const drawn = tolerances.reduce(
          (knife, tolerance) => changedAt(knife, tolerance.path, errorOf(tolerance, normal())),
          spec,
        );
        const { mass, balance } = weighBoxes(drawn);
        masses.push(mass);
        balances.push(balance);
      }
      const { massInterval, balanceInterval } = weighInterval(spec, tolerances, NOTHING_UNCERTAIN);
      const middle = weighBoxes(spec);
      expectQuantiles("mass", massInterval, middle.mass, masses);
      expectQuantiles("balance", balanceInterval, middle.balance, balances);
    });
  }

  it("the closed form is the kernel's", () => {
    const { mass, balance } = weighBoxes(spec);
    const { knife } = weighKnife(makeKnife(spec));
    expectRelative(mass, knife.mass, 1e-9);
    expectWithin(balance, knife.balanceFromHeel, 1e-7);
  });
});

describe("the interval against knives drawn at random with every default tolerance, each built and weighed", () => {
  // A hundred thousand where that takes a minute; ten thousand tell as much of the others.
  for (const [name, spec, count] of [
    ["full tang with slabs, 10,000", SLAB_KNIFE, 10_000],
    ["hidden tang with block and guard, 100,000", BLOCK_KNIFE, 100_000],
    ["hollow single bevel, 10,000", SINGLE_BEVEL, 10_000],
  ] as const) {
    it(name, { timeout: 400_000 }, () => {
      const normal = normals(SEED);
      const scale = new Reweigher(rebuildKnife(spec));
      const inputs = uncertainInputs(spec, [], DEFAULT_TOLERANCES);
      const runs = uncertainSides([])?.runs ?? [];
      const masses: number[] = [];
      const balances: number[] = [];
      for (let i = 0; i < count; i++) {
        const drawn = inputs.reduce((knife, input) => {
          const error = errorOf(input, normal());
          return input.paths.reduce((before, path) => changedAt(before, path, error), knife);
        }, scale.spec);
        const way = (DEFAULT_TOLERANCES.outline * normal()) / SIGMAS;
        const outline = moveSides(scale.outline, (run) => (runs.includes(run) ? way : 0));
        if (outline === undefined) throw new Error(`a piece is too small for ${way} mm`);
        const { mass, balance } = scale.read(drawn, outline);
        masses.push(mass);
        balances.push(balance);
      }
      const { massInterval, balanceInterval } = weighInterval(spec, []);
      expectQuantiles("mass", massInterval, scale.middle.mass, masses);
      expectQuantiles("balance", balanceInterval, scale.middle.balance, balances);
    });
  }
});

/** Mass and balance of the box knife by closed form, so that a hundred thousand cost nothing. */
function weighBoxes(spec: KnifeSpec): { readonly mass: number; readonly balance: number } {
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
  return { mass, balance: (moment * steel - 60 * wood) / mass };
}
