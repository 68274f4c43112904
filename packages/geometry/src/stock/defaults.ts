import type { AllowanceSpec, ForgingSpec } from "../blade/spec.js";
import type { Quantity } from "../errors/issue.js";
import type { Banded, LossSpec, PressSpec, ShopSpec, StockLimits } from "./shop.js";

/** One default: its value, its band where it is a loss, and where it comes from, so that a report can print all three. */
export interface DefaultNumber {
  readonly quantity: Quantity;
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
  readonly basis: string;
}

const PRACTICE = "common practice, no source";

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

/** Limits of what can be stacked, welded and forged. */
export const LIMIT_DEFAULTS = {
  maxBars: { quantity: "count", value: 12, basis: PRACTICE },
  minWeldReduction: {
    quantity: "share",
    value: 0.3,
    basis: `${PRACTICE}: 30 % at the least; roll-bonding research agrees that there is a threshold`,
  },
  targetWeldReduction: {
    quantity: "share",
    value: 0.5,
    basis: "one experienced maker: at least half the thickness at welding heat",
  },
  weldSpreadShare: {
    quantity: "share",
    value: 0.3,
    basis: "spread on flat dies with a bite of half the width, from memory, unconfirmed",
  },
  minBilletLength: { quantity: "length", value: 75, basis: PRACTICE },
  maxSlenderness: {
    quantity: "count",
    value: 3,
    basis:
      "design rules for upset forgings, Forging Industry Association: at most three diameters unsupported in one blow",
  },
  freeNarrowing: {
    quantity: "share",
    value: 0.1,
    basis: `${PRACTICE}: a tenth of a bar's width comes off in light edge blows however thin the bar is`,
  },
  reachEasy: { quantity: "share", value: 0.3, basis: PRACTICE },
  reachFlatDies: { quantity: "share", value: 0.6, basis: PRACTICE },
  reachFullers: { quantity: "share", value: 0.85, basis: PRACTICE },
  tightHeight: {
    quantity: "share",
    value: 0.03,
    basis: `${PRACTICE}: reachable height within 3 % of what is needed`,
  },
} as const satisfies Record<string, DefaultNumber>;

/** Saw, and heats where the knife file names none. */
export const WORK_DEFAULTS = {
  cutStep: { quantity: "length", value: 5, basis: PRACTICE },
  kerf: { quantity: "length", value: 1.5, basis: PRACTICE },
  heats: { quantity: "count", value: 9, basis: PRACTICE },
  weldingHeats: { quantity: "count", value: 3, basis: PRACTICE },
} as const satisfies Record<string, DefaultNumber>;

/** What is still on the steel at earlier stages. */
export const ALLOWANCE_DEFAULTS = {
  face: {
    quantity: "length",
    value: 0.5,
    basis: `${PRACTICE}: 0.4 to 0.8 mm per face; published figures reach 1.6`,
  },
  outline: { quantity: "length", value: 1.5, basis: `${PRACTICE}: 1 to 2 mm all round` },
  tip: { quantity: "length", value: 3, basis: `${PRACTICE}: 3 to 6 mm` },
  butt: { quantity: "length", value: 3, basis: `${PRACTICE}: 3 to 10 mm` },
  forgedEdge: { quantity: "length", value: 1.6, basis: `${PRACTICE}: 1.5 to 2 mm, about 1/16 in` },
  afterHardening: { quantity: "length", value: 0.1, basis: `${PRACTICE}: 0.10 to 0.25 mm per face` },
  minEdge: { quantity: "length", value: 0.6, basis: `${PRACTICE}: 0.5 to 1 mm before hardening` },
} as const satisfies Record<string, DefaultNumber>;

/** Choices that are words. */
export const ALLOWANCE_CHOICES = {
  forgedBevel: { value: "line", basis: `${PRACTICE}: bevels hammered in up to the bevel line` },
  tang: { value: "tapered", basis: `${PRACTICE}: a tapered tang is forged tapered` },
} as const satisfies Record<string, { value: string; basis: string }>;

const banded = ({ value, low, high }: { value: number; low: number; high: number }): Banded => ({
  value,
  low,
  high,
});

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

export const DEFAULT_LIMITS: StockLimits = {
  maxBars: LIMIT_DEFAULTS.maxBars.value,
  minWeldReduction: LIMIT_DEFAULTS.minWeldReduction.value,
  weldSpreadShare: LIMIT_DEFAULTS.weldSpreadShare.value,
  minBilletLength: LIMIT_DEFAULTS.minBilletLength.value,
  maxSlenderness: LIMIT_DEFAULTS.maxSlenderness.value,
  reach: {
    easy: LIMIT_DEFAULTS.reachEasy.value,
    flatDies: LIMIT_DEFAULTS.reachFlatDies.value,
    fullers: LIMIT_DEFAULTS.reachFullers.value,
  },
};

export const DEFAULT_FORGING: ForgingSpec = {
  heats: WORK_DEFAULTS.heats.value,
  weldingHeats: WORK_DEFAULTS.weldingHeats.value,
};

export const DEFAULT_ALLOWANCES: AllowanceSpec = {
  face: ALLOWANCE_DEFAULTS.face.value,
  outline: ALLOWANCE_DEFAULTS.outline.value,
  tip: ALLOWANCE_DEFAULTS.tip.value,
  butt: ALLOWANCE_DEFAULTS.butt.value,
  forgedEdge: ALLOWANCE_DEFAULTS.forgedEdge.value,
  forgedBevel: ALLOWANCE_CHOICES.forgedBevel.value,
  afterHardening: ALLOWANCE_DEFAULTS.afterHardening.value,
  minEdge: ALLOWANCE_DEFAULTS.minEdge.value,
  tang: ALLOWANCE_CHOICES.tang.value,
};

/** No limit from the press or the forge unless the shop file names one. */
export const DEFAULT_PRESS: PressSpec = {};

/** A shop of which nothing is known but what the defaults say: an empty rack. */
export const DEFAULT_SHOP: ShopSpec = {
  rack: [],
  losses: DEFAULT_LOSSES,
  press: DEFAULT_PRESS,
  limits: DEFAULT_LIMITS,
  cutStep: WORK_DEFAULTS.cutStep.value,
  kerf: WORK_DEFAULTS.kerf.value,
};
