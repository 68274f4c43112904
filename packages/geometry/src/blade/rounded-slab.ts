import type { Law } from "../numeric/law.js";
import type { Path } from "../plane/path.js";
import { line, type Segment } from "../plane/segment.js";
import { HalfSection } from "./half-section.js";
import { measureBody } from "./measure-body.js";
import type { Moments } from "./moments.js";
import type { Outline } from "./outline.js";
import type { SectionSource } from "./section-law.js";
import { SlabLaw } from "./slab-law.js";
import { slabMoments } from "./slab-moments.js";
import { SteelBody } from "./steel-body.js";

/** Relative error that a measurement of the handle aims at: wood is not known better than to a few per cent. */
const AIM = 1e-10;

/** A stretch of x, mm; rear < front. */
export interface Stretch {
  readonly rear: number;
  readonly front: number;
}

/** A tang with sheets on both faces: the thickness of all of it along x. */
export class CoveredTang extends SlabLaw {
  readonly steel: SlabLaw;
  /** Thickness on each face by distance behind the handle front, mm. */
  readonly cover: Law;
  /** Where nothing lies on the tang because a bolster does. */
  readonly gaps: readonly Stretch[];

  constructor(steel: SlabLaw, cover: Law, gaps: readonly Stretch[]) {
    super(steel);
    this.steel = steel;
    this.cover = cover;
    this.gaps = gaps;
  }

  isCovered(x: number): boolean {
    return !this.gaps.some(({ rear, front }) => x > rear && x < front);
  }

  override thicknessAt(x: number): number {
    return this.steel.thicknessAt(x) + this.coverAt(x);
  }

  override tangThicknessAt(x: number): number {
    return this.steel.tangThicknessAt(x) + this.coverAt(x);
  }

  override slopeAt(x: number): number {
    const cover = this.isCovered(x) ? -2 * this.cover.slopeAt(this.handleFront - x) : 0;
    return this.steel.slopeAt(x) + cover;
  }

  override get breaks(): number[] {
    return [
      ...this.steel.breaks,
      ...this.cover.breaks.map((s) => this.handleFront - s),
      ...this.gaps.flatMap(({ rear, front }) => [rear, front]),
    ];
  }

  /** On both faces together. */
  private coverAt(x: number): number {
    return this.isCovered(x) ? 2 * this.cover.valueAt(this.handleFront - x) : 0;
  }
}

/**
 * Section of a handle across one long edge: level, with the outer edge rounded by a quarter circle of radius r. The
 * distance is measured from the nearer of the tang's two long sides.
 */
class RoundedSection implements SectionSource {
  readonly half = new HalfSection();
  readonly bevelHeight: number;
  readonly breaks: readonly number[];
  private readonly tang: CoveredTang;

  constructor(tang: CoveredTang, radius: number) {
    this.tang = tang;
    this.bevelHeight = radius;
    this.breaks = tang.breaks;
  }

  at(x: number): HalfSection {
    const half = this.tang.thicknessAt(x) / 2;
    const r = this.bevelHeight;
    this.half.clear();
    if (r > 0 && this.tang.isCovered(x)) this.half.addArc(0, half - r, r, 0, 1);
    return this.half.addLine(r, half, 0);
  }

  structureAt(): void {}

  copy(): RoundedSection {
    return new RoundedSection(this.tang, this.bevelHeight);
  }
}

/** The part of the outline behind the handle front that slabs cover. */
export function tangPath(outline: Outline): Path {
  const { tangTop, butt, tangBottom } = outline.runs;
  const segments = [...tangTop, ...butt, ...tangBottom];
  const first = segments[0] as Segment;
  const last = segments[segments.length - 1] as Segment;
  return { segments: [...segments, line(last.to, first.from)], closed: true };
}

/**
 * Tang with liners and slabs on each side, as one body with its long outer edges rounded: what is inside it and outside
 * the tang is handle.
 */
export class SlabbedTang {
  readonly path: Path;
  readonly covered: CoveredTang;
  private readonly edges: readonly (readonly Segment[])[];
  private readonly radius: number;

  constructor(outline: Outline, covered: CoveredTang, edgeRadius: number) {
    const long = (run: readonly Segment[]): readonly Segment[] =>
      run.filter((segment) => !(segment.kind === "line" && segment.from.x === segment.to.x));
    this.path = tangPath(outline);
    this.covered = covered;
    this.edges = [long(outline.runs.tangTop), long(outline.runs.tangBottom)].filter((run) => run.length > 0);
    this.radius = edgeRadius;
  }

  /** Integrals of all that stands over a region of the flats: the tang's own outline, or a hole's. */
  over(path: Path): Moments {
    if (this.radius <= 0 || this.edges.length === 0) return slabMoments(path, this.covered);
    const body = new SteelBody({
      path,
      edges: this.edges,
      slab: this.covered,
      section: new RoundedSection(this.covered, this.radius),
      plunge: { at: Number.NEGATIVE_INFINITY, length: 0 },
      cutouts: [],
    });
    return measureBody(body, AIM);
  }
}
