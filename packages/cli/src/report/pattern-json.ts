import type { Drawing } from "@scantling/render";
import type { DrawnSheets } from "../sheets/draw-sheets.js";

/** A page that was written: its sheet, and the file that it is in. */
export interface WrittenPage {
  readonly sheet: string;
  readonly drawing: Drawing;
  readonly format: string;
  readonly file: string;
}

/**
 * Where the drawings are, for programs: `scantling/pattern/1`; one entry a page. One user unit of an SVG or DXF is one mm of
 * steel; `correction` is what a page was stretched by for the printer.
 */
export function patternJson(
  pages: readonly WrittenPage[],
  states: readonly string[],
  missing: DrawnSheets["missing"],
): unknown {
  return {
    schema: "scantling/pattern/1",
    sheets: pages.map(({ sheet, drawing, format, file }) => {
      const { width, height, paper, correction } = drawing;
      const ofSheet = pages.filter((page) => page.sheet === sheet);
      return {
        file,
        format,
        sheet,
        ...(sheet === "pattern" || sheet === "mirrored" ? { state: states.join(", ") } : {}),
        page: ofSheet.findIndex((page) => page.drawing === drawing) + 1,
        pages: ofSheet.length,
        widthMm: width,
        heightMm: height,
        ...(paper === undefined ? {} : { paper }),
        ...(correction === undefined ? {} : { correction }),
        ratio: 1,
      };
    }),
    ...(missing.length === 0 ? {} : { missing }),
  };
}
