import {
  dateOfDay,
  type Finding,
  type FindingCode,
  handleMaterials,
  MATERIAL_TO_FIND,
  MINUTES_PER_HOUR,
  minorText,
  oiledHandle,
  orderFlags,
  type PromiseCheck,
  TASK_WORDS,
  time,
  WAIT_WORDS,
} from "@scantling/geometry";
import { withAccepted } from "../accepted.js";
import { conflictFindings } from "../conflict/conflict-findings.js";
import { orderFindings } from "../order-findings.js";
import { dateWords } from "../report/dates.js";
import type { Quote } from "./quote.js";

const PRACTICE = "common practice, no source";
const MOST_WAITS = 3;

/** What is to be said of a quote beside its figures: dates, prices that are missing, what has to be looked up. */
export function quoteFindings(quote: Omit<Quote, "findings">): Finding[] {
  const { job } = quote.measured;
  const { checked } = job.knife.quote;
  return [
    ...beginFindings(quote),
    ...dateFindings(quote),
    ...materialFindings(quote),
    ...extrasFindings(quote),
    ...priceFindings(quote),
    ...timeFindings(quote),
    ...askFindings(quote),
    ...orderFlags(job.spec.handle, checked === undefined ? undefined : dateOfDay(checked)),
  ];
}

/**
 * Asks that cannot be had together: to be settled with the customer before the quote goes out. It stops nothing here, for a price
 * and a date can be told all the same; `check` is what stops.
 */
function askFindings({ conflicts, measured }: Omit<Quote, "findings">): Finding[] {
  const { job } = measured;
  const own = orderFindings(measured).filter(({ code }) => OF_ASKS.includes(code));
  const found = [...own, ...conflictFindings(conflicts, job.units)].map(
    (finding): Finding => ({
      ...finding,
      severity: "warn",
      text: `Settle this before you quote. ${finding.text}`,
    }),
  );
  return withAccepted(found, job);
}

/** Findings of the order that are a quarrel of its asks, or of one with the steel. */
const OF_ASKS: readonly FindingCode[] = ["asked-lengths-disagree", "hardness-out-of-reach"];

/** Findings with which no offer can be made. */
const NO_SHEET: readonly string[] = ["material-to-choose", "price-below-extras"];

/** Whether the customer's sheet cannot be written: it would name what nobody has chosen, or a price that is none. */
export const hasNoSheet = ({ findings }: Pick<Quote, "findings">): boolean =>
  findings.some(({ code }) => NO_SHEET.includes(code));

function beginFindings({ pastDay, beginDay, measured }: Omit<Quote, "findings">): Finding[] {
  if (pastDay === undefined) return [];
  const isOrders = measured.job.knife.order.started === pastDay;
  return [
    {
      code: "begin-past",
      severity: "note",
      path: isOrders ? "order.started" : "",
      text: "{past} is past, so the work is reckoned from {begin}.",
      values: { past: dateWords(pastDay), begin: dateWords(beginDay) },
      basis: "the day of the quote",
    },
  ];
}

/** Fit writes a density with no material to it yet. */
function materialFindings({ measured }: Omit<Quote, "findings">): Finding[] {
  return handleMaterials(measured.job.spec.handle)
    .filter(([, { name }]) => name === MATERIAL_TO_FIND)
    .map(([path]) => ({
      code: "material-to-choose",
      severity: "stop",
      path,
      text: "The material is still to be chosen, so it has no price and no customer's sheet is written. Put its name there.",
      basis: "the knife file",
    }));
}

function extrasFindings({ offered, terms, measured }: Omit<Quote, "findings">): Finding[] {
  if (offered === undefined || offered.knifeMinor > 0) return [];
  const { sheathMinor, postMinor, netMinor } = offered;
  const { price } = measured.job.knife.quote;
  if (price === undefined) return [];
  return [
    {
      code: "price-below-extras",
      severity: "stop",
      path: "quote.price",
      text: "The price that you ask is {net} without tax: with sheath and post at {extras} nothing is left for the knife. No customer's sheet is written.",
      values: { net: money(netMinor, terms), extras: money(sheathMinor + postMinor, terms) },
      basis: "the knife file",
    },
  ];
}

function dateFindings({ promise, latestDay, beginDay }: Omit<Quote, "findings">): Finding[] {
  if (promise === undefined) return [];
  const { promisedDay, finishDay, daysLate } = promise;
  const common = { path: "order.promised", basis: "the shop's calendar, hours and waits" } as const;
  if (daysLate > 0) {
    return [
      {
        ...common,
        code: "date-impossible",
        severity: "stop",
        text: `It cannot be done by {promised}: begun on {begin} it is done on {finish} at the earliest, ${days(daysLate)} late. ${remedies(promise)}`,
        values: {
          promised: dateWords(promisedDay),
          begin: dateWords(beginDay),
          finish: dateWords(finishDay),
          ...remedyValues(promise),
        },
      },
    ];
  }
  if (latestDay <= promisedDay) return [];
  return [
    {
      ...common,
      code: "date-tight",
      severity: "warn",
      text: "Done by {promised} at the usual hours, on {latest} at the longest ones. Leave more room.",
      values: { promised: dateWords(promisedDay), latest: dateWords(latestDay) },
    },
  ];
}

const days = (count: number): string => (count === 1 ? "1 day" : `${count} days`);

