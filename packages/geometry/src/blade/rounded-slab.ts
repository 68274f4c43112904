import type { Law } from "../numeric/law.js";
import type { Path } from "../plane/path.js";
import { line, type Segment } from "../plane/segment.js";
import { HandleRounding } from "./handle-rounding.js";
import { addMoments, type Moments, VOLUME } from "./moments.js";
import type { Outline } from "./outline.js";
import type { SlabLaw } from "./slab-law.js";
import { slabMoments, type Thickness } from "./slab-moments.js";

/** Relative error that a measurement of rounded edges aims at. */
const AIM = 1e-10;

/** A stretch of x, mm; rear < front. */
export interface Stretch {
  readonly rear: number;
  readonly front: number;
}

/** A tang with sheets on both faces: the thickness of all of it along x. */
export class CoveredTang implements Thickness {
  readonly breaks: readonly number[];
  private readonly steel: SlabLaw;
  private readonly cover: Law;
  private readonly gaps: readonly Stretch[];

  /**
   * @param cover - thickness on each face by distance behind the handle front, mm.
   * @param gaps - where nothing lies on the tang because a bolster does.
   */
  constructor(steel: SlabLaw, cover: Law, gaps: readonly Stretch[]) {
    this.steel = steel;
    this.cover = cover;
    this.gaps = gaps;
    this.breaks = [
      ...steel.breaks,
      ...cover.breaks.map((s) => steel.handleFront - s),
      ...gaps.flatMap(({ rear, front }) => [rear, front]),
    ];
  }

  readonly isCovered = (x: number): boolean => !this.gaps.some(({ rear, front }) => x > rear && x < front);

  /** Across both faces, mm. */
  thicknessAt(x: number): number {
    const cover = this.isCovered(x) ? 2 * this.cover.valueAt(this.steel.handleFront - x) : 0;
    return this.steel.thicknessAt(x) + cover;
  }
}

/** The part of the outline behind the handle front that slabs cover. */
function tangPath(outline: Outline): Path {
  const { tangTop, butt, tangBottom } = outline.runs;
  const segments = [...tangTop, ...butt, ...tangBottom];
  const first = segments[0] as Segment;
  const last = segments[segments.length - 1] as Segment;
  return { segments: [...segments, line(last.to, first.from)], closed: true };
}

/** Tang with liners and slabs on each side, as one body with its long outer edges rounded by a quarter circle. */
export class SlabbedTang {
  readonly path: Path;
  private readonly covered: CoveredTang;
  private readonly rounding: HandleRounding | undefined;

  constructor(outline: Outline, covered: CoveredTang, edgeRadius: number) {
    const { tangTop, tangBottom } = outline.runs;
    this.path = tangPath(outline);
    this.covered = covered;
    this.rounding =
      edgeRadius > 0 ? new HandleRounding(longSide(tangBottom), longSide(tangTop), edgeRadius) : undefined;
  }

  /** Integrals of all that stands over a region of the flats: the tang's own outline, or a hole's. */
  over(path: Path): Moments {
    const square = slabMoments(path, this.covered);
    if (this.rounding === undefined) return square;
    const volume = square.value[VOLUME] as number;
    const tolerance = square.value.map((v) => AIM * Math.max(Math.abs(v), 1e-3 * volume));
    return addMoments(square, this.rounding.over(path, this.covered, this.covered.isCovered, tolerance), -1);
  }
}

/** A run without the upright pieces at its ends, which belong to the handle's front or butt. */
export function longSide(run: readonly Segment[]): readonly Segment[] {
  const isUpright = (segment: Segment): boolean => segment.kind === "line" && segment.from.x === segment.to.x;
  const first = run.findIndex((segment) => !isUpright(segment));
  const last = run.findLastIndex((segment) => !isUpright(segment));
  return first < 0 ? [] : run.slice(first, last + 1);
}
