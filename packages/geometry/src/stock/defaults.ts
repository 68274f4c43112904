import { withDefaultForging } from "../blade/defaults.js";
import type { ForgingSpec } from "../blade/spec.js";
import type { Quantity } from "../errors/issue.js";
import { type DefaultNumber, PRACTICE } from "../limits/limit.js";
import { STOCK_LIMITS } from "../limits/shop-limits.js";
import type { Banded, LossSpec, PressSpec, ShopSpec, StockLimits } from "./shop.js";

const loss = (quantity: Quantity, [low, value, high]: readonly [number, number, number], basis: string) => ({
  quantity,
  value,
  low,
  high,
  basis,
});

/** Losses between the bars and the finished blade. Every one is a starting value: the shop's own records replace it. */
export const LOSS_DEFAULTS = {
  scalePerHeat: loss(
    "share",
    [0.006, 0.012, 0.02],
    `${PRACTICE}: 0.3 to 0.6 % of a thick billet, 1 to 2 % of a 6 mm preform each heat; forging texts give 1 to 3 % a reheat`,
  ),
  scalePerWeldingHeat: loss(
    "share",
    [0.008, 0.015, 0.03],
    `${PRACTICE}: 5 to 10 % from first weld to finished billet, grinding included, over three heats`,
  ),
  skinPerHeat: loss("length", [0.02, 0.04, 0.08], `${PRACTICE}: a guess to be calibrated by weighing`),
  skinPerWeldingHeat: loss("length", [0.05, 0.1, 0.2], `${PRACTICE}: a guess to be calibrated by weighing`),
  heatTreatmentScale: loss("share", [0.002, 0.005, 0.01], PRACTICE),
  skinHeatTreatment: loss("length", [0.004, 0.01, 0.03], PRACTICE),
  cropPerEnd: loss("length", [5, 8, 12], `${PRACTICE}: 5 to 12 mm per end of a welded billet`),
  weldDressingPerSide: loss("length", [1, 1.5, 2], `${PRACTICE}: weld bead 1 to 2 mm per side`),
  cleaningPerFace: loss("length", [0.1, 0.2, 0.25], `${PRACTICE}: 0.1 to 0.25 mm per face, to bright metal`),
} as const satisfies Record<string, DefaultNumber>;

/** Limits of what can be stacked, welded and forged, and how a stack spreads. */
export const LIMIT_DEFAULTS = {
  ...STOCK_LIMITS,
  weldSpreadShare: {
    quantity: "share",
    value: 0.3,
    basis: "spread on flat dies with a bite of half the width, from memory, unconfirmed",
  },
} as const satisfies Record<string, DefaultNumber>;

/** The saw. */
export const SAW_DEFAULTS = {
  cutStep: { quantity: "length", value: 5, basis: PRACTICE },
  kerf: { quantity: "length", value: 1.5, basis: PRACTICE },
} as const satisfies Record<string, DefaultNumber>;

const banded = ({ value, low, high }: { value: number; low: number; high: number }): Banded => ({
  value,
  low,
  high,
});

/** Losses where the shop gives none, each with its band and its basis. */
export const DEFAULT_LOSSES: LossSpec = {
  scaleModel: "fraction",
  scalePerHeat: banded(LOSS_DEFAULTS.scalePerHeat),
  scalePerWeldingHeat: banded(LOSS_DEFAULTS.scalePerWeldingHeat),
  skinPerHeat: banded(LOSS_DEFAULTS.skinPerHeat),
  skinPerWeldingHeat: banded(LOSS_DEFAULTS.skinPerWeldingHeat),
  heatTreatmentScale: banded(LOSS_DEFAULTS.heatTreatmentScale),
  skinHeatTreatment: banded(LOSS_DEFAULTS.skinHeatTreatment),
  cropPerEnd: banded(LOSS_DEFAULTS.cropPerEnd),
  weldDressingPerSide: banded(LOSS_DEFAULTS.weldDressingPerSide),
  cleaningPerFace: banded(LOSS_DEFAULTS.cleaningPerFace),
};

/** Limits where the shop gives none, each with its basis. */
export const DEFAULT_LIMITS: StockLimits = {
  maxBars: LIMIT_DEFAULTS.maxBars.value,
  minWeldReduction: LIMIT_DEFAULTS.minWeldReduction.value,
  weldSpreadShare: LIMIT_DEFAULTS.weldSpreadShare.value,
  minBilletLength: LIMIT_DEFAULTS.minBilletLength.value,
  maxSlenderness: LIMIT_DEFAULTS.maxSlenderness.value,
  mostNarrowing: LIMIT_DEFAULTS.mostNarrowing.value,
  reach: {
    easy: LIMIT_DEFAULTS.reachEasy.value,
    flatDies: LIMIT_DEFAULTS.reachFlatDies.value,
    fullers: LIMIT_DEFAULTS.reachFullers.value,
  },
};

/** Heats of a forging of which the knife file says nothing. */
export const DEFAULT_FORGING: ForgingSpec = withDefaultForging();

/** No limit from the press or the forge unless the shop file names one. */
export const DEFAULT_PRESS: PressSpec = {};

/** A shop of which nothing is known but what the defaults say: an empty rack. */
export const DEFAULT_SHOP: ShopSpec = {
  rack: [],
  losses: DEFAULT_LOSSES,
  press: DEFAULT_PRESS,
  limits: DEFAULT_LIMITS,
  cutStep: SAW_DEFAULTS.cutStep.value,
  kerf: SAW_DEFAULTS.kerf.value,
};
