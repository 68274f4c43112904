import { boxOfItems } from "../../box.js";
import { extensionLine, levelDimension, uprightDimension } from "../../dimension.js";
import type { DrawingItem } from "../../drawing.js";
import { centreHalfLength } from "../../hole-mark.js";
import { onOneLine, sizeText } from "../../label-text.js";
import type { DrillingModel, DrillingPlace } from "../../models/drilling-model.js";
import type { Silhouette } from "../../silhouette.js";
import { inOrder } from "../pattern/upright-dimensions.js";

/** From the lowest thing in the view to the first dimension line, and from one line to the next, mm. */
const FIRST_ROW = 8;
const ROW = 8;
/** From the outline to an upright dimension line, mm. */
const FROM_OUTLINE = 9;
/** Centres nearer than this along x share one dimension, mm. */
const SAME_PLACE = 0.01;
/** Centres that are dimensioned from one end; all stand in the table. */
const MOST = 5;
/** Clear space between a feature and the start of its extension line, mm. */
const GAP = 1;

/**
 * From the butt end, and from the heel, to the nearest centres, one line each, the shortest uppermost; and how far in from
 * a level edge of the tang the centres lie. What would stand in the way of something is left to the table.
 *
 * @param others - what stands in the view already.
 * @param shared - whether a common centre line runs through the holes of the tang and past the butt.
 */
export function drillingDimensions(
  model: DrillingModel,
  silhouette: Silhouette,
  others: readonly DrawingItem[],
  shared: boolean,
): DrawingItem[] {
  const places = model.holes.flatMap((hole) => hole.places);
  const rows = (["butt end", "heel"] as const).flatMap((end) =>
    distinct(places.filter((place) => place.end === end)).map((place, row) => ({ place, row })),
  );
  const ends = { "butt end": silhouette.bounds.minX, heel: 0 };
  const lowest = boxOfItems(others)?.minY ?? silhouette.bounds.minY;
  const items: DrawingItem[] = [];
  const keep = (more: readonly DrawingItem[]): void => {
    if (inOrder([...others, ...items, ...more])) items.push(...more);
  };
  for (const { place, row } of rows) {
    const own = rows.filter((other) => other.place.end === place.end);
    const y = (place.end === "heel" ? lowest : underTang(silhouette, own)) - FIRST_ROW - ROW * row;
    const from = ends[place.end];
    // Extension lines of the rows below pass this one; those of the rows above have ended.
    const passing = own.filter((other) => other.row >= row).map((other) => other.place.centre.x);
    const low = (x: number): DrawingItem => extensionLine({ x, y: silhouette.bottomAt(x) }, y);
    keep([
      low(from),
      low(place.centre.x),
      ...levelDimension({
        from,
        to: place.centre.x,
        y,
        text: onOneLine(sizeText(place.along, model.units)),
        clearOf: [from, ...passing],
        beside: place.end === "heel" ? "right" : "left",
      }),
    ]);
  }
  keep(inFromEdge(model, silhouette, shared));
  return items;
}

/** Clear of the centre lines, which run past the rims, mm. */
const UNDER_TANG = 3;
const LOOKS = 60;

/** The lowest place of the steel from the butt to the foremost of the centres: the blade itself may hang far lower. */
function underTang(
  { bounds, bottomAt }: Silhouette,
  rows: readonly { readonly place: DrillingPlace }[],
): number {
  const front = Math.max(...rows.map(({ place }) => place.centre.x));
  const looks = Array.from({ length: LOOKS + 1 }, (_, look) =>
    bottomAt(bounds.minX + ((front - bounds.minX) * look) / LOOKS),
  );
  return Math.min(...looks) - UNDER_TANG;
}

/** Centres in order of their distance, one for each. */
function distinct(places: readonly DrillingPlace[]): DrillingPlace[] {
  return [...places]
    .filter(({ along }) => along > SAME_PLACE)
    .sort((a, b) => a.along - b.along)
    .filter(({ along }, index, all) => along - (all[index - 1]?.along ?? 0) > SAME_PLACE)
    .slice(0, MOST);
}

/** From a level edge of the tang to its holes, where one figure holds for all of them. */
function inFromEdge(model: DrillingModel, { bounds }: Silhouette, shared: boolean): DrawingItem[] {
  const { levelEdge, holes, units } = model;
  const inTang = holes.filter(({ centre, slot }) => Math.max(centre.x, slot?.to.x ?? centre.x) < 0);
  const [first] = inTang;
  if (levelEdge === undefined || first === undefined || (inTang.length > 1 && !shared)) return [];
  const { y } = first.centre;
  const [low, high] = [Math.min(y, levelEdge.y), Math.max(y, levelEdge.y)];
  const edgeFrom = levelEdge.rear - GAP;
  const holeFrom = shared
    ? bounds.minX - 4
    : Math.min(first.centre.x, first.slot?.to.x ?? first.centre.x) -
      centreHalfLength(first.diameter / 2) -
      GAP;
  return uprightDimension({
    low,
    high,
    lowFrom: levelEdge.side === "top" ? holeFrom : edgeFrom,
    highFrom: levelEdge.side === "top" ? edgeFrom : holeFrom,
    x: bounds.minX - FROM_OUTLINE,
    ...sizeText(high - low, units),
  });
}
