import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import { checkLayout } from "../../src/check-layout.js";
import { type Drawing, flattenItems, lettering, rectangle } from "../../src/drawing.js";
import { layOutSheet } from "../../src/lay-out/lay-out-sheet.js";
import type { Part } from "../../src/lay-out/part.js";
import type { SheetContent } from "../../src/lay-out/sheet-content.js";
import { type PaperName, paperNamed } from "../../src/paper.js";

/** A box with its name in it, as large as the part. */
const partOf = (name: string, width: number, height: number): Part => ({
  name: `part-${name}`,
  width,
  height,
  wish: "foot",
  items: ({ x, y }) => [
    rectangle("outline", { x: x + 0.5, y: y + 0.5 }, { x: x + width - 0.5, y: y + height - 0.5 }),
    lettering(name, { x: x + 3, y: y + 3 }, { height: 2.5 }),
  ],
});

const sheet = (parts: readonly Part[], trueSize = true): SheetContent => ({
  name: "parts",
  units: "mm",
  title: "Parts",
  describe: () => "Parts.",
  fields: ({ page, pages }) => [[{ label: "Page", value: `${page} of ${pages}`, share: 1 }]],
  trueSize,
  parts,
});

const pagesOf = (content: SheetContent, paper: PaperName = "A4"): Drawing[] =>
  layOutSheet([content], { kind: "paper", paper: paperNamed(paper) });

/** Names of the parts on each page, in the order in which they are written. */
const namesOn = (pages: readonly Drawing[]): string[][] =>
  pages.map(({ items }) =>
    items.flatMap((item) =>
      item.kind === "group" && item.name?.startsWith("part-") === true ? [item.name.slice(5)] : [],
    ),
  );

/** Lower left corner of a part, page mm. */
function cornerOf(page: Drawing | undefined, name: string): { x: number; y: number } {
  const group = page?.items.find((item) => item.kind === "group" && item.name === `part-${name}`);
  const text = group?.kind === "group" ? group.items.find((item) => item.kind === "text") : undefined;
  if (page === undefined || text?.kind !== "text") throw new Error(`no ${name}`);
  return { x: text.at.x + page.origin.x - 3, y: text.at.y + page.origin.y - 3 };
}

