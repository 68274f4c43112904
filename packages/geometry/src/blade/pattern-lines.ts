import type { Path } from "../plane/path.js";
import { line, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { crestCrossing } from "./crest.js";
import { cutoutPath } from "./cutout-path.js";
import { grooveHalfWidth } from "./groove-moments.js";
import { handleLayout, type PlacedBlock } from "./handle-layout.js";
import type { Knife } from "./knife.js";
import { thicknessAtSwedge } from "./section-report.js";
import { stationPieces } from "./station-pieces.js";
import type { SteelBody } from "./steel-body.js";

/** The planes along the spine, as a pattern shows them; mm, rad. */
export interface PatternSwedge {
  /** x of its ends. */
  readonly from: number;
  readonly to: number;
  /** Of each plane against the centre plane. */
  readonly angle: number;
  /** Where the planes run out on the right face, as connected pieces. */
  readonly line: readonly (readonly Segment[])[];
}

/** A groove, as a pattern shows it; mm. */
export interface PatternFuller {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly radius: number;
  readonly depth: number;
  readonly faces: "both" | "left" | "right";
  /** Where it runs out on the face. */
  readonly rim: Path;
}

/** Bolsters, guard or pommel, as a pattern shows them; mm. */
export interface PatternFitting {
  readonly name: string;
  /** x of its faces. */
  readonly front: number;
  readonly rear: number;
  /** The faces where they cross the steel: front, then rear; a face off the steel has none. */
  readonly lines: readonly Segment[];
}

/** Greatest spacing of points on a line that is no line or arc, mm: its chords stay within a hundredth of a millimetre. */
const SPACING = 1;
/** Where the outline turns a corner it is read this little beside it, mm. */
const BESIDE = 1e-6;

/** The swedge of a body; undefined where it has none. */
export function patternSwedge(body: SteelBody): PatternSwedge | undefined {
  const swedge = body.input.crest?.input.swedge;
  if (swedge === undefined) return undefined;
  const { minX, maxX } = body.footprint;
  const from = Math.max(swedge.from, minX);
  const to = Math.min(swedge.to, maxX);
  const runs: Segment[][] = [];
  let points: Vec2[] = [];
  const close = (): void => {
    if (points.length > 1) runs.push(polyline(points));
    points = [];
  };
  for (const x of spaced(body, from, to)) {
    const inside = Math.min(to - BESIDE, Math.max(from + BESIDE, x));
    const top = body.footprint.topAt(inside);
    if (top === undefined || thicknessAtSwedge(body, inside) === undefined) close();
    else {
      const face = body.sectionAt(inside);
      const y = crestCrossing(body, face, inside, top);
      // Its end is a wall, from the spine down to the line.
      if (points.length === 0 && y < top) points.push({ x, y: top });
      points.push({ x, y });
      if (x === to && to < maxX - BESIDE) points.push({ x, y: top });
    }
  }
  close();
  return { from: swedge.from, to: swedge.to, angle: Math.atan(swedge.tan), line: runs };
}

/** The fullers of a body. */
export function patternFullers(body: SteelBody): PatternFuller[] {
  return (body.input.grooves ?? []).map((groove) => ({
    ...groove,
    rim: cutoutPath({ centre: groove.from, to: groove.to, radius: grooveHalfWidth(groove) }),
  }));
}

/** Bolsters, guard and pommel of a knife. */
export function patternFittings({ spec, outline }: Knife): PatternFitting[] {
  const { fittings, footprint } = handleLayout(spec.handle, outline);
  const across = ({ block }: PlacedBlock, x: number, beside: number): Segment[] => {
    const { halfHeight } = block.sectionAt(x);
    return footprint.spansAt(beside).flatMap(([low, high]) => {
      const foot = Math.max(low, block.centre - halfHeight);
      const head = Math.min(high, block.centre + halfHeight);
      return head > foot ? [line({ x, y: foot }, { x, y: head })] : [];
    });
  };
  return fittings.map((fitting) => {
    const { front, rear } = fitting.block;
    const lines = [...across(fitting, front, front - BESIDE), ...across(fitting, rear, rear + BESIDE)];
    return { name: fitting.name, front, rear, lines };
  });
}

/** Places along x at which a line is looked at: every change of the section, and no farther apart than a pen can show. */
export function spaced(body: SteelBody, from: number, to: number): number[] {
  const xs = stationPieces(body, from, to).flatMap((piece) => {
    const count = Math.max(1, Math.ceil((piece.to - piece.from) / SPACING));
    return Array.from({ length: count }, (_, i) => piece.from + ((piece.to - piece.from) * i) / count);
  });
  return [...xs, to];
}

/** Lines through points, with those that lie on the line of their neighbours left out. */
export function polyline(points: readonly Vec2[]): Segment[] {
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
