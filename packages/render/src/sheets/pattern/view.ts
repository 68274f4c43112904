import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, strokes } from "../../drawing.js";
import { centreHalfLength, centreLine, holeMark } from "../../hole-mark.js";
import type { PatternHole, PatternModel, PatternStation } from "../../pattern-model.js";
import type { Silhouette } from "./silhouette.js";

/** How far a station mark reaches into the steel from the spine and from the edge, mm. */
const STATION_TICK = 3;
/** How far centre lines run past the outline, mm. */
const PAST_OUTLINE = 3;
/** Holes whose heights differ by less share one centre line, mm. */
const SAME_HEIGHT = 0.05;

/** The knife itself at true size: outline, bevel line, holes with their centre lines, station marks. */
export function patternView(model: PatternModel, silhouette: Silhouette): DrawingItem[] {
  const shared = sharedCentreLine(model.holes, silhouette);
  return [
    { kind: "path", role: "outline", paths: [model.outline], name: "outline" },
    ...finishedItems(model),
    ...bevelItems(model),
    ...(shared === undefined ? [] : [shared.line]),
    ...model.holes.flatMap((hole, index) =>
      holeMark({
        centre: hole.centre,
        radius: hole.diameter / 2,
        top: holeLineTop(hole, silhouette),
        level: shared === undefined || !shared.holes.includes(hole),
        name: `hole-${holeLetter(index)}`,
      }),
    ),
    ...model.stations.map(stationMark),
  ];
}

/** A, B, … Z, A2, B2, …: how a hole is called on the sheet. */
export function holeLetter(index: number): string {
  const round = Math.floor(index / 26);
  return `${String.fromCharCode(65 + (index % 26))}${round === 0 ? "" : round + 1}`;
}

/** y at which a hole's upright centre line ends, clear of outline and hole: there its label takes over. */
export function holeLineTop(hole: PatternHole, silhouette: Silhouette): number {
  const { centre, diameter } = hole;
  return Math.max(silhouette.topAt(centre.x) + PAST_OUTLINE, centre.y + centreHalfLength(diameter / 2));
}

/** The finished outline inside another state's, dashed: what is left when the profile is trimmed. */
function finishedItems({ finishedOutline }: PatternModel): DrawingItem[] {
  if (finishedOutline === undefined) return [];
  return [{ kind: "path", role: "hidden", paths: [finishedOutline], name: "finished-outline" }];
}

function bevelItems(model: PatternModel): DrawingItem[] {
  const pieces = model.bevelLine.filter((piece) => piece.length > 0);
  if (pieces.length === 0) return [];
  const paths = pieces.map((segments) => ({ segments, closed: false }));
  return [{ kind: "path", role: "bevel", paths, name: "bevel-line" }];
}

function sharedCentreLine(
  holes: readonly PatternHole[],
  silhouette: Silhouette,
): { line: DrawingItem; holes: readonly PatternHole[] } | undefined {
  const tangHoles = holes.filter((hole) => hole.centre.x < 0);
  const first = tangHoles[0];
  if (first === undefined || tangHoles.length < 2) return undefined;
  const level = tangHoles.every((hole) => Math.abs(hole.centre.y - first.centre.y) < SAME_HEIGHT);
  if (!level) return undefined;
  const front = tangHoles.reduce((a, b) => (b.centre.x > a.centre.x ? b : a));
  const end: Vec2 = { x: front.centre.x + centreHalfLength(front.diameter / 2), y: first.centre.y };
  const start: Vec2 = { x: silhouette.bounds.minX - PAST_OUTLINE, y: first.centre.y };
  return { line: centreLine(start, end, front.centre), holes: tangHoles };
}

function stationMark(station: PatternStation): DrawingItem {
  const { x, top, bottom } = station;
  const tick = Math.min(STATION_TICK, (top - bottom) / 3);
  return strokes("thin", [
    [
      { x, y: top },
      { x, y: top - tick },
    ],
    [
      { x, y: bottom },
      { x, y: bottom + tick },
    ],
  ]);
}
