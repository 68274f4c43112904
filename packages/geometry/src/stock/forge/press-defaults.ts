import type { GivenLimits } from "../../limits/finding-limits.js";
import { type DefaultNumber, PRACTICE } from "../../limits/limit.js";
import type { PressSpec } from "../shop.js";
import type { StopSet } from "./stop-blocks.js";

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
  stopOffset: {
    quantity: "length",
    value: 0,
    basis: "nothing learned yet: measure a piece cold, and reckon its hot height",
  },
  maxReduction: {
    quantity: "share",
    value: 0.2,
    basis: `${PRACTICE}: within the textbook squeeze ratio of 1.3`,
  },
} as const satisfies Record<string, DefaultNumber>;

/** How the shop presses: its own figures, with {@link PRESS_DEFAULTS} where it gives none. */
export interface PressWork {
  /** Of the steel at the last squeeze, °C. */
  readonly temperature: number;
  /** How much thicker than its stop a piece is while it is hot, mm; below nothing where thinner. */
  readonly stopOffset: number;
  /** The most that one pass takes, as a share of the height before it. */
  readonly maxReduction: number;
  /** Left out where the shop names no stop block. */
  readonly stops?: StopSet;
  /** Limits that the shop sets itself; left out: the published ones. */
  readonly given?: GivenLimits;
}

/** How a shop that owns stop blocks presses. */
export type StopWork = PressWork & { readonly stops: StopSet };

/**
 * How a shop presses, from its own figures and the defaults.
 *
 * @example
 * pressWork({ stopBlocks: [6, 12], shims: [0.5] }).temperature; // 950
 */
export function pressWork(press: PressSpec, given?: GivenLimits): PressWork {
  const { temperature, stopOffset, maxReduction, stopBlocks, shims = [] } = press;
  return {
    temperature: temperature ?? PRESS_DEFAULTS.temperature.value,
    stopOffset: stopOffset ?? PRESS_DEFAULTS.stopOffset.value,
    maxReduction: maxReduction ?? PRESS_DEFAULTS.maxReduction.value,
    ...(stopBlocks === undefined || stopBlocks.length === 0 ? {} : { stops: { blocks: stopBlocks, shims } }),
    ...(given === undefined ? {} : { given }),
  };
}

/**
 * How a shop presses a weld: the same, at welding heat.
 *
 * @example
 * weldWork({ weldingTemperature: 1180 }).temperature; // 1180
 */
export function weldWork(press: PressSpec, given?: GivenLimits): PressWork {
  return {
    ...pressWork(press, given),
    temperature: press.weldingTemperature ?? PRESS_DEFAULTS.weldingTemperature.value,
  };
}
