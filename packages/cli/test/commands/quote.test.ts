import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, demoWith } from "../support/demo.js";
import { BARE_DEMO_SHOP, shopWithWork } from "../support/quote-shop.js";

const FILE = "harvest.knife.yaml";
const withOrder = (text: string): string => demoWith(["  asks: ", `${text}\n  asks: `]);
const world = (knife: string, shop: string = DEMO_FILES["shop.yaml"]) => ({
  today: "2026-11-30",
  files: { [FILE]: knife, "shop.yaml": shop },
});

/** Amounts at the ends of lines, by what stands before them. */
function amounts(text: string): Record<string, number> {
  const rows = text.split("\n").flatMap((line) => {
    const [, label, amount] = /^(\S.*?) {2,}(\d+\.\d\d)$/u.exec(line) ?? [];
    return label === undefined ? [] : [[label, Number(amount)] as const];
  });
  return Object.fromEntries(rows);
}

describe("quote for the smith", () => {
  it("shows every line of the price, and they add up", async () => {
    const { code, out, written } = await answer(["quote", FILE], world(DEMO_KNIFE));
    expect(code).toBe(EXIT.done);
    expect(written).toEqual([]);
    expect(wideLines(out)).toEqual([]);
    const told = amounts(out);
    const { cost = 0, price = 0 } = told;
    const lines = Object.keys(told);
    const before = lines.slice(0, lines.indexOf("cost")).reduce((sum, label) => sum + (told[label] ?? 0), 0);
    expect(before).toBeCloseTo(cost, 9);
    expect(cost + (told["profit, 15 %"] ?? 0)).toBeCloseTo(told["price before tax"] ?? 0, 9);
    expect((told["price before tax"] ?? 0) * 1.19).toBeCloseTo(price, 1);
    expect(flat(out)).toMatch(
      /By the bands of the hours 95 in 100: \d+\.\d\d to \d+\.\d\d EUR; if every task/u,
    );
    expect(told["European ash, a pair of slabs"]).toBe(9);
    // Two pins of 4 mm, 23.9 mm and 23.1 mm through tang and slabs with 2 mm out on each side and a saw cut: 50.8 mm at 11 a metre.
    expect(told["brass rod 4 mm, 2 pins"]).toBeCloseTo(0.56, 2);
  });

  it("takes the steel from the plan: what stock says it costs", async () => {
    const stock = JSON.parse((await answer(["stock", FILE, "--json"], world(DEMO_KNIFE))).out);
    const quote = JSON.parse((await answer(["quote", FILE, "--json"], world(DEMO_KNIFE))).out);
    expect(quote.price.lines[0].amountMinor).toBe(Math.round(100 * stock.plans[0].cost));
    const second = JSON.parse(
      (await answer(["quote", FILE, "--json", "--plan", "2"], world(DEMO_KNIFE))).out,
    );
    expect(second.price.lines[0].amountMinor).toBe(Math.round(100 * stock.plans[1].cost));
    const far = await answer(["quote", FILE, "--plan", "99"], world(DEMO_KNIFE));
    expect([far.code, far.err]).toEqual([EXIT.usage, expect.stringContaining("there is no plan 99")]);
  });

  it("lays the work out from the day that is given, else the order's, else today", async () => {
    const begins = async (knife: string, ...argv: string[]): Promise<string> =>
      JSON.parse((await answer(["quote", FILE, "--json", ...argv], world(knife))).out).schedule.begin;
    expect(await begins(DEMO_KNIFE)).toBe("2026-11-30");
    expect(await begins(withOrder("  started: 2026-12-02"))).toBe("2026-12-02");
    expect(await begins(withOrder("  started: 2026-12-02"), "--from", "2026-12-07")).toBe("2026-12-07");
    const wrong = await answer(["quote", FILE, "--from", "7.12.2026"], world(DEMO_KNIFE));
    expect(wrong.code).toBe(EXIT.usage);
    expect(wrong.err).toContain('--from "7.12.2026" is no date');
  });

  it("by hand: when the demo is done", async () => {
    // Monday 30 November 2026, six hours a day from 8, the reply takes two days: drawn on Monday; sawn, welded and forged on
    // Wednesday; cooled overnight; ground, hardened and tempered on Thursday; ground, fitted and glued on Friday; shaped and
    // oiled first on Monday the 7th, then every working morning, for a weekend is longer than a day: 8, 9, 10, 11, 14; cured for
    // three days: Thursday the 17th.
    const { schedule } = JSON.parse((await answer(["quote", FILE, "--json"], world(DEMO_KNIFE))).out);
    const starts = Object.fromEntries(
      schedule.tasks.map(({ id, start }: { id: string; start: string }) => [id, start.slice(0, 10)]),
    );
    expect(starts).toEqual({
      design: "2026-11-30",
      ...{ stack: "2026-12-02", weld: "2026-12-02", forge: "2026-12-02", anneal: "2026-12-02" },
      ...{ profile: "2026-12-03", drill: "2026-12-03", rough: "2026-12-03" },
      ...{ harden: "2026-12-03", temper: "2026-12-03" },
      ...{ finish: "2026-12-04", fit: "2026-12-04", glue: "2026-12-04" },
      ...{ shape: "2026-12-07", "oil-1": "2026-12-07", "oil-2": "2026-12-08", "oil-3": "2026-12-09" },
      ...{ "oil-4": "2026-12-10", "oil-5": "2026-12-11", "oil-6": "2026-12-14" },
      ...{ sharpen: "2026-12-17", pack: "2026-12-17" },
    });
    expect(schedule.finish).toBe("2026-12-17");
    expect(schedule.criticalPath).toHaveLength(schedule.tasks.length);
  });

  it("is the same every time", async () => {
    const once = async () => (await answer(["quote", FILE], world(DEMO_KNIFE))).out;
    expect(await once()).toBe(await once());
  });
});

