import {
  type CostLine,
  type JobPrice,
  minorText,
  TASK_WORDS,
  type TaskName,
  WAIT_WORDS,
  type WaitName,
} from "@scantling/geometry";
import { formatNumber, formatShare, formatTime } from "@scantling/geometry/units";
import type { Verdict } from "../asks.js";
import type { Measured } from "../measure.js";
import type { Quote } from "../quote/quote.js";
import { money } from "../quote/quote-findings.js";
import { askLabel } from "./asks-text.js";
import { dateWords, momentWords } from "./dates.js";
import { fixed, percentText } from "./figures.js";
import { bySeverity, findingLines } from "./findings.js";
import { item, layOutTable, REPORT_WIDTH, wrap } from "./layout.js";

/** The smith's own view of a quote: price line by line, hours and dates, what decides the date, what to mind. */
export function quoteText(quote: Quote): string[] {
  const { findings, measured } = quote;
  return [
    ...priceLines(quote),
    "",
    ...taskLines(quote),
    "",
    ...dateLines(quote),
    ...missedLines(measured),
    ...(findings.length === 0
      ? []
      : ["", ...bySeverity(findings).flatMap((one) => findingLines(one, measured.job, { basis: false }))]),
  ];
}

/** What the customer is not to sign by mistake. */
function missedLines({ answers, job }: Measured): string[] {
  const named = (verdict: Verdict): string =>
    answers
      .filter((answer) => answer.verdict === verdict)
      .map(({ ask }) => askLabel(ask, job.units))
      .join(", ");
  const [missed, atRisk] = [named("not-met"), named("at-risk")];
  const lines = [
    ...(missed === "" ? [] : [`NOT MET as drawn: ${missed}. The customer's sheet marks it.`]),
    ...(atRisk === ""
      ? []
      : [`At risk: ${atRisk}. The sheet promises the limit, and the knife may come out beyond it.`]),
  ];
  return lines.length === 0 ? [] : ["", ...lines.flatMap((line) => wrap(line, undefined, "  "))];
}

/** Widest name of a price line: amounts stand behind it. */
const LABEL_WIDTH = 62;

function priceLines(quote: Quote): string[] {
  const { price, terms } = quote;
  if (price === undefined) return wrap(unreckoned(quote), undefined, "  ");
  const currency = terms.currency === undefined ? "" : `, ${terms.currency}`;
  const amount = (minor: number): string => minorText(minor, terms.decimals);
  return [
    `PRICE${currency}`,
    ...amountTable([...costRows(quote, price), ...priceRows(quote, price)], terms.decimals),
    ...riskLines(price, quote),
    ...wrap(
      `By the bands of the hours 95 in 100: ${amount(price.bandMinor[0])} to ${money(price.bandMinor[1], terms)}; if every task takes its shortest ${amount(price.lowMinor)}, its longest ${amount(price.highMinor)}.`,
      undefined,
      "  ",
    ),
    ...askedLines(price, quote),
    ...wrap("Each line is rounded to the smallest coin; sums are sums of these lines."),
  ];
}

/** Without a rate there is at most what the smith asks. */
function unreckoned({ offered, terms }: Quote): string {
  const why = "the shop file says no rate (work.rate)";
  return offered === undefined
    ? `PRICE: none, for ${why}`
    : `PRICE: you ask ${money(offered.totalMinor, terms)}; nothing is reckoned, for ${why}`;
}

type Row = readonly [label: string, minor: number];

function costRows({ terms }: Quote, { lines, hours }: JobPrice): Row[] {
  const { price } = terms;
  const at = (rate: number): string => `${hoursText(hours.value)} at ${formatNumber(rate, 0.01)}`;
  const wordsOf = ({ line, label }: CostLine): string => {
    switch (line) {
      case "material":
        return label ?? "material";
      case "waste":
        return `waste of materials, ${shareText(price?.waste ?? 0)}`;
      case "consumables":
        return "belts, gas, glue and the like";
      case "work":
        return `work, ${at(price?.rate ?? 0)}`;
      case "overhead":
        return `overhead, ${at(price?.overhead ?? 0)}`;
      case "outside-work":
        return "work of others on the blade";
      case "scrap":
        return "for what fails on the way";
    }
  };
  return lines.map((line): Row => [wordsOf(line), line.minor]);
}

