import type { Drawing } from "../drawing.js";
import type { PaperSize } from "../paper.js";
import type { SheetContent, SheetView } from "./sheet-content.js";

/** PLACEHOLDER written by the integrator, to be replaced. */
export function onTiles(_content: SheetContent, _view: SheetView, _paper: PaperSize): Drawing[] | undefined {
  return undefined;
}
