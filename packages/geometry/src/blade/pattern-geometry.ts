import type { Path } from "../plane/path.js";
import { line, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { lineHeight } from "./bevel-line.js";
import { cutoutPath } from "./cutout-path.js";
import { distinct } from "./footprint.js";
import type { Knife } from "./knife.js";
import type { Side } from "./knife-faces.js";
import {
  type PatternFitting,
  type PatternFuller,
  type PatternSwedge,
  patternFittings,
  patternFullers,
  patternSwedge,
  polyline,
  spaced,
} from "./pattern-lines.js";
import { thicknessAtSwedge } from "./section-report.js";
import type { SizeState } from "./size-states.js";
import type { HoleSpec } from "./spec.js";
import type { SteelBody } from "./steel-body.js";

export type { PatternFitting, PatternFuller, PatternSwedge } from "./pattern-lines.js";

/** A round hole, or a slot from `centre` to `to` with its rim, as a pattern shows it; mm. */
export interface PatternHole {
  readonly centre: Vec2;
  readonly diameter: number;
  readonly kind: string;
  readonly slot?: { readonly to: Vec2; readonly rim: Path };
}

/** What a pattern shows of a body: the measured curves and places themselves, mm. */
export interface PatternGeometry {
  readonly outline: Path;
  /** Plunge and bevel line as connected pieces; empty where the bevel reaches the spine. */
  readonly bevelLine: readonly (readonly Segment[])[];
  readonly swedge?: PatternSwedge;
  readonly fullers: readonly PatternFuller[];
  readonly fittings: readonly PatternFitting[];
  readonly holes: readonly PatternHole[];
  readonly stations: readonly {
    readonly x: number;
    readonly top: number;
    readonly bottom: number;
    /** Across the flats, as if no swedge were ground. */
    readonly thickness: number;
    /** What a swedge leaves at the spine, where there is one. */
    readonly atSwedge?: number;
  }[];
}

/**
 * Curves, holes and stations of the knife in a size state, for drawing.
 *
 * @param side - The face whose bevel line is drawn.
 *
 * @example
 * patternGeometry(knife, "finished").stations.map(({ x }) => x); // [-115, -10, 0, 100]
 */
export function patternGeometry(knife: Knife, state: SizeState, side: Side = "right"): PatternGeometry {
  const body = knife.body(state);
  const swedge = patternSwedge(body);
  return {
    outline: knife.outline.path,
    bevelLine: bevelLine(body, knife.outline.edgeLength, side),
    ...(swedge === undefined ? {} : { swedge }),
    fullers: patternFullers(body),
    fittings: patternFittings(knife),
    holes: body.input.cutouts.length === 0 ? [] : knife.holes.map(patternHole),
    stations: patternStations(knife, body),
  };
}

function patternHole({ at, to, diameter, kind }: HoleSpec): PatternHole {
  const hole = { centre: at, diameter, kind };
  if (to === undefined) return hole;
  return { ...hole, slot: { to, rim: cutoutPath({ centre: at, radius: diameter / 2, to }) } };
}

/** Heel, tip, handle front, butt, and every place where the thickness of the spine or of the swedge was given. */
function patternStations(knife: Knife, body: SteelBody): PatternGeometry["stations"] {
  const { outline, laws } = knife;
  const swedge = body.input.crest?.input.swedge;
  const places = distinct([
    outline.butt,
    outline.handleFront,
    0,
    ...laws.spine.breaks,
    ...(swedge === undefined
      ? []
      : [swedge.from, swedge.to, ...swedge.thickness.breaks].filter(
          (x) => x >= swedge.from && x <= swedge.to && x >= outline.handleFront && x <= outline.edgeLength,
        )),
    ...(laws.tang === undefined ? [] : laws.tang.breaks.map((d) => outline.handleFront - d)),
    outline.edgeLength,
  ]);
  return places.map((x) => {
    const inside = Math.min(body.footprint.maxX - 1e-9, Math.max(body.footprint.minX + 1e-9, x));
    const spans = body.footprint.spansAt(inside);
    const atSwedge = thicknessAtSwedge(body, x);
    return {
      x,
      top: spans[spans.length - 1]?.[1] ?? 0,
      bottom: spans[0]?.[0] ?? 0,
      thickness: body.slab.thicknessAt(x),
      ...(atSwedge === undefined ? {} : { atSwedge }),
    };
  });
}

function bevelLine(body: SteelBody, edgeLength: number, side: Side): Segment[][] {
  const { at, length } = body.input.plunge;
  const end = Math.min(edgeLength, body.footprint.maxX);
  const runs: Segment[][] = [];
  let points: Vec2[] = [];
  const close = (): void => {
    if (points.length > 1) runs.push(polyline(points));
    points = [];
  };
  for (const x of spaced(body, at, end)) {
    const inside = Math.min(end - 1e-9, Math.max(at + 1e-9, x));
    const height = lineHeight(body, inside, side);
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
      runs.push([line({ x: front, y: footFront }, { x: front, y: lineHeight(body, front, side) })]);
    }
  }
  return runs;
}
