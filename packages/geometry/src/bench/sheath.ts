import type { Knife } from "../blade/knife.js";
import { SpecError } from "../errors/errors.js";
import { crossingsAtX } from "../plane/at-x.js";
import { monotoneBreaks } from "../plane/bounds.js";
import type { Path } from "../plane/path.js";
import { line, pointAt, reverseSegment, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { evenPlaces, type RunPlace } from "./along-run.js";
import { bladeCavity, type Cavity } from "./cavity.js";
import { checkSheath } from "./check-sheath.js";
import { closedThrough, piecesBetween } from "./clip-x.js";
import { edgeAround } from "./edge-around.js";
import { unfolded } from "./fold-over.js";
import { greatestAlong, placesBetween } from "./largest-along.js";
import { sheathMouth, thickestAhead } from "./sheath-blade.js";
import { type SheathSizes, withDefaultSheath } from "./sheath-defaults.js";

/**
 * A fold-over sheath laid flat, flesh side up: in the knife's frame below the fold, mirrored above it. The blade lies in the
 * lower half, so far below the fold that half its thickness goes round; mm.
 */
export interface Sheath {
  readonly sizes: SheathSizes;
  /** x of the mouth and y of the fold. */
  readonly mouth: number;
  readonly fold: number;
  /** The leather to cut: both halves, with the trim on. */
  readonly blank: Path;
  /** x at which blank and fold end at the front. */
  readonly foldEnd: number;
  /** The finished edge of the lower half, from mouth to fold. */
  readonly finished: readonly Segment[];
  /** Of the lower half, from the mouth to where it is as near to the fold as to the finished edge. */
  readonly stitchLine: readonly Segment[];
  readonly stitches: readonly RunPlace[];
  /** Length along the seam from stitch to stitch, as it comes out. */
  readonly stitchPitch: number;
  /** One layer of the welt, with the trim on, where it lies in the lower half. */
  readonly welt: Path;
  readonly weltLayers: number;
  /** The part of the blade's outline that is inside. */
  readonly blade: readonly Segment[];
  /** Thickest place of the blade inside. */
  readonly bladeThickness: number;
  /** Clear height of the mouth between fold and welt, and the highest part of the blade that has to pass it. */
  readonly mouthHeight: number;
  readonly bladeHeight: number;
  /** From the fold to the cut edge at the mouth. */
  readonly halfWidth: number;
}

/**
 * A sheath of one piece of leather folded at the spine and stitched along edge and tip through a welt. Each side is as
 * wide as blade height + half its thickness + welt + trim; the welt stands off everything that passes on the way out.
 *
 * @throws {SpecError} with what {@link checkSheath} finds.
 * @throws {GeometryError} `sheath-edge` and those of {@link offsetPath} where no edge can be drawn.
 *
 * @example
 * foldOverSheath(knife).halfWidth; // 43.6: 28 of blade, half of 3.2, a welt of 12 and 2 to trim
 */
export function foldOverSheath(knife: Knife, given: Partial<SheathSizes> = {}): Sheath {
  const issues = checkSheath(knife, given);
  if (issues.length > 0) throw new SpecError(issues);
  const sizes = withDefaultSheath(given);
  const { welt, trim, stitchInset, leather } = sizes;
  const { outline } = knife;
  const mouth = sheathMouth(knife);
  const cavity = bladeCavity(outline, mouth);
  const bladeThickness = thickestAhead(knife, mouth);
  const fold = cavity.high + bladeThickness / 2;
  const edgeAt = (distance: number): Segment[] => edgeAround(cavity, fold, distance);
  const cut = edgeAt(welt + trim);
  // It ends where it comes near the fold: stitches of both halves would share their leather there.
  const stitchLine = edgeAround(cavity, fold - stitchInset, welt - stitchInset);
  const { pitch, places } = evenPlaces(stitchLine, sizes.stitchPitch, stitchInset);
  const inside = piecesBetween(outline.path.segments, mouth, Number.POSITIVE_INFINITY);
  return {
    sizes,
    mouth,
    fold,
    blank: unfolded(cut, fold),
    foldEnd: cut.at(-1)?.to.x ?? mouth,
    finished: edgeAt(welt),
    stitchLine,
    stitches: places,
    stitchPitch: pitch,
    welt: weltOf(cut, cavity, fold),
    weltLayers: Math.max(1, Math.ceil(bladeThickness / leather - 1e-9)),
    blade: inside,
    bladeThickness,
    mouthHeight: cavity.high - cavity.low,
    bladeHeight: highestPart(outline.path, mouth, outline.edgeLength),
    halfWidth: fold - (cut[0]?.from.y ?? fold),
  };
}

/** How finely the blade is looked through for its highest part, mm. */
const STEP = 1;

/** Read this little inside the mouth: the shoulder of a tang stands upright there, mm. */
const INSIDE = 1e-9;

/** Corners and the mouth itself are looked at too: the highest part is often at one of them. */
function highestPart(path: Path, from: number, to: number): number {
  const corners = path.segments.flatMap((segment) => [
    segment.from.x,
    ...monotoneBreaks(segment, "y").map((t) => pointAt(segment, t).x),
  ]);
  const heightAt = (x: number): number => {
    const ys = crossingsAtX(path, x).map(({ point }) => point.y);
    return ys.length < 2 ? 0 : Math.max(...ys) - Math.min(...ys);
  };
  return greatestAlong(placesBetween(from + INSIDE, to, STEP, corners), heightAt)?.value ?? 0;
}

/** The strip between the blade's way and the cut edge, ended square at the fold. */
function weltOf(cut: readonly Segment[], cavity: Cavity, fold: number): Path {
  const end = cut.at(-1)?.to ?? { x: cavity.mouth, y: fold };
  const corner = cavity.upper[0]?.from ?? end;
  const past = piecesBetween(cavity.upper, end.x, Number.POSITIVE_INFINITY);
  const inner = [...cavity.lower, ...cavity.front, ...(end.x < corner.x ? past : [])];
  const over: Vec2 = { x: corner.x, y: fold };
  const top = end.x < corner.x ? [] : [line(end, over)];
  return closedThrough([...cut, ...top, ...inner.map(reverseSegment).reverse()]);
}
