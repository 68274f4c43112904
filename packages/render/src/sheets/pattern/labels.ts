import { type Bounds, crossingsAtX, letterName } from "@scantling/geometry";
import { type Callout, calloutRow } from "../../callouts.js";
import { type DrawingItem, lettering } from "../../drawing.js";
import { lengthText, linesOf, sizeText } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { PatternModel } from "../../models/pattern-model.js";
import type { Silhouette } from "../../silhouette.js";
import { textWidth } from "../../text-metrics.js";
import { fullerName } from "./ground-tables.js";
import { outlineCallouts } from "./outlines.js";
import { holeLineTop } from "./view.js";

/** Above the outline, and above everything in the view, the lines to the labels begin to fan out, mm. */
const ABOVE_OUTLINE = 4;
const ABOVE_VIEW = 1;
const CAPTION_GAP = 2;
/** Labels get at least this much room along x, mm, before they are turned upright. */
const LEAST_ROOM = 200;

/**
 * The row above the knife: each station with its thickness, each hole with its letter and diameter, swedge, fullers and
 * fittings by name, and the lines themselves where there are several.
 *
 * @param view - box that holds the knife with its centre lines and marks, mm.
 */
export function patternLabels(model: PatternModel, silhouette: Silhouette, view: Bounds): DrawingItem[] {
  const places = [
    ...stationCallouts(model),
    ...holeCallouts(model, silhouette),
    ...groundCallouts(model, silhouette),
  ];
  const taken = places.map(({ from }) => from.x);
  const { callouts: lines, dots } = outlineCallouts(model, silhouette, taken);
  const callouts = [...places, ...lines];
  if (callouts.length === 0) return [];
  const { bounds } = silhouette;
  const room = Math.max(LEAST_ROOM, 1.15 * (bounds.maxX - bounds.minX));
  const fan = Math.max(bounds.maxY + ABOVE_OUTLINE, view.maxY + ABOVE_VIEW);
  const row = calloutRow(callouts, fan, room);
  return [...dots, ...row.items, ...caption(model, silhouette, row.top)];
}

function stationCallouts(model: PatternModel): Callout[] {
  return model.stations.map((station) => {
    const thickness = sizeText(station.thickness, model.units);
    const place = lengthText(station.x, model.units);
    const left = station.atSwedge === undefined ? undefined : sizeText(station.atSwedge, model.units);
    return {
      from: { x: station.x, y: station.top },
      lines: [
        ...linesOf(thickness),
        ...(left === undefined ? [] : linesOf({ ...left, main: `swedge ${left.main}` })),
        `at ${place.main}`,
      ],
    };
  });
}

/** Each hole with its letter and diameter. */
export function holeCallouts(
  model: Pick<PatternModel, "holes" | "units">,
  silhouette: Silhouette,
): Callout[] {
  return model.holes.map((hole, index) => {
    const diameter = sizeText(hole.diameter, model.units);
    return {
      from: { x: hole.centre.x, y: holeLineTop(hole, silhouette) },
      lines: [
        letterName(index),
        ...linesOf({ ...diameter, main: `${hole.slot === undefined ? "Ø" : "slot"} ${diameter.main}` }),
      ],
    };
  });
}

/** Names of what the tables under the knife give the sizes of. */
function groundCallouts(model: PatternModel, silhouette: Silhouette): Callout[] {
  const { swedge, fullers = [], fittings = [] } = model;
  const onSpine = (from: number, to: number, name: string): Callout => {
    const { minX, maxX } = silhouette.bounds;
    const x = Math.min(maxX, Math.max(minX, (from + to) / 2));
    return { from: { x, y: silhouette.topAt(x) }, lines: [name] };
  };
  return [
    ...(swedge === undefined ? [] : [onSpine(swedge.from, swedge.to, "swedge")]),
    ...fullers.map(({ from, to, rim }, index): Callout => {
      const x = (from.x + to.x) / 2;
      const y = Math.max(...crossingsAtX(rim, x).map(({ point }) => point.y));
      return { from: { x, y }, lines: [fullerName(index, fullers.length)] };
    }),
    ...fittings.map(({ name, front, rear }) => onSpine(front, rear, name)),
  ];
}

function caption(model: PatternModel, silhouette: Silhouette, top: number): DrawingItem[] {
  if (model.stations.length === 0) return [];
  const swedged = model.stations.some(({ atSwedge }) => atSwedge !== undefined);
  const state = model.further === undefined ? "" : `, ${model.state}`;
  const text = `Thickness at the spine${swedged ? " without its swedge, and with it" : ""}${state}, at distances from the heel`;
  // Flush with the tip's side, over the stations, but never farther left than the view.
  const width = textWidth(text, SMALL);
  const { minX, maxX } = silhouette.bounds;
  const x = Math.max(minX, Math.min(0, maxX - width));
  // Nothing else stands on its line, so that it may keep clear of a joint of pages.
  const room = { from: minX - x, to: Math.max(minX, maxX - width) - x };
  return [{ ...lettering(text, { x, y: top + CAPTION_GAP }, { height: SMALL }), slide: [room] }];
}
