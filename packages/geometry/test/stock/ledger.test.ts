import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LEDGER_ROWS, type LedgerRowName } from "../../src/stock/blade-states.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../src/stock/defaults.js";
import { LEDGER_TOTALS, ledgerRow, makeLedger, roundUpToStep } from "../../src/stock/ledger.js";
import type { LossSide } from "../../src/stock/loss-side.js";
import type { Banded, LossSpec } from "../../src/stock/shop.js";
import { makeSteelChain, traceStack } from "../../src/stock/steel-chain.js";
import { exactly, HARVEST, NO_LIMITS, NO_LOSSES, plainBodies } from "./fixtures.js";
import { forgeForwards } from "./forward.js";

const SEED = 20261125;
const FORGING = { heats: 9, weldingHeats: 3 };
const relative = (a: number, b: number): number => Math.abs(a / b - 1);

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const band = (max: number): fc.Arbitrary<Banded> =>
  fc
    .tuple(number(0, max), number(0, max), number(0, max))
    .map((numbers) => numbers.sort((a, b) => a - b))
    .map(([low = 0, value = 0, high = 0]) => ({ low, value, high }));
const losses: fc.Arbitrary<LossSpec> = fc.record({
  scaleModel: fc.constantFrom("fraction" as const, "skin" as const),
  scalePerHeat: band(0.04),
  scalePerWeldingHeat: band(0.06),
  skinPerHeat: band(0.06),
  skinPerWeldingHeat: band(0.15),
  heatTreatmentScale: band(0.02),
  skinHeatTreatment: band(0.03),
  cropPerEnd: band(15),
  weldDressingPerSide: band(2.5),
  cleaningPerFace: band(0.4),
});
const stack = fc.record({
  bars: fc.integer({ min: 1, max: 12 }),
  width: number(25, 80),
  thickness: number(3, 12),
});
const sides = fc.constantFrom<LossSide>("low", "value", "high");

describe("by hand", () => {
  test("one bar, 8 % of one heat lost: the bar holds 108.6957 g for a 100 g blade", () => {
    const bodies = plainBodies(100 / 0.00785);
    const chain = makeSteelChain(
      bodies,
      { ...NO_LOSSES, scalePerHeat: exactly(0.08) },
      NO_LIMITS,
      { heats: 1, weldingHeats: 0 },
      "value",
    );
    const { length } = traceStack(chain, 1, 40, 6);
    expect(40 * 6 * length * 0.00785).toBeCloseTo(108.6957, 4);
  });

  test("seven bars 40 x 3 without any loss: 126 000 mm³ take 150 mm and 989.10 g", () => {
    const bodies = plainBodies(126_000);
    const chain = makeSteelChain(bodies, NO_LOSSES, NO_LIMITS, FORGING, "value");
    expect(traceStack(chain, 7, 40, 3).length).toBeCloseTo(150, 10);
    const ledger = makeLedger(bodies, chain, { bars: 7, width: 40, thickness: 3, cutLength: 150 });
    expect(ledgerRow(ledger, "bars-as-cut").mass).toBeCloseTo(989.1, 9);
    expect(ledgerRow(ledger, "spare").volume).toBeCloseTo(0, 6);
  });

  /**
   * Three bars 40 x 6, cleaned 0.2 mm: 17.2 high. Squeezed by half without spread: 8.6. Dressed 2 mm a side: 36 wide.
   * Forged 50 000 mm³; crop 2·10·36·8.6 = 6192; (50 000 + 6192)·40/36 = 62 435.556 welded;
   * ÷ 0.95² = 69 180.671 cleaned; ÷ (40·17.2) = 100.553 mm; cleaning 2·0.2·2·40·100.553 = 3217.705.
   */
  test("a welded stack, every row", () => {
    const bodies = plainBodies(50_000);
    const chain = makeSteelChain(
      bodies,
      {
        ...NO_LOSSES,
        scalePerWeldingHeat: exactly(0.05),
        cropPerEnd: exactly(10),
        weldDressingPerSide: exactly(2),
        cleaningPerFace: exactly(0.2),
      },
      { ...NO_LIMITS, minWeldReduction: 0.5 },
      { heats: 4, weldingHeats: 2 },
      "value",
    );
    const ledger = makeLedger(bodies, chain, { bars: 3, width: 40, thickness: 6, cutLength: 105 });
    const volume = (row: LedgerRowName): number => ledgerRow(ledger, row).volume;
    expect(volume("forging-scale")).toBe(0);
    expect(volume("cropping")).toBeCloseTo(6192, 9);
    expect(volume("weld-dressing")).toBeCloseTo(62_435.556 - 56_192, 3);
    expect(volume("welding-scale")).toBeCloseTo(69_180.671 - 62_435.556, 2);
    expect(volume("bar-cleaning")).toBeCloseTo(3217.705, 2);
    expect(volume("spare")).toBeCloseTo(720 * (105 - 100.5533), 1);
    expect(volume("bars-as-cut")).toBe(3 * 40 * 6 * 105);
  });
});