describe("a collection on pages", () => {
  it("is read from the top left, row by row", () => {
    const pages = pagesOf(sheet([partOf("A", 80, 40), partOf("B", 80, 40), partOf("C", 220, 40)]));
    expect(namesOn(pages)).toEqual([["A", "B", "C"]]);
    const [a, b, c] = ["A", "B", "C"].map((name) => cornerOf(pages[0], name));
    expect(a).toEqual({ x: 9, y: 210 - 9 - 40 });
    expect(b?.y).toBe(a?.y);
    expect(b?.x).toBeGreaterThanOrEqual(9 + 80 + 3);
    expect(c?.y).toBeLessThan((a?.y ?? 0) - 40);
  });

  it("spreads out where there is room", () => {
    const pages = pagesOf(sheet([partOf("A", 80, 40), partOf("B", 80, 40)]));
    expect(cornerOf(pages[0], "B").x).toBe(9 + 80 + 10);
    const full = pagesOf(sheet([partOf("A", 137, 40), partOf("B", 137, 40)]));
    expect(cornerOf(full[0], "B").x).toBe(9 + 137 + 4);
  });

  it("puts a later part on an earlier page where that saves one", () => {
    const pages = pagesOf(
      sheet([partOf("A", 150, 130), partOf("B", 240, 130), partOf("C", 240, 130), partOf("D", 90, 60)]),
    );
    expect(namesOn(pages)).toEqual([["A", "D"], ["B"], ["C"]]);
  });

  it("keeps the order where that costs no page", () => {
    const pages = pagesOf(sheet(["A", "B", "C", "D"].map((name) => partOf(name, 120, 130))));
    expect(namesOn(pages)).toEqual([
      ["A", "B"],
      ["C", "D"],
    ]);
  });

  it("turns some pages where that saves one", () => {
    // Two wide ones lie, the tall one stands.
    const parts = [partOf("A", 270, 70), partOf("B", 100, 190), partOf("C", 80, 190)];
    const pages = pagesOf(sheet(parts, false));
    expect(pages.map(({ width, height }) => width > height)).toEqual([true, false]);
    expect(namesOn(pages)).toEqual([["A"], ["B", "C"]]);
  });

  it("has check bars on each page, and none where nothing is to be measured", () => {
    const names = (pages: readonly Drawing[]): number[] =>
      pages.map(
        ({ items }) =>
          items.filter((item) => item.kind === "group" && /^check-bars|^print-note/.test(item.name ?? ""))
            .length,
      );
    const parts = ["A", "B", "C"].map((name) => partOf(name, 150, 130));
    expect(names(pagesOf(sheet(parts)))).toEqual([2, 2, 2]);
    expect(names(pagesOf(sheet(parts, false))).every((count) => count === 0)).toBe(true);
  });

  it("leaves room for scissors between what is cut out, however much or little room there is", () => {
    for (let width = 70; width <= 100; width++) {
      const cards = ["A", "B", "C", "D", "E", "F"].map((name) => ({
        ...partOf(name, width, 46),
        trueSize: true,
      }));
      const pages = pagesOf(sheet(cards));
      for (const [index, names] of namesOn(pages).entries()) {
        const corners = names.map((name) => cornerOf(pages[index], name));
        for (const [first, a] of corners.entries())
          for (const b of corners.slice(first + 1))
            expect(Math.max(Math.abs(b.x - a.x) - width, Math.abs(b.y - a.y) - 46)).toBeGreaterThanOrEqual(6);
      }
    }
  });

  it("is squeezed onto one page in another order where none of the usual ones has room", () => {
    // Sizes of the demo's plots.
    const sizes = [
      ["A", 82, 132],
      ["B", 82, 84],
      ["C", 82, 76],
      ["D", 82, 90],
      ["E", 82, 76],
    ] as const;
    const plots = sheet(
      sizes.map(([name, width, height]) => partOf(name, width, height)),
      false,
    );
    const row = [{ label: "Field", value: "what stands in it", share: 1 }];
    const pages = pagesOf({ ...plots, fields: () => [row, row, row] }, "Letter");
    expect(pages).toHaveLength(1);
    expect(namesOn(pages).flat().sort()).toEqual(["A", "B", "C", "D", "E"]);
    expect(pages.flatMap(checkLayout)).toEqual([]);
  });

  it("has slim check bars where that saves a page, as long as ever", () => {
    const usual = pagesOf(sheet([partOf("A", 250, 140)]));
    const tight = pagesOf(sheet([partOf("A", 250, 155)]));
    expect([usual.length, tight.length]).toEqual([1, 1]);
    const barsOn = (pages: readonly Drawing[]): number[] =>
      pages.flatMap(({ items }) =>
        flattenItems(items).flatMap((item) => {
          if (item.kind !== "path" || item.name?.startsWith("check-") !== true) return [];
          const box = boxOfItems([item]) ?? { minX: 0, maxX: 0, minY: 0, maxY: 0 };
          return [Math.max(box.maxX - box.minX, box.maxY - box.minY)];
        }),
      );
    expect(barsOn(tight)).toEqual(barsOn(usual));
    expect(tight.flatMap(checkLayout)).toEqual([]);
  });

  it("is refused where a part is larger than the paper", () => {
    expect(() => pagesOf(sheet([partOf("A", 300, 300)]))).toThrow(/does not fit/);
  });

  it("takes the version on the fewest pages", () => {
    const one = sheet([partOf("A", 200, 140), partOf("B", 200, 140)]);
    const other = sheet([partOf("A", 200, 60), partOf("B", 200, 60)]);
    const pages = layOutSheet([one, other], { kind: "paper", paper: paperNamed("A4") });
    expect(pages).toHaveLength(1);
  });

  it("has every part once, apart from all others, for any sizes on A4 and Letter", () => {
    const size = fc.record({
      width: fc.integer({ min: 10, max: 170 }),
      height: fc.integer({ min: 8, max: 130 }),
    });
    fc.assert(
      fc.property(fc.array(size, { minLength: 1, maxLength: 12 }), fc.boolean(), (sizes, isLetter) => {
        const parts = sizes.map(({ width, height }, index) => partOf(`${index}`, width, height));
        const pages = pagesOf(sheet(parts), isLetter ? "Letter" : "A4");
        for (const page of pages) expect(checkLayout(page)).toEqual([]);
        const found = namesOn(pages).flat().map(Number);
        expect([...found].sort((a, b) => a - b)).toEqual(parts.map((_, index) => index));
        const boxes = pages.map((page, index) =>
          (namesOn(pages)[index] ?? []).map((name) => ({
            ...cornerOf(page, name),
            ...(sizes[Number(name)] ?? { width: 0, height: 0 }),
          })),
        );
        for (const onPage of boxes) {
          for (const [index, a] of onPage.entries()) {
            for (const b of onPage.slice(index + 1)) {
              const apart = Math.max(
                b.x - a.x - a.width,
                a.x - b.x - b.width,
                b.y - a.y - a.height,
                a.y - b.y - b.height,
              );
              expect(apart).toBeGreaterThanOrEqual(3);
            }
          }
        }
      }),
      { seed: 91, numRuns: 40 },
    );
  });
});
