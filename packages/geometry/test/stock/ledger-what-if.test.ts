import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DEFAULT_LOSSES, DEFAULT_SHOP } from "../../src/stock/defaults.js";
import { ledgerWhatIf, type RowWhatIf } from "../../src/stock/ledger-what-if.js";
import { lossesAt } from "../../src/stock/loss-side.js";
import { forgeForward } from "../../src/stock/simulation/forge-forward.js";
import { makeSteelChain, traceStack } from "../../src/stock/steel-chain.js";
import { exactly, HARVEST, NO_LIMITS, NO_LOSSES, shopWith } from "./fixtures.js";
import { bodies, forging, losses, number, SEED } from "./simulation/arbitraries.js";

const FORGING = { heats: 9, weldingHeats: 3 };
const rowOf = (rows: readonly RowWhatIf[], name: string): RowWhatIf => {
  const found = rows.find(({ row }) => row === name);
  if (found === undefined) throw new Error(`no row ${name}`);
  return found;
};

describe("by hand", () => {
  /**
   * One bar 40 x 10, nothing lost but scale of 1 % (2 % at most, 0 at least) in one heat. All rows of the blade together
   * 102 700 mm³, so the bar holds 102 700/0.99 = 103 737.4 mm³. At 2 % it leaves 1 % of that less: 1037.4 mm³, 8.14 g.
   */
  const whole = 62_000 + 160 + 4_700 + 140 + 6_900 + 23_500 + 5_300;
  const lossSpec = { ...NO_LOSSES, scalePerHeat: { low: 0, value: 0.01, high: 0.02 } };
  const shop = { ...DEFAULT_SHOP, losses: lossSpec, limits: NO_LIMITS };
  const stack = { bars: 1, width: 40, thickness: 10 };
  const rows = ledgerWhatIf(HARVEST, shop, { heats: 1, weldingHeats: 3 }, stack);

  test("a scale that is one band more leaves the blade short of it, or takes that much longer a bar", () => {
    expect(whole).toBe(102_700);
    const cut = whole / 0.99;
    const { by, usual, more, less, perGram } = rowOf(rows, "forging-scale");
    expect(by).toBe("band");
    expect(usual).toBeCloseTo((cut - whole) * HARVEST.density, 9);
    expect(more.row).toBeCloseTo(0.01 * cut * HARVEST.density, 9);
    expect(more.finished).toBeCloseTo(-0.01 * cut * HARVEST.density, 9);
    expect(more.barLength).toBeCloseTo((whole / 0.98 - cut) / 400, 9);
    expect(less.finished).toBeCloseTo(0.01 * cut * HARVEST.density, 9);
    expect(less.barLength).toBeCloseTo((whole - cut) / 400, 9);
    expect(perGram.finished).toBeCloseTo(-1, 9);
  });

  test("a row without a band is taken to be wrong by a tenth; a gram is a gram of blade and more of bar", () => {
    const { by, usual, more, less, perGram } = rowOf(rows, "face-grinding");
    expect(by).toBe("tenth");
    expect(usual).toBeCloseTo(23_500 * HARVEST.density, 9);
    expect(more.row).toBeCloseTo(2350 * HARVEST.density, 9);
    expect(more.finished).toBeCloseTo(-2350 * HARVEST.density, 9);
    expect(less.finished).toBeCloseTo(2350 * HARVEST.density, 9);
    expect(more.barLength).toBeCloseTo(2350 / 0.99 / 400, 9);
    expect(perGram.barLength).toBeCloseTo(1 / HARVEST.density / 0.99 / 400, 9);
  });

  test("rows that take nothing are left out: no weld in a solid bar, no taper to grind", () => {
    const names = rows.map(({ row }) => row);
    for (const name of ["cropping", "weld-dressing", "welding-scale", "bar-cleaning", "tang-grinding"])
      expect(names).not.toContain(name);
  });
});

test("those that matter most come first", () => {
  const rows = ledgerWhatIf(HARVEST, shopWith({}), FORGING, { bars: 3, width: 50, thickness: 6 });
  const effects = rows.map(({ more, less }) => Math.max(Math.abs(more.finished), Math.abs(less.finished)));
  expect(effects).toEqual([...effects].sort((a, b) => b - a));
  expect(rows[0]?.row).toBe("forging-scale");
  expect(rows.map(({ row }) => row)).toContain("cropping");
});

test("bars that much longer, forged with the wrong row, end at the finished blade again", () => {
  const stack = fc.record({
    bars: fc.integer({ min: 1, max: 8 }),
    width: number(40, 80),
    thickness: number(5, 12),
  });
  const losing = {
    "forging-scale": ["scalePerHeat", "skinPerHeat"],
    cropping: ["cropPerEnd", "cropPerEnd"],
  } as const;
  let compared = 0;
  fc.assert(
    fc.property(bodies, losses, forging, stack, (blade, lossSpec, heats, bars) => {
      const shop = shopWith({ losses: lossSpec });
      const chain = makeSteelChain(blade, lossSpec, shop.limits, heats, "value");
      const { length } = traceStack(chain, bars.bars, bars.width, bars.thickness);
      for (const row of ledgerWhatIf(blade, shop, heats, bars)) {
        expect(row.more.finished, row.row).toBeLessThanOrEqual(1e-9);
        expect(row.less.finished, row.row).toBeGreaterThanOrEqual(-1e-9);
        if (row.row !== "forging-scale" && row.row !== "cropping") continue;
        if (!Number.isFinite(row.more.barLength)) continue;
        const key = losing[row.row][lossSpec.scaleModel === "fraction" ? 0 : 1];
        const wrong = { ...lossSpec, [key]: exactly(lossSpec[key].high) };
        const setting = {
          bodies: blade,
          losses: lossesAt(wrong, "value"),
          forging: heats,
          limits: shop.limits,
        };
        const end = forgeForward(setting, bars, length + row.more.barLength).at(-1)?.volume ?? 0;
        expect(Math.abs(end / blade.finished - 1)).toBeLessThan(1e-10);
        compared++;
      }
    }),
    { seed: SEED, numRuns: 100, endOnFailure: true },
  );
  expect(compared).toBeGreaterThan(100);
});

test("the skin model's rows follow the skin's own bands", () => {
  const shop = shopWith({ losses: { ...DEFAULT_LOSSES, scaleModel: "skin" } });
  const { more, less } = rowOf(
    ledgerWhatIf(HARVEST, shop, FORGING, { bars: 1, width: 60, thickness: 9 }),
    "forging-scale",
  );
  // 0.04 mm, between 0.02 and 0.08: twice as much lost, or half.
  expect(more.row / -less.row).toBeCloseTo(2, 6);
});
