/// <reference lib="dom" />
import { pathToFileURL } from "node:url";
import { polyline, toSvg } from "@scantling/render";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openBrowser } from "./browser.js";
import { type DemoPattern, drawDemoPattern } from "./demo-pattern.js";

// A browser's own ruler. Source: W3C, CSS Values and Units Module Level 3, section 6.2: 1 in = 2.54 cm = 96 px, so
// 1 mm = 96/25.4 px. A bar that measures L mm by it prints L mm long at 100 %.
const PX_PER_MM = 96 / 25.4;
/** 200.00 ± 0.01 mm on a rule of 200 mm: a hundredth of what the eye can see on a print. */
const TOLERANCE_MM = 0.01;

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await browser.newPage({ viewport: { width: 2400, height: 1600 }, deviceScaleFactor: 1 });
});
afterAll(() => browser?.close());

interface Measured {
  /** Between the ends of the path on the screen, mm. */
  readonly length: number;
  /** Size of the box of the same path, mm. */
  readonly width: number;
  readonly height: number;
}

/** Measures a named path where the browser has put it: both ends, and its box. */
async function measure(id: string): Promise<Measured> {
  const px = await page.evaluate((name) => {
    const path = document.getElementById(name);
    if (!(path instanceof SVGGeometryElement)) throw new Error(`no path named ${name}`);
    const matrix = path.getScreenCTM();
    if (!matrix) throw new Error(`${name} is not drawn`);
    const a = path.getPointAtLength(0).matrixTransform(matrix);
    const b = path.getPointAtLength(path.getTotalLength()).matrixTransform(matrix);
    const box = path.getBBox();
    const corner = new DOMPoint(box.x, box.y).matrixTransform(matrix);
    const opposite = new DOMPoint(box.x + box.width, box.y + box.height).matrixTransform(matrix);
    return {
      length: Math.hypot(b.x - a.x, b.y - a.y),
      width: Math.abs(opposite.x - corner.x),
      height: Math.abs(opposite.y - corner.y),
    };
  }, id);
  return { length: px.length / PX_PER_MM, width: px.width / PX_PER_MM, height: px.height / PX_PER_MM };
}

const within = (value: number, expected: number): void => {
  expect(Math.abs(value - expected), `${value} mm, not ${expected} mm`).toBeLessThanOrEqual(TOLERANCE_MM);
};

describe("a rule of 200 mm", () => {
  test("measures 200.00 ± 0.01 mm in both directions", async () => {
    const rule = (name: string, to: { x: number; y: number }) => ({
      kind: "path" as const,
      role: "check" as const,
      name,
      paths: [polyline([{ x: 0, y: 0 }, to])],
    });
    const svg = await toSvg({
      width: 220,
      height: 220,
      origin: { x: 10, y: 10 },
      title: "rule",
      description: "two rules of 200 mm",
      items: [rule("across", { x: 200, y: 0 }), rule("up", { x: 0, y: 200 })],
    });
    // Inside a page, as a viewer would embed it: strip the XML declaration that HTML does not know.
    await page.setContent(
      `<!doctype html><body style="margin:0">${svg.replace(/^<\?xml[^>]*>\s*/, "")}</body>`,
    );
    within((await measure("across")).length, 200);
    within((await measure("up")).length, 200);
    const sheet = await page.evaluate(() => {
      const { width, height } = document.querySelector("svg")?.getBoundingClientRect() ?? {
        width: 0,
        height: 0,
      };
      return { width, height };
    });
    within(sheet.width / PX_PER_MM, 220);
    within(sheet.height / PX_PER_MM, 220);
  });
});

describe("the demo's pattern", () => {
  let pattern: DemoPattern;
  const attribute = (name: string): string => {
    const root = /<svg[^>]*>/.exec(pattern.svg)?.[0] ?? "";
    return new RegExp(`\\s${name}="([^"]*)"`).exec(root)?.[1] ?? "";
  };

  beforeAll(async () => {
    pattern = drawDemoPattern();
    await page.goto(pathToFileURL(pattern.file).href);
  });

  afterAll(() => pattern.remove());

  test("has its size in mm and one user unit to the mm, exactly", () => {
    const [x, y, width, height] = attribute("viewBox").split(/\s+/);
    expect([x, y]).toEqual(["0", "0"]);
    expect(attribute("width")).toBe(`${width}mm`);
    expect(attribute("height")).toBe(`${height}mm`);
  });

  test("the whole sheet is as large as it says", async () => {
    const sheet = await page.evaluate(() => {
      const { width, height } = document.documentElement.getBoundingClientRect();
      return { width, height };
    });
    within(sheet.width / PX_PER_MM, Number.parseFloat(attribute("width")));
    within(sheet.height / PX_PER_MM, Number.parseFloat(attribute("height")));
  });

  test.each([
    ["check-mm-across", 100],
    ["check-mm-up", 100],
    ["check-in-across", 101.6],
    ["check-in-up", 101.6],
  ])("%s measures %d mm", async (name, expected) => {
    within((await measure(name)).length, expected);
  });

  test("the outline is as long as the knife: butt to tip 225 + 10 + 128 mm, 92 mm high", async () => {
    // The dimensions that the demo's knife file gives: edge length, ricasso, tang length; heel height.
    const outline = await measure("outline");
    within(outline.width, 225 + 10 + 128);
    within(outline.height, 92);
  });

  test("hole centres stand where the file puts them, from the heel", async () => {
    const places = await page.evaluate(() =>
      [...document.querySelectorAll("circle[id^=hole-]")].map((circle) => ({
        x: Number(circle.getAttribute("cx")),
        y: Number(circle.getAttribute("cy")),
      })),
    );
    expect(places).toHaveLength(3);
    const [first, second, third] = places;
    if (!first || !second || !third) throw new Error("three holes");
    within(first.x - second.x, 84 - 26);
    within(second.x - third.x, 116 - 84);
    within(first.y - third.y, 0);
  });
});
