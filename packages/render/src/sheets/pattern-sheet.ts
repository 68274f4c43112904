import { type Bounds, invariant } from "@scantling/geometry";
import { inchesToMm } from "@scantling/geometry/units";
import { boxOfItems } from "../box.js";
import { CHECK_BARS_END, CHECK_BARS_OVER, CHECK_BARS_UNDER, checkBars, INCH_BAR } from "../calibration.js";
import { type Drawing, type DrawingItem, moveItem, rectangle } from "../drawing.js";
import type { PatternModel } from "../pattern-model.js";
import { patternDimensions } from "./pattern/dimensions.js";
import { type Foot, footLayouts } from "./pattern/foot.js";
import { patternLabels } from "./pattern/labels.js";
import { silhouetteOf } from "./pattern/silhouette.js";
import { patternView } from "./pattern/view.js";
import { patternTexts } from "./pattern/words.js";

/** From the page's edge to the frame, mm: most printers reach that far. */
const FRAME_MARGIN = 7;
/** From the frame to what it holds, mm. */
const PADDING = 5;
/** Between the parts of the sheet, mm. */
const GAP = 6;
/** Column for the upright check bars, whole mm. */
const COLUMN = Math.ceil(CHECK_BARS_OVER) + Math.ceil(CHECK_BARS_UNDER);
/** Where both pairs of check bars begin, over the frame's lower line; whole mm. */
const BARS_FOOT = PADDING + Math.ceil(CHECK_BARS_UNDER);

/**
 * The true-size pattern of a blade: one page just large enough, blade level, tip to the right, edge down.
 *
 * The curves of the model are drawn as they are, moved by whole mm only; nothing is measured on the drawing. Where
 * labels are many they are moved apart or turned upright, and the page grows: lettering is never set smaller.
 *
 * @example
 * const svg = await toSvg(patternSheet(model));
 */
export function patternSheet(model: PatternModel): Drawing {
  const silhouette = silhouetteOf(model.outline);
  const view = patternView(model, silhouette);
  const taken = boxOfItems(view) ?? silhouette.bounds;
  const knife: DrawingItem[] = [
    { kind: "group", name: "knife", items: view },
    { kind: "group", name: "labels", items: patternLabels(model, silhouette, taken) },
    { kind: "group", name: "dimensions", items: patternDimensions(model, silhouette, taken) },
  ];
  const zone = boxOfItems(knife);
  const drawnLength = silhouette.bounds.maxX - silhouette.bounds.minX;
  invariant(Math.abs(drawnLength - model.overallLength) < 0.005, "the overall length is that of the outline");
  invariant(zone !== undefined, "an outline has segments");

  const { foot, page } = smallestPage(footLayouts(model), zone);
  const right = page.width - FRAME_MARGIN;
  const top = page.height - FRAME_MARGIN;
  const column = FRAME_MARGIN + PADDING;
  const bars = { x: column + Math.ceil(CHECK_BARS_OVER), y: FRAME_MARGIN + BARS_FOOT };
  const note = { x: column + COLUMN + GAP, y: FRAME_MARGIN + PADDING };
  const origin = {
    x: middle(note.x - GAP / 2, right - PADDING, zone.minX, zone.maxX),
    y: middle(FRAME_MARGIN + foot.height + GAP, top - PADDING, zone.minY, zone.maxY),
  };
  const surround: DrawingItem[] = [
    rectangle("frame", { x: FRAME_MARGIN, y: FRAME_MARGIN }, { x: right, y: top }),
    { kind: "group", name: "check-bars-up", items: checkBars("up", bars) },
    { kind: "group", name: "foot", items: foot.items({ note, right, bottom: FRAME_MARGIN }) },
  ];
  const items = [...surround.map((item) => moveItem(item, -origin.x, -origin.y)), ...knife];
  return { ...page, origin, ...patternTexts(model), items };
}

/** Whole mm by which to move a part so that it stands in the middle of its room. */
const middle = (from: number, to: number, low: number, high: number): number =>
  Math.round((from + to) / 2 - (low + high) / 2);

/** Share of the paper below which a saving counts. */
const WORTH_SAVING = 0.95;

interface Page {
  readonly width: number;
  readonly height: number;
}

/** The first layout, unless another one saves more than it is worth. */
function smallestPage(layouts: readonly Foot[], zone: Bounds): { foot: Foot; page: Page } {
  const choices = layouts.map((foot) => ({ foot, page: pageFor(foot, zone) }));
  return choices.reduce((a, b) => (needs(b.page) < WORTH_SAVING * needs(a.page) ? b : a));
}

/** Longer side of the paper in ISO 216 proportions, side to side as 1 to √2, that holds the page, mm. */
const needs = (page: Page): number => Math.max(page.width, page.height * Math.SQRT2);

function pageFor(foot: Foot, zone: Bounds): Page {
  const beside = PADDING + COLUMN + GAP;
  const barsTop = BARS_FOOT + inchesToMm(INCH_BAR) + CHECK_BARS_END;
  // One mm more than the parts need: the knife is moved by whole mm.
  const width = beside + Math.max(zone.maxX - zone.minX + PADDING + 1, foot.width);
  const height = Math.max(foot.height + GAP + zone.maxY - zone.minY + PADDING + 1, barsTop);
  return { width: Math.ceil(width) + 2 * FRAME_MARGIN, height: Math.ceil(height) + 2 * FRAME_MARGIN };
}
