import type { Path } from "../plane/path.js";
import type { Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { type CrestLaw, crestReach } from "./crest.js";
import { EdgeRun } from "./edge-run.js";
import { type BoundaryPiece, Footprint } from "./footprint.js";
import type { HalfSection } from "./half-section.js";
import type { SectionSource } from "./section-law.js";
import type { SlabLaw } from "./slab-law.js";

/** A cut-out through the flats: round, or a slot from `centre` to `to`. Lengths in mm. */
export interface Cutout {
  readonly centre: Vec2;
  readonly radius: number;
  readonly to?: Vec2;
}

/** A groove along a line, cut `depth` deep below the face by a circle of the given radius, with round ends. */
export interface Groove {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly radius: number;
  readonly depth: number;
  readonly faces: "both" | "left" | "right";
}

/** What a body of steel is made of. Lengths in mm. */
export interface SteelBodyInput {
  /** Closed outline, counter-clockwise. */
  readonly path: Path;
  /** The runs from which the sections are measured; of a blade its edge, heel to tip. */
  readonly edges: readonly (readonly Segment[])[];
  readonly slab: SlabLaw;
  readonly section: SectionSource;
  /** Where the bevels begin (mm from the heel) and over which length they ease in. */
  readonly plunge: { readonly at: number; readonly length: number };
  readonly cutouts: readonly Cutout[];
  readonly grooves?: readonly Groove[];
  /** What is taken off along the spine. */
  readonly crest?: CrestLaw;
}

/**
 * One piece of steel in one size state: an outline, a thickness across the flats, and what the bevels take away.
 * The same object is weighed, cut at a station and drawn.
 *
 * @example
 * const body = knife.body("finished");
 * body.thicknessAt({ x: 50, y: 10 }); // mm of steel across the flats there
 * body.thicknessAt({ x: 50, y: 90 }); // 0
 */
export class SteelBody {
  readonly input: SteelBodyInput;
  readonly footprint: Footprint;
  readonly edgeRun: EdgeRun;
  readonly section: SectionSource;
  readonly slab: SlabLaw;
  /** The outline's piece over the station that was last asked for. */
  topPiece: BoundaryPiece | undefined;
  /** Whether that piece is no edge, so that the last nearest point of the edge run is the spine's. */
  isTopSpine = false;
  /** How many segments of the path, from its first, are edge. */
  private readonly edgeSegments: number;

  constructor(input: SteelBodyInput) {
    this.input = input;
    this.footprint = new Footprint(input.path);
    this.edgeRun = new EdgeRun(...input.edges);
    this.section = input.section;
    this.slab = input.slab;
    const edge = input.edges[0] ?? [];
    this.edgeSegments = edge[0] === input.path.segments[0] ? edge.length : 0;
    for (const { spans } of this.footprint.intervals) {
      for (const { lower, upper } of spans) this.markEdge(lower, upper);
    }
  }

  /** x from which the faces may differ from the slab, mm. */
  get groundFrom(): number {
    return Math.min(this.input.plunge.at, this.input.crest?.start ?? Number.POSITIVE_INFINITY);
  }

  /** The crest at x, if anything is taken off the spine there. */
  crestAt(x: number): HalfSection | undefined {
    return this.input.crest?.at(x);
  }

  /**
   * V: distance from the edge of the station's spine point, mm; 0 where there is no steel. Where the edge turns back
   * over the station there is no spine point: the place farthest from the edge stands in for it.
   */
  spineDistanceAt(x: number): number {
    const interval = this.footprint.intervalAt(x);
    const span = interval?.spans[interval.spans.length - 1];
    if (interval === undefined || span === undefined) {
      this.topPiece = undefined;
      this.isTopSpine = false;
      return 0;
    }
    this.topPiece = span.upper;
    this.isTopSpine = !this.isEdge(span.upper);
    if (this.isTopSpine) return this.edgeRun.nearest(x, span.upper.heightAt(x));
    let farthest = 0;
    for (const { lower, upper } of interval.spans) {
      this.edgeRun.walk(x, lower.heightAt(x), upper.heightAt(x), (_e, _y0, v0, _f0, _y1, v1) => {
        farthest = Math.max(farthest, v0, v1);
      });
    }
    return farthest;
  }

  /** Tells the outline's pieces which element of the edge run they are. */
  private markEdge(...pieces: readonly BoundaryPiece[]): void {
    for (const piece of pieces) {
      if (!this.isEdge(piece) || piece.edgeElement >= 0) continue;
      const { from, to } = piece.segment;
      piece.edgeElement = this.edgeRun.sources.findIndex(
        (source) =>
          source !== undefined &&
          source.from.x === from.x &&
          source.from.y === from.y &&
          source.to.x === to.x &&
          source.to.y === to.y,
      );
    }
  }

  private isEdge(piece: BoundaryPiece): boolean {
    return piece.index < this.edgeSegments;
  }

  /** How far the bevel has come in at x: 0 unground, 1 full. */
  plungeShareAt(x: number): number {
    const { at, length } = this.input.plunge;
    if (x < at) return 0;
    if (length <= 0 || x >= at + length) return 1;
    const u = (x - at) / length;
    return u * u * (3 - 2 * u);
  }

  /** The bevelled section at x as if the plunge were complete; only ahead of the plunge's start. */
  sectionAt(x: number): HalfSection {
    return this.section.at(x, this.spineDistanceAt(x));
  }

  /** Full thickness of steel at a point of the flats, mm; 0 outside the outline and inside a cut-out. */
  thicknessAt(point: Vec2): number {
    const inside = this.footprint.spansAt(point.x).some(([low, high]) => point.y >= low && point.y <= high);
    if (!inside || this.isCut(point)) return 0;
    return this.thicknessIgnoringOutline(point);
  }

  /** Full thickness that the laws give at a point, wherever the outline and the cut-outs are, mm. */
  thicknessIgnoringOutline(point: Vec2): number {
    return this.faceAt(point, "right") + this.faceAt(point, "left");
  }

  /** Distance of one face from the centre plane at a point, mm; the outline, cut-outs and grooves are not asked. */
  faceUncut(point: Vec2, side: "right" | "left"): number {
    const { x, y } = point;
    const slab = this.slab.thicknessAt(x) / 2;
    const share = this.plungeShareAt(x);
    let half = slab;
    if (share > 0) {
      const right = this.sectionAt(x);
      const section = side === "right" ? right : (this.section.left ?? right);
      half = slab - share * (slab - section.valueAt(this.edgeRun.nearest(x, y)));
    }
    const crest = this.crestAt(x);
    const top = crest === undefined ? undefined : this.footprint.topAt(x);
    if (crest !== undefined && top !== undefined && top - y < crestReach(crest)) {
      half = Math.min(half, crest.valueAt(Math.max(0, top - y)));
    }
    return half;
  }

  /** The same with the grooves cut. */
  faceAt(point: Vec2, side: "right" | "left"): number {
    let half = this.faceUncut(point, side);
    for (const groove of this.input.grooves ?? []) {
      if (groove.faces === "both" || groove.faces === side) half -= grooveDepthAt(groove, point);
    }
    return half;
  }

  private isCut(point: Vec2): boolean {
    return this.input.cutouts.some(
      ({ centre, radius, to }) => distanceToLine(point, centre, to ?? centre) < radius,
    );
  }
}

/**
 * Distance of a point from a straight line between two ends, mm.
 *
 * @example
 * distanceToLine({ x: 2, y: 3 }, { x: 0, y: 0 }, { x: 8, y: 0 }); // 3
 */
export function distanceToLine(point: Vec2, from: Vec2, to: Vec2): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const t =
    square === 0 ? 0 : Math.min(1, Math.max(0, ((point.x - from.x) * dx + (point.y - from.y) * dy) / square));
  return Math.hypot(point.x - from.x - t * dx, point.y - from.y - t * dy);
}

/**
 * How deep a groove is at a point, below the face it is cut into, mm; 0 beside it.
 *
 * @example
 * const groove = { from: { x: 0, y: 0 }, to: { x: 9, y: 0 }, radius: 5, depth: 1, faces: "both" } as const;
 * grooveDepthAt(groove, { x: 4, y: 3 }); // 0
 * grooveDepthAt(groove, { x: 4, y: 0 }); // 1
 */
export function grooveDepthAt({ from, to, radius, depth }: Groove, point: Vec2): number {
  const q = distanceToLine(point, from, to);
  return q >= radius ? 0 : Math.max(0, Math.sqrt(radius * radius - q * q) - (radius - depth));
}
