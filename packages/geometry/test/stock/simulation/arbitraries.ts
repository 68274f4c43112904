// Random shops and racks for the forward simulation, with bands on every loss, and bodies of random knives.
import fc from "fast-check";
import { ledgerBodies } from "../../../src/blade/ledger-bodies.js";
import type { LedgerBodies } from "../../../src/stock/blade-states.js";
import { DEFAULT_LIMITS } from "../../../src/stock/defaults.js";
import type { Banded, LossSpec, RackBar, ShopSpec } from "../../../src/stock/shop.js";
import { randomKnives } from "../../blade/random-knives.js";
import { HARVEST, shopWith } from "../fixtures.js";

export const SEED = 20261125;

export const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

export const band = (max: number): fc.Arbitrary<Banded> =>
  fc
    .tuple(number(0, max), number(0, max), number(0, max))
    .map((numbers) => numbers.sort((a, b) => a - b))
    .map(([low = 0, value = 0, high = 0]) => ({ low, value, high }));

export const losses: fc.Arbitrary<LossSpec> = fc.record({
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

export const forging = fc.record({
  heats: fc.integer({ min: 0, max: 14 }),
  weldingHeats: fc.integer({ min: 0, max: 6 }),
});

const bar: fc.Arbitrary<RackBar> = fc
  .record(
    {
      name: fc.constant("bar"),
      width: fc.integer({ min: 20, max: 80 }),
      thickness: fc.integer({ min: 3, max: 14 }),
      length: fc.integer({ min: 150, max: 1500 }),
      count: fc.integer({ min: 1, max: 4 }),
      pricePerKg: fc.integer({ min: 4, max: 20 }),
    },
    { requiredKeys: ["name", "width", "thickness"] },
  )
  .map(({ count, ...rest }) =>
    count === undefined || rest.length === undefined ? rest : { ...rest, count },
  );

export const shop: fc.Arbitrary<ShopSpec> = fc
  .record({
    rack: fc.array(bar, { minLength: 1, maxLength: 6 }),
    losses,
    opening: fc.option(number(30, 120), { nil: undefined }),
    forgeLength: fc.option(number(150, 500), { nil: undefined }),
    minWeldReduction: number(0, 0.5),
    weldSpreadShare: number(0, 0.6),
    minBilletLength: number(0, 120),
    cutStep: fc.constantFrom(1, 2.5, 5, 6.35, 10),
    kerf: number(0, 3),
  })
  .map(({ rack, losses: lossSpec, opening, forgeLength, cutStep, kerf, ...limits }) =>
    shopWith({
      rack,
      losses: lossSpec,
      press: {
        ...(opening === undefined ? {} : { opening }),
        ...(forgeLength === undefined ? {} : { forgeLength }),
      },
      limits: { ...DEFAULT_LIMITS, ...limits },
      cutStep,
      kerf,
    }),
  );

const measured = randomKnives(12, 404).map(({ knife }) => ledgerBodies(knife));

/** Measured random knives, and invented bodies of any size. */
export const bodies: fc.Arbitrary<LedgerBodies> = fc.oneof(
  fc.constantFrom(...measured),
  fc.record({ size: number(0.3, 1.3), tall: number(0.4, 1.1) }).map(({ size, tall }) => ({
    ...HARVEST,
    finished: HARVEST.finished * size,
    faceGrinding: HARVEST.faceGrinding * size,
    bevelGrinding: HARVEST.bevelGrinding * size,
    profileTrimming: HARVEST.profileTrimming * size,
    forgedSurface: HARVEST.forgedSurface * size,
    stations: HARVEST.stations.map((station) => ({
      ...station,
      height: station.height * tall,
      area: station.area * tall,
    })),
  })),
);
