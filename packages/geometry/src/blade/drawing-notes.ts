import { type Finding, length } from "../errors/issue.js";
import { CORNER_TOLERANCE } from "./cut-drawing.js";
import { SNAP_TOLERANCE } from "./join-drawing.js";
import type { DrawnFrame } from "./place-drawing.js";

const DRAWING = "blade.outline.drawing";
/** Gaps below this are the rounding of the file and are closed without a word, mm. */
const NOTED_GAP = 1e-3;

/** That nothing but a px says how large the drawing is: a page in mm does not make its numbers mm. */
export function pixelNote(mmPerUnit: number): Finding[] {
  return [
    {
      severity: "note",
      code: "drawing-in-pixels",
      path: DRAWING,
      text: "The drawing has no viewBox, so a unit of it is a px: {unit} on the knife. If the sizes are wrong, save it with a viewBox, or give its scale: two points and their distance.",
      values: { unit: length(mmPerUnit) },
      basis: "SVG: a px is 1/96 in",
    },
  ];
}

/** That a drawing with its tip to the left was turned round. */
export function mirrorNote({ mirrored }: DrawnFrame): Finding[] {
  if (!mirrored) return [];
  return [
    {
      severity: "note",
      code: "drawing-mirrored",
      path: DRAWING,
      text: "The drawing has its tip to the left, so it is read mirrored: what is drawn is the left-hand face.",
      basis: "the tip lies toward +x in every outline",
    },
  ];
}

/** That ends were joined, with the widest gap, mm. */
export function joinedNote(gaps: readonly number[]): Finding[] {
  const widest = Math.max(0, ...gaps);
  if (!(widest > NOTED_GAP)) return [];
  return [
    {
      severity: "note",
      code: "drawing-ends-joined",
      path: DRAWING,
      text: "Ends in the drawing that did not meet were joined; the widest gap was {gap}. Snap them together in the editor.",
      values: { gap: length(widest), most: length(SNAP_TOLERANCE) },
      basis: "gaps to 0.05 mm are closed; common practice, no source",
    },
  ];
}

/** Which corners were moved onto the path, and how far, mm. */
export function movedNotes(beside: readonly { readonly corner: string; readonly gap: number }[]): Finding[] {
  return beside.map(({ corner, gap }) => ({
    severity: "note",
    code: "drawing-corner-moved",
    path: `blade.outline.corners.${corner}`,
    text: "The corner {corner} lies {gap} beside the path and was moved onto it.",
    values: { corner, gap: length(gap), most: length(CORNER_TOLERANCE) },
    basis: "corners to 0.5 mm beside the path are taken; common practice, no source",
  }));
}
