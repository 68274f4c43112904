import { type LimitEntry, PRACTICE } from "./limit.js";

/** Limits of what is set at the bench. */
export const BENCH_LIMITS = {
  wheelRoom: {
    quantity: "count",
    value: 1,
    about: "Wheel over the smallest that leaves the blade nowhere thinner than its edge, at least; 1 or more",
    trips: ["wheel-too-small"],
    basis: "geometry: the arc must not dip below the edge, R = c²/(t − e)",
  },
  crownShare: {
    quantity: "share",
    value: 1,
    about: "Most of the crown whose arc is level at the bevel line",
    trips: ["crown-too-large"],
    basis: "geometry: the arc that is level at the bevel line",
  },
  handleSpare: {
    quantity: "length",
    value: 0,
    about: "What a piece on the shelf is to be larger than the blank of the handle, each way",
    trips: ["handle-stock-small"],
    basis: "the pieces of the shop file; the blank as it is sawn",
  },
  kitchenWedge: {
    quantity: "length",
    value: 0.46,
    about: "Greatest thickness of a kitchen knife 1 mm above its edge, at the heel",
    trips: ["thick-above-edge"],
    basis: "0.46 mm 1 mm above the edge, after ISO 8442-9:2018 for ceramic kitchen knives",
  },
  droop: {
    quantity: "share",
    value: 0.8,
    about: "Least share of its drawn height to which a bevel at one fixed angle comes",
    trips: ["bevel-line-droops"],
    basis: PRACTICE,
  },
  gaugeBulge: {
    quantity: "length",
    value: 0.8,
    about: "Bulge of an arc over its chord below which its gauge cannot be cut: scissors do not follow it",
    trips: [],
    basis: PRACTICE,
  },
  pinPlay: {
    quantity: "length",
    value: 0.15,
    about: "Most play of a pin in its hole through the handle, diameter over diameter",
    trips: ["pin-loose"],
    basis: PRACTICE,
  },
  kitchenEdgeWidth: {
    quantity: "length",
    value: 1.5,
    about: "Widest sharpening bevel of a kitchen knife, at the heel",
    trips: ["edge-bevel-wide"],
    basis: PRACTICE,
  },
  edgeWidth: {
    quantity: "length",
    value: 2.5,
    about: "Widest sharpening bevel of a knife not for a kitchen, at the heel",
    trips: ["edge-bevel-wide"],
    basis: PRACTICE,
  },
  oilPerKilogram: {
    quantity: "count",
    value: 8.3,
    about: "Quench oil for a kilogram of blade, litres",
    trips: ["little-oil"],
    basis: "about a US gallon to the pound: from memory, unconfirmed",
  },
} as const satisfies Readonly<Record<string, LimitEntry>>;
