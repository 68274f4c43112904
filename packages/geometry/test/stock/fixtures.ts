import type { ForgedStation, LedgerBodies } from "../../src/stock/blade-states.js";
import { DEFAULT_SHOP } from "../../src/stock/defaults.js";
import type { Banded, LossSpec, RackBar, ShopSpec, StockLimits } from "../../src/stock/shop.js";

export const exactly = (value: number): Banded => ({ value, low: value, high: value });

/** A shop that loses nothing unless told otherwise. */
export const NO_LOSSES: LossSpec = {
  scaleModel: "fraction",
  scalePerHeat: exactly(0),
  scalePerWeldingHeat: exactly(0),
  skinPerHeat: exactly(0),
  skinPerWeldingHeat: exactly(0),
  heatTreatmentScale: exactly(0),
  skinHeatTreatment: exactly(0),
  cropPerEnd: exactly(0),
  weldDressingPerSide: exactly(0),
  cleaningPerFace: exactly(0),
};

/** Limits that refuse nothing that can be computed. */
export const NO_LIMITS: StockLimits = {
  maxBars: 12,
  minWeldReduction: 0,
  weldSpreadShare: 0,
  minBilletLength: 0,
  maxSlenderness: 1e9,
  mostNarrowing: 0.999,
  reach: { easy: 0.3, flatDies: 0.6, fullers: 1 },
};

/** A forged blade of the given volume with nothing ground off: one section all along, low and thin by default. */
export function plainBodies(
  forged: number,
  stations: readonly ForgedStation[] = [{ x: 0, height: 1, area: 1 }],
): LedgerBodies {
  return {
    density: 0.00785,
    finished: forged,
    readySurface: 0,
    sharpening: 0,
    finishGrinding: 0,
    drilling: 0,
    bevelGrinding: 0,
    tangGrinding: 0,
    faceGrinding: 0,
    profileTrimming: 0,
    forgedSurface: 0,
    stations,
  };
}

/** An invented tall harvest knife, roughly as forged: volumes mm³. */
export const HARVEST: LedgerBodies = {
  density: 0.00785,
  finished: 62_000,
  readySurface: 47_000,
  sharpening: 160,
  finishGrinding: 4_700,
  drilling: 140,
  bevelGrinding: 6_900,
  tangGrinding: 0,
  faceGrinding: 23_500,
  profileTrimming: 5_300,
  forgedSurface: 56_000,
  stations: [
    { x: -138, height: 33, area: 110, thickness: 3.6 },
    { x: -10, height: 31, area: 180, thickness: 5.8 },
    { x: 0, height: 95, area: 440, thickness: 5.8 },
    { x: 135, height: 95, area: 360, thickness: 4.8 },
    { x: 225, height: 83, area: 230, thickness: 3.4 },
  ],
};

/** An invented rack of inch and metric flats. */
export const RACK: readonly RackBar[] = [
  { name: "1/4 x 1 1/2", width: 38.1, thickness: 6.35, length: 900, pricePerKg: 9 },
  { name: "1/4 x 2", width: 50.8, thickness: 6.35, length: 600, count: 2, pricePerKg: 9.5 },
  { name: "40 x 8", width: 40, thickness: 8, length: 1000, pricePerKg: 8 },
  { name: "50 x 6", width: 50, thickness: 6, pricePerKg: 8.5 },
  { name: "60 x 9", width: 60, thickness: 9, length: 300, pricePerKg: 12 },
  { name: "25 x 5", width: 25, thickness: 5, pricePerKg: 7 },
];

export const shopWith = (changes: Partial<ShopSpec>): ShopSpec => ({
  ...DEFAULT_SHOP,
  rack: RACK,
  ...changes,
});