/** What would bring the date nearer, that which gains most first. */
function remedies({ shorter, allShortDay, finishDay, promisedDay, beginByDay }: PromiseCheck): string {
  const waits = shorter
    .slice(0, MOST_WAITS)
    .map(({ wait }, i) => `for ${WAIT_WORDS[wait]} {least${i}} in place of {wait${i}}: {gains${i}}`);
  const all = shorter.length > 1 ? `; all waits at their least: {allShort}` : "";
  const shorten =
    waits.length === 0 ? "No shorter wait would change that." : `Shorten a wait: ${waits.join("; ")}${all}.`;
  const begin = beginByDay === undefined ? "" : " To keep the date, begin by {beginBy}, or work longer days.";
  const enough = allShortDay <= promisedDay || allShortDay === finishDay ? "" : " That alone is not enough.";
  return `${shorten}${enough}${begin}`;
}

function remedyValues({ shorter, allShortDay, beginByDay }: PromiseCheck): NonNullable<Finding["values"]> {
  const seconds = (minutes: number): number => minutes * (3600 / MINUTES_PER_HOUR);
  return {
    ...Object.fromEntries(
      shorter
        .slice(0, MOST_WAITS)
        .flatMap(({ fromMinutes, toMinutes, finishDay }, i) => [
          [`wait${i}`, time(seconds(fromMinutes))] as const,
          [`least${i}`, time(seconds(toMinutes))] as const,
          [`gains${i}`, dateWords(finishDay)] as const,
        ]),
    ),
    allShort: dateWords(allShortDay),
    ...(beginByDay === undefined ? {} : { beginBy: dateWords(beginByDay) }),
  };
}

function priceFindings(quote: Omit<Quote, "findings">): Finding[] {
  const { price, terms, offered, depositMinor, materialsMinor } = quote;
  const amount = (minor: number): string => money(minor, terms);
  if (price === undefined) {
    return [
      {
        code: "rate-missing",
        severity: "warn",
        path: "work.rate",
        text: `Nothing is reckoned: say in the shop file what an hour at the bench costs, such as work: { rate: 45 }. The customer's sheet says ${offered === undefined ? "that the price is to be agreed" : "what you ask"}.`,
        basis: "the shop file",
      },
    ];
  }
  const { asked, unpriced } = price;
  return [
    ...unpriced.map(
      (label): Finding => ({
        code: "price-missing",
        severity: "warn",
        path: "",
        text: "Not in the price: {label}. Give the bar a price in rack, other materials and parts one in work.prices.",
        values: { label },
        basis: "the shop file",
      }),
    ),
    ...(terms.currency === undefined
      ? [
          {
            code: "currency-missing",
            severity: "note",
            path: "currency",
            text: "The shop file names no currency, so the customer's sheet shows bare numbers. Add currency: EUR, or yours.",
            basis: "the shop file",
          } as const,
        ]
      : []),
    ...(asked !== undefined && asked.overMinor < 0
      ? [
          {
            code: "price-below-cost",
            severity: "warn",
            path: "quote.price",
            text: "The price that you ask is {short} less, without tax, than what the knife is reckoned at.",
            values: { short: amount(-asked.overMinor) },
            basis: "the shop's own figures",
          } as const,
        ]
      : []),
    ...(depositMinor !== undefined && depositMinor < materialsMinor
      ? [
          {
            code: "deposit-small",
            severity: "note",
            path: "work.deposit",
            text: "The deposit of {deposit} does not cover the materials, {materials}.",
            values: { deposit: amount(depositMinor), materials: amount(materialsMinor) },
            basis: `${PRACTICE}: a deposit covers what cannot be used otherwise`,
          } as const,
        ]
      : []),
  ];
}

function timeFindings({ measured, tasks, terms, schedule }: Omit<Quote, "findings">): Finding[] {
  const { spec, knife } = measured.job;
  const { minutesPerDay } = terms.calendar;
  const long = tasks.filter(({ whole, minutes }) => whole === true && minutes > minutesPerDay);
  return [
    ...(knife.quote.coats === undefined && oiledHandle(spec.handle) === "unknown"
      ? [
          {
            code: "coats-unknown",
            severity: "note",
            path: "quote.coats",
            text: "What the handle is made of is not known, so that no oil and no drying are counted. Say how many coats it gets: quote: { coats: 6 }, or 0.",
            basis: "the knife file",
          } as const,
        ]
      : []),
    ...long.map(
      ({ name, minutes }): Finding => ({
        code: "task-longer-than-day",
        severity: "note",
        path: `work.hours.${name}`,
        text: "{task} is done in one go and takes {time}, longer than a working day: it is begun in the morning and worked through.",
        values: { task: TASK_WORDS[name], time: time(minutes * 60) },
        basis: "the shop file",
      }),
    ),
    ...(knife.stack?.kind === "clad"
      ? [
          {
            code: "three-layers-take-longer",
            severity: "note",
            path: "stack",
            text: "One maker reports two to three times the usual time for blades of three layers. Look at the hours.",
            basis: "a discussion among makers",
          } as const,
        ]
      : []),
    ...(schedule.proven
      ? []
      : [
          {
            code: "order-of-work-not-proven",
            severity: "note",
            path: "",
            text: "There are too many ways to order this work to try them all: another one may end earlier.",
            basis: "the search for the best order",
          } as const,
        ]),
  ];
}

/** An amount with its currency. */
export const money = (minor: number, { decimals, currency }: Quote["terms"]): string =>
  `${minorText(minor, decimals)}${currency === undefined ? "" : ` ${currency}`}`;
