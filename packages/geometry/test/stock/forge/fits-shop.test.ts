import { describe, expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import { checkShop } from "../../../src/stock/check-shop.js";
import { DEFAULT_SHOP } from "../../../src/stock/defaults.js";
import { fitsShop, hardeningSizes } from "../../../src/stock/forge/fits-shop.js";
import { FORGE_DEFAULTS } from "../../../src/stock/forge/forge-limits.js";
import type { ShopSpec } from "../../../src/stock/shop.js";
import { FULL, HIDDEN } from "./forge-knife.js";

const knife = makeKnife(HIDDEN);
// Edge 120, ricasso 12, tang 90: 222 long, 224.442 hot, for carbon steel is 1.1 % longer from 750 to 860 °C.
const LONG = 222;
const HOT = LONG * 1.011;

const codes = (changes: Partial<ShopSpec>): string[] =>
  fitsShop(knife, { ...DEFAULT_SHOP, ...changes }).map(({ code }) => code);

describe("what does not fit the shop", () => {
  test("sizes by hand", () => {
    expect(hardeningSizes(knife, 850)).toMatchObject({ length: LONG, hardenedLength: 132 });
    expect(hardeningSizes(knife, 850).hotLength).toBeCloseTo(HOT, 9);
    expect(hardeningSizes(knife, 20).hotLength).toBe(LONG);
  });

  test("nothing is said where the shop gives nothing", () => {
    expect(codes({})).toEqual([]);
  });

  test("oven: hot length and 25 mm", () => {
    expect(codes({ oven: { length: HOT + 25.01 } })).toEqual([]);
    expect(codes({ oven: { length: HOT + 24.99 } })).toEqual(["longer-than-oven"]);
    // At 1000 °C 1.38 % more than cold, so 3 mm are gone that were there at 850 °C.
    expect(codes({ oven: { length: HOT + 25.01, temperature: 1000 } })).toEqual(["longer-than-oven"]);
    const own = { ...DEFAULT_SHOP.limits, forge: { ovenClearance: 40 } };
    expect(codes({ oven: { length: HOT + 39 }, limits: own })).toEqual(["longer-than-oven"]);
  });

  test("oven: height on edge is a warning, for a blade can lie", () => {
    const [finding] = fitsShop(knife, { ...DEFAULT_SHOP, oven: { height: 30 } });
    expect(finding).toMatchObject({ code: "higher-than-oven", severity: "warn" });
    expect(codes({ oven: { height: 31 } })).toEqual([]);
  });

  test("tank: the blade ahead of the handle and 50 mm", () => {
    expect(codes({ quenchTank: { depth: 182 } })).toEqual([]);
    expect(codes({ quenchTank: { depth: 181.9 } })).toEqual(["longer-than-tank"]);
  });

  test("forge: a note, for a blade is worked half by half", () => {
    const forged = LONG + knife.allowances.tip + knife.allowances.butt;
    expect(codes({ press: { forgeLength: forged + 0.01 } })).toEqual([]);
    const [finding] = fitsShop(knife, { ...DEFAULT_SHOP, press: { forgeLength: forged - 0.01 } });
    expect(finding).toMatchObject({ code: "forged-longer-than-forge", severity: "note" });
  });

  test("stops say where their limit comes from and where it stands", () => {
    const shop = { ...DEFAULT_SHOP, oven: { length: 300 }, quenchTank: { depth: 150 } };
    const stops = fitsShop(makeKnife(FULL), shop);
    expect(stops.map(({ path, severity, basis }) => [path, severity, basis])).toEqual([
      ["oven.length", "stop", "common practice, no source"],
      ["quenchTank.depth", "stop", "common practice, no source"],
    ]);
    const own = { ...shop, limits: { ...shop.limits, forge: { tankClearance: 60 } } };
    expect(fitsShop(makeKnife(FULL), own)[1]?.basis).toBe("the shop's own limit");
  });

  test("every default says where it comes from", () => {
    for (const { basis } of Object.values(FORGE_DEFAULTS))
      expect(basis).toMatch(/common practice, no source|from memory/);
  });
});

describe("checking oven, tank, fullers and limits of a shop", () => {
  test("all problems at once, each at its place", () => {
    const issues = checkShop({
      ...DEFAULT_SHOP,
      oven: { length: 0, height: -1, temperature: 1300 },
      quenchTank: { depth: Number.NaN },
      fullers: [6, 0],
      preCurve: { sweep: -1, length: 0 },
      limits: {
        ...DEFAULT_SHOP.limits,
        forge: {
          bevelSpreadShare: 2,
          shoulderRatio: 1,
          cornerRadius: -1,
          shoulderPasses: 0,
          ovenClearance: -1,
          tankClearance: -1,
        },
      },
    });
    expect(issues.map(({ code, path }) => `${path}: ${code}`)).toEqual([
      "oven.length: not-positive",
      "oven.height: not-positive",
      "oven.temperature: temperature-out-of-range",
      "quenchTank.depth: not-positive",
      "fullers[1]: not-positive",
      "preCurve.sweep: length-negative",
      "preCurve.length: not-positive",
      "limits.forge.bevelSpreadShare: share-out-of-range",
      "limits.forge.shoulderRatio: ratio-too-small",
      "limits.forge.cornerRadius: length-negative",
      "limits.forge.shoulderPasses: not-positive",
      "limits.forge.ovenClearance: length-negative",
      "limits.forge.tankClearance: length-negative",
    ]);
  });
});
