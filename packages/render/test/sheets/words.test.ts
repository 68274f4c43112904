import { describe, expect, it } from "vitest";
import { KEY } from "../../src/lettering-size.js";
import { pageWords } from "../../src/sheets/words.js";
import { textWidth } from "../../src/text-metrics.js";
import { TITLE_BLOCK_WIDTH } from "../../src/title-block.js";

describe("what a title block says of its page", () => {
  it("has room in its field on every paper, on 99 pages", () => {
    for (const paper of ["A4", "A3", "A2", "A1", "A0", "Letter", "Tabloid"] as const)
      for (const page of [
        { paper, page: 99, pages: 99 },
        { paper, page: 1, pages: 1 },
      ])
        expect(textWidth(pageWords(page), KEY)).toBeLessThanOrEqual(0.58 * TITLE_BLOCK_WIDTH - 3);
  });
});
