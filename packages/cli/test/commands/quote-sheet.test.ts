import type { CustomerModel, DrawingItem } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { makeCustomerModel } from "../../src/models/customer-model.js";
import { customerPages } from "../../src/quote/customer-files.js";
import { makeQuote } from "../../src/quote/quote.js";
import { planBars } from "../../src/stock-report.js";
import { answer } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, demoWith } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";
import { SECRET_FIGURES, SECRET_SHOP } from "../support/quote-shop.js";

const FILE = "harvest.knife.yaml";
const HTML = "/shop/offer/harvest.quote.html";

async function modelOf(knife: string, shop: string): Promise<CustomerModel> {
  const io = fakeIo({ files: { [FILE]: knife, "shop.yaml": shop } });
  const measured = measure(await loadJob(io, FILE, {}));
  return makeCustomerModel(makeQuote(measured, planBars(measured), { madeDay: 20_787, beginDay: 20_787 }));
}

const textsOf = (items: readonly DrawingItem[]): string[] =>
  items.flatMap((item) =>
    item.kind === "group" ? textsOf(item.items) : item.kind === "text" ? [item.text] : [],
  );

/** All words of the PDF's pages. */
async function pageWords(knife: string, shop: string): Promise<string> {
  const io = fakeIo({ files: { [FILE]: knife, "shop.yaml": shop } });
  const measured = measure(await loadJob(io, FILE, {}));
  const model = makeCustomerModel(
    makeQuote(measured, planBars(measured), { madeDay: 20_787, beginDay: 20_787 }),
  );
  const pages = await customerPages(measured.job, model);
  return pages.flatMap(({ items, title, description }) => [title, description, ...textsOf(items)]).join("\n");
}

describe("the customer's sheet", () => {
  it("is written as HTML and PDF where a folder is named, and nowhere else", async () => {
    const { code, written, io, err } = await answer(["quote", FILE, "--out", "offer"], { files: DEMO_FILES });
    expect(code).toBe(EXIT.done);
    expect(written).toEqual([HTML, "/shop/offer/harvest.quote.pdf"]);
    expect(err).toContain("Wrote offer/harvest.quote.html\nWrote offer/harvest.quote.pdf\n");
    expect(io.disk.text("/shop/offer/harvest.quote.pdf")).toMatch(/^%PDF-/u);
    const again = await answer(["quote", FILE, "--out", "offer"], io);
    expect(again.code).toBe(EXIT.write);
    const forced = await answer(["quote", FILE, "--out", "offer", "--force"], io);
    expect(forced.code).toBe(EXIT.done);
  });

  it("is the same bytes every time", async () => {
    const draw = async (name: string) =>
      (await answer(["quote", FILE, "--out", "offer"], { files: DEMO_FILES })).io.disk.text(name);
    expect(await draw(HTML)).toBe(await draw(HTML));
    const pdf = "/shop/offer/harvest.quote.pdf";
    expect(await draw(pdf)).toBe(await draw(pdf));
  });

  it("is on the paper that is asked for", async () => {
    const pages = async (...argv: string[]): Promise<string[]> => {
      const argvAll = ["quote", FILE, "--out", "offer", ...argv];
      const { io } = await answer(argvAll, { files: DEMO_FILES });
      const pdf = io.disk.text("/shop/offer/harvest.quote.pdf");
      return [...pdf.matchAll(/\/MediaBox \[([^\]]*)\]/gu)].map(([, box = ""]) => box);
    };
    // A4 standing and lying, in points: 595.28 × 841.89; Letter 612 × 792.
    expect(await pages()).toEqual([
      expect.stringMatching(/^0 0 595\.2\d+ 841\.8/u),
      expect.stringMatching(/^0 0 841\.8\d+ 595\.2/u),
    ]);
    expect(await pages("--paper", "letter")).toEqual(["0 0 612 792", "0 0 792 612"]);
    const odd = await answer(["quote", FILE, "--out", "offer", "--paper", "60x60mm"], { files: DEMO_FILES });
    expect([odd.code, odd.written]).toEqual([EXIT.usage, []]);
  });

  it("says what is agreed: sizes with their limits, materials, price, date, terms, revision", async () => {
    const model = await modelOf(DEMO_KNIFE, DEMO_FILES["shop.yaml"]);
    expect(model).toMatchObject({
      ...{ code: "MG-14", revision: "A", date: "30 Nov 2026", validUntil: "30 Dec 2026" },
      maker: ["The forge of this example", "1 Anvil Lane, Nowhere"],
      ready: "Ready to be posted about Mon 21 Dec 2026, if work can begin on Mon 30 Nov 2026.",
    });
    const figure = (what: string) => model.figures.find((one) => one.what === what);
    expect(figure("Overall length")).toEqual({
      what: "Overall length",
      value: '363 mm (14 19/64")',
      within: "361 mm to 365 mm",
      asked: "below 370.0 mm",
    });
    // What was asked and is met is promised: 567 g and 8 % would go up to 612 g.
    expect(figure("Mass")).toMatchObject({ within: "522 g to 600 g", asked: "below 600 g" });
    expect(model.materials).toContainEqual({ what: "Handle", value: "European ash, two slabs, oiled" });
    expect(model.price.map(({ what }) => what)).toEqual(["Knife", "VAT, 19 %", "Total"]);
  });

  it("says where the knife is not what was asked", async () => {
    const model = await modelOf(demoWith(["below: 600 g", "below: 500 g"]), DEMO_FILES["shop.yaml"]);
    expect(model.figures.find(({ what }) => what === "Mass")).toMatchObject({
      within: "522 g to 612 g",
      asked: "below 500 g",
      differs: true,
    });
  });

  it("shows sections as they will be, none of their earlier states, and no hole that only makes it lighter", async () => {
    const knife = demoWith([
      "{ kind: thong, at: [-116, 76], diameter: 6 }",
      "{ kind: lightening, at: [-116, 76], diameter: 6 }",
    ]);
    const { sections, view } = await modelOf(knife, DEMO_FILES["shop.yaml"]);
    expect(sections).toHaveLength(2);
    for (const section of sections) {
      expect(section).not.toHaveProperty("forged");
      expect(section).not.toHaveProperty("ready");
    }
    expect(view.pattern.holes.map(({ kind }) => kind)).toEqual(["pin", "pin"]);
  });

  it("promises the tolerances of the shop, where what is reckoned is no wider", async () => {
    const shop = `${DEMO_FILES["shop.yaml"]}`.replace(
      "  deposit: 40 %",
      "  deposit: 40 %\n  promise: { length: 5, mass: 1 %, thickness: 0.5 }",
    );
    const { figures } = await modelOf(demoWith(["    mass: { below: 600 g }\n", ""]), shop);
    const within = (what: string) => figures.find((one) => one.what === what)?.within;
    expect(within("Edge, heel to tip")).toBe("220 mm to 230 mm");
    expect(within("Spine at the heel")).toBe("4.1 mm to 5.1 mm");
    // The mass is reckoned to about 4 %.
    const [low = 0, high = 0] = [...(within("Mass") ?? "").matchAll(/\d+/gu)].map(Number);
    expect(high - low).toBeGreaterThan(2 * 0.02 * 567);
  });

  it("takes hostile texts for texts", async () => {
    const knife = demoWith(
      ["Tall harvest knife for a market garden", "'</title><script>alert(1)</script>'"],
      ["  asks: ", "  customer: '<img src=x onerror=alert(1)>'\n  asks: "],
    );
    const { io } = await answer(["quote", FILE, "--out", "offer"], {
      files: { [FILE]: knife, "shop.yaml": DEMO_FILES["shop.yaml"] },
    });
    const html = io.disk.text(HTML);
    expect(html).not.toMatch(/<script|<img/u);
    expect(html).toContain("&lt;img src=x onerror=alert(1)&gt;");
  });
});

