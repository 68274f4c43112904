import type { Banded } from "../stock/shop.js";
import type { TaskName } from "./task-names.js";
import type { WaitName } from "./wait-names.js";

/** A starting value with its band, and where it comes from, so that a page can print all of it. */
export interface BandedDefault extends Banded {
  readonly basis: string;
}

const PRACTICE = "common practice, no source";

const banded = ([low, value, high]: readonly [number, number, number], basis = PRACTICE): BandedDefault => ({
  low,
  value,
  high,
  basis,
});

/**
 * Bench hours of one knife: of `weld` for each weld, of `oil` for each coat. A knife of pattern-welded steel, welded once,
 * oiled, with a sheath, drawing and packing not counted, takes about what one maker counted for such a knife: 15.5 h (a
 * maker's page).
 */
export const TASK_HOURS: Readonly<Record<TaskName, BandedDefault>> = {
  design: banded([0.25, 0.5, 1.5]),
  stack: banded([0.25, 0.5, 1]),
  weld: banded([0.75, 1, 2]),
  forge: banded([1.5, 2.5, 4]),
  anneal: banded([0.25, 0.25, 0.5]),
  profile: banded([0.25, 0.5, 1]),
  drill: banded([0.25, 0.5, 1]),
  rough: banded([0.75, 1, 2]),
  harden: banded([0.5, 0.5, 1]),
  temper: banded([0.25, 0.25, 0.5]),
  finish: banded([1, 2, 4]),
  etch: banded([0.5, 1, 2]),
  fit: banded([0.5, 1, 2.5]),
  glue: banded([0.25, 0.5, 0.75]),
  shape: banded([1, 1.5, 3]),
  oil: banded([0.1, 0.1, 0.25]),
  sharpen: banded([0.25, 0.5, 1]),
  sheath: banded([1, 2, 4]),
  pack: banded([0.25, 0.5, 1]),
};

/**
 * Waits, in hours: the least that will do, the usual, and the most. Of `temper` this is the cooling, beside the cycles in the
 * oven.
 */
export const WAIT_HOURS: Readonly<Record<WaitName, BandedDefault>> = {
  reply: banded([0, 0, 0], "none, unless the shop file says how long customers take"),
  delivery: banded([0, 0, 0], "none, unless the shop file says how long materials take"),
  anneal: banded([10, 12, 16], `${PRACTICE}: overnight in an insulating bed`),
  temper: banded([0.5, 1, 2], `${PRACTICE}: cooling, beside the cycles themselves`),
  etch: banded([8, 12, 24], "one maker's account: three cycles of half an hour, then dry overnight"),
  glue: banded(
    [8, 24, 24],
    `a supplier's page (overnight), a forge's page (8 h a side); 24 h before heavy grinding: ${PRACTICE}`,
  ),
  coat: banded([4, 24, 24], "discussions among makers: thin coats, four hours to a day apart"),
  cure: banded(
    [24, 72, 672],
    `${PRACTICE}: some days; discussions among makers: three to four weeks for tung oil`,
  ),
};

/** Coats of oil on a wooden handle. */
export const OIL_COATS = { value: 6, basis: "discussions among makers: 6 to 15 coats" } as const;

/** Chance that the work of a stage fails so that what it was done on has to be made anew; stages not named: none. */
export const SCRAP_SHARES: Readonly<
  Partial<Record<TaskName, { readonly value: number; readonly basis: string }>>
> = {
  weld: { value: 0.03, basis: `${PRACTICE}, a guess: each weld` },
  forge: { value: 0.02, basis: `${PRACTICE}, a guess` },
  harden: { value: 0.04, basis: `${PRACTICE}, a guess: cracks and bends` },
  finish: { value: 0.02, basis: `${PRACTICE}, a guess` },
  shape: { value: 0.02, basis: `${PRACTICE}, a guess` },
};

/** Working days of a shop that says nothing: minutes. */
export const CALENDAR_DEFAULTS = {
  days: ["mon", "tue", "wed", "thu", "fri"],
  fromMinute: 480,
  minutesPerDay: 360,
  basis: `${PRACTICE}: six hours at the bench, the rest goes to letters, cleaning and errands`,
} as const;

/** What may be promised before the forge is lit: how far off the finished knife may be; mm, and a share of the mass. */
export const PROMISE_DEFAULTS = {
  length: { value: 2, basis: PRACTICE },
  height: { value: 1, basis: PRACTICE },
  thickness: { value: 0.2, basis: PRACTICE },
  mass: { value: 0.08, basis: PRACTICE },
  balance: { value: 5, basis: PRACTICE },
} as const;
