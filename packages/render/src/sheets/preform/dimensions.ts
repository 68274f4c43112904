import type { Bounds } from "@scantling/geometry";
import { extensionLine, levelDimension } from "../../dimension.js";
import type { DrawingItem } from "../../drawing.js";
import { onOneLine } from "../../label-text.js";
import type { PreformModel } from "../../models/preform-model.js";
import type { Silhouette } from "../../silhouette.js";
import { ruleText } from "./figures.js";
import { hotSizeOf } from "./view.js";

/** From the lowest thing in the view to the first dimension line, and from one line to the next, mm. */
const FIRST_ROW = 8;
const ROW = 8;

/** Handle, blade and whole under the preform, as they are drawn: hot. */
export function preformDimensions(model: PreformModel, silhouette: Silhouette, view: Bounds): DrawingItem[] {
  const hot = hotSizeOf(model);
  const places = [0, hot(model.shoulder), hot(model.length)] as const;
  const [butt, shoulder, end] = places;
  const parts = view.minY - FIRST_ROW;
  const overall = parts - ROW;
  const level = (from: number, to: number, y: number): DrawingItem[] =>
    levelDimension({
      from,
      to,
      y,
      text: `hot ${onOneLine(ruleText(to - from, model.units))}`,
      clearOf: y === overall ? [butt, end] : places,
      beside: from < shoulder ? "left" : "right",
    });
  const below = (x: number, row: number): DrawingItem => extensionLine({ x, y: silhouette.bottomAt(x) }, row);
  return [
    below(butt, overall),
    extensionLine(
      { x: shoulder, y: Math.min(silhouette.bottomAt(shoulder), silhouette.bottomAt(shoulder + 1e-3)) },
      parts,
    ),
    below(end, overall),
    ...level(butt, shoulder, parts),
    ...level(shoulder, end, parts),
    ...level(butt, end, overall),
  ];
}
