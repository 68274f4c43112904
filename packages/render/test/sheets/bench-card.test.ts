import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cleanText } from "../../src/clean-text.js";
import {
  benchCard,
  type CardModel,
  type CardPanel,
  type CardSide,
  checkLayout,
  type Drawing,
  flattenItems,
  paperNamed,
  type TextItem,
} from "../../src/index.js";
import { randomCard } from "./bench-card/random-card.js";

const A4 = paperNamed("A4");

const side = (name: string, panels: readonly CardPanel[]): CardSide => ({ name, panels, hazards: ["noise"] });

const rows = (count: number): string[][] =>
  Array.from({ length: count }, (_, i) => [`${i}`, (10 + i / 7).toFixed(2), (20 + i / 7).toFixed(2)]);

const stops = (title: string, count: number): CardPanel => ({
  title,
  tool: "stops, mm",
  blocks: [{ kind: "table", heads: ["", "cold", "stop"], rows: rows(count) }],
});

const card = (forge: readonly CardPanel[], bench: readonly CardPanel[], more: Partial<CardModel> = {}) => ({
  code: "K-1",
  title: "Petty",
  about: "1084 steel, edge 150 mm",
  warnings: [],
  sides: [side("At the forge", forge), side("At the bench", bench)],
  rule: "Data sheets first.",
  ...more,
});

const textsOf = (page: Drawing): TextItem[] =>
  flattenItems(page.items).filter((item): item is TextItem => item.kind === "text");
const words = (pages: readonly Drawing[]): string[] => pages.flatMap(textsOf).map(({ text }) => text);
const heightOf = (pages: readonly Drawing[], text: string): number =>
  pages.flatMap(textsOf).find((item) => item.text === text)?.height ?? 0;
const without = (text: string): string => cleanText(text).replaceAll(" ", "");

