import { type Arc, arcBetween, line, reverseSegment, type Segment } from "../plane/segment.js";
import { distance, type Vec2 } from "../plane/vec2.js";
import { cutoutPath } from "./cutout-path.js";
import type { FaceStation, Side } from "./face-station.js";
import { Footprint } from "./footprint.js";
import { grooveHalfWidth } from "./groove-moments.js";
import { fitCubics } from "./section-outline-fit.js";
import { type FaceStretch, faceStretches } from "./section-outline-stretches.js";
import { distanceToLine, type Groove } from "./steel-body.js";
import { ZoneMap } from "./zone-map.js";

/** Places nearer than this are one, mm. */
const SAME_PLACE = 1e-9;

/**
 * One face of a section from low up to high, as connected segments; x is the distance from the centre plane, y the height,
 * mm. Where the face steps it has a level line.
 *
 * @param station - standing at the section's x.
 */
export function faceOutline(station: FaceStation, side: Side, low: number, high: number): Segment[] {
  const grooves = groovesOf(station, side);
  const cuts = grooves.flatMap(({ breaks }) => breaks);
  const pieces = faceStretches(station, side, low, high)
    .flatMap((stretch) => parts(stretch, cuts))
    .map((part) => ({ part, bottom: Math.min(part.from, part.to) }))
    .sort((a, b) => a.bottom - b.bottom)
    .map(({ part }) => segmentsOf(part, grooves));
  return joined(pieces.flat());
}

/** A groove on this face, and the heights at which its section here begins, ends or changes its form. */
interface GrooveHere {
  readonly groove: Groove;
  readonly from: number;
  readonly to: number;
  readonly breaks: readonly number[];
  /** Where its section is a circle: the radius. */
  readonly radius: number | undefined;
  readonly depthAt: (y: number) => number;
}

function groovesOf({ body, x }: FaceStation, side: Side): GrooveHere[] {
  return (body.input.grooves ?? []).flatMap((groove) => {
    if (groove.faces !== "both" && groove.faces !== side) return [];
    const rim = cutoutPath({ centre: groove.from, to: groove.to, radius: grooveHalfWidth(groove) });
    const [span] = new Footprint(rim).spansAt(x);
    if (span === undefined || span[1] - span[0] < SAME_PLACE) return [];
    const [from, to] = span;
    return [
      {
        groove,
        from,
        to,
        breaks: [from, to, ...endsOfLine(groove, x).filter((y) => y > from && y < to)],
        radius: circleOf(groove, x),
        depthAt: (y: number) => depthInside(groove, { x, y }),
      },
    ];
  });
}

/** Heights at which the nearest place of a groove's middle line passes over one of its ends. */
function endsOfLine({ from, to }: Groove, x: number): number[] {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  return dy === 0 ? [] : [from, to].map((end) => end.y - ((x - end.x) * dx) / dy);
}

/** Radius of a groove's section at x where that is a circle: the groove runs level. */
function circleOf({ from, to, radius }: Groove, x: number): number | undefined {
  if (from.y !== to.y) return undefined;
  const past = Math.max(0, Math.min(from.x, to.x) - x, x - Math.max(from.x, to.x));
  return Math.sqrt(Math.max(0, radius * radius - past * past));
}

/** Depth of a groove inside its rim, at the rim the value just inside. */
function depthInside({ from, to, radius, depth }: Groove, point: Vec2): number {
  const q = distanceToLine(point, from, to);
  return Math.max(0, Math.sqrt(Math.max(0, radius * radius - q * q)) - (radius - depth));
}

/** A stretch cut at the heights that lie inside it. */
function parts(stretch: FaceStretch, cuts: readonly number[]): FaceStretch[] {
  const low = Math.min(stretch.from, stretch.to);
  const high = Math.max(stretch.from, stretch.to);
  if (high - low < SAME_PLACE) return [];
  const inside = cuts.filter((y) => y > low + SAME_PLACE && y < high - SAME_PLACE).sort((a, b) => a - b);
  if (inside.length === 0) return [stretch];
  const places = [low, ...inside, high];
  // The points are spread anew over each part, by its own ends.
  const { arc: _arc, ...rest } = stretch;
  return places.slice(1).map((to, i) => ({ ...rest, from: places[i] ?? low, to }));
}

/** The segments of one part, upward. */
function segmentsOf(part: FaceStretch, grooves: readonly GrooveHere[]): Segment[] {
  const middle = (part.from + part.to) / 2;
  const over = grooves.filter(({ from, to }) => middle > from && middle < to);
  const half = (y: number): number => over.reduce((sum, { depthAt }) => sum - depthAt(y), part.half(y));
  const at = (y: number): Vec2 => ({ x: half(y), y });
  const ends = [at(part.from), at(part.to)] as const;
  const segments = exact(part, over, ends) ?? fitCubics(curveOf(part, over.length > 0, at));
  return part.to >= part.from ? segments : [...segments].reverse().map(reverseSegment);
}

/** The part as one line or one arc; undefined where it is neither. */
function exact(
  part: FaceStretch,
  over: readonly GrooveHere[],
  [from, to]: readonly [Vec2, Vec2],
): Segment[] | undefined {
  const [groove, another] = over;
  const up = part.to >= part.from ? 1 : -1;
  if (groove !== undefined) {
    const isLevel = part.form === "straight" && part.half(part.from) === part.half(part.to);
    const { radius } = groove;
    return another === undefined && isLevel && radius !== undefined
      ? [arcOver(from, to, radius, -up)]
      : undefined;
  }
  if (part.form === "curved") return undefined;
  if (part.form === "straight") return [line(from, to)];
  return [arcOver(from, to, part.form.radius, part.form.bulge * up)];
}

/** The arc of a radius between two points, at most half a turn: 1 bulges to the right of the way. */
function arcOver(from: Vec2, to: Vec2, radius: number, turn: number): Arc | ReturnType<typeof line> {
  const share = Math.min(1, distance(from, to) / (2 * radius));
  const sweep = 2 * Math.asin(share);
  return sweep < SAME_PLACE ? line(from, to) : arcBetween(from, to, turn * sweep);
}

/** The part over a parameter in which it is smooth, even where it stands out level at an end. */
function curveOf(part: FaceStretch, grooved: boolean, at: (y: number) => Vec2): (t: number) => Vec2 {
  const map = new ZoneMap();
  if (grooved) map.ends();
  else if (part.arc !== undefined) map.fit(part.arc.section, part.arc.piece, part.arc.va, part.arc.vb);
  return (t) => {
    if (t === 0) return at(part.from);
    if (t === 1) return at(part.to);
    map.at(t);
    return at(part.from + (part.to - part.from) * map.place);
  };
}

/** Segments end to end: rounding is closed up, a step becomes a level line. */
function joined(segments: readonly Segment[]): Segment[] {
  const out: Segment[] = [];
  for (const segment of segments) {
    const last = out[out.length - 1];
    if (last === undefined) out.push(segment);
    else if (distance(last.to, segment.from) > SAME_PLACE) out.push(line(last.to, segment.from), segment);
    else out.push({ ...segment, from: last.to });
  }
  return out;
}
