import { holeThroughHandle } from "../blade/handle-hole.js";
import { handleLaw } from "../blade/handle-law.js";
import { handleLayout, type PlacedBlock } from "../blade/handle-layout.js";
import type { Knife } from "../blade/knife.js";
import type { Stretch } from "../blade/rounded-slab.js";
import type { HoleSpec } from "../blade/spec.js";
import { pathBounds } from "../plane/bounds.js";
import type { Path } from "../plane/path.js";
import { cubic, line, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { type HandleBlank, handleBlank } from "./blanks.js";
import { closedThrough, piecesBetween } from "./clip-x.js";
import { slabPieces } from "./slab-pieces.js";

/** A hole through the handle at its finished place and size; mm. */
export interface HandleHole {
  /** Its place among all holes of the knife, from 0: all sheets letter it by that. */
  readonly index: number;
  readonly kind: HoleSpec["kind"];
  readonly centre: Vec2;
  /** Diameter, or width of a slot: of a pin the pin's own. */
  readonly diameter: number;
  readonly slot?: { readonly to: Vec2; readonly rim: Path };
}

/** A bolster, guard or pommel beside the handle, seen from the side; mm. */
export interface HandleFitting {
  readonly name: string;
  readonly front: number;
  readonly rear: number;
  readonly low: number;
  readonly high: number;
}

interface Common {
  readonly material: string;
  readonly holes: readonly HandleHole[];
  readonly fittings: readonly HandleFitting[];
  /** What to saw, and the lower left corner of its outline about the handle, in the knife's frame. */
  readonly blank: HandleBlank & { readonly corner: Vec2 };
}

/** A pair of slabs as they will be shaped: their outline from the right-hand side, tip to the right; mm. */
export interface SlabStock extends Common {
  readonly kind: "slabs";
  /** More than one where a fitting parts them. */
  readonly pieces: readonly Path[];
  /** Greatest and least finished thickness of a slab. */
  readonly thickness: { readonly most: number; readonly least: number };
  readonly liner?: { readonly material: string; readonly thickness: number };
}

/** A block for a hidden or through tang, from the side and from above, with the tang in it; mm. */
export interface BlockStock extends Common {
  readonly kind: "block";
  readonly section: "oval" | "octagonal" | "rounded";
  readonly side: Path;
  /** In the side view, (x, y); what lies behind the handle's front. */
  readonly tangSide: Path;
  /** From above, (x, z). */
  readonly above: Path;
  readonly tangAbove: Path;
}

/** The wood of a handle: a pair of slabs, or a block. */
export type HandleStock = SlabStock | BlockStock;

/**
 * The handle's wood: true outlines, holes at their finished place and size, and the blank of {@link handleBlank} about it.
 *
 * @param kerf - of the saw that parts a book-matched block, mm.
 * @returns undefined where the knife has neither slabs nor a block.
 *
 * @example
 * handleStock(knife, 2)?.blank.bookMatched; // 20: two of 9 and the kerf
 */
export function handleStock(knife: Knife, kerf: number): HandleStock | undefined {
  const { handle } = knife.spec;
  if (handle === undefined) return undefined;
  const blank = handleBlank(knife, kerf);
  if (blank === undefined) return undefined;
  const layout = handleLayout(handle, knife.outline);
  const common = {
    holes: throughHoles(
      knife,
      Math.max(knife.outline.handleFront, ...layout.fittings.map(({ block }) => block.front)),
    ),
    fittings: layout.fittings.map(fittingOf),
  };
  if (layout.handle !== undefined && handle.block !== undefined) {
    return blockStock(knife, layout.handle, handle.block.section, blank, common);
  }
  if (handle.slabs === undefined) return undefined;
  return slabStock(
    knife,
    blank,
    layout.fittings.map(({ block }) => block),
    common,
  );
}

function throughHoles({ holes }: Knife, front: number): HandleHole[] {
  return holes
    .map((hole, index) => ({ hole, index }))
    .filter(({ hole: { kind, at } }) => kind !== "lightening" && at.x < front)
    .map(({ hole, index }) => ({
      index,
      kind: hole.kind,
      centre: hole.at,
      diameter: hole.kind === "pin" ? (hole.pin ?? hole.diameter) : hole.diameter,
      ...(hole.kind === "pin" || hole.to === undefined
        ? {}
        : { slot: { to: hole.to, rim: holeThroughHandle(hole) } }),
    }));
}

function fittingOf({ name, block }: PlacedBlock): HandleFitting {
  const { halfHeight } = block.sectionAt((block.front + block.rear) / 2);
  const { front, rear, centre } = block;
  return { name, front, rear, low: centre - halfHeight, high: centre + halfHeight };
}

function slabStock(
  knife: Knife,
  blank: HandleBlank,
  fittings: readonly Stretch[],
  common: Pick<Common, "holes" | "fittings">,
): SlabStock {
  const { outline, spec } = knife;
  const { slabs, liners } = spec.handle ?? {};
  const law = handleLaw(
    slabs?.thickness ?? 0,
    slabs?.between ?? "straight",
    outline.handleFront - outline.butt,
  );
  const pieces = slabPieces(outline, fittings);
  const { min, max } = law.range;
  return {
    kind: "slabs",
    material: slabs?.material.name ?? "",
    pieces,
    thickness: { most: max, least: min },
    ...(liners === undefined
      ? {}
      : { liner: { material: liners.material.name, thickness: liners.thickness } }),
    ...common,
    blank: placed(blank, pieces),
  };
}

/** The blank with as much over on either side. */
function placed(blank: HandleBlank, paths: readonly Path[]): Common["blank"] {
  const boxes = paths.map(pathBounds);
  const middle = (low: "minX" | "minY", high: "maxX" | "maxY"): number =>
    (Math.min(...boxes.map((box) => box[low])) + Math.max(...boxes.map((box) => box[high]))) / 2;
  const corner = {
    x: middle("minX", "maxX") - blank.length / 2,
    y: middle("minY", "maxY") - blank.height / 2,
  };
  return { ...blank, corner };
}

function blockStock(
  knife: Knife,
  { block, material }: PlacedBlock,
  section: BlockStock["section"],
  blank: HandleBlank,
  common: Pick<Common, "holes" | "fittings">,
): BlockStock {
  const { front, rear, centre } = block;
  const size = knife.spec.handle?.block;
  const between = size?.between ?? "straight";
  const lawOf = (law: Parameters<typeof handleLaw>[0]): Along => {
    const made = handleLaw(law, between, front - rear);
    return {
      valueAt: (x) => made.valueAt(front - x),
      slopeAt: (x) => -made.slopeAt(front - x),
      breaks: made.breaks.map((s) => front - s),
      isStraight: made.isStraight,
    };
  };
  const height = lawOf(size?.height ?? 0);
  const width = lawOf(size?.width ?? 0);
  const { slab } = knife.body("finished");
  const tangRear = Math.max(knife.outline.butt, rear);
  const thickness: Along = { ...slabAlong(slab), breaks: slab.breaks };
  const side = aroundLine(height, centre, rear, front);
  const above = aroundLine(width, 0, rear, front);
  return {
    kind: "block",
    material: material.name,
    section,
    side,
    above,
    tangSide: closedThrough(piecesBetween(knife.outline.path.segments, Number.NEGATIVE_INFINITY, front)),
    tangAbove: aroundLine(thickness, 0, tangRear, front),
    ...common,
    blank: placed(blank, [side]),
  };
}

/** A size along x: straight or cubic between its breaks. */
interface Along {
  readonly valueAt: (x: number) => number;
  readonly slopeAt: (x: number) => number;
  readonly breaks: readonly number[];
  readonly isStraight: boolean;
}

function slabAlong(slab: ReturnType<Knife["body"]>["slab"]): Along {
  return {
    valueAt: (x) => slab.tangThicknessAt(Math.min(x, slab.handleFront)),
    slopeAt: (x) => slab.slopeAt(x),
    breaks: slab.breaks,
    isStraight: slab.isStraight,
  };
}

/** How far beside a break its two sides are read, mm. */
const BESIDE = 1e-7;

/** The closed outline of a size laid off half to each side of a middle line, counter-clockwise. */
function aroundLine(size: Along, middle: number, rear: number, front: number): Path {
  const upper = halfRun(size, rear, front);
  const place = (sign: 1 | -1, segment: Segment): Segment => {
    const at = ({ x, y }: Vec2): Vec2 => ({ x, y: middle + (sign * y) / 2 });
    return segment.kind === "cubic"
      ? cubic(at(segment.from), at(segment.control1), at(segment.control2), at(segment.to))
      : line(at(segment.from), at(segment.to));
  };
  const below = upper.map((segment) => place(-1, segment));
  const above = upper
    .map((segment) => place(1, segment))
    .map((segment) =>
      segment.kind === "cubic"
        ? cubic(segment.to, segment.control2, segment.control1, segment.from)
        : line(segment.to, segment.from),
    )
    .reverse();
  return closedThrough([...below, ...above]);
}

/** The size over x as straight pieces or cubics, exact: between two breaks it is one or the other. */
function halfRun(size: Along, rear: number, front: number): Segment[] {
  const inner = size.breaks.filter((x) => x > rear + BESIDE && x < front - BESIDE);
  const marks = [...new Set([rear, ...inner, front])].sort((a, b) => a - b);
  return marks.slice(1).map((to, index) => {
    const from = marks[index] ?? rear;
    const [y0, y1] = [size.valueAt(from + BESIDE / 10), size.valueAt(to - BESIDE / 10)];
    const [start, end] = [
      { x: from, y: y0 },
      { x: to, y: y1 },
    ];
    if (size.isStraight) return line(start, end);
    const third = (to - from) / 3;
    const rise = (x: number): number => third * size.slopeAt(x);
    return cubic(
      start,
      { x: from + third, y: y0 + rise(from + BESIDE) },
      { x: to - third, y: y1 - rise(to - BESIDE) },
      end,
    );
  });
}
