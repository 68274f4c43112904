/// <reference lib="dom" />
import { readFileSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { answer } from "../../packages/cli/test/support/answer.js";
import { openBrowser } from "./browser.js";
import { readWith, scratchFolder } from "./pdf-tools.js";

// The customer's sheet where customers read it: on a telephone, and printed by a browser.
const read = (name: string): string =>
  readFileSync(new URL(`../../examples/market-garden/${name}`, import.meta.url), "utf8");
const files = { "harvest.knife.yaml": read("harvest.knife.yaml"), "shop.yaml": read("shop.yaml") };

let browser: Browser;
let html = "";
let pdf: Uint8Array = new Uint8Array();
const scratch = scratchFolder();

beforeAll(async () => {
  browser = await openBrowser();
  const { io } = await answer(["quote", "harvest.knife.yaml", "--out", "offer"], { files });
  html = io.disk.text("/shop/offer/harvest.quote.html");
  pdf = io.disk.files.get("/shop/offer/harvest.quote.pdf") ?? pdf;
});
afterAll(async () => {
  await browser?.close();
  scratch.remove();
});

describe("the customer's page", () => {
  test("is no wider than a telephone, and asks for nothing from outside", async () => {
    const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await page.setContent(html);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    expect(asked.filter((url) => !url.startsWith("about:") && !url.startsWith("data:"))).toEqual([]);
    await page.close();
  });

  test.each([
    ["A4", 210],
    ["Letter", 215.9],
  ] as const)(
    "prints on %s: two or three pages, the drawing at the ratio that it states",
    async (format, width) => {
      const page = await browser.newPage();
      await page.setContent(html);
      const file = scratch.write(`${format}.pdf`, await page.pdf({ format, preferCSSPageSize: false }));
      const info = readWith("pdfinfo", file);
      expect(Number(/Pages:\s+(\d+)/u.exec(info)?.[1])).toBeLessThanOrEqual(3);
      expect(Number(/Page size:\s+([\d.]+)/u.exec(info)?.[1]) * (25.4 / 72)).toBeCloseTo(width, 0);
      // On a page as wide as the paper less its margins the steel is as long as 1 : 2.5 makes it.
      await page.emulateMedia({ media: "print" });
      await page.setViewportSize({ width: Math.round((width - 30) * (96 / 25.4)), height: 1000 });
      const drawn = await page.evaluate(() => {
        const steel = document.getElementById("steel");
        return steel instanceof SVGGraphicsElement ? steel.getBoundingClientRect().width : Number.NaN;
      });
      expect(html).toContain("the side view is drawn 1 : 2.5");
      // The rectangle holds the line's width too, 0.5 mm.
      expect(Math.abs(drawn / (96 / 25.4) - 363 / 2.5)).toBeLessThan(0.7);
      await page.close();
    },
  );
});

describe("the customer's PDF", () => {
  test("says the same, on a page of words and a drawing", () => {
    const words = readWith("pdftotext", "-layout", scratch.write("offer.pdf", pdf), "-");
    for (const text of [
      "Tall harvest knife for a market garden",
      "1294.77 EUR",
      "The customer",
      "Side view drawn",
    ])
      expect(words).toContain(text);
    expect(words).not.toMatch(/\b(?:bench|hours?|overhead|profit|scrap)\b/iu);
  });
});
