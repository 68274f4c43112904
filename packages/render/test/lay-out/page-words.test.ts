import { expect, it } from "vitest";
import { flattenItems } from "../../src/drawing.js";
import { checkLayout } from "../../src/index.js";
import type { SheetContent } from "../../src/lay-out/sheet-content.js";
import { pageWords } from "../../src/lay-out/tiling/page-words.js";
import { tileFrame } from "../../src/lay-out/tiling/tile-frame.js";
import { patternContents } from "../../src/sheets/pattern-sheet.js";
import { plainKnife } from "../plain-knife.js";

const [content] = patternContents(plainKnife(360, 40, "mm"));
if (content === undefined) throw new Error("a knife has a pattern");
const STOP = "STOP: hole C: The centre of this 6.5 mm hole is 9 mm from the butt.";

const whole = content;

function wordsOn(width: number, height: number, changes: Partial<SheetContent>, corrected = false): string[] {
  const frame = tileFrame({ width, height }, 6);
  if (frame === undefined) return [];
  const page = { label: "B12", info: { page: 12, pages: 24, paper: undefined }, corrected };
  const items = pageWords({ ...whole, ...changes }, frame, page);
  expect(checkLayout({ width, height, origin: { x: 0, y: 0 }, title: "", description: "", items })).toEqual(
    [],
  );
  return flattenItems(items).flatMap((item) => (item.kind === "text" ? [item.text] : []));
}

it("the words about printing are whole on every page, beside warnings too", () => {
  let pages = 0;
  for (const warnings of [[], ["STOP: too thin."], [STOP]]) {
    for (const corrected of [false, true]) {
      for (let long = 185; long < 330; long += 7) {
        for (const [width, height] of [
          [150, long],
          [long, 150],
          [long, 210],
        ] as const) {
          const words = wordsOn(width, height, { warnings }, corrected);
          if (words.length === 0) continue;
          pages++;
          expect(words.some((text) => text.includes("PRINT AT 100 %."))).toBe(true);
        }
      }
    }
  }
  expect(pages).toBeGreaterThan(100);
});

it("what stops the job is whole, or points to the page where it is; the sheet keeps its name", () => {
  let pointed = 0;
  for (const lineNote of [undefined, 'saw line 0.031" [0.79 mm] outside']) {
    for (let long = 185; long < 330; long += 7) {
      for (const [width, height] of [
        [150, long],
        [long, 150],
        [long, 210],
      ] as const) {
        const words = wordsOn(width, height, {
          warnings: [STOP],
          name: "sheath",
          ...(lineNote === undefined ? {} : { lineNote }),
        });
        if (words.length === 0) continue;
        const said = words.join(" ");
        // No number: a page has one in its sheet and one in its file.
        const isPointed = words.some((text) =>
          /^STOP[^\d]* title(?: block)?(?: of this sheet first)?\.?$/u.test(text),
        );
        expect(said.includes(STOP) || isPointed).toBe(true);
        if (!said.includes(STOP)) pointed++;
        if (lineNote === undefined) expect(said).toMatch(/sheath|true-size pattern/u);
      }
    }
  }
  expect(pointed).toBeGreaterThan(10);
});

it("a long warning has two lines before the order and the page are told", () => {
  const words = wordsOn(297, 210, { warnings: [STOP] });
  const lines = words.filter((text) => !/^B12$|PRINT/u.test(text));
  expect(lines.join(" ")).toBe(STOP);
  expect(lines).toHaveLength(2);
  expect(words.at(-1)).toMatch(/PRINT AT 100 %\.$/u);
});
