import { type LimitEntry, PRACTICE } from "./limit.js";

/** Limits of bars, stacks and what is weighed on the way that have no place of their own in the shop file. */
export const STEEL_LIMITS = {
  targetWeldReduction: {
    quantity: "share",
    value: 0.5,
    about: "Share of its height that a stack is wanted to lose while it is welded and forged",
    trips: ["weld-reduction-low"],
    basis: "one experienced maker: at least half the thickness at welding heat",
  },
  freeNarrowing: {
    quantity: "share",
    value: 0.1,
    about: "Share of its height that comes off a bar in light blows on edge however thin it is",
    trips: ["narrowed-on-edge", "on-edge-tall", "on-edge-too-tall"],
    basis: `${PRACTICE}: a tenth of a bar's width comes off in light edge blows however thin the bar is`,
  },
  tightHeight: {
    quantity: "share",
    value: 0.03,
    about: "Room that the reachable height is to leave over the height that is needed",
    trips: ["reach-only-just"],
    basis: `${PRACTICE}: reachable height within 3 % of what is needed`,
  },
  hardeningGap: {
    quantity: "count",
    value: 20,
    about: "How far apart the hardening ranges of two steels may lie, K",
    trips: ["hardening-apart"],
    basis: `${PRACTICE}: an oven holds about that either way`,
  },
  densityDifference: {
    quantity: "share",
    value: 0.005,
    about: "How far the stack's mean density may be from the knife's",
    trips: ["stack-density"],
    basis: `${PRACTICE}: less is lost in the band of the weight`,
  },
  handlingWeld: {
    quantity: "length",
    value: 8,
    about: "Least crop of the end that a handling bar was welded to",
    trips: ["handling-weld-left-in"],
    basis: PRACTICE,
  },
  readingSlip: {
    quantity: "count",
    value: 2,
    about: "How many times too thick, or too thin, a caliper reading has to be to be thought a slip",
    trips: ["reading-questioned", "reading-slip"],
    basis: "common practice, no source: no forging comes out twice or half as thick as meant",
  },
  massSlip: {
    quantity: "count",
    value: 5,
    about: "How many times too heavy, or too light, a mass has to be to be thought a slip of the unit",
    trips: ["mass-unit-slip"],
    basis: "what the stage needs; a mass five times off is no loss",
  },
} as const satisfies Readonly<Record<string, LimitEntry>>;