describe("a promised date", () => {
  it("that is kept says the days to spare", async () => {
    const { code, out } = await answer(["quote", FILE], world(withOrder("  promised: 2026-12-20")));
    expect(code).toBe(EXIT.done);
    expect(out).toContain("Promised Sun 20 Dec 2026: 3 days to spare");
  });

  it("that cannot be kept stops, with the earliest date and the waits to shorten", async () => {
    const { code, out, io } = await answer(
      ["quote", FILE, "--out", "offer"],
      world(withOrder("  promised: 2026-12-11")),
    );
    expect(code).toBe(EXIT.notMet);
    expect(out).toContain("Promised Fri 11 Dec 2026: 6 days LATE");
    const words = flat(out);
    expect(words).toContain("STOP: It cannot be done by Fri 11 Dec 2026");
    expect(words).toContain("done on Thu 17 Dec 2026 at the earliest, 6 days late.");
    expect(words).toMatch(/Shorten a wait: for oil to dry 4 h in place of 24 h: \w{3} \d+ Dec 2026/u);
    expect(words).toMatch(/begin by \w{3} \d+ Nov 2026/u);
    // How long a customer takes to answer is not the smith's to shorten.
    expect(words).not.toContain("Shorten a wait: for the customer's reply");
    expect(words).toMatch(/\(order\.promised, harvest\.knife\.yaml:\d+:\d+\)/u);
    // What cannot be kept is not offered.
    expect(io.disk.text("/shop/offer/harvest.quote.html")).not.toContain("11 Dec");
  });

  it("that only the usual hours keep is a warning", async () => {
    const { code, out } = await answer(["quote", FILE], world(withOrder("  promised: 2026-12-18")));
    expect(code).toBe(EXIT.done);
    expect(flat(out)).toContain(
      "Done by Fri 18 Dec 2026 at the usual hours, on Mon 21 Dec 2026 at the longest ones.",
    );
  });
});

