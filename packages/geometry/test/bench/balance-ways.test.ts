import { describe, expect, test } from "vitest";
import { type BalanceWay, balanceWays } from "../../src/bench/balance-ways.js";
import { massShares } from "../../src/bench/mass-shares.js";
import { makeKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";

const pin = (x: number): { kind: "pin"; at: { x: number; y: number }; diameter: number } => ({
  kind: "pin",
  at: { x, y: 19 },
  diameter: 4,
});

/** A full tang of 4 mm that is a rectangle of 100 × 22 mm, with slabs. */
const SPEC: KnifeSpec = {
  steel: { name: "test steel", density: 0.00785 },
  blade: {
    outline: { family: "drop-point", edgeLength: 130, heelHeight: 30 },
    ricasso: 10,
    thickness: [
      { at: { kind: "heel" }, is: 4 },
      { at: { kind: "tip" }, is: 2.5 },
    ],
    bevel: { form: "flat", height: "full", edgeThickness: 0.5 },
    edgeAngle: 0.3,
  },
  tang: {
    form: "full",
    length: 100,
    heights: { front: 22, middle: 22, butt: 22 },
    holes: [pin(-30), pin(-85)],
  },
  handle: {
    slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8 },
    parts: [{ name: "plate", mass: 12, at: { x: -50, y: 19 } }],
  },
};

const KNIFE = makeKnife(SPEC);
const { mass: M, balanceFromHeel: NOW } = weighKnife(KNIFE).knife;

const wayOf = <K extends BalanceWay["kind"]>(target: number, kind: K): Extract<BalanceWay, { kind: K }> => {
  const way = balanceWays(KNIFE, target).find((one) => one.kind === kind);
  if (way === undefined) throw new Error(`no ${kind}`);
  return way as Extract<BalanceWay, { kind: K }>;
};

/** The knife of a changed description, checked and weighed like any other. */
const weighed = (spec: KnifeSpec) => weighKnife(makeKnife(spec)).knife;

describe("ways to move the balance back", () => {
  const target = NOW - 8;

  test("come in the order in which they can still be gone", () => {
    // A parallel tang cannot be thickened, holes bring it forward only.
    expect(balanceWays(KNIFE, target).map(({ kind }) => kind)).toEqual([
      "handle-density",
      "part-mass",
      "butt-mass",
    ]);
  });

  test("a weight in the butt: Δx = −m(x − x_B)/(M + m), and the knife with it balances there", () => {
    const { added, x, mass, balance, reaches } = wayOf(target, "butt-mass");
    expect(x).toBeCloseTo(-110 + 5, 9);
    expect((added * (NOW - x)) / (M + added)).toBeCloseTo(8, 9);
    expect({ mass, balance, reaches }).toEqual({
      mass: expect.closeTo(M + added, 9),
      balance: expect.closeTo(target, 6),
      reaches: true,
    });
    const parts = [...(SPEC.handle?.parts ?? []), { name: "weight", mass: added, at: { x, y: 20 } }];
    expect(weighed({ ...SPEC, handle: { ...SPEC.handle, parts } }).balanceFromHeel).toBeCloseTo(target, 6);
  });

  test("no weight is less than nothing or more than half the knife, wherever the balance is wanted", () => {
    for (const wanted of [-60, -100, -104.9, -105, -105.1, -150, -190]) {
      for (const way of balanceWays(KNIFE, wanted)) {
        const added = way.kind === "butt-mass" ? way.added : way.kind === "part-mass" ? way.to - way.from : 0;
        expect(added).toBeGreaterThanOrEqual(0);
        expect(added).toBeLessThanOrEqual(M / 2 + 1e-9);
        expect(way.reaches).toBe(Math.abs(way.balance - wanted) < 0.5);
      }
    }
  });

  test("there is none where it balances there already", () => {
    expect(balanceWays(KNIFE, NOW)).toEqual([]);
    expect(balanceWays(KNIFE, NOW + 0.3)).toEqual([]);
  });

  test("a heavier part where it is", () => {
    const { part, from, to, balance } = wayOf(target, "part-mass");
    expect([part, from]).toEqual(["plate", 12]);
    expect(balance).toBeCloseTo(target, 6);
    const parts = [{ name: "plate", mass: to, at: { x: -50, y: 19 } }];
    expect(weighed({ ...SPEC, handle: { ...SPEC.handle, parts } }).balanceFromHeel).toBeCloseTo(target, 6);
  });

  test("denser slabs, and a material of the table that is at least as dense", () => {
    const near = NOW - 3;
    const { part, to, material, balance, mass } = wayOf(near, "handle-density");
    expect(part).toBe("slabs");
    expect(balance).toBeCloseTo(near, 2);
    expect(material).toBeDefined();
    const heavier = { ...SPEC.handle, slabs: { material: { name: "denser", density: to }, thickness: 8 } };
    expect(weighed({ ...SPEC, handle: heavier })).toMatchObject({
      mass: expect.closeTo(mass, 6),
      balanceFromHeel: expect.closeTo(balance, 6),
    });
  });

  test("what does not reach says how far it goes", () => {
    const far = wayOf(NOW - 60, "handle-density");
    expect(far.reaches).toBe(false);
    expect(far.balance).toBeGreaterThan(NOW - 60);
    expect(far.balance).toBeLessThan(NOW);
  });
});

