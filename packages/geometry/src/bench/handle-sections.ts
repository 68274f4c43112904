import type { Block } from "../blade/handle-block.js";
import { handleLaw } from "../blade/handle-law.js";
import { handleLayout } from "../blade/handle-layout.js";
import type { Knife } from "../blade/knife.js";
import { CoveredTang, type Stretch } from "../blade/rounded-slab.js";
import { areaMoments } from "../plane/measure.js";
import { line, type Segment } from "../plane/segment.js";
import { blockContour } from "./block-contour.js";
import { freeEnds } from "./free-ends.js";
import { SlabContour } from "./slab-contour.js";

/** A section of the handle's body square to x: slabs, liners and tang together, or the block with its tang; mm, mm². */
export interface HandleSection {
  readonly x: number;
  /** Half of its outside on the right-hand face, from the top of the centre plane to its foot, as (z, y). */
  readonly half: readonly Segment[];
  readonly height: number;
  readonly width: number;
  readonly area: number;
}

/** The body of a handle: where it stands, and its sections. */
export interface HandleBody {
  /** x of its front and of its rear end, and of the foremost place of its butt, mm. */
  readonly front: number;
  readonly rear: number;
  readonly buttFront: number;
  /** Undefined where there is none: in a bolster's place, beside a butt that turns back, at a step. */
  sectionAt(x: number): HandleSection | undefined;
}

/**
 * The body of a knife's handle; undefined where the knife has no slabs and no block, or the handle is given by its mass alone.
 *
 * @example
 * handleBody(knife)?.sectionAt(-50)?.width; // 19.2, tang and both slabs
 */
export function handleBody(knife: Knife): HandleBody | undefined {
  const { handle } = knife.spec;
  if (handle === undefined) return undefined;
  const { handle: grip, fittings } = handleLayout(handle, knife.outline);
  if (grip !== undefined) return blockBody(grip.block);
  if (handle.slabs === undefined) return undefined;
  return slabBody(
    knife,
    fittings.map(({ block }) => block),
  );
}

function blockBody(block: Block): HandleBody {
  return {
    front: block.front,
    rear: block.rear,
    buttFront: block.rear,
    sectionAt(x) {
      if (x > block.front || x < block.rear) return undefined;
      return measured(x, blockContour(block.sectionAt(x), block.centre));
    },
  };
}

function slabBody(knife: Knife, fittings: readonly Stretch[]): HandleBody {
  const { outline, spec } = knife;
  const { slabs, liners } = spec.handle ?? {};
  const sheet = liners?.thickness ?? 0;
  const length = outline.handleFront - outline.butt;
  const cover = handleLaw(slabs?.thickness ?? 0, slabs?.between ?? "straight", length);
  const { slab, footprint } = knife.body("finished");
  const covered = new CoveredTang(
    slab,
    cover.map((value) => value + sheet),
    fittings,
  );
  const contour = new SlabContour(outline, slabs?.edgeRadius ?? 0);
  const [front, rear] = freeEnds(outline, fittings);
  const butt = outline.runs.butt.flatMap(({ from, to }) => [from.x, to.x]);
  return {
    front,
    rear,
    buttFront: Math.max(rear, ...butt.filter((x) => x < front)),
    sectionAt(x) {
      if (x > front || x < rear || !covered.isCovered(x) || contour.turnsBackNear(x)) return undefined;
      const [span, ...more] = footprint.spansAt(x);
      if (span === undefined || more.length > 0) return undefined;
      return measured(x, contour.at(x, span[0], span[1], covered.thicknessAt(x) / 2));
    },
  };
}

function measured(x: number, half: readonly Segment[]): HandleSection | undefined {
  const first = half[0];
  const last = half.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const closed = { segments: [...half, line(last.to, first.from)], closed: true };
  return {
    x,
    half,
    height: first.from.y - last.to.y,
    width: 2 * Math.max(...half.map(({ from }) => from.x)),
    area: 2 * Math.abs(areaMoments(closed).area),
  };
}
