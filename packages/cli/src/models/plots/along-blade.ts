import {
  type Knife,
  type PieceState,
  pathBounds,
  type Segment,
  type StateSection,
  stateSection,
} from "@scantling/geometry";
import type { AlongBlade } from "@scantling/render";

/** A section with its place. */
export interface PlacedSection {
  readonly x: number;
  readonly section: StateSection;
}

/** Places at which the curves are taken, besides those where they step or bend. */
const PLACES = 60;
/** Where a curve steps it is taken on both sides, this far away, mm. */
const BESIDE = 1e-6;
/** Places over a hole. */
const OVER_HOLE = 10;

/**
 * Sections of the knife in a size state from butt to tip: at even distances, on both sides of every step of the outline and
 * of the laws, and across every hole, so that figures may be taken as straight between them.
 *
 * @param more - further places, mm ahead of the heel.
 */
export function sectionsAlong(
  knife: Knife,
  state: PieceState,
  heights: readonly number[],
  more: readonly number[] = [],
): PlacedSection[] {
  const body = knife.body(state);
  const { minX, maxX, intervals } = body.footprint;
  const { plunge } = body.input;
  const swedge = body.input.crest?.input.swedge;
  const steps = [
    minX,
    maxX,
    ...intervals.map(({ x0 }) => x0),
    plunge.at,
    plunge.at + plunge.length,
    body.slab.handleFront,
    ...body.slab.breaks,
    ...(swedge === undefined ? [] : [swedge.from, swedge.to]),
  ];
  const holes = body.input.cutouts.flatMap(({ centre, radius, to = centre }) => {
    const from = Math.min(centre.x, to.x) - radius;
    const end = Math.max(centre.x, to.x) + radius;
    // Closer together toward the rims, where the cut is steepest.
    return Array.from(
      { length: OVER_HOLE + 1 },
      (_, index) => (from + end) / 2 - ((end - from) / 2) * Math.cos((Math.PI * index) / OVER_HOLE),
    );
  });
  const even = Array.from({ length: PLACES + 1 }, (_, index) => minX + ((maxX - minX) * index) / PLACES);
  const xs = [...even, ...holes, ...more, ...steps.flatMap((x) => [x - BESIDE, x + BESIDE])]
    .filter((x) => x > minX && x < maxX)
    .sort((a, b) => a - b);
  return xs
    .filter((x, index) => index === 0 || x > (xs[index - 1] ?? x))
    .map((x) => ({ x, section: stateSection(knife, x, state, heights) }));
}

/** Steel in the sections of a state that has no strips about it, mm² over mm; nothing at the very ends. */
export function areaAlong(sections: readonly PlacedSection[]): AlongBlade {
  const points = sections.map(({ x, section }) => ({ x, y: section.area }));
  return withEnds(points, points[0]?.x, points.at(-1)?.x);
}

/**
 * Steel in the sections of the forging, whose ends are drawn out: the sections about a rounded or slanting end move outward
 * with it, and what comes in between has the section at its inner side.
 */
export function forgedAreaAlong(knife: Knife, sections: readonly PlacedSection[]): AlongBlade {
  const { runs } = knife.outline;
  const { tip, butt } = knife.allowances;
  const all = sections.map(({ x, section }) => ({ x, y: section.area }));
  const [first, last] = [all[0], all.at(-1)];
  if (first === undefined || last === undefined) return [];
  const rear = insideOf(runs.butt, "rear", first.x);
  const front = insideOf(runs.front, "front", last.x);
  const points = [
    ...all.filter(({ x }) => x <= rear + BESIDE * 2).map(({ x, y }) => ({ x: x - butt, y })),
    ...all.filter(({ x }) => x >= rear && x <= front),
    ...all.filter(({ x }) => x >= front - BESIDE * 2).map(({ x, y }) => ({ x: x + tip, y })),
  ];
  return withEnds(points, first.x - butt, last.x + tip);
}

/** x of the inner side of an end; that of the end itself where it stands upright or has no run. */
function insideOf(run: readonly Segment[], end: "rear" | "front", x: number): number {
  if (run.length === 0) return x;
  const { minX, maxX } = pathBounds({ segments: run, closed: false });
  return end === "rear" ? Math.max(x, maxX) : Math.min(x, minX);
}

const withEnds = (points: AlongBlade, from = 0, to = 0): AlongBlade => [
  { x: from, y: 0 },
  ...points,
  { x: to, y: 0 },
];
