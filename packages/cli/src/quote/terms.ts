import {
  CALENDAR_DEFAULTS,
  currencyDecimals,
  type JobTimes,
  MINUTES_PER_HOUR,
  OIL_COATS,
  PROMISE_DEFAULTS,
  type PriceTerms,
  type RiskyTask,
  SCRAP_SHARES,
  WAIT_HOURS,
  type WaitName,
  type WorkCalendar,
} from "@scantling/geometry";
import type { GivenWork } from "../file/index.js";
import type { Job } from "../load.js";

/** How far off the finished knife may be by what the shop promises; mm, the mass as a share. */
export type PromiseLimits = Readonly<Record<keyof typeof PROMISE_DEFAULTS, number>>;

/** What a quote is reckoned with: the shop's own figures, the published ones where it gives none. */
export interface QuoteTerms {
  readonly calendar: WorkCalendar;
  readonly times: JobTimes;
  /** Coats of oil on a wooden handle. */
  readonly usualCoats: number;
  /** Left out where the shop says no rate: then there is no price. */
  readonly price?: PriceTerms;
  readonly taxName?: string;
  /** Share of the price without it. */
  readonly taxRate: number;
  readonly depositShare?: number;
  readonly validDays?: number;
  readonly currency?: string;
  readonly decimals: number;
  readonly promise: PromiseLimits;
}

/** The terms of a job: what the knife file says of its own goes before what the shop file says. */
export function quoteTerms({ shop, shopPlaces, knife }: Job): QuoteTerms {
  const work: GivenWork = shopPlaces?.work ?? {};
  const { currency } = shop;
  const decimals = currencyDecimals(currency);
  return {
    calendar: calendarOf(work),
    times: { hours: { ...work.hours, ...knife.quote.hours }, waits: waitsOf(work) },
    usualCoats: work.coats ?? OIL_COATS.value,
    decimals,
    taxRate: work.tax?.rate ?? 0,
    promise: promiseOf(work),
    ...(work.rate === undefined ? {} : { price: { ...priceTermsOf(work), rate: work.rate, decimals } }),
    ...(work.tax === undefined ? {} : { taxName: work.tax.name }),
    ...(work.deposit === undefined ? {} : { depositShare: work.deposit }),
    ...(work.validFor === undefined ? {} : { validDays: work.validFor }),
    ...(currency === undefined ? {} : { currency }),
  };
}

function calendarOf({ days, from, hoursPerDay, daysOff }: GivenWork): WorkCalendar {
  return {
    days: days ?? CALENDAR_DEFAULTS.days,
    fromMinute: from ?? CALENDAR_DEFAULTS.fromMinute,
    minutesPerDay:
      hoursPerDay === undefined
        ? CALENDAR_DEFAULTS.minutesPerDay
        : Math.round(hoursPerDay * MINUTES_PER_HOUR),
    daysOff: daysOff ?? [],
  };
}

/** What the smith does not have in hand: it takes as long as it takes. */
const OF_OTHERS: readonly WaitName[] = ["reply", "delivery"];

/** A wait that is given without a lower limit can still be cut to the published least. */
function waitsOf({ waits = {} }: GivenWork): NonNullable<JobTimes["waits"]> {
  return Object.fromEntries(
    (Object.keys(waits) as WaitName[]).flatMap((name) => {
      const given = waits[name];
      if (given === undefined) return [];
      const isLimit = given.low < given.value || OF_OTHERS.includes(name);
      const low = isLimit ? given.low : Math.min(given.value, WAIT_HOURS[name].low);
      return [[name, { ...given, low }] as const];
    }),
  );
}

function priceTermsOf(work: GivenWork): Omit<PriceTerms, "rate" | "decimals"> {
  const published = Object.entries(SCRAP_SHARES).map(([task, { value }]) => [task, value] as const);
  const scrap: Partial<Record<RiskyTask, number>> = { ...Object.fromEntries(published), ...work.scrap };
  return {
    overhead: work.overhead ?? 0,
    profit: work.profit ?? 0,
    waste: work.waste ?? 0,
    consumables: work.consumables ?? 0,
    scrap,
    taxRate: work.tax?.rate ?? 0,
  };
}

function promiseOf({ promise = {} }: GivenWork): PromiseLimits {
  return {
    length: promise.length ?? PROMISE_DEFAULTS.length.value,
    height: promise.height ?? PROMISE_DEFAULTS.height.value,
    thickness: promise.thickness ?? PROMISE_DEFAULTS.thickness.value,
    mass: promise.mass ?? PROMISE_DEFAULTS.mass.value,
    balance: promise.balance ?? PROMISE_DEFAULTS.balance.value,
  };
}
