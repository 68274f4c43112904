import { letterName, type PatternFuller, type Segment, type Vec2 } from "@scantling/geometry";
import { type DrawingItem, strokes } from "../../drawing.js";
import { centreHalfLength, centreLine, holeMark } from "../../hole-mark.js";
import type { PatternHole, PatternModel, PatternStation } from "../../models/pattern-model.js";
import type { Role } from "../../role.js";
import type { Silhouette } from "../../silhouette.js";
import { furtherItems, outlineRole } from "./outlines.js";

/** How far a station mark reaches into the steel from the spine and from the edge, mm. */
const STATION_TICK = 3;
/** How far centre lines run past the outline, mm. */
const PAST_OUTLINE = 3;
/** Holes whose heights differ by less share one centre line, mm. */
const SAME_HEIGHT = 0.05;

/**
 * The knife itself at true size: outline, bevel line, swedge and fullers, the faces of fittings on the steel, holes with their
 * centre lines, station marks.
 */
export function patternView(model: PatternModel, silhouette: Silhouette): DrawingItem[] {
  const shared = sharedCentreLine(model.holes, silhouette);
  return [
    { kind: "path", role: outlineRole(model), paths: [model.outline], name: "outline" },
    ...furtherItems(model),
    ...lineItem("bevel-line", "bevel", model.bevelLine),
    ...lineItem("swedge-line", "bevel", model.swedge?.line ?? []),
    ...(model.fullers ?? []).map((fuller, index) => fullerItem(fuller, index, seenFace(model))),
    ...(model.fittings ?? []).flatMap(({ name, lines }) =>
      lineItem(
        name.replaceAll(" ", "-"),
        "hidden",
        lines.map((one) => [one]),
      ),
    ),
    ...holeMarks(model.holes, silhouette, shared),
    ...model.stations.map(stationMark),
  ];
}

/** All holes with their centre lines, the common one among them; named by their letters. */
export const holeMarks = (
  holes: readonly PatternHole[],
  silhouette: Silhouette,
  shared: SharedCentreLine | undefined,
): DrawingItem[] => [
  ...(shared === undefined ? [] : [shared.line]),
  ...holes.flatMap((hole, index) =>
    holeMark({
      hole,
      top: holeLineTop(hole, silhouette),
      level: shared === undefined || !shared.holes.includes(hole),
      name: `hole-${letterName(index)}`,
    }),
  ),
];

/** y at which a hole's upright centre line ends, clear of outline and hole: there its label takes over. */
export function holeLineTop({ centre, diameter, slot }: PatternHole, silhouette: Silhouette): number {
  const highest = Math.max(centre.y, slot?.to.y ?? centre.y);
  return Math.max(silhouette.topAt(centre.x) + PAST_OUTLINE, highest + centreHalfLength(diameter / 2));
}

/** Connected pieces as one part of the drawing; nothing where there are none. */
function lineItem(name: string, role: Role, runs: readonly (readonly Segment[])[]): DrawingItem[] {
  const paths = runs.filter((run) => run.length > 0).map((segments) => ({ segments, closed: false }));
  return paths.length === 0 ? [] : [{ kind: "path", role, paths, name }];
}

/** The face that the sheet shows: +z points out of the paper on the right-hand one, see {@link PatternModel}. */
export const seenFace = ({ mirror }: PatternModel): "left" | "right" => (mirror === true ? "left" : "right");

/** What is on the other face alone lies behind. */
const fullerItem = ({ faces, rim }: PatternFuller, index: number, seen: "left" | "right"): DrawingItem => ({
  kind: "path",
  role: faces === "both" || faces === seen ? "thin" : "hidden",
  paths: [rim],
  name: `fuller-${index + 1}`,
});

/** A centre line that runs through several holes of the tang. */
export interface SharedCentreLine {
  readonly line: DrawingItem;
  readonly holes: readonly PatternHole[];
}

/** One centre line for all holes of the tang, where they are level with one another. */
export function sharedCentreLine(
  holes: readonly PatternHole[],
  silhouette: Silhouette,
): SharedCentreLine | undefined {
  const tangHoles = holes.filter((hole) => frontOf(hole).x < 0);
  const first = tangHoles[0];
  if (first === undefined || tangHoles.length < 2) return undefined;
  const level = tangHoles.every(({ centre, slot }) =>
    [centre.y, slot?.to.y ?? centre.y].every((y) => Math.abs(y - first.centre.y) < SAME_HEIGHT),
  );
  if (!level) return undefined;
  const front = tangHoles.reduce((a, b) => (frontOf(b).x > frontOf(a).x ? b : a));
  const crossing = frontOf(front);
  const end: Vec2 = { x: crossing.x + centreHalfLength(front.diameter / 2), y: first.centre.y };
  const start: Vec2 = { x: silhouette.bounds.minX - PAST_OUTLINE, y: first.centre.y };
  return { line: centreLine(start, end, crossing), holes: tangHoles };
}

/** The centre of a hole; of a slot's two, the one nearer the tip. */
const frontOf = ({ centre, slot }: PatternHole): Vec2 =>
  slot !== undefined && slot.to.x > centre.x ? slot.to : centre;

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
