import type { LearningShop } from "../../src/learning/learn-figure.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../src/stock/defaults.js";
import type { ScaleModel } from "../../src/stock/shop.js";

/** A shop that reckons with the published defaults. */
export const present = (scaleModel: ScaleModel = "fraction"): LearningShop => ({
  shop: { losses: { ...DEFAULT_LOSSES, scaleModel }, limits: DEFAULT_LIMITS },
  allowances: { face: 0.5, afterHardening: 0.1 },
  hours: { forge: { value: 3, low: 3, high: 3 } },
});
