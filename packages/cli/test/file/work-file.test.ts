import { dayOfDate } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { readKnifeFile, readShopFile } from "../../src/file/index.js";
import { DEMO_KNIFE, demoWith } from "../support/demo.js";
import { inShort, knifeProblems, projectFile, shopProblems } from "./files.js";

const work = (text: string): unknown => readShopFile(`work: { ${text} }\n`, "shop.yaml").work;
const wrong = (text: string): string[] => inShort(shopProblems(`work: { ${text} }\n`));

describe("time and money in the shop file", () => {
  it("of the demo are read: hours, shares, minutes after midnight, days", () => {
    const file = readShopFile(projectFile("examples/market-garden/shop.yaml"), "shop.yaml");
    expect(file.work).toMatchObject({
      ...{ rate: 45, overhead: 12, profit: 0.15, waste: 0.1, consumables: 18, coats: 6 },
      hours: { forge: { value: 3, low: 2, high: 4.5 }, fit: { value: 1.5, low: 1, high: 2 } },
      waits: { reply: { value: 48 }, glue: { value: 24, low: 10, high: 24 } },
      ...{ days: ["mon", "tue", "wed", "thu", "fri"], from: 480, hoursPerDay: 6 },
      daysOff: [{ from: dayOfDate("2026-12-24"), to: dayOfDate("2027-01-03") }],
      scrap: { weld: 0.03, harden: 0.04 },
      tax: { name: "VAT", rate: 0.19 },
      ...{ deposit: 0.4, validFor: 30 },
    });
    // What belongs to the work is no part of the shop that stock is planned with.
    expect(file.shop).not.toHaveProperty("work");
  });

  it("are empty where the file says nothing", () => {
    expect(readShopFile("kerf: 2\n", "shop.yaml").work).toEqual({});
  });

  it("take hours without a unit, in inches too", () => {
    expect(work("hours: { forge: 3, oil: 12 min }, hoursPerDay: 7.5")).toEqual({
      hours: { forge: { value: 3, low: 3, high: 3 }, oil: { value: 0.2, low: 0.2, high: 0.2 } },
      hoursPerDay: 7.5,
    });
    expect(readShopFile("units: in\nwork: { hours: { forge: 3 } }\n", "s").work).toEqual({
      hours: { forge: { value: 3, low: 3, high: 3 } },
    });
  });

  it.each([
    ["hours: { forg: 3 h }", "unknown-key | work.hours.forg is not a key here; did you mean forge?"],
    [
      "hours: { forge: 3 mm }",
      'quantity-unit-wrong-kind | work.hours.forge: "3 mm" is a length; a time belongs here, for example 3 h, 90 min or 2 days',
    ],
    [
      "hours: { forge: -1 h }",
      'out-of-range | work.hours.forge: "-1 h" must not be negative, for example 2 h',
    ],
    [
      "hours: { forge: 3 ± 4 h }",
      'tolerance-out-of-range | work.hours.forge: "3 ± 4 h" reaches beyond what is possible; give a closer tolerance',
    ],
    ["days: [mon, Tuesday]", "it must be mon, tue, wed, thu, fri, sat, sun"],
    ["days: []", "wrong-type"],
    ["from: 8", "wrong-type | work.from needs a time of day, such as 08:00"],
    ["from: 25:00", 'no-time-of-day | work.from: "25:00" is not a time of day; write it 08:00'],
    [
      "daysOff: [24.12.2026]",
      'no-date | work.daysOff[1st]: "24.12.2026" is not a date or two; write 2026-12-24, or 2026-12-24 to 2027-01-01',
    ],
    [
      "daysOff: [2026-12-24 to 2026-12-20]",
      'days-off-swapped | work.daysOff[1st]: "2026-12-24 to 2026-12-20" has the later date first',
    ],
    [
      "daysOff: [2026-12-24 to 2062-01-01]",
      'days-off-long | work.daysOff[1st]: "2026-12-24 to 2062-01-01" is more than a year; write a shorter one',
    ],
    [
      "scrap: { weld: 100 % }",
      'out-of-range | work.scrap.weld: "100 %" must be less than 100 %, for example 5 %',
    ],
    ["scrap: { design: 5 % }", "unknown-key"],
    [
      "hoursPerDay: 17 h",
      "working-day-too-long | work.hoursPerDay is too long: begun at 08:00, 17 h of work do not end by midnight",
    ],
    [
      "from: 20:00",
      "working-day-too-long | work.from is too late: begun at 20:00, 6 h of work do not end by midnight",
    ],
    ["hoursPerDay: 5 min", "out-of-range"],
    [
      "prices: [{ of: brass }]",
      "one-price | work.prices[1st] needs a price: each, for a pair of slabs or a part, or perMetre, for rod",
    ],
    ["prices: [{ of: brass, each: 1, perMetre: 2 }]", "one-price"],
    ["tax: 19 %", "wrong-type | work.tax needs a group of keys, such as { name: VAT, rate: 19 % }"],
    ["rate: 45 EUR", 'not-a-number | work.rate: "45 EUR" is not a number'],
    ["maker: ''", "text-empty | work.maker needs some words"],
    ["terms: 5", "wrong-type | work.terms needs some words"],
  ])("%s is refused, with what to write", (text, problem) => {
    const [first = ""] = wrong(text);
    expect(first).toContain(problem);
  });
});

describe("what a knife file says of its order and its quote", () => {
  const order = (text: string): string => demoWith(["  asks: ", `${text}\n  asks: `]);

  it("is nothing where it says nothing", () => {
    const { order: given, quote } = readKnifeFile(DEMO_KNIFE, "k");
    expect(quote).toEqual({});
    for (const key of ["customer", "revision", "started", "promised"]) expect(given).not.toHaveProperty(key);
  });

  it("is read, dates as days", () => {
    const text = `${order("  promised: 2026-12-20\n  started: 2026-11-30\n  revision: B\n  customer: |\n    A garden\n    Its lane")}quote: { coats: 3, sheath: 60, post: 12, hours: { fit: 2 h }, price: 690, checked: 2026-11-20 }\n`;
    const file = readKnifeFile(text, "k");
    expect(file.order).toMatchObject({
      ...{ promised: dayOfDate("2026-12-20"), started: dayOfDate("2026-11-30"), revision: "B" },
      customer: "A garden\nIts lane",
    });
    expect(file.quote).toEqual({
      ...{ coats: 3, sheath: 60, post: 12, price: 690, checked: dayOfDate("2026-11-20") },
      hours: { fit: { value: 2, low: 2, high: 2 } },
    });
  });

  it("is refused where it is wrong, beside all else that is", () => {
    const text = `${order("  promised: 20.12.2026")}quote: { coats: many }\n`.replace(
      "length: 128",
      "length: 128 g",
    );
    expect(inShort(knifeProblems(text)).join("\n")).toMatch(
      /no-date \| order\.promised: "20\.12\.2026" is not a date, written year-month-day, such as 2026-12-20[\s\S]*quantity-unit-wrong-kind[\s\S]*not-a-count/u,
    );
  });

  it("does not keep the shape from being checked", () => {
    // A hole beside the tang is told though the date is wrong.
    const text = order("  promised: soon").replace("at: [-84, 76]", "at: [-84, 176]");
    const codes = knifeProblems(text).map(({ code }) => code);
    expect(codes).toContain("no-date");
    expect(codes.length).toBeGreaterThan(1);
  });
});
