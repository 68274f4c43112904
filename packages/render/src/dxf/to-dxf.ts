import { invariant, type Vec2 } from "@scantling/geometry";
import { boxOfItems } from "../box.js";
import { METRIC_BAR } from "../calibration.js";
import { type Drawing, lettering, polyline } from "../drawing.js";
import { SMALL } from "../lettering-size.js";
import type { Role } from "../role.js";
import { dxfText } from "./dxf-text.js";
import { circleEntity, pathEntity, textEntity } from "./entities.js";
import { type Group, groupLines, lengthValue, pointGroups } from "./groups.js";
import { layerOf, tableGroups } from "./layers.js";
import { type DxfContent, type PickedItem, pickItems } from "./pick-items.js";

/** How a DXF file is to be written. */
export interface DxfOptions {
  /** Greatest distance between a cubic and the chords that stand for it, mm; 0.005 by default, 0.00001 at least. */
  readonly chordError?: number;
  /** How much of the drawing; `view` by default. */
  readonly content?: DxfContent;
  /** Only lines of these roles, and lettering where `text` is among them; all by default. */
  readonly roles?: readonly Role[];
}

/** A twentieth of what a laser keeps to. */
const CHORD_ERROR = 0.005;
/** Below this the decimals of the file say more than the chords, mm. */
const FINEST = 1e-5;
/** What rounding to the file's decimals moves a point by at most, mm. */
const ROUNDING = 1e-6;

/**
 * The drawing as a DXF file of release 12, which every CAD and cutting program reads. Coordinates are the model's own,
 * in mm, y up: of a blade the heel is at 0, 0; print corrections and page places do not enter. Each role has a layer of its
 * name, OUTLINE, BEVEL, CENTRE; lettering stands on TEXT. Lines, circles and arcs are exact to 10⁻⁶ mm, cubics are
 * chords within the error that the head of the file states.
 *
 * Release 12 has no record of units, so with `view` a line of 100 mm to measure stands below on the layer CHECK.
 *
 * @param drawing - one page, not a tile of several.
 * @returns lines of plain ASCII, the same for the same drawing.
 * @throws {InternalError} when a coordinate is not finite or the chord error is below 0.00001 mm.
 *
 * @example
 * toDxf(patternSheet(model), { content: "geometry" }); // "999\nMG-14 Harvest knife: true-size pattern\n…"
 */
export function toDxf(drawing: Drawing, options: DxfOptions = {}): string {
  const { chordError = CHORD_ERROR, content = "view", roles } = options;
  invariant(chordError >= FINEST, `the chord error is at least ${FINEST} mm`);
  const maxError = chordError - ROUNDING;
  const picked = pickItems(drawing, { content, maxError, ...(roles === undefined ? {} : { roles }) });
  const check = content === "view" && roles === undefined ? checkLine(picked) : [];
  const entities = [
    ...picked.flatMap((item) => entitiesOf(item, maxError)),
    ...check.flatMap((item) => entitiesOf(item, maxError, "check")),
  ];
  const used = new Set(picked.map((item) => (item.kind === "text" ? "text" : item.role)));
  if (check.length > 0) used.add("check");
  return groupLines([
    ...headOf(drawing, chordError),
    ...headerGroups([...picked, ...check]),
    ...tableGroups([...used].sort()),
    [0, "SECTION"],
    [2, "BLOCKS"],
    [0, "ENDSEC"],
    [0, "SECTION"],
    [2, "ENTITIES"],
    ...entities,
    [0, "ENDSEC"],
    [0, "EOF"],
  ]);
}

/** Remarks, which readers pass over and people find with a text editor. */
function headOf({ title }: Drawing, chordError: number): Group[] {
  return [
    [999, dxfText(title) || "Drawing"],
    [999, `Lengths in mm. Curves are chords within ${chordError} mm; lines, circles and arcs are exact.`],
  ];
}

function headerGroups(items: readonly PickedItem[]): Group[] {
  const box = boxOfItems(items) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  return [
    [0, "SECTION"],
    [2, "HEADER"],
    [9, "$ACADVER"],
    [1, "AC1009"],
    [9, "$EXTMIN"],
    ...pointGroups({ x: box.minX, y: box.minY }),
    [9, "$EXTMAX"],
    ...pointGroups({ x: box.maxX, y: box.maxY }),
    // Dashes are in mm of the drawing.
    [9, "$LTSCALE"],
    [40, lengthValue(1)],
    [0, "ENDSEC"],
  ];
}

function entitiesOf(item: PickedItem, maxError: number, role?: Role): Group[] {
  switch (item.kind) {
    case "path":
      return item.paths.flatMap((path) => pathEntity(path, layerOf(role ?? item.role), maxError));
    case "circle":
      return circleEntity(item.centre, item.radius, layerOf(role ?? item.role));
    case "text":
      return textEntity(item, layerOf(role ?? "text"));
  }
}

/** Clear space between the drawing and the line to measure, mm. */
const BELOW = 10;

/** A line of 100 mm under the drawing, from below the heel forward, with its length; nothing where nothing is drawn. */
function checkLine(items: readonly PickedItem[]): PickedItem[] {
  const box = boxOfItems(items);
  if (box === undefined) return [];
  const y = Math.floor(box.minY) - BELOW;
  const start: Vec2 = { x: Math.ceil(Math.max(0, box.minX)), y };
  return [
    { kind: "path", role: "check", paths: [polyline([start, { x: start.x + METRIC_BAR, y }])] },
    lettering(`${METRIC_BAR} mm`, { x: start.x, y: y + 1 }, { height: SMALL }),
  ];
}