function priceRows({ terms, depositMinor }: Quote, price: JobPrice): Row[] {
  const { profitMinor, sheathMinor, postMinor, netMinor, taxMinor, totalMinor } = price;
  const { taxName, depositShare } = terms;
  const some = (label: string, minor: number): Row[] => (minor === 0 ? [] : [[label, minor]]);
  return [
    ["cost", price.costMinor],
    ...some(`profit, ${shareText(terms.price?.profit ?? 0)}`, profitMinor),
    ...some("sheath", sheathMinor),
    ...some("packing and post", postMinor),
    ...(taxName === undefined
      ? []
      : [
          ["price before tax", netMinor] as Row,
          [`${taxName}, ${shareText(terms.taxRate)}`, taxMinor] as Row,
        ]),
    ["price", totalMinor],
    ...(depositMinor === undefined
      ? []
      : [[`deposit with the order, ${shareText(depositShare ?? 0)}`, depositMinor] as Row]),
  ];
}

/** Sums stand under a rule. */
const SUMS: readonly string[] = ["cost", "price"];

function amountTable(rows: readonly Row[], decimals: number): string[] {
  const texts = rows.map(([, minor]) => minorText(minor, decimals));
  const width = Math.max(...texts.map((text) => text.length));
  const labels = rows.map(([label]) => wrap(label, LABEL_WIDTH - 2, "  "));
  const column = Math.max(...labels.flat().map((line) => line.length)) + 2;
  return rows.flatMap(([label], index) => {
    const lines = labels[index] ?? [label];
    const last = lines.at(-1) ?? "";
    return [
      ...(SUMS.includes(label) ? [`${" ".repeat(column)}${"-".repeat(width)}`] : []),
      ...lines.slice(0, -1),
      `${last.padEnd(column)}${(texts[index] ?? "").padStart(width)}`,
    ];
  });
}

function riskLines({ risks }: JobPrice, { terms }: Quote): string[] {
  if (risks.length === 0) return [];
  const told = risks.map(
    ({ id, name, scrapShare, expected }) =>
      `${taskWords(name, id)} ${formatNumber(scrapShare * 100, 0.1)} % (${formatNumber(expected, 10 ** -terms.decimals)})`,
  );
  return wrap(`What fails: ${told.join(", ")}.`, undefined, "  ");
}

function askedLines({ asked, netMinor }: JobPrice, { terms }: Quote): string[] {
  if (asked === undefined) return [];
  const { totalMinor, overMinor } = asked;
  const how = overMinor < 0 ? "below" : "above";
  const share = netMinor === 0 ? "" : ` (${percentText(Math.abs(overMinor) / netMinor)})`;
  return wrap(
    `YOU ASK ${money(totalMinor, terms)}: without tax ${money(Math.abs(overMinor), terms)}${share} ${how} what it is reckoned at. That is what the customer's sheet says.`,
    undefined,
    "  ",
  );
}

const hoursText = (hours: number): string => `${formatNumber(hours, 0.01)} h`;
const shareText = (share: number): string => formatShare(share, 0.01);

/** `welding the stack, 2nd`, `oiling the handle` */
function taskWords(name: TaskName, id: string): string {
  const [, place] = /-(\d+)$/u.exec(id) ?? [];
  return place === undefined ? TASK_WORDS[name] : `${TASK_WORDS[name]} (${place})`;
}

interface TaskRow {
  readonly hours: number;
  readonly start: number;
  readonly end: number;
  readonly onPath: boolean;
  readonly words: string;
}