describe("what is no customer's business", () => {
  /** Words of the shop's own sheets: bars and what becomes of them, hours, rates, margins, risks, files. */
  const WORDS =
    /\b(?:bars?|rack|billet|stack|welds?|welding|heats?|loss(?:es)?|kerf|scale|waste|hours?|rate|overhead|profit|margin|cost|scrap|risk|fails?|failure|consumables|bench|slack|critical)\b|\.ya?ml|\/shop|scantling/iu;
  const knife = `${DEMO_KNIFE}quote: { sheath: 61, post: 12, outsideWork: 29.93 }\n`;
  const world = { files: { [FILE]: knife, "shop.yaml": SECRET_SHOP } };

  it("stands neither in the words of the HTML nor in those of the PDF", async () => {
    const { io } = await answer(["quote", FILE, "--out", "offer"], world);
    const html = io.disk.text(HTML).replace(/<style>[\s\S]*?<\/style>/u, "");
    // Words alone: tags and the numbers of the drawing's lines taken out.
    const words = html.replace(/<[^>]*>/gu, "\n");
    for (const text of [words, await pageWords(knife, SECRET_SHOP)]) {
      expect(WORDS.exec(text)?.[0]).toBeUndefined();
      for (const [name, figure] of Object.entries(SECRET_FIGURES)) expect(text, name).not.toContain(figure);
      expect(text).not.toContain("29.93");
    }
  });

  it("has none of the amounts that the price is made of", async () => {
    const { out, io } = await answer(["quote", FILE, "--json", "--out", "offer"], world);
    const { price } = JSON.parse(out);
    const text = `${io.disk.text(HTML)}\n${await pageWords(knife, SECRET_SHOP)}`;
    const hidden: number[] = [
      ...price.lines.map(({ amountMinor }: { amountMinor: number }) => amountMinor),
      ...[price.costMinor, price.profitMinor, price.materialsMinor, price.lowMinor, price.highMinor],
      ...price.bandMinor,
    ];
    expect(hidden.length).toBeGreaterThan(10);
    for (const minor of hidden) expect(text).not.toContain((minor / 100).toFixed(2));
    expect(text).toContain((price.totalMinor / 100).toFixed(2));
  });

  it("is what the smith's own view tells: the test would see it", async () => {
    const { out } = await answer(["quote", FILE], world);
    expect(out).toMatch(WORDS);
    for (const figure of [SECRET_FIGURES.rate, SECRET_FIGURES.overhead, SECRET_FIGURES.hours, "29.93"])
      expect(out).toContain(figure);
  });
});
