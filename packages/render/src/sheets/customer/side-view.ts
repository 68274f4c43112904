import { type Bounds, type Path, pathBounds } from "@scantling/geometry";

import { boxOfItems } from "../../box.js";
import { type Callout, calloutRow } from "../../callouts.js";
import { type DrawingItem, lettering } from "../../drawing.js";
import { linesOf, sizeText } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { CustomerView } from "../../models/customer-model.js";
import { type Silhouette, silhouetteOf } from "../../silhouette.js";
import { patternDimensions } from "../pattern/dimensions.js";
import { patternView } from "../pattern/view.js";
import { scaledView } from "./scaled.js";

/** Above everything in the view the lines to the labels begin to fan out, mm. */
const ABOVE_VIEW = 2;
const CAPTION_GAP = 2;
/** Labels get at least this much room along x, mm, before they are turned upright. */
const LEAST_ROOM = 150;

/**
 * The knife from its right side with its main sizes, and its thickness at stations; drawn 1 : `ratio`.
 *
 * @returns items about the drawn heel, mm on paper.
 */
export function sideView(view: CustomerView, ratio: number): DrawingItem[] {
  const { pattern, seen, inside, handle } = scaledView(view, ratio);
  const silhouette = silhouetteOfAll([pattern.outline, ...handle]);
  const path = (name: string, role: "outline" | "hidden", paths: readonly Path[]): DrawingItem[] =>
    paths.length === 0 ? [] : [{ kind: "path", role, paths: [...paths], name }];
  const open = (runs: CustomerView["seen"]): Path[] =>
    runs.filter((run) => run.length > 0).map((segments) => ({ segments, closed: false }));
  // The view of the pattern without its outline and station marks: those of the tang may lie inside the handle.
  const ground = patternView({ ...pattern, outline: NO_PATH, stations: [] }, silhouette).filter(
    (item) => !("name" in item) || item.name !== "outline",
  );
  const items = [
    ...path("steel", "outline", open(seen)),
    ...path("inside", "hidden", open(inside)),
    ...path("handle", "outline", handle),
    ...ground,
  ];
  const box = boxOfItems(items) ?? silhouette.bounds;
  const dimensions = patternDimensions(pattern, { silhouette, items, box, roomy: true, beside: false });
  return [...items, ...dimensions.items, ...thicknessLabels(view, ratio, silhouette, box)];
}

const NO_PATH: Path = { segments: [], closed: true };

/** How a number of closed outlines bounds the paper about it together. */
function silhouetteOfAll(paths: readonly Path[]): Silhouette {
  const all = paths.map((path) => ({ box: pathBounds(path), own: silhouetteOf(path) }));
  const bounds: Bounds = {
    minX: Math.min(...all.map(({ box }) => box.minX)),
    maxX: Math.max(...all.map(({ box }) => box.maxX)),
    minY: Math.min(...all.map(({ box }) => box.minY)),
    maxY: Math.max(...all.map(({ box }) => box.maxY)),
  };
  const over = (x: number): Silhouette[] => {
    const within = Math.min(bounds.maxX, Math.max(bounds.minX, x));
    const there = all.filter(({ box }) => box.minX <= within && within <= box.maxX);
    return there.map(({ own }) => own);
  };
  return {
    bounds,
    topAt: (x) => Math.max(...over(x).map((own) => own.topAt(x))),
    bottomAt: (x) => Math.min(...over(x).map((own) => own.bottomAt(x))),
  };
}

/** The thickness of the spine at the stations of the blade, over the view. */
function thicknessLabels(
  { pattern }: CustomerView,
  ratio: number,
  silhouette: Silhouette,
  box: Bounds,
): DrawingItem[] {
  const callouts = pattern.stations
    .filter(({ x }) => x >= 0)
    .map(({ x, thickness }): Callout => {
      const at = x / ratio;
      return {
        from: { x: at, y: silhouette.topAt(at) },
        lines: linesOf(sizeText(thickness, pattern.units)),
      };
    });
  if (callouts.length === 0) return [];
  const { minX, maxX } = silhouette.bounds;
  const row = calloutRow(callouts, box.maxY + ABOVE_VIEW, Math.max(LEAST_ROOM, maxX - minX));
  return [
    ...row.items,
    lettering("Thickness at the spine", { x: 0, y: row.top + CAPTION_GAP }, { height: SMALL }),
  ];
}