describe("ways to move the balance forward", () => {
  const target = NOW + 4;

  test("taper of the tang, no thinner than the last pin needs", () => {
    const { from, to, balance, reaches } = wayOf(target, "tang-taper");
    expect(from).toBe(4);
    expect(reaches).toBe(true);
    expect(balance).toBeCloseTo(target, 2);
    expect(weighed({ ...SPEC, tang: { ...SPEC.tang, buttThickness: to } }).balanceFromHeel).toBeCloseTo(
      balance,
      6,
    );
    // The last pin is 75 of 100 mm behind the front: 1.6 mm are left there at a butt of 4 − 2.4/0.75.
    const least = wayOf(NOW + 60, "tang-taper");
    expect(least.reaches).toBe(false);
    expect(least.to).toBeCloseTo(Math.max(1.6, 4 - 2.4 / 0.75), 6);
    const codes = makeKnife({ ...SPEC, tang: { ...SPEC.tang, buttThickness: least.to } }).findings.map(
      ({ code }) => code,
    );
    expect(codes).not.toContain("tang-thin-at-pin");
  });

  test("holes: π d²/4 · t of steel each, and none too near to anything", () => {
    const { diameter, places, mass, balance, reaches } = wayOf(target, "tang-holes");
    expect(reaches).toBe(true);
    expect(balance).toBeGreaterThanOrEqual(target - 0.01);
    expect(mass).toBeCloseTo(M - places.length * (Math.PI / 4) * diameter ** 2 * 4 * 0.00785, 6);
    const holes = [
      ...(SPEC.tang.holes ?? []),
      ...places.map((at) => ({ kind: "lightening" as const, at, diameter })),
    ];
    const drilled = makeKnife({ ...SPEC, tang: { ...SPEC.tang, holes } });
    expect(weighKnife(drilled).knife.balanceFromHeel).toBeCloseTo(balance, 6);
    expect(drilled.findings).toEqual(KNIFE.findings);
  });

  test("a lighter handle, but no weight in the butt", () => {
    const kinds = balanceWays(KNIFE, target).map(({ kind }) => kind);
    expect(kinds).toContain("tang-taper");
    expect(kinds).not.toContain("butt-mass");
  });
});

describe("where the mass is", () => {
  test("blade and tang are the steel, all together the knife; the tang is a plate less its holes", () => {
    const weight = weighKnife(KNIFE);
    const shares = massShares(KNIFE, weight);
    expect(shares.map(({ name }) => name)).toEqual(["blade", "tang", "slabs", "plate"]);
    const [blade, tang] = shares;
    expect(tang?.mass).toBeCloseTo((100 * 22 - 2 * Math.PI * 4) * 4 * 0.00785, 9);
    expect((blade?.mass ?? 0) + (tang?.mass ?? 0)).toBeCloseTo(weight.steel.mass, 9);
    expect(shares.reduce((sum, { mass }) => sum + mass, 0)).toBeCloseTo(weight.knife.mass, 9);
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });
});
