import { type LimitEntry, PRACTICE, TEXTBOOK } from "./limit.js";

/** Limits of what is pressed and squeezed. */
export const PRESS_LIMITS = {
  deepestReduction: {
    quantity: "share",
    value: 1 - 1 / 1.3,
    about: "Share of its height from which on one pass laps the steel",
    trips: ["pass-limit-deep"],
    basis: `${TEXTBOOK}: height before over height after at most 1.3, or laps form`,
  },
  passSlack: {
    quantity: "share",
    value: 0.01,
    about: "What a pass may take over the press's maxReduction for the sake of a stop",
    trips: ["pass-over-limit"],
    basis: `${PRACTICE}: what a pass may exceed its limit by for a stop`,
  },
  stopError: {
    quantity: "length",
    value: 0.1,
    about: "How far off the last stop may be",
    trips: ["stop-far-off", "taper-stop-far-off"],
    basis: `${PRACTICE}: less than is ground off a face`,
  },
  stopFar: {
    quantity: "length",
    value: 0.5,
    about: "Stops that are farther off are not offered",
    trips: ["no-stop-near", "taper-stop-far-off"],
    basis: `${PRACTICE}: more than is ground off both faces; such a stop is not offered`,
  },
  weldBeyond: {
    quantity: "share",
    value: 0.05,
    about: "What a stop may squeeze a weld beyond its least",
    trips: ["no-stop-near"],
    basis: `${PRACTICE}: what a stop may squeeze a weld beyond its least; the billet gets lower than planned`,
  },
  coolestForging: {
    quantity: "temperature",
    value: 750,
    about: "Coolest steel at the last squeeze of a forging heat",
    trips: ["forging-heat-low"],
    basis: `${PRACTICE}: colder carbon steel hardly moves and cracks`,
  },
  coolestWelding: {
    quantity: "temperature",
    value: 1000,
    about: "Coolest steel at the last squeeze of a weld",
    trips: ["welding-heat-low"],
    basis: `${PRACTICE}: clean joints of carbon steel take no weld when colder`,
  },
  stopUnder: {
    quantity: "length",
    value: 0.01,
    about: "How far a stop may be under the hot height before it is told",
    trips: ["stop-under-hot-height"],
    basis: "what stops and shims are reckoned to",
  },
  easyOnEdge: {
    quantity: "count",
    value: 2.5,
    about: "Height over thickness that goes easily on edge",
    trips: ["on-edge-tall"],
    basis: `${TEXTBOOK}: width at most two and a half times the thickness on edge`,
  },
  leastBite: {
    quantity: "share",
    value: 1 / 3,
    about: "Least bite of a die, of the height of the piece",
    trips: ["bite-too-short"],
    basis: `${TEXTBOOK}: bite at least a third of the height, or the middle is not worked`,
  },
} as const satisfies Readonly<Record<string, LimitEntry>>;