describe("what is not known", () => {
  it("has no price without a rate, and says so on both sheets", async () => {
    const { code, out, io } = await answer(
      ["quote", FILE, "--out", "offer"],
      world(DEMO_KNIFE, BARE_DEMO_SHOP),
    );
    expect(code).toBe(EXIT.done);
    expect(out).toContain("PRICE: none, for the shop file says no rate (work.rate)");
    expect(io.disk.text("/shop/offer/harvest.quote.html")).toContain("To be agreed.");
  });

  it("is not taken for nothing: bars and materials without a price are named", async () => {
    const shop = shopWithWork("rate: 50").replaceAll(/, price: [\d.]+/gu, "");
    const { out } = await answer(["quote", FILE], world(DEMO_KNIFE, shop));
    const words = flat(out);
    expect(words).toMatch(/Not in the price: 1084, 3 pieces/u);
    expect(words).toContain("Not in the price: European ash, a pair of slabs.");
    expect(words).toContain("Not in the price: brass rod 4 mm, 2 pins.");
  });

  it("is asked for what the smith wants to ask, and how far that is from what is reckoned", async () => {
    const ask = (price: number): string => `${DEMO_KNIFE}quote: { price: ${price}, post: 12, sheath: 60 }\n`;
    const { out, io } = await answer(["quote", FILE, "--out", "o"], world(ask(900)));
    expect(flat(out)).toContain("YOU ASK 900.00 EUR: without tax");
    expect(flat(out)).toContain("The price that you ask is");
    const html = io.disk.text("/shop/o/harvest.quote.html");
    for (const amount of ["900.00 EUR", "12.00 EUR", "60.00 EUR"]) expect(html).toContain(amount);
    const dear = await answer(["quote", FILE], world(ask(2000)));
    expect(flat(dear.out)).toContain("above what it is reckoned at");
    expect(dear.out).not.toContain("The price that you ask is");
    const bare = await answer(["quote", FILE, "--out", "o"], world(ask(900), BARE_DEMO_SHOP));
    expect(wideLines(bare.out)).toEqual([]);
    expect(bare.out).toContain("PRICE: you ask 900.00 EUR; nothing is reckoned");
    expect(bare.io.disk.text("/shop/o/harvest.quote.html")).toContain("900.00");
  });

  it("says of a handle without a material that no oil is counted", async () => {
    const knife = demoWith([
      "  slabs: { material: European ash, thickness: 8, edgeRadius: 6 }\n  pins: { material: brass }",
      "  parts: [{ name: both slabs, mass: 60 g, at: [-60, 76] }]",
    ]);
    const { out } = await answer(["quote", FILE], world(knife));
    expect(flat(out)).toContain("no oil and no drying are counted");
    expect(out).not.toContain("oiling");
    const told = await answer(["quote", FILE], world(`${knife}quote: { coats: 2 }\n`));
    expect(told.out).toContain("oiling the handle, 2 coats");
    expect(flat(told.out)).not.toContain("no oil and no drying");
  });

  it("flags what has to be looked up, and says when it was", async () => {
    const knife = DEMO_KNIFE.replace("European ash", "cocobolo");
    const open = await answer(["quote", FILE], world(knife));
    expect(flat(open.out)).toMatch(/warning: cocobolo: .*Not looked up for this order yet\./u);
    const done = await answer(["quote", FILE], world(`${knife}quote: { checked: 2026-11-20 }\n`));
    expect(flat(done.out)).toMatch(/note: cocobolo: .*Looked up on 2026-11-20\./u);
  });
});

describe("quote for programs", () => {
  it("has money in the smallest coin, dates and moments, and lists its files", async () => {
    const { out } = await answer(
      ["quote", FILE, "--json", "--out", "offer"],
      world(withOrder("  promised: 2026-12-20\n  revision: C")),
    );
    const json = JSON.parse(out);
    expect(json).toMatchObject({
      schema: "scantling/quote/1",
      ...{ date: "2026-11-30", validUntil: "2026-12-30", revision: "C" },
      ...{ currency: "EUR", currencyDecimals: 2 },
      promise: { date: "2026-12-20", daysLate: -3 },
      hardnessHrc: null,
      files: ["offer/harvest.quote.html", "offer/harvest.quote.pdf"],
    });
    const { lines, costMinor, profitMinor, knifeMinor, netMinor, taxMinor, totalMinor } = json.price;
    expect(
      lines.reduce((sum: number, { amountMinor }: { amountMinor: number }) => sum + amountMinor, 0),
    ).toBe(costMinor);
    expect(costMinor + profitMinor).toBe(knifeMinor);
    expect(netMinor + taxMinor).toBe(totalMinor);
    expect(json.depositMinor).toBe(Math.round(0.4 * totalMinor));
    for (const { start, end } of json.schedule.tasks) {
      expect(start).toMatch(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/u);
      expect(end >= start).toBe(true);
    }
  });

  it("has the smallest coin of its currency", async () => {
    const shop = shopWithWork("rate: 6000").replace("currency: EUR", "currency: JPY");
    const json = JSON.parse((await answer(["quote", FILE, "--json"], world(DEMO_KNIFE, shop))).out);
    expect(json.currencyDecimals).toBe(0);
    expect(
      json.price.lines.find(({ line }: { line: string }) => line === "work").amountMinor,
    ).toBeGreaterThan(60_000);
  });
});
