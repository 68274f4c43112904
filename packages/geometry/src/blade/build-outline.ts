import type { Outline } from "./outline.js";
import { type DrawnOutline, outlineFromDrawing } from "./outline-from-drawing.js";
import { outlineFromLandmarks } from "./outline-from-landmarks.js";
import { outlineFromRuns } from "./outline-from-runs.js";
import type { KnifeSpec } from "./spec.js";

/**
 * The outline that a knife's description draws, by landmarks, runs or a drawing.
 *
 * @throws {SpecError} where none can be drawn.
 */
export function buildOutline(spec: KnifeSpec): DrawnOutline {
  const { outline, ricasso, choil } = spec.blade;
  if ("drawing" in outline) return outlineFromDrawing(outline, ricasso, spec.tang);
  const plain: Outline =
    "family" in outline
      ? outlineFromLandmarks(outline, ricasso ?? 0, spec.tang, choil)
      : outlineFromRuns(outline, ricasso, spec.tang);
  return { outline: plain, findings: [] };
}
