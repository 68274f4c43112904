import {
  type Arc,
  flattenSegment,
  type Path,
  type Segment,
  splitSegment,
  type Vec2,
} from "@scantling/geometry";
import { radiansToDegrees } from "@scantling/geometry/units";
import type { TextItem } from "../drawing.js";
import { dxfText } from "./dxf-text.js";
import { type Group, lengthValue, pointGroups, turnValue } from "./groups.js";

/** Nearer than this two points are written as one, mm: half the finest step. */
const SAME_POINT = 5e-7;
const FULL_TURN = 2 * Math.PI - 1e-9;

/** A point of a polyline and how the line leaves it: 0 straight, else tan(sweep / 4) of an arc. */
interface Vertex {
  readonly at: Vec2;
  readonly bulge: number;
}

/**
 * A path as one entity. Lines and arcs are exact: a single one is a LINE, ARC or CIRCLE, several make a POLYLINE with
 * bulges. Cubics become chords that stay within `maxError` mm of them.
 */
export function pathEntity(path: Path, layer: string, maxError: number): Group[] {
  const [only, ...others] = path.segments;
  if (only === undefined) return [];
  if (others.length === 0) {
    if (only.kind === "line") return lineEntity(only.from, only.to, layer);
    if (only.kind === "arc" && Math.abs(only.sweep) >= FULL_TURN)
      return circleEntity(only.centre, only.radius, layer);
    if (only.kind === "arc" && !path.closed) return arcEntity(only, layer);
  }
  return polylineEntity(path, layer, maxError);
}

function lineEntity(from: Vec2, to: Vec2, layer: string): Group[] {
  if (isSame(from, to)) return [];
  return [[0, "LINE"], [8, layer], ...pointGroups(from), ...pointGroups(to, 11)];
}

/** A full circle. */
export const circleEntity = (centre: Vec2, radius: number, layer: string): Group[] => [
  [0, "CIRCLE"],
  [8, layer],
  ...pointGroups(centre),
  [40, lengthValue(radius)],
];

/** Counter-clockwise from the first angle to the second, as the format has it. */
function arcEntity({ centre, radius, startAngle, sweep }: Arc, layer: string): Group[] {
  const ends = [startAngle, startAngle + sweep];
  if (sweep < 0) ends.reverse();
  const [first = 0, last = 0] = ends.map((angle) => (radiansToDegrees(angle) + 720) % 360);
  return [
    [0, "ARC"],
    [8, layer],
    ...pointGroups(centre),
    [40, lengthValue(radius)],
    [50, turnValue(first)],
    [51, turnValue(last)],
  ];
}

function polylineEntity(path: Path, layer: string, maxError: number): Group[] {
  const vertices = verticesOf(path, maxError);
  if (vertices.length < 2) return [];
  return [
    [0, "POLYLINE"],
    [8, layer],
    [66, 1],
    ...pointGroups({ x: 0, y: 0 }),
    [70, path.closed ? 1 : 0],
    ...vertices.flatMap(({ at, bulge }): Group[] => [
      [0, "VERTEX"],
      [8, layer],
      ...pointGroups(at),
      ...(bulge === 0 ? [] : [[42, turnValue(bulge)] as const]),
    ]),
    [0, "SEQEND"],
    [8, layer],
  ];
}

/** Points of the path with the bulges between them; no two neighbours are one. */
function verticesOf({ segments, closed }: Path, maxError: number): Vertex[] {
  const steps = segments.flatMap((segment) => stepsOf(segment, maxError));
  const moved = steps.filter(({ at, to }) => !isSame(at, to));
  const last = moved.at(-1);
  return closed || last === undefined ? moved : [...moved, { at: last.to, bulge: 0 }];
}

function stepsOf(segment: Segment, maxError: number): (Vertex & { readonly to: Vec2 })[] {
  if (segment.kind === "arc") {
    // At half a turn the bulge is 1; towards a full one it would grow without end.
    const halves =
      Math.abs(segment.sweep) > Math.PI
        ? [splitSegment(segment, 0, 0.5), splitSegment(segment, 0.5, 1)]
        : [segment];
    const bulge = Math.tan(segment.sweep / halves.length / 4);
    return halves.map(({ from, to }) => ({ at: from, to, bulge }));
  }
  const points = flattenSegment(segment, maxError);
  return points.slice(1).map((to, index) => ({ at: points[index] ?? to, to, bulge: 0 }));
}

const isSame = (a: Vec2, b: Vec2): boolean =>
  Math.abs(a.x - b.x) < SAME_POINT && Math.abs(a.y - b.y) < SAME_POINT;

/** Code 72: how the lettering stands to its point. */
const JUSTIFIED = { start: 0, middle: 1, end: 2 } as const;

/** A line of lettering on its base line; nothing where there is nothing to read. */
export function textEntity({ at, anchor, height, rotation, text }: TextItem, layer: string): Group[] {
  const written = dxfText(text);
  if (written === "") return [];
  return [
    [0, "TEXT"],
    [8, layer],
    ...pointGroups(at),
    [40, lengthValue(height)],
    [1, written],
    ...(rotation === 0 ? [] : [[50, turnValue(radiansToDegrees(rotation))] as const]),
    ...(anchor === "start"
      ? []
      : ([[72, JUSTIFIED[anchor]], ...pointGroups(at, 11), [73, 0]] satisfies Group[])),
  ];
}
