import type { Path } from "../../plane/path.js";
import { line } from "../../plane/segment.js";
import type { Vec2 } from "../../plane/vec2.js";
import type { ForgedProfile } from "./forged-profile.js";
import type { PreformStation } from "./preform.js";

/** A section of the whole preform as it lies flat: handle drawn out, blade before its bevels; mm, cold. */
export interface FlatSection {
  /** Distance from the butt end. */
  readonly along: number;
  /** y of its spine side and of its edge side; the blade's spine side is at 0. */
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
 * blade; ahead of it the preform of the card. The forge card gives heights and not where they lie: the blade's spine side is
 * straight, and at the shoulder the blade stands out over the handle on either side in the share of the finished knife.
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
  const { stations, shoulder, steps } = profile;
  const butt = stations[0]?.x ?? 0;
  const behind = stations.filter(({ x, height }) => x < shoulder && height > 0);
  const start = shoulder - butt;
  const out = steps.spineSide + steps.edgeSide;
  const share = out > 0 ? steps.spineSide / out : 0;
  const front = behind.at(-1)?.height ?? 0;
  const handleTop = ((preform[0]?.height ?? front) - front) * -share;
  const sections = [
    ...behind.map(({ x, height, area }) => ({
      along: x - butt,
      top: handleTop,
      bottom: handleTop - height,
      thickness: area / height,
    })),
    ...preform.map(({ at, height, thickness }) => ({
      along: start + at,
      top: 0,
      bottom: -height,
      thickness,
    })),
  ];
  const heel = start + placeOfHeel(preform);
  return {
    sections,
    outline: outlineOf(sections),
    shoulder: start,
    ...(Math.abs(heel - start) < SAME_MARK ? {} : { heel }),
    length: sections.at(-1)?.along ?? 0,
  };
}

/** Where along the preform the section lies that becomes the one at the heel, from the shoulder. */
function placeOfHeel(preform: readonly PreformStation[]): number {
  const next = preform.findIndex(({ x }) => x >= 0);
  const b = preform[next];
  if (b === undefined) return 0;
  const a = preform[next - 1];
  if (a === undefined || b.x === a.x) return b.at;
  return a.at + ((b.at - a.at) * (0 - a.x)) / (b.x - a.x);
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
