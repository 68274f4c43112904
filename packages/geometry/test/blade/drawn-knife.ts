import { expect } from "vitest";
import { type Outline, RUN_NAMES } from "../../src/blade/outline.js";
import { outlineFromDrawing } from "../../src/blade/outline-from-drawing.js";
import { outlineFromRuns } from "../../src/blade/outline-from-runs.js";
import type { DrawingOutlineSpec } from "../../src/blade/spec.js";
import { pointAt, type Segment } from "../../src/plane/segment.js";
import { CORNERS, IDS, svg, WHOLE } from "../drawing/drawings.js";

export const build = (drawing: string, rest: Omit<DrawingOutlineSpec, "drawing"> = { runs: IDS }) =>
  outlineFromDrawing({ drawing, ...rest });
export const byCorners = { corners: CORNERS } as const;
export const whole = (d: string = WHOLE): string => svg(`<path id="knife" d="${d}"/>`);

/** The same knife written by hand as runs: mm, y up, heel at 0, 0. */
export const HAND = outlineFromRuns({
  runs: {
    edge: "M0 0 H100 C140 0 160 10 170 30",
    spine: "L-10 40",
    tangTop: "H-120",
    butt: "A13 13 0 0 1 -120 16",
    tangBottom: "H-10",
    heelFace: "H0 V0",
  },
});

/** Greatest distance between two outlines, run by run and piece by piece, mm. */
export function difference(a: Outline, b: Outline): number {
  let worst = 0;
  for (const name of RUN_NAMES) {
    expect(
      a.runs[name].map(({ kind }) => kind),
      name,
    ).toEqual(b.runs[name].map(({ kind }) => kind));
    a.runs[name].forEach((segment, i) => {
      for (let k = 0; k <= 8; k++) {
        const p = pointAt(segment, k / 8);
        const q = pointAt(b.runs[name][i] as Segment, k / 8);
        worst = Math.max(worst, Math.hypot(p.x - q.x, p.y - q.y));
      }
    });
  }
  return worst;
}
