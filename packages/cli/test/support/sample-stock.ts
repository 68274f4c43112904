import {
  DEFAULT_FORGING,
  DEFAULT_SHOP,
  type LedgerBodies,
  planStock,
  type ShopSpec,
} from "@scantling/geometry";
import type { Bars } from "../../src/stock-report.js";

/** About the steel of a tall kitchen blade, in round numbers, mm. */
const SAMPLE_BODIES: LedgerBodies = {
  density: 0.00785,
  finished: 60_000,
  readySurface: 45_000,
  sharpening: 60,
  finishGrinding: 2_000,
  drilling: 150,
  bevelGrinding: 3_000,
  tangGrinding: 0,
  faceGrinding: 12_000,
  profileTrimming: 6_000,
  forgedSurface: 50_000,
  stations: [
    { x: -130, height: 33, area: 110 },
    { x: 0, height: 95, area: 430 },
    { x: 120, height: 95, area: 360 },
    { x: 225, height: 83, area: 260 },
  ],
};

export const SAMPLE_SHOP: ShopSpec = {
  ...DEFAULT_SHOP,
  currency: "EUR",
  rack: [
    { name: "1/4 x 1 1/2 in", width: 38.1, thickness: 6.35, length: 1219.2, count: 2, pricePerKg: 8.6 },
    { name: "6 x 40 mm", width: 40, thickness: 6, length: 1000, count: 2, pricePerKg: 8.7 },
    { name: "3 x 30 mm", width: 30, thickness: 3 },
  ],
};

export const SAMPLE_STOCK: Bars = {
  ...planStock(SAMPLE_BODIES, SAMPLE_SHOP, DEFAULT_FORGING),
  forgedMass: 656,
};