describe("the bench card", () => {
  it("gives each part of the work a page of its own, numbered through, with what can hurt there", () => {
    const pages = benchCard(card([stops("Weld", 2), stops("Down", 4)], [stops("Bevels", 3)]), A4);
    expect(pages).toHaveLength(2);
    expect(pages.map(({ width, height }) => [width, height])).toEqual([
      [210, 297],
      [210, 297],
    ]);
    const [forge = [], bench = []] = pages.map((page) => textsOf(page).map(({ text }) => text));
    expect(forge).toEqual(
      expect.arrayContaining(["K-1 Petty", "At the forge", "Page 1 of 2", "1 Weld", "2 Down"]),
    );
    expect(bench).toEqual(expect.arrayContaining(["At the bench", "Page 2 of 2", "3 Bevels"]));
    expect(forge).not.toContain("At the bench");
    expect(bench.at(-1)).toBe("Take care: noise. Data sheets first.");
  });

  it("stands upright, however the paper is given", () => {
    const lying = { width: 297, height: 210 };
    expect(benchCard(card([stops("Weld", 2)], []), lying)[0]).toMatchObject({ width: 210, height: 297 });
  });

  it("takes the largest lettering in which a part goes on its page", () => {
    const few = benchCard(card([stops("Weld", 2)], [stops("Bevels", 2)]), A4);
    expect(heightOf(few, "10.14")).toBe(7);
    // Each page by itself: a long day at the forge does not make the bench card small.
    const long = Array.from({ length: 9 }, (_, i) => stops(`Pass ${i}`, 6));
    const mixed = benchCard(card(long, [stops("Bevels", 2)]), A4);
    expect(mixed).toHaveLength(2);
    const [forge = [], bench = []] = mixed.map((page) => textsOf(page));
    const cell = (texts: readonly TextItem[]) => texts.find(({ text }) => text === "10.14")?.height ?? 0;
    expect(cell(forge)).toBeLessThan(7);
    expect(cell(bench)).toBe(7);
  });

  it("lets the parts follow one another rather than set figures small", () => {
    const long = Array.from({ length: 14 }, (_, i) => stops(`Pass ${i}`, 6));
    const pages = benchCard(card(long, [stops("Bevels", 3)]), A4);
    expect(pages).toHaveLength(2);
    expect(heightOf(pages, "10.14")).toBeGreaterThanOrEqual(3.5);
    expect(textsOf(pages[1] ?? raise()).map(({ text }) => text)).toEqual(
      expect.arrayContaining(["At the forge, bench", "15 Bevels"]),
    );
  });

  it("takes more pages rather than leave anything out", () => {
    const long = Array.from({ length: 40 }, (_, i) => stops(`Pass ${i}`, 8));
    const pages = benchCard(card(long, [stops("Bevels", 300)]), A4);
    expect(pages.length).toBeGreaterThan(2);
    // All 300 rows, and those of the passes.
    expect(words(pages).filter((text) => /^\d+\.\d\d$/u.test(text))).toHaveLength(2 * (300 + 40 * 8));
    expect(words(pages)).toContain("41 Bevels (continued)");
    expect(pages.flatMap(checkLayout)).toEqual([]);
  });

  it("tells in its head what cannot work, on every page", () => {
    const warnings = ["STOP: hole C: The centre of this 6.5 mm hole is 9 mm from the butt."];
    const pages = benchCard(card([stops("Weld", 2)], [stops("Bevels", 2)], { warnings }), A4);
    for (const page of pages) {
      const texts = textsOf(page).map(({ text }) => text);
      expect(texts.join(" ")).toContain(
        "STOP: hole C: The centre of this 6.5 mm hole is 9 mm from the butt.",
      );
    }
  });

  it("tells long warnings in full before all else, and points to them on the other pages", () => {
    const warnings = Array.from(
      { length: 12 },
      (_, i) =>
        `STOP: hole ${i}: The centre of this 6.5 mm hole is ${i}.25 mm from the butt; 9.75 mm is needed.`,
    );
    const pages = benchCard(card([stops("Weld", 2)], [stops("Bevels", 2)], { warnings }), A4);
    const all = words(pages).join(" ");
    for (const warning of warnings) expect(all).toContain(warning);
    expect(words(pages.slice(0, 1))).toContain("STOP");
    for (const [index, page] of pages.entries()) {
      const told = index === 0 ? "STOP: read what stands first below." : "STOP: read page 1 first.";
      expect(words([page])).toContain(told);
    }
    expect(pages.flatMap(checkLayout)).toEqual([]);
  });

  it("tells warnings on its first page alone rather than take a third one", () => {
    const warnings = Array.from({ length: 4 }, (_, i) => `STOP: hole ${i} is ${i}.25 mm from the butt.`);
    const told = Array.from({ length: 30 }, (_, more) => {
      const panels = Array.from({ length: 30 + more }, (_, i) => stops(`Pass ${i}`, 4));
      const pages = benchCard(card(panels, [], { warnings }), A4);
      expect(pages.flatMap(checkLayout)).toEqual([]);
      const [, second = raise()] = pages;
      return `${pages.length} ${words([second]).includes("STOP: read page 1 first.") ? "first" : "every"}`;
    });
    // The longer the card, the later of these.
    expect([...new Set(told)].slice(0, 3)).toEqual(["2 every", "2 first", "3 every"]);
  });

  it("shortens a title that no two lines hold, and nothing else", () => {
    const title = "A very long name for a knife ".repeat(12);
    const about = `1084 steel, ${"edge 225.0 mm, ".repeat(20)}overall 363.0 mm`;
    const pages = benchCard(card([stops("Weld", 2)], [], { title, about }), A4);
    const dotted = words(pages).filter((text) => text.includes("..."));
    expect(dotted).toHaveLength(1);
    expect(dotted[0]?.startsWith("name") || dotted[0]?.includes("knife")).toBe(true);
    expect(words(pages).join(" ")).toContain("overall 363.0 mm");
    expect(pages.flatMap(checkLayout)).toEqual([]);
  });

  it("refuses paper that is too small for a row of figures", () => {
    expect(() => benchCard(card([stops("Weld", 2)], []), { width: 60, height: 70 })).toThrow(
      expect.objectContaining({ code: "sheet-too-large" }),
    );
  });

  it("is the same every time", () => {
    const model = card([stops("Weld", 2)], [stops("Bevels", 2)]);
    expect(benchCard(model, A4)).toEqual(benchCard(model, A4));
  });

  it("can be read whatever it says: nothing overlaps, nothing is off the page, nothing is small or left out", () => {
    fc.assert(
      fc.property(
        randomCard,
        fc.constantFrom(A4, paperNamed("Letter"), { width: 150, height: 200 }),
        (model, paper) => {
          const pages = benchCard(model, paper);
          expect(pages.flatMap(checkLayout)).toEqual([]);
          for (const { height } of pages.flatMap(textsOf)) expect(height).toBeGreaterThanOrEqual(2.5);
          // Of warnings and words every letter is there, in order.
          const shown = without(words(pages).join(""));
          for (const warning of model.warnings) expect(shown).toContain(without(warning));
          for (const block of model.sides.flatMap(({ panels }) => panels.flatMap(({ blocks }) => blocks))) {
            if (block.kind === "words") expect(shown).toContain(without(block.text));
            if (block.kind === "table")
              for (const cell of block.rows.flat())
                if (typeof cell === "string") expect(shown).toContain(without(cell));
          }
        },
      ),
      { seed: 20260801, numRuns: 25 },
    );
  });
});

function raise(): never {
  throw new Error("no such page");
}
