import { describe, expect, test } from "vitest";
import { checkPress } from "../../../src/stock/check-press.js";
import { checkShop } from "../../../src/stock/check-shop.js";
import { DEFAULT_SHOP } from "../../../src/stock/defaults.js";
import { PRESS_DEFAULTS, pressWork } from "../../../src/stock/forge/press-defaults.js";
import type { PressSpec } from "../../../src/stock/shop.js";

describe("what has to hold of a press", () => {
  const whole: PressSpec = {
    opening: 75,
    forgeLength: 450,
    stopBlocks: [6, 8],
    shims: Array.from({ length: 32 }, () => 0.5),
    stopOffset: -0.2,
    maxReduction: 0.2,
    temperature: 1200,
    die: { length: 40, width: 60 },
    forceKn: 250,
  };

  test("a whole one and an empty one are right", () => {
    expect(checkPress(whole)).toEqual([]);
    expect(checkPress({})).toEqual([]);
  });

  test.each<[string, PressSpec, string]>([
    ["opening", { opening: 0 }, "not-positive press.opening"],
    ["forge length", { forgeLength: Number.NaN }, "not-positive press.forgeLength"],
    ["block", { stopBlocks: [6, 0] }, "not-positive press.stopBlocks[1]"],
    ["shim", { shims: [Number.POSITIVE_INFINITY] }, "not-positive press.shims[0]"],
    ["shims", { shims: Array.from({ length: 33 }, () => 0.5) }, "too-many-shims press.shims"],
    ["offset", { stopOffset: -5.1 }, "offset-out-of-range press.stopOffset"],
    ["no number", { stopOffset: Number.NaN }, "offset-out-of-range press.stopOffset"],
    ["no reduction", { maxReduction: 0 }, "share-out-of-range press.maxReduction"],
    ["all of it", { maxReduction: 1 }, "share-out-of-range press.maxReduction"],
    ["too hot", { temperature: 1201 }, "temperature-out-of-range press.temperature"],
    ["too cold", { temperature: 19 }, "temperature-out-of-range press.temperature"],
    ["die", { die: { length: -1, width: 60 } }, "not-positive press.die.length"],
    ["die's width", { die: { length: 40, width: 0 } }, "not-positive press.die.width"],
    ["force", { forceKn: 0 }, "not-positive press.forceKn"],
  ])("%s", (_, wrong, expected) => {
    const press = { ...whole, ...wrong };
    expect(checkPress(press).map(({ code, path }) => `${code} ${path}`)).toEqual([expected]);
    expect(checkShop({ ...DEFAULT_SHOP, press })).toEqual(checkPress(press));
  });
});

test("what the shop does not say of its press is the default, with a basis", () => {
  expect(pressWork({})).toEqual({ temperature: 950, stopOffset: 0, maxReduction: 0.2 });
  expect(pressWork({ stopBlocks: [], shims: [1] })).not.toHaveProperty("stops");
  expect(pressWork({ stopBlocks: [6], temperature: 1000, stopOffset: 0.3, maxReduction: 0.1 })).toEqual({
    temperature: 1000,
    stopOffset: 0.3,
    maxReduction: 0.1,
    stops: { blocks: [6], shims: [] },
  });
  expect(Object.values(PRESS_DEFAULTS).filter(({ basis }: { basis: string }) => basis.length < 10)).toEqual(
    [],
  );
});
