import { pathBounds } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkLayout } from "../../src/check-layout.js";
import { type DrawingItem, flattenItems } from "../../src/drawing.js";
import { customerPage } from "../../src/html/customer-page.js";
import { paperNamed } from "../../src/paper.js";
import { customerPicture, customerSheet } from "../../src/sheets/customer-sheet.js";
import { customerOf, randomCustomer } from "../customer-fixture.js";
import { harvestKnife } from "../fixtures.js";

const PAPERS = ["A4", "Letter"] as const;

const steelOf = (items: readonly DrawingItem[]) =>
  flattenItems(items).find((item) => item.kind === "path" && item.name === "steel");

/** Overall length of the steel that is drawn, mm on paper. */
function drawnLength(items: readonly DrawingItem[]): number {
  const steel = steelOf(items);
  if (steel?.kind !== "path") throw new Error("no steel is drawn");
  const bounds = steel.paths.map(pathBounds);
  return Math.max(...bounds.map(({ maxX }) => maxX)) - Math.min(...bounds.map(({ minX }) => minX));
}

const textsOf = (items: readonly DrawingItem[]): string[] =>
  flattenItems(items).flatMap((item) => (item.kind === "text" ? [item.text] : []));

describe("the customer's sheet of the demo", () => {
  const model = customerOf(harvestKnife());

  it.each(PAPERS)("is an offer on standing %s and a drawing on lying paper", (name) => {
    const { width, height } = paperNamed(name);
    expect(
      customerSheet(model, paperNamed(name)).map((page) => [page.width, page.height, page.title]),
    ).toEqual([
      [height, width, expect.stringContaining(": offer")],
      [width, height, expect.stringContaining(": drawing")],
    ]);
  });

  it("draws the knife at the ratio that it states, and tells its sizes in full", () => {
    const [, drawing] = customerSheet(model, paperNamed("A4"));
    const items = drawing?.items ?? [];
    expect(textsOf(items)).toContain("1 : 2");
    expect(drawnLength(items)).toBeCloseTo(363 / 2, 9);
    expect(textsOf(items)).toEqual(
      expect.arrayContaining(['363 mm [14 19/64"]', '225 mm [8 55/64"]', "4.6 mm"]),
    );
  });

  it("is at true size where that fits", () => {
    const [, drawing] = customerSheet(model, paperNamed("A3"));
    expect(textsOf(drawing?.items ?? [])).toContain("1 : 1");
    expect(drawnLength(drawing?.items ?? [])).toBeCloseTo(363, 9);
  });

  it("has the picture of the page for the screen no wider than a printed page", () => {
    const { drawing, ratio } = customerPicture(model, 180);
    expect(ratio).toBe(2.5);
    expect(drawnLength(drawing.items)).toBeCloseTo(363 / ratio, 9);
    expect(drawing.width).toBeLessThanOrEqual(181);
    expect(checkLayout(drawing)).toEqual([]);
  });

  it("has lines to sign on, for both, and says what is not met", () => {
    const [offer, drawing] = customerSheet(model, paperNamed("A4"));
    const words = textsOf(offer?.items ?? []);
    expect(words).toEqual(expect.arrayContaining(["The customer", "The maker"]));
    expect(words.filter((text) => text === "name, date")).toHaveLength(2);
    expect(words.join(" ")).toContain("45 mm to 50 mm: NOT MET");
    expect(textsOf(drawing?.items ?? [])).toContain("Agreed, revision A: customer, date");
  });
});

describe("any customer's sheet", () => {
  it("can be read on A4 and Letter: nothing on anything, nothing off the page", () => {
    fc.assert(
      fc.property(randomCustomer, fc.constantFrom(...PAPERS), (model, name) => {
        for (const page of customerSheet(model, paperNamed(name))) expect(checkLayout(page)).toEqual([]);
      }),
      { seed: 21, numRuns: 60 },
    );
  });

  it("is one page of HTML without a script, all texts escaped, all tags closed", async () => {
    await fc.assert(
      fc.asyncProperty(randomCustomer, async (model) => {
        const html = await customerPage(model);
        expect(html).not.toMatch(/<script|<iframe|<link|<img|javascript:|\son\w+\s*=/iu);
        expect(html).not.toMatch(/(?:src|href)\s*=\s*"(?!#)/iu);
        expect(unclosed(html)).toEqual([]);
        expect([...html.matchAll(/<svg /gu)]).toHaveLength(1);
      }),
      { seed: 22, numRuns: 40 },
    );
  });
});

const VOID = ["meta", "!doctype"];

/** Tags that do not close in order, read as XML does. */
function unclosed(html: string): string[] {
  const open: string[] = [];
  const body = html.replace(/<style>[\s\S]*?<\/style>/u, "");
  for (const [, close, name = "", rest = ""] of body.matchAll(/<(\/?)([!\w]+)([^<>]*)>/gu)) {
    if (VOID.includes(name) || rest.endsWith("/")) continue;
    if (close === "") open.push(name);
    else if (open.pop() !== name) return [`</${name}>`];
  }
  return open;
}