/** Every task with its hours and its days; coats of oil on one line. */
function taskLines({ schedule, tasks }: Quote): string[] {
  const hoursOf = (id: string): number => tasks.find((task) => task.id === id)?.hours.value ?? 0;
  const rows = schedule.tasks.flatMap(({ task, start, end, onPath }): TaskRow[] => {
    const one = { hours: hoursOf(task.id), start, end, onPath, words: taskWords(task.name, task.id) };
    if (task.name !== "oil") return [one];
    const coats = schedule.tasks.filter((other) => other.task.name === "oil");
    if (coats[0]?.task.id !== task.id) return [];
    return [
      {
        ...one,
        hours: coats.reduce((sum, coat) => sum + hoursOf(coat.task.id), 0),
        end: coats.at(-1)?.end ?? end,
        words: coats.length === 1 ? TASK_WORDS.oil : `${TASK_WORDS.oil}, ${coats.length} coats`,
      },
    ];
  });
  const total = rows.reduce((sum, { hours }) => sum + hours, 0);
  const table = layOutTable(
    [
      ["hours", "begins", "ends", ""],
      ...rows.map(({ hours, start, end, onPath }) => [
        fixed(hours, 2),
        momentWords(start),
        momentWords(end),
        onPath ? "*" : " ",
      ]),
    ],
    ["right", "left", "left", "left"],
  );
  const [head = "", ...lines] = table;
  const width = Math.max(...lines.map((line) => line.length), head.length) + 1;
  return [
    "HOURS AND DATES; * decides the date",
    head,
    ...lines.flatMap((line, index) => {
      const words = wrap(rows[index]?.words ?? "", REPORT_WIDTH - width, "");
      return words.map((text, i) => `${(i === 0 ? line : "").padEnd(width)}${text}`);
    }),
    `${fixed(total, 2).padStart("hours".length)}  hours in all`,
  ];
}

function dateLines(quote: Quote): string[] {
  const { schedule, beginDay, finishDay, latestDay, promise } = quote;
  const onPath = schedule.tasks.filter((one) => one.onPath);
  const work = onPath.reduce((sum, { task }) => sum + task.minutes, 0);
  const off = schedule.tasks.filter((one) => !one.onPath);
  return [
    `WHAT DECIDES THE DATE`,
    ...wrap(
      `Begun ${dateWords(beginDay)}, done ${dateWords(finishDay)}; if every task takes its longest ${dateWords(latestDay)}.`,
      undefined,
      "  ",
    ),
    ...wrap(
      `On the way ${hoursText(work / 60)} of work; waits: ${waitsOnPath(quote).join(", ") || "none"}.`,
      undefined,
      "  ",
    ),
    ...off.flatMap(({ task, slackMinutes }) =>
      item(
        "  ",
        `${taskWords(task.name, task.id)} may begin ${hoursText(slackMinutes / 60)} of bench time later`,
      ),
    ),
    ...promiseLine(promise),
  ];
}

function promiseLine(promise: Quote["promise"]): string[] {
  if (promise === undefined) return [];
  const { promisedDay, daysLate } = promise;
  const many = (count: number): string => (count === 1 ? "1 day" : `${count} days`);
  if (daysLate > 0) return [`Promised ${dateWords(promisedDay)}: ${many(daysLate)} LATE`];
  return [
    `Promised ${dateWords(promisedDay)}: ${daysLate === 0 ? "just in time" : `${many(-daysLate)} to spare`}`,
  ];
}

/** What is waited for between the tasks that decide the date, each thing once. */
function waitsOnPath({ schedule }: Quote): string[] {
  const waits = new Map<WaitName, number[]>();
  for (const { task, driver, onPath } of schedule.tasks) {
    const link = driver.kind === "task" ? task.after.find(({ id }) => id === driver.id) : undefined;
    if (!onPath || link?.wait === undefined || link.waitMinutes === 0) continue;
    waits.set(link.wait, [...(waits.get(link.wait) ?? []), link.waitMinutes]);
  }
  return [...waits].map(([wait, minutes]) => {
    const [first = 0] = minutes;
    const times = minutes.length === 1 ? "" : `${minutes.length} × `;
    return `${times}${formatTime(first * 60)} for ${WAIT_WORDS[wait]}`;
  });
}
