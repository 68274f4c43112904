import { Law } from "../numeric/law.js";
import type { Path } from "../plane/path.js";
import { line, type Segment } from "../plane/segment.js";
import { HalfSection } from "./half-section.js";
import type { Outline } from "./outline.js";
import type { SectionSource } from "./section-law.js";
import { SlabLaw } from "./slab-law.js";
import { SteelBody } from "./steel-body.js";

/**
 * Section of a handle across one long edge: level, with the outer edge rounded by a quarter circle of radius r. The
 * distance is measured from the nearer of the tang's two long sides.
 */
class RoundedSection implements SectionSource {
  readonly half = new HalfSection();
  readonly bevelHeight: number;
  readonly breaks: readonly number[];
  private readonly slab: SlabLaw;

  constructor(slab: SlabLaw, radius: number) {
    this.slab = slab;
    this.bevelHeight = radius;
    this.breaks = slab.breaks;
  }

  at(x: number): HalfSection {
    const half = this.slab.thicknessAt(x) / 2;
    const r = this.bevelHeight;
    this.half.clear();
    if (r > 0) this.half.addArc(0, half - r, r, 0, 1);
    return this.half.addLine(r, half, 0);
  }

  structureAt(): void {}

  copy(): RoundedSection {
    return new RoundedSection(this.slab, this.bevelHeight);
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

/** Tang with a slab on each side, as one body: what is inside it and outside the tang is handle. */
export function slabbedTang(
  outline: Outline,
  slab: SlabLaw,
  slabThickness: number,
  edgeRadius: number,
): SteelBody {
  const covered = new SlabLaw({
    spine: Law.constant(slab.tangThicknessAt(outline.handleFront)),
    tang: slab.tang ?? Law.constant(slab.tangThicknessAt(outline.handleFront)),
    handleFront: outline.handleFront,
    onFlats: 2 * slabThickness,
    onTang: slab.onTang + 2 * slabThickness,
  });
  const long = (run: readonly Segment[]): readonly Segment[] =>
    run.filter((segment) => !(segment.kind === "line" && segment.from.x === segment.to.x));
  return new SteelBody({
    path: tangPath(outline),
    edges: [long(outline.runs.tangTop), long(outline.runs.tangBottom)],
    slab: covered,
    section: new RoundedSection(covered, edgeRadius),
    plunge: { at: Number.NEGATIVE_INFINITY, length: 0 },
    cutouts: [],
  });
}
