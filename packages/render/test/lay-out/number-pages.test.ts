import { describe, expect, it } from "vitest";
import { checkLayout } from "../../src/check-layout.js";
import { flattenItems } from "../../src/drawing.js";
import { layOutSheet } from "../../src/lay-out/lay-out-sheet.js";
import { numberPages } from "../../src/lay-out/number-pages.js";
import { paperNamed } from "../../src/paper.js";
import { patternContents } from "../../src/sheets/pattern-sheet.js";
import { harvestKnife } from "../fixtures.js";

const STOP = "STOP: hole A: the wall is 1.2 mm thick; at least 3 mm is needed.";

describe("pages of a file with what stops the work", () => {
  const contents = patternContents(harvestKnife()).map((content) => ({ ...content, warnings: [STOP] }));
  const sheets = layOutSheet(contents, { kind: "paper", paper: paperNamed("A4") });
  const pages = numberPages(sheets);

  it("say on each which it is and why the work is stopped, and can be read", () => {
    expect(pages.length).toBeGreaterThan(1);
    for (const [index, page] of pages.entries()) {
      const texts = flattenItems(page.items).flatMap((item) => (item.kind === "text" ? [item] : []));
      expect(texts.map(({ text }) => text)).toContain(`file page ${index + 1} of ${pages.length}`);
      expect(texts.some(({ text, bold }) => bold === true && text.startsWith("STOP: hole A"))).toBe(true);
      expect(checkLayout(page)).toEqual([]);
    }
  });
});
