import type { Path } from "../plane/path.js";
import type { Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { EdgeRun } from "./edge-run.js";
import { Footprint } from "./footprint.js";
import type { HalfSection } from "./half-section.js";
import type { SectionSource } from "./section-law.js";
import type { SlabLaw } from "./slab-law.js";

/** A round cut-out through the flats. */
export interface Cutout {
  readonly centre: Vec2;
  readonly radius: number;
}

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
}

/**
 * One piece of steel in one size state: an outline, a thickness across the flats, and what the bevels take away.
 * The same object is weighed, cut at a station and drawn.
 */
export class SteelBody {
  readonly input: SteelBodyInput;
  readonly footprint: Footprint;
  readonly edgeRun: EdgeRun;
  readonly section: SectionSource;
  readonly slab: SlabLaw;

  constructor(input: SteelBodyInput) {
    this.input = input;
    this.footprint = new Footprint(input.path);
    this.edgeRun = new EdgeRun(...input.edges);
    this.section = input.section;
    this.slab = input.slab;
  }

  /** V: distance from the edge of the station's highest point, mm; 0 where there is no steel. */
  spineDistanceAt(x: number): number {
    const top = this.footprint.topAt(x);
    return top === undefined ? 0 : this.edgeRun.nearest(x, top);
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
    const slab = this.slab.thicknessAt(point.x);
    const share = this.plungeShareAt(point.x);
    if (share === 0) return slab;
    const half = this.sectionAt(point.x).valueAt(this.edgeRun.nearest(point.x, point.y));
    return slab - share * (slab - 2 * half);
  }

  private isCut(point: Vec2): boolean {
    return this.input.cutouts.some(
      ({ centre, radius }) => Math.hypot(point.x - centre.x, point.y - centre.y) < radius,
    );
  }
}
