import { type LimitEntry, PRACTICE } from "./limit.js";

/** Limits of what is stacked, welded and reached; `limits` in the shop file. */
export const STOCK_LIMITS = {
  maxBars: {
    quantity: "count",
    value: 12,
    about: "Most bars in a stack",
    trips: ["no-bars-fit"],
    basis: PRACTICE,
  },
  minWeldReduction: {
    quantity: "share",
    value: 0.3,
    about: "Least share of its height that a stack loses at welding heat",
    trips: ["no-bars-fit", "weld-reduction-too-small"],
    basis: `${PRACTICE}: 30 % at the least; roll-bonding research agrees that there is a threshold`,
  },
  minBilletLength: {
    quantity: "length",
    value: 75,
    about: "Shortest billet that can be held",
    trips: ["no-bars-fit"],
    basis: PRACTICE,
  },
  maxSlenderness: {
    quantity: "count",
    value: 3,
    about: "Height over thickness at which a piece on edge buckles",
    trips: ["no-bars-fit", "narrowed-on-edge", "on-edge-too-tall", "too-slender"],
    basis:
      "design rules for upset forgings, Forging Industry Association: at most three diameters unsupported in one blow",
  },
  mostNarrowing: {
    quantity: "share",
    value: 0.3,
    about: "Most of its height by which a bar that buckles on edge is drawn narrower there",
    trips: ["no-bars-fit", "too-high"],
    basis: `${PRACTICE}: a thin bar is drawn narrower by a third with care; what is higher is sawn down`,
  },
  reachEasy: {
    quantity: "share",
    value: 0.3,
    about: "Share of the thinning into height that is easy",
    trips: [],
    basis: PRACTICE,
  },
  reachFlatDies: {
    quantity: "share",
    value: 0.6,
    about: "Share of the thinning into height that is the most for flat dies",
    trips: ["reach-only-just", "bar-only-just"],
    basis: PRACTICE,
  },
  reachFullers: {
    quantity: "share",
    value: 0.85,
    about: "Share of the thinning into height that is the most for fullers laid along the bar",
    trips: ["no-bars-fit", "out-of-reach", "bar-out-of-reach"],
    basis: PRACTICE,
  },
} as const satisfies Readonly<Record<string, LimitEntry>>;

/** Limits between billet and forged blade, of oven and tank; `limits.forge`. */
export const FORGE_LIMITS = {
  shoulderRatio: {
    quantity: "count",
    value: 1.5,
    about: "Area before a pass over area after it, at a shoulder, at most",
    trips: ["shoulder-too-abrupt"],
    basis: PRACTICE,
  },
  cornerRadius: {
    quantity: "length",
    value: 1.5,
    about: "Least radius in the corner of a shoulder",
    trips: ["shoulder-corner-sharp"],
    basis: PRACTICE,
  },
  shoulderPasses: {
    quantity: "count",
    value: 8,
    about: "Most passes at one shoulder",
    trips: ["shoulder-too-abrupt"],
    basis: PRACTICE,
  },
  ovenClearance: {
    quantity: "length",
    value: 25,
    about: "Length of oven to leave beyond the hot blade",
    trips: ["longer-than-oven"],
    basis: PRACTICE,
  },
  tankClearance: {
    quantity: "length",
    value: 50,
    about: "Depth of quenchant to leave below the point",
    trips: ["longer-than-tank"],
    basis: PRACTICE,
  },
} as const satisfies Readonly<Record<string, LimitEntry>>;

/** Limits of stacks of two or more steels; `limits.mixed`. */
export const MIXED_LIMITS = {
  coreCentring: {
    quantity: "length",
    value: 0.125,
    about: "How far off the middle a core is expected to lie",
    trips: ["core-near-edge", "core-line-touchy"],
    basis: `${PRACTICE}: a core can be held to the middle within about 5 thousandths of an inch; measure your own blades`,
  },
  minLayerThickness: {
    quantity: "length",
    value: 0.02,
    about: "Thinnest layer that still shows",
    trips: ["layers-too-thin", "layers-thin-at-tip"],
    basis: `${PRACTICE}: thinner layers are no longer told apart`,
  },
  maxGrooveDepth: {
    quantity: "share",
    value: 1 / 3,
    about: "Deepest groove as a share of the bar's thickness",
    trips: ["grooves-deep"],
    basis: "one maker's rule for ladder patterns: a third of the bar's thickness",
  },
} as const satisfies Readonly<Record<string, LimitEntry>>;

/** Limits at the weighing gates; `gates`. */
export const GATE_LIMITS = {
  massRise: {
    quantity: "share",
    value: 0.02,
    about: "How much heavier a piece may be than at an earlier stage before its mass is not used",
    trips: ["mass-rose"],
    basis: "common practice, no source: 2 % covers scale, flux and a shop's balance",
  },
  leastSimilar: {
    quantity: "share",
    value: 0.5,
    about: "The smallest similar knife that is looked for, of the size as drawn",
    trips: [],
    basis: "common practice, no source: a knife of half the size is another knife",
  },
} as const satisfies Readonly<Record<string, LimitEntry>>;
