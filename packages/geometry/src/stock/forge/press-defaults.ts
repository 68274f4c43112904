import type { DefaultNumber } from "../defaults.js";
import type { PressSpec } from "../shop.js";
import type { StopSet } from "./stop-blocks.js";

const PRACTICE = "common practice, no source";
const TEXTBOOK = "forging textbooks, from memory, unconfirmed";

/** What is taken of press work where the shop says nothing, and what it is held against; each with its basis. */
export const PRESS_DEFAULTS = {
  temperature: {
    quantity: "temperature",
    value: 950,
    basis: `${PRACTICE}: steel at the last squeeze of a heat`,
  },
  weldingTemperature: {
    quantity: "temperature",
    value: 1150,
    basis: `${PRACTICE}: carbon steel at the last squeeze of a forge weld`,
  },
  stopOffset: { quantity: "length", value: 0, basis: "nothing learned yet: measure the piece cold" },
  maxReduction: {
    quantity: "share",
    value: 0.2,
    basis: `${PRACTICE}: within the textbook squeeze ratio of 1.3`,
  },
  deepestReduction: {
    quantity: "share",
    value: 1 - 1 / 1.3,
    basis: `${TEXTBOOK}: height before over height after at most 1.3, or laps form`,
  },
  passSlack: {
    quantity: "share",
    value: 0.01,
    basis: `${PRACTICE}: what a pass may exceed its limit by for a stop`,
  },
  stopError: { quantity: "length", value: 0.1, basis: `${PRACTICE}: less than is ground off a face` },
  stopFar: {
    quantity: "length",
    value: 0.5,
    basis: `${PRACTICE}: more than is ground off both faces; such a stop is not offered`,
  },
  weldBeyond: {
    quantity: "share",
    value: 0.05,
    basis: `${PRACTICE}: what a stop may squeeze a weld beyond its least; the billet gets lower than planned`,
  },
  coolestForging: {
    quantity: "temperature",
    value: 750,
    basis: `${PRACTICE}: colder carbon steel hardly moves and cracks`,
  },
  coolestWelding: {
    quantity: "temperature",
    value: 1000,
    basis: `${PRACTICE}: clean joints of carbon steel take no weld when colder`,
  },
  stopUnder: { quantity: "length", value: 0.01, basis: "what stops and shims are reckoned to" },
  easyOnEdge: {
    quantity: "count",
    value: 2.5,
    basis: `${TEXTBOOK}: width at most two and a half times the thickness on edge`,
  },
  leastBite: {
    quantity: "share",
    value: 1 / 3,
    basis: `${TEXTBOOK}: bite at least a third of the height, or the middle is not worked`,
  },
} as const satisfies Record<string, DefaultNumber>;

/** How the shop presses: its own figures, with {@link PRESS_DEFAULTS} where it gives none. */
export interface PressWork {
  /** Of the steel at the last squeeze, °C. */
  readonly temperature: number;
  /** What a cold piece comes out thicker by than the stop says, mm; below nothing where thinner. */
  readonly stopOffset: number;
  /** The most that one pass takes, as a share of the height before it. */
  readonly maxReduction: number;
  /** Left out where the shop names no stop block. */
  readonly stops?: StopSet;
}

/** How a shop that owns stop blocks presses. */
export type StopWork = PressWork & { readonly stops: StopSet };

/**
 * How a shop presses, from its own figures and the defaults.
 *
 * @example
 * pressWork({ stopBlocks: [6, 12], shims: [0.5] }).temperature; // 950
 */
export function pressWork(press: PressSpec): PressWork {
  const { temperature, stopOffset, maxReduction, stopBlocks, shims = [] } = press;
  return {
    temperature: temperature ?? PRESS_DEFAULTS.temperature.value,
    stopOffset: stopOffset ?? PRESS_DEFAULTS.stopOffset.value,
    maxReduction: maxReduction ?? PRESS_DEFAULTS.maxReduction.value,
    ...(stopBlocks === undefined || stopBlocks.length === 0 ? {} : { stops: { blocks: stopBlocks, shims } }),
  };
}

/**
 * How a shop presses a weld: the same, at welding heat.
 *
 * @example
 * weldWork({ weldingTemperature: 1180 }).temperature; // 1180
 */
export function weldWork(press: PressSpec): PressWork {
  return {
    ...pressWork(press),
    temperature: press.weldingTemperature ?? PRESS_DEFAULTS.weldingTemperature.value,
  };
}
