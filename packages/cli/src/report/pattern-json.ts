import type { DrawnSheet } from "../draw-pattern.js";

/** Where the drawing is, for programs: `scantling/pattern/1`. One user unit of the file is one mm of steel. */
export function patternJson(sheet: DrawnSheet, path: string): unknown {
  return {
    schema: "scantling/pattern/1",
    sheets: [
      {
        file: path,
        format: sheet.format,
        state: sheet.state,
        widthMm: sheet.width,
        heightMm: sheet.height,
        ...(sheet.paper === undefined ? {} : { paper: sheet.paper }),
        ratio: 1,
      },
    ],
  };
}
