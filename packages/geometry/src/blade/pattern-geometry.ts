import type { Path } from "../plane/path.js";
import { line, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { lineHeight } from "./bevel-line.js";
import { distinct } from "./footprint.js";
import type { Knife } from "./knife.js";
import type { SizeState } from "./size-states.js";
import { stationPieces } from "./station-pieces.js";
import type { SteelBody } from "./steel-body.js";

/** What a pattern shows of a body: the measured curves and places themselves, mm. */
export interface PatternGeometry {
  readonly outline: Path;
  /** Plunge and bevel line as connected pieces; empty where the bevel reaches the spine. */
  readonly bevelLine: readonly (readonly Segment[])[];
  readonly holes: readonly { readonly centre: Vec2; readonly diameter: number; readonly kind: string }[];
  readonly stations: readonly {
    readonly x: number;
    readonly top: number;
    readonly bottom: number;
    readonly thickness: number;
  }[];
}

/** Greatest spacing of points on the bevel line, mm: its chords stay within a hundredth of a millimetre. */
const SPACING = 1;

/**
 * Curves, holes and stations of the knife in a size state, for drawing.
 *
 * @example
 * patternGeometry(knife, "finished").stations.map(({ x }) => x); // [-115, -10, 0, 100]
 */
export function patternGeometry(knife: Knife, state: SizeState): PatternGeometry {
  const body = knife.body(state);
  return {
    outline: knife.outline.path,
    bevelLine: bevelLine(body, knife.outline.edgeLength),
    holes:
      body.input.cutouts.length === 0
        ? []
        : knife.holes.map(({ at, diameter, kind }) => ({ centre: at, diameter, kind })),
    stations: patternStations(knife, body),
  };
}

/** Heel, tip, handle front, butt, and every place where the spine's thickness was given. */
function patternStations(knife: Knife, body: SteelBody): PatternGeometry["stations"] {
  const { outline, laws } = knife;
  const places = distinct([
    outline.butt,
    outline.handleFront,
    0,
    ...laws.spine.breaks,
    ...(laws.tang === undefined ? [] : laws.tang.breaks.map((d) => outline.handleFront - d)),
    outline.edgeLength,
  ]);
  return places.map((x) => {
    const inside = Math.min(body.footprint.maxX - 1e-9, Math.max(body.footprint.minX + 1e-9, x));
    const spans = body.footprint.spansAt(inside);
    return {
      x,
      top: spans[spans.length - 1]?.[1] ?? 0,
      bottom: spans[0]?.[0] ?? 0,
      thickness: body.slab.thicknessAt(x),
    };
  });
}

function bevelLine(body: SteelBody, edgeLength: number): Segment[][] {
  const { at, length } = body.input.plunge;
  const end = Math.min(edgeLength, body.footprint.maxX);
  const xs: number[] = [];
  for (const piece of stationPieces(body, at, end)) {
    const count = Math.max(1, Math.ceil((piece.to - piece.from) / SPACING));
    for (let i = 0; i < count; i++) xs.push(piece.from + ((piece.to - piece.from) * i) / count);
  }
  xs.push(end);
  const runs: Segment[][] = [];
  let points: Vec2[] = [];
  const close = (): void => {
    if (points.length > 1) runs.push(polyline(points));
    points = [];
  };
  for (const x of xs) {
    const inside = Math.min(end - 1e-9, Math.max(at + 1e-9, x));
    const height = lineHeight(body, inside);
    const top = body.footprint.topAt(inside) ?? height;
    if (height < top - 1e-6) points.push({ x, y: height });
    else {
      // The point where the line runs into the spine still belongs to it.
      if (points.length > 0) points.push({ x, y: height });
      close();
    }
  }
  close();
  const foot = body.footprint.spansAt(at + 1e-9)[0]?.[0];
  const first = runs[0]?.[0];
  const top = first !== undefined && first.from.x === at ? first.from.y : body.footprint.topAt(at + 1e-9);
  if (foot !== undefined && top !== undefined) {
    // Where the bevels begin: the plunge, at its rear end and, where it has a length, at its front end.
    runs.unshift([line({ x: at, y: foot }, { x: at, y: top })]);
    const front = at + length;
    const footFront = body.footprint.spansAt(front)[0]?.[0];
    if (length > 0 && footFront !== undefined) {
      runs.push([line({ x: front, y: footFront }, { x: front, y: lineHeight(body, front) })]);
    }
  }
  return runs;
}

/** Lines through points, with those that lie on the line of their neighbours left out. */
function polyline(points: readonly Vec2[]): Segment[] {
  const kept: Vec2[] = [points[0] as Vec2];
  for (let i = 1; i < points.length - 1; i++) {
    const a = kept[kept.length - 1] as Vec2;
    const b = points[i] as Vec2;
    const c = points[i + 1] as Vec2;
    const off = Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
    if (off > 1e-7 * Math.hypot(c.x - a.x, c.y - a.y)) kept.push(b);
  }
  kept.push(points[points.length - 1] as Vec2);
  return kept.slice(1).map((to, i) => line(kept[i] as Vec2, to));
}
