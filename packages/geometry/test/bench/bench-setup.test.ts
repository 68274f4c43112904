import { drillSizes } from "@scantling/geometry/units";
import { describe, expect, test } from "vitest";
import { benchSetUp } from "../../src/bench/bench-setup.js";
import { oilRise, quenchSetUp } from "../../src/bench/quench.js";
import { weighState } from "../../src/blade/weigh-state.js";
import { checkBenchTools } from "../../src/stock/check-bench-tools.js";
import { checkShop } from "../../src/stock/check-shop.js";
import { DEFAULT_SHOP } from "../../src/stock/defaults.js";
import type { ShopSpec } from "../../src/stock/shop.js";
import { randomKnives } from "../blade/random-knives.js";
import { chopper, hidden, withBevel } from "./bench-knives.js";

const SHOP: ShopSpec = { ...DEFAULT_SHOP, drills: drillSizes(), wedges: [0.2, 0.15], wheels: [250] };

const codes = (...given: Parameters<typeof benchSetUp>): string[] =>
  benchSetUp(...given).findings.map(({ code }) => code);

describe("the quench", () => {
  // 0.40 kg from 815 °C into 15 l at 60 °C: about 7.5 K.
  test("warms its oil", () => {
    expect(oilRise(400, 815, 60, 15)).toBeCloseTo((0.4 * 0.65 * 755) / (15 * 0.87 * 2), 12);
    expect(oilRise(400, 815, 60, 15)).toBeCloseTo(7.5, 1);
    expect(oilRise(400, 60, 60, 15)).toBe(0);
    expect(oilRise(400, 815, 60, 1e9)).toBeCloseTo(0, 6);
  });

  test("is reckoned with the mass that goes in and the shop's own oil", () => {
    const knife = chopper();
    const set = quenchSetUp(knife, {
      ...SHOP,
      oven: { temperature: 830 },
      quenchTank: { litres: 12, depth: 300, temperature: 50 },
    });
    const { mass } = weighState(knife, "ready");
    expect(set.mass).toBeCloseTo(mass, 9);
    expect(set.rise).toBeCloseTo(oilRise(mass, 830, 50, 12), 12);
    expect(set).toMatchObject({ from: 830, oil: 50, litres: 12, depth: 300, depthNeeded: 260 });
    expect(quenchSetUp(knife, SHOP).rise).toBeUndefined();
  });
});

describe("all set-ups", () => {
  test("of a full tang, as far as there are any", () => {
    const bench = benchSetUp(chopper(), SHOP);
    expect(bench.taper?.shims.map(({ at }) => at)).toEqual([20, 60, 100, 120]);
    expect(bench.taper?.drillingNeedsShim).toBe(true);
    expect(bench.blank?.kind).toBe("slabs");
    expect(bench.edge[0]?.wedges).toMatchObject({ add: [0.2, 0.15], subtract: [] });
    expect("guard" in bench || "mortise" in bench).toBe(false);
  });

  test("of a hidden tang", () => {
    const bench = benchSetUp(hidden(), SHOP);
    expect(bench.mortise?.steps).toHaveLength(5);
    expect(bench.guard?.height).toBeCloseTo(20, 4);
    expect("pins" in bench).toBe(false);
    expect(bench.holes).toEqual([]);
  });

  test("of knives at random hold plain numbers only", () => {
    for (const { knife } of randomKnives(40)) {
      const text = JSON.stringify(benchSetUp(knife, SHOP), (_, value: unknown) => {
        if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
        return value;
      });
      expect(text).not.toContain("undefined");
    }
  });
});

