import {
  type AskedPrice,
  askedPrice,
  checkPromise,
  expectedHardness,
  type Finding,
  type JobFacts,
  type JobPrice,
  type JobSchedule,
  type JobTask,
  jobFacts,
  jobTasks,
  lastDayOf,
  MINUTES_PER_DAY,
  type PriceExtras,
  type PromiseCheck,
  priceJob,
  type StockPlan,
  scheduleJob,
  stackBars,
  toMinor,
} from "@scantling/geometry";
import type { OrderConflicts } from "../conflict/ask-conflict.js";
import { orderConflicts } from "../conflict/order-conflicts.js";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Measured } from "../measure.js";
import type { Bars } from "../stock-report.js";
import { jobMaterials } from "./job-materials.js";
import { quoteFindings } from "./quote-findings.js";
import { type QuoteTerms, quoteTerms } from "./terms.js";

/** A job priced and laid out in time; days are counted from 1 January 1970. */
export interface Quote {
  readonly measured: Measured;
  readonly terms: QuoteTerms;
  /** The plan whose bars are in the price; left out where there is none, or a stack. */
  readonly plan?: StockPlan;
  /** The day on which the quote is made, and the one up to which it holds. */
  readonly madeDay: number;
  readonly validDay?: number;
  readonly beginDay: number;
  /** The day on which the work was to begin, where that is past: then it is reckoned from the day of the quote. */
  readonly pastDay?: number;
  readonly facts: JobFacts;
  readonly tasks: readonly JobTask[];
  /** At the usual hours. */
  readonly schedule: JobSchedule;
  readonly finishDay: number;
  /** Where every task takes its longest. */
  readonly latestDay: number;
  readonly promise?: PromiseCheck;
  /** Left out where the shop says no rate. */
  readonly price?: JobPrice;
  /** What the customer's sheet says: what the smith asks, else what is reckoned; left out where there is neither. */
  readonly offered?: AskedPrice;
  /** To be paid with the order, and what the materials cost. */
  readonly depositMinor?: number;
  readonly materialsMinor: number;
  readonly hardness?: { readonly low: number; readonly high: number };
  /** What of the order cannot be had together. */
  readonly conflicts: OrderConflicts;
  readonly findings: readonly Finding[];
}

/** On which day the quote is made and the work begins, and with which bars. */
export interface QuoteWishes {
  readonly madeDay: number;
  readonly beginDay: number;
  /** Which of the ranked plans, from 1. */
  readonly place?: number;
}

/** Prices a job and lays it out in time. */
export function makeQuote(measured: Measured, bars: Bars, wishes: QuoteWishes): Quote {
  const { job } = measured;
  const terms = quoteTerms(job);
  const plan = planAt(bars, wishes.place ?? 1);
  const facts = factsOf(measured, bars, plan, terms);
  const tasks = jobTasks(facts, terms.times);
  // Nobody begins on a day that is past.
  const beginDay = Math.max(wishes.beginDay, wishes.madeDay);
  const begin = beginDay * MINUTES_PER_DAY;
  const schedule = scheduleJob(tasks, terms.calendar, begin);
  const longest = scheduleJob(jobTasks(facts, terms.times, "high"), terms.calendar, begin);
  const { promised } = job.knife.order;
  const promise = promised === undefined ? undefined : checkPromise(tasks, terms.calendar, begin, promised);
  const money = moneyOf(measured, bars, plan, tasks, terms);
  const hardness = expectedHardness(edgeSteel(measured), job.shop.recipes ?? []);
  const quote = {
    measured,
    terms,
    ...(plan === undefined ? {} : { plan }),
    madeDay: wishes.madeDay,
    ...(terms.validDays === undefined ? {} : { validDay: wishes.madeDay + terms.validDays }),
    beginDay,
    ...(wishes.beginDay < beginDay ? { pastDay: wishes.beginDay } : {}),
    facts,
    tasks,
    schedule,
    finishDay: lastDayOf(begin, schedule.finish),
    latestDay: lastDayOf(begin, longest.finish),
    ...(promise === undefined ? {} : { promise }),
    ...money,
    ...(hardness === undefined ? {} : { hardness }),
    conflicts: orderConflicts(measured),
  };
  return { ...quote, findings: quoteFindings(quote) };
}

function planAt({ plans, mixed }: Bars, place: number): StockPlan | undefined {
  const count = mixed === undefined ? plans.length : 1;
  if (place <= Math.max(1, count)) return plans[place - 1];
  throw new CommandFailure(
    EXIT.usage,
    "no-such-plan",
    `there is no plan ${place}: there ${count === 1 ? "is 1 plan" : `are ${count} plans`}`,
    "scantling stock FILE lists them.",
  );
}

function factsOf(
  measured: Measured,
  { mixed }: Bars,
  plan: StockPlan | undefined,
  { usualCoats }: QuoteTerms,
): JobFacts {
  const { job, knife } = measured;
  const { coats, sheath } = job.knife.quote;
  const welds = mixed?.stages.length ?? ((plan?.joints ?? 0) > 0 ? 1 : 0);
  const steel = { welds, mixed: mixed !== undefined, edge: edgeSteel(measured) };
  const wishes = { ...(coats === undefined ? {} : { coats }), sheath: sheath !== undefined };
  return jobFacts(knife, steel, job.shop.recipes ?? [], wishes, usualCoats);
}

/** The steel that is hardened: that of the knife, of a stack its core or the first of its layers. */
function edgeSteel({ job }: Measured): string {
  const { stack } = job.knife;
  if (stack === undefined) return job.spec.steel.name;
  return (stack.kind === "clad" ? stack.core : stackBars(stack)[0])?.steel.name ?? job.spec.steel.name;
}

function moneyOf(
  measured: Measured,
  bars: Bars,
  plan: StockPlan | undefined,
  tasks: readonly JobTask[],
  { price: terms, decimals, depositShare, taxRate }: QuoteTerms,
): Pick<Quote, "price" | "offered" | "depositMinor" | "materialsMinor"> {
  const materials = jobMaterials(measured, bars, plan);
  const bought = materials.reduce((sum, { cost = 0 }) => sum + cost, 0);
  const materialsMinor = toMinor(bought * (1 + (terms?.waste ?? 0)), decimals);
  const extras = extrasOf(measured);
  const price = terms === undefined ? undefined : priceJob(materials, tasks, terms, extras);
  const offered = price?.asked ?? price ?? askedAlone(extras, decimals, taxRate);
  return {
    materialsMinor,
    ...(price === undefined ? {} : { price }),
    ...(offered === undefined ? {} : { offered }),
    ...(depositShare === undefined || offered === undefined
      ? {}
      : { depositMinor: toMinor(offered.totalMinor * depositShare, 0) }),
  };
}

function extrasOf({ job }: Measured): PriceExtras {
  const { outsideWork, sheath, post, price: asked } = job.knife.quote;
  return {
    ...(outsideWork === undefined ? {} : { outsideWork }),
    ...(sheath === undefined ? {} : { sheath }),
    ...(post === undefined ? {} : { post }),
    ...(asked === undefined ? {} : { asked }),
  };
}

/** What is asked where nothing is reckoned. */
function askedAlone(
  { asked, sheath = 0, post = 0 }: PriceExtras,
  decimals: number,
  taxRate: number,
): AskedPrice | undefined {
  if (asked === undefined) return undefined;
  const parts = { sheathMinor: toMinor(sheath, decimals), postMinor: toMinor(post, decimals) };
  return askedPrice(toMinor(asked, decimals), parts, taxRate);
}
