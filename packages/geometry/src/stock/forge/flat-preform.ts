import type { Path } from "../../plane/path.js";
import { line } from "../../plane/segment.js";
import type { Vec2 } from "../../plane/vec2.js";
import type { ForgedProfile } from "./forged-profile.js";
import { type PreformStation, preformPlaceOf } from "./preform.js";

/** A section of the whole preform as it lies flat: handle drawn out, blade before its bevels; mm, cold. */
export interface FlatSection {
  /** Distance from the butt end. */
  readonly along: number;
  /** y of its spine side and of its edge side; the spine side of the heel is at 0. */
  readonly top: number;
  readonly bottom: number;
  /** Of the blade that of the spine, of the handle the mean: height times thickness is the area. */
  readonly thickness: number;
}

/** The preform seen from the side; mm, cold, along the bar from its butt end. */
export interface FlatPreform {
  readonly sections: readonly FlatSection[];
  /** Through all sections, straight between them; counter-clockwise. */
  readonly outline: Path;
  readonly shoulder: number;
  /** Left out where the heel is the shoulder. */
  readonly heel?: number;
  readonly length: number;
}

/** Sections nearer than this along the bar are one place, mm: a step between them is upright. */
const SAME_PLACE = 1e-6;
/** A heel nearer to the shoulder than this is the shoulder, mm. */
const SAME_MARK = 0.5;

/**
 * The whole preform as a flat outline: behind the shoulder the handle as it is drawn out, with the heights of the forged
 * blade; ahead of it the preform of the card. Every spine side lies as high as that of the forged section it becomes: hammering
 * in bevels drives steel toward the edge.
 *
 * @param preform - Of a card for the same knife.
 *
 * @example
 * const shop = { ...DEFAULT_SHOP, rack: [{ name: "6 x 40", width: 40, thickness: 6 }] };
 * const [plan] = planStock(ledgerBodies(knife), shop, knife.forging).plans;
 * if (plan === undefined) throw new Error("no plan");
 * const { preform } = forgeCard(knife, ledgerBodies(knife), shop, plan);
 * flatPreform(forgedProfile(knife), preform).shoulder; // 118: 3 mm more at the butt, the tang of 105, the ricasso of 10
 */
export function flatPreform(profile: ForgedProfile, preform: readonly PreformStation[]): FlatPreform {
  const { stations, shoulder } = profile;
  const butt = stations[0]?.x ?? 0;
  const behind = stations.filter(({ x, height }) => x < shoulder && height > 0);
  const start = shoulder - butt;
  const level = heelTop(stations);
  const section = (along: number, x: number, height: number, thickness: number): FlatSection => {
    const top = topAt(stations, x) - level;
    return { along, top, bottom: top - height, thickness };
  };
  const sections = [
    ...behind.map(({ x, height, area }) => section(x - butt, x, height, area / height)),
    ...preform.map(({ x, at, height, thickness }) => section(start + at, x, height, thickness)),
  ];
  const heel = start + preformPlaceOf(preform, 0);
  return {
    sections,
    outline: outlineOf(sections),
    shoulder: start,
    ...(Math.abs(heel - start) < SAME_MARK ? {} : { heel }),
    length: sections.at(-1)?.along ?? 0,
  };
}

/** y of the spine side at x, straight between stations; beyond the ends, the end. */
function topAt(stations: ForgedProfile["stations"], x: number): number {
  const next = stations.findIndex((station) => station.x >= x);
  const b = stations.at(next);
  const a = next > 0 ? stations[next - 1] : undefined;
  const top = b?.top ?? 0;
  if (a === undefined || b === undefined || b.x === a.x) return top;
  const from = a.top ?? 0;
  return from + ((top - from) * (x - a.x)) / (b.x - a.x);
}

/**
 * y of the blade's own spine side at the heel: where the tang is lower there, outline and spine take a step in one place, and it
 * is the side ahead of it that is meant, not the middle of the two.
 */
function heelTop(stations: ForgedProfile["stations"]): number {
  const there = stations.filter(({ x, height }) => Math.abs(x) < SAME_PLACE && height > 0).at(-1);
  return there?.top ?? topAt(stations, 0);
}

/**
 * How far the spine side of the forged blade's front end lies below that of its heel; mm, negative above.
 *
 * @example
 * pointDrop(forgedProfile(knife)); // mm
 */
export function pointDrop({ stations }: ForgedProfile): number {
  return heelTop(stations) - (stations.at(-1)?.top ?? 0);
}

function outlineOf(sections: readonly FlatSection[]): Path {
  const bottom = sections.map(({ along, bottom: y }) => ({ x: along, y }));
  const top = sections.map(({ along, top: y }) => ({ x: along, y })).reverse();
  const points = distinct([...bottom, ...top]);
  return {
    closed: true,
    segments: points.map((from, index) => line(from, points[(index + 1) % points.length] ?? from)),
  };
}

/** Points without those that lie on the one before or on the line between their neighbours. */
function distinct(points: readonly Vec2[]): Vec2[] {
  const kept: Vec2[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    const before = kept.at(-2);
    if (last !== undefined && Math.hypot(point.x - last.x, point.y - last.y) < SAME_PLACE) continue;
    // Steps are written with two sections a hair apart; on paper they are upright.
    const upright = last !== undefined && Math.abs(point.x - last.x) < SAME_PLACE;
    const placed = upright ? { x: last.x, y: point.y } : point;
    if (last !== undefined && before !== undefined && isBetween(before, last, placed)) kept.pop();
    kept.push(placed);
  }
  return kept;
}

const isBetween = (a: Vec2, b: Vec2, c: Vec2): boolean => {
  const across = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  return Math.abs(across) <= 1e-9 * Math.hypot(c.x - a.x, c.y - a.y);
};