describe("what is unwise", () => {
  test("a bevel line that droops, holes that want a shim", () => {
    expect(codes(chopper(), SHOP)).toEqual(["bevel-line-droops", "drilling-needs-shim"]);
  });

  test("an edge too thin for the quench", () => {
    const thin = chopper((spec) => ({ ...spec, allowances: { ...spec.allowances, afterHardening: 0.05 } }));
    // 0.6 + 2 · 0.05 = 0.7 on a spine of 5 mm.
    expect(codes(thin, SHOP)).toContain("edge-thin-for-quench");
  });

  test.each([
    // spine as finished, afterHardening 0.1: both 0.2 mm more before the quench; edge before it; is it too thin?
    [3.8, 0.49, true],
    [3.8, 0.5, false],
    [3.9, 0.79, true],
    [5.8, 0.79, true],
    [5.8, 0.8, false],
    [5.9, 0.99, true],
    [5.9, 1, false],
  ])("under a spine of %d mm an edge of %d mm is too thin: %s", (spine, edge, thin) => {
    const even = chopper((spec) => ({
      ...spec,
      blade: {
        ...spec.blade,
        thickness: [{ at: { kind: "heel" }, is: spine }],
        bevel: { ...spec.blade.bevel, edgeThickness: edge - 0.2 },
      },
      allowances: { ...spec.allowances, afterHardening: 0.1, minEdge: 0.1 },
    }));
    expect(codes(even, SHOP).includes("edge-thin-for-quench")).toBe(thin);
  });

  test("each place is held against its own spine", () => {
    // 7 mm at the heel with 1.1 mm of edge, 3 mm at the tip with 0.6: neither is too thin where it is.
    const tapered = chopper((spec) => ({
      ...spec,
      blade: {
        ...spec.blade,
        thickness: [
          { at: { kind: "heel" }, is: 7 },
          { at: { kind: "tip" }, is: 3 },
        ],
        bevel: {
          ...spec.blade.bevel,
          edgeThickness: [
            { at: { kind: "heel" }, is: 1.0 },
            { at: { kind: "tip" }, is: 0.6 },
          ],
        },
      },
      allowances: { ...spec.allowances, afterHardening: 0.1, minEdge: 0.1 },
    }));
    expect(codes(tapered, SHOP)).not.toContain("edge-thin-for-quench");
  });

  test("a kitchen knife that wedges, and a wide edge bevel", () => {
    const kitchen = chopper((spec) => ({
      ...spec,
      blade: {
        ...spec.blade,
        outline: { family: "vegetable", edgeLength: 200, heelHeight: 50 },
        bevel: { ...spec.blade.bevel, edgeThickness: 0.8 },
        edgeAngle: 0.3,
      },
    }));
    expect(codes(kitchen, SHOP)).toEqual(expect.arrayContaining(["thick-above-edge", "edge-bevel-wide"]));
  });

  test("no drill large enough, little oil, a slot that nothing covers", () => {
    const small = { ...SHOP, drills: drillSizes(["metric"]).filter(({ diameter }) => diameter < 5) };
    expect(codes(chopper(), small).filter((code) => code === "no-drill")).toHaveLength(2);
    expect(codes(chopper(), { ...SHOP, quenchTank: { litres: 1 } })).toContain("little-oil");
    expect(codes(chopper(), { ...SHOP, quenchTank: { litres: 50 } })).not.toContain("little-oil");
    const { spec } = hidden();
    const { thickness: _, ...tang } = spec.tang;
    expect(
      codes(
        chopper(() => ({ ...spec, tang })),
        SHOP,
      ),
    ).toContain("guard-slot-shows");
    expect(codes(hidden(), SHOP)).not.toContain("guard-slot-shows");
  });

  test("nothing droops where a wheel makes the face", () => {
    expect(codes(withBevel({ form: "hollow", wheelRadius: 600 }), SHOP)).not.toContain("bevel-line-droops");
  });
});

describe("tools of a shop", () => {
  test("that cannot be", () => {
    const wrong = checkBenchTools({
      drills: [{ name: "x", diameter: 0 }],
      wheels: [-1],
      wedges: [2, ...Array.from({ length: 10 }, () => 0.1)],
      jigLever: 0,
    });
    expect(wrong.map(({ code, path }) => `${path} ${code}`)).toEqual([
      "drills[0] not-positive",
      "wheels[0] not-positive",
      "wedges[0] angle-out-of-range",
      "wedges too-many-wedges",
      "jigLever not-positive",
    ]);
  });

  test("are part of the shop", () => {
    expect(checkShop(SHOP)).toEqual([]);
    expect(checkShop({ ...SHOP, wheels: [0], quenchTank: { litres: 0, temperature: 800 } })).toHaveLength(3);
  });
});
