import { type AskedPrice, dateOfDay, type JobPrice, momentText } from "@scantling/geometry";
import type { Quote } from "../quote/quote.js";
import { conflictJson } from "./conflict-json.js";
import { bySeverity, findingJson } from "./findings.js";

/** A quote for programs: money in the smallest coin, dates as ISO 8601 writes them, moments by the shop's own clock. */
export function quoteJson(quote: Quote, files: readonly string[]): unknown {
  const { measured, terms, price, schedule, promise, hardness } = quote;
  const { order } = measured.job.knife;
  return {
    schema: "scantling/quote/1",
    date: dateOfDay(quote.madeDay),
    validUntil: quote.validDay === undefined ? null : dateOfDay(quote.validDay),
    revision: order.revision ?? null,
    currency: terms.currency ?? null,
    currencyDecimals: terms.decimals,
    price: price === undefined ? null : priceJson(price, quote),
    offered: quote.offered === undefined ? null : parts(quote.offered),
    depositMinor: quote.depositMinor ?? null,
    schedule: {
      begin: dateOfDay(quote.beginDay),
      finish: dateOfDay(quote.finishDay),
      finishAtLongest: dateOfDay(quote.latestDay),
      criticalPath: schedule.path,
      proven: schedule.proven,
      tasks: schedule.tasks.map(({ task, start, end, slackMinutes, driver, onPath }) => ({
        id: task.id,
        name: task.name,
        benchMinutes: task.minutes,
        start: momentText(start),
        end: momentText(end),
        slackMinutes,
        critical: onPath,
        startsAfter: driver.kind === "begin" ? null : driver.id,
        startsAfterBecause: driver.kind,
        waits: task.after.map(({ id, wait, waitMinutes }) => ({
          after: id,
          for: wait ?? null,
          minutes: waitMinutes,
        })),
      })),
    },
    promise:
      promise === undefined
        ? null
        : {
            date: dateOfDay(promise.promisedDay),
            daysLate: promise.daysLate,
            shorterWaits: promise.shorter.map(({ wait, fromMinutes, toMinutes, finishDay }) => ({
              wait,
              fromMinutes,
              toMinutes,
              finish: dateOfDay(finishDay),
            })),
            finishWithAllWaitsAtLeast: dateOfDay(promise.allShortDay),
            beginBy: promise.beginByDay === undefined ? null : dateOfDay(promise.beginByDay),
          },
    hardnessHrc: hardness === undefined ? null : [hardness.low, hardness.high],
    ...conflictJson(quote.conflicts),
    findings: bySeverity(quote.findings).map((finding) => findingJson(finding, measured.job)),
    files,
  };
}

function priceJson(price: JobPrice, { materialsMinor, plan }: Quote): unknown {
  const { asked } = price;
  return {
    ...(plan === undefined
      ? {}
      : { bars: { pieces: plan.bars, of: plan.bar.name, cutLengthMm: plan.cutLength } }),
    lines: price.lines.map(({ line, label, minor }) => ({ line, label: label ?? null, amountMinor: minor })),
    costMinor: price.costMinor,
    profitMinor: price.profitMinor,
    ...parts(price),
    bandMinor: price.bandMinor,
    lowMinor: price.lowMinor,
    highMinor: price.highMinor,
    hours: [price.hours.low, price.hours.value, price.hours.high],
    risks: price.risks.map(({ id, scrapShare, spent, expected }) => ({
      task: id,
      share: scrapShare,
      spent,
      expected,
    })),
    notPriced: price.unpriced,
    materialsMinor,
    asked: asked === undefined ? null : { ...parts(asked), overMinor: asked.overMinor },
  };
}

const parts = ({ knifeMinor, sheathMinor, postMinor, netMinor, taxMinor, totalMinor }: AskedPrice) => ({
  knifeMinor,
  sheathMinor,
  postMinor,
  netMinor,
  taxMinor,
  totalMinor,
});