describe("shape", () => {
  test("19 rows in their order, a solid bar with its weld rows at 0, none hidden", () => {
    const chain = makeSteelChain(HARVEST, DEFAULT_LOSSES, DEFAULT_LIMITS, FORGING, "value");
    const ledger = makeLedger(HARVEST, chain, { bars: 1, width: 60, thickness: 10, cutLength: 250 });
    expect(ledger.map(({ row }) => row)).toEqual([...LEDGER_ROWS]);
    for (const row of [
      "cropping",
      "weld-dressing",
      "welding-scale",
      "bar-cleaning",
      "tang-grinding",
    ] as const)
      expect(ledgerRow(ledger, row).volume).toBe(0);
    for (const { volume, mass } of ledger) expect(mass).toBe(volume * HARVEST.density);
  });

  test.each([
    [146.2, 5, 150],
    [150, 5, 150],
    [150.00000000000003, 5, 150],
    [150.001, 5, 155],
    [1, 3.175, 3.175],
  ])("%d rounded up to steps of %d is %d", (length, step, expected) => {
    expect(roundUpToStep(length, step)).toBe(expected);
  });
});

describe("mass in = mass out + every loss", () => {
  test("the finished blade and all added rows sum to the bars as cut; each total is the sum so far", () => {
    fc.assert(
      fc.property(
        losses,
        stack,
        sides,
        number(0, 40),
        (lossSpec, { bars, width, thickness }, side, extra) => {
          const chain = makeSteelChain(HARVEST, lossSpec, DEFAULT_LIMITS, FORGING, side);
          const { length } = traceStack(chain, bars, width, thickness);
          fc.pre(Number.isFinite(length));
          const ledger = makeLedger(HARVEST, chain, { bars, width, thickness, cutLength: length + extra });
          let sum = 0;
          for (const { row, volume } of ledger) {
            expect(volume, row).toBeGreaterThanOrEqual(-1e-9);
            if (row === "finished-blade") sum = volume;
            else if (LEDGER_TOTALS.includes(row)) expect(relative(sum, volume), row).toBeLessThan(1e-12);
            else sum += volume;
          }
        },
      ),
      { seed: SEED },
    );
  });

  test("forging forwards, heat by heat, from the shortest bars gives the forged blade", () => {
    fc.assert(
      fc.property(losses, stack, sides, (lossSpec, { bars, width, thickness }, side) => {
        const chain = makeSteelChain(HARVEST, lossSpec, DEFAULT_LIMITS, FORGING, side);
        const trace = traceStack(chain, bars, width, thickness);
        fc.pre(Number.isFinite(trace.length));
        const forward = forgeForwards({
          bars,
          width,
          thickness,
          length: trace.length,
          losses: lossSpec,
          side,
          ...FORGING,
          reduction: DEFAULT_LIMITS.minWeldReduction,
          spread: DEFAULT_LIMITS.weldSpreadShare,
          forgedSurface: HARVEST.forgedSurface,
        });
        expect(relative(forward.forged, chain.forged)).toBeLessThan(1e-11);
        expect(relative(forward.cropped, trace.dressed)).toBeLessThan(1e-11);
        expect(relative(forward.welded, trace.welded)).toBeLessThan(1e-11);
        expect(relative(forward.cleaned, trace.cleaned)).toBeLessThan(1e-11);
      }),
      { seed: SEED },
    );
  });

  test("the spare row is the bars as cut less what the shortest bars hold", () => {
    const chain = makeSteelChain(HARVEST, DEFAULT_LOSSES, DEFAULT_LIMITS, FORGING, "high");
    const { length } = traceStack(chain, 4, 50, 6);
    const cutLength = roundUpToStep(length, 5);
    const ledger = makeLedger(HARVEST, chain, { bars: 4, width: 50, thickness: 6, cutLength });
    expect(ledgerRow(ledger, "spare").volume).toBeCloseTo(4 * 50 * 6 * (cutLength - length), 9);
    expect(cutLength - length).toBeLessThan(5);
  });
});

describe("heat-treatment scale", () => {
  const shop = (changes: Partial<LossSpec>): LossSpec => ({ ...NO_LOSSES, ...changes });

  test("as a fraction it divides", () => {
    const chain = makeSteelChain(
      plainBodies(1000),
      shop({ heatTreatmentScale: exactly(0.2) }),
      NO_LIMITS,
      FORGING,
      "value",
    );
    expect(chain.ready).toBeCloseTo(1250, 9);
    expect(chain.heatTreatmentScale).toBeCloseTo(250, 9);
  });

  test("as a skin it is depth times surface", () => {
    const bodies = { ...plainBodies(1000), readySurface: 600 };
    const lossSpec = shop({
      scaleModel: "skin",
      skinHeatTreatment: exactly(0.05),
      heatTreatmentScale: exactly(0.2),
    });
    const chain = makeSteelChain(bodies, lossSpec, NO_LIMITS, FORGING, "value");
    expect(chain.heatTreatmentScale).toBeCloseTo(30, 9);
  });
});
