import { arcAround, type Path, reverseSegment, type Segment, type Vec2 } from "@scantling/geometry";
import { type DrawingItem, polyline } from "../../drawing.js";
import { blockSize, type TextLine, textBlock } from "../part-of.js";

/** Paper left about a profile, mm: what keeps a card stiff. */
const RIM = 8;
/** Between lettering and the lines about it, mm. */
const GAP = 3;
/** Straight legs beside a rounded corner, mm. */
const LEG = 8;

/** Straight lines through the points, which lead on from a profile. */
const through = (...points: readonly Vec2[]): readonly Segment[] => polyline(points).segments;

const card = (name: string, segments: readonly Segment[]): DrawingItem => ({
  kind: "path",
  role: "cut",
  name,
  paths: [{ segments, closed: true } satisfies Path],
});

/**
 * A card that goes around one half of a handle: its left side is the centre plane.
 *
 * @param half - from the top of the centre plane round to its foot; x is counted from the centre plane.
 */
export function halfCard(name: string, half: readonly Segment[], words: readonly TextLine[]): DrawingItem[] {
  const top = half[0]?.from.y ?? 0;
  const foot = half.at(-1)?.to.y ?? 0;
  const reach = Math.max(...half.flatMap(({ from, to }) => [from.x, to.x]));
  const { width, height } = blockSize(words);
  const middle = (top + foot) / 2;
  const tall = Math.max(top - foot + 2 * RIM, height + 2 * GAP);
  const [high, low] = [middle + tall / 2, middle - tall / 2];
  const right = reach + 2 * GAP + width;
  const rim = through(
    { x: 0, y: foot },
    { x: 0, y: low },
    { x: right, y: low },
    { x: right, y: high },
    { x: 0, y: high },
    { x: 0, y: top },
  );
  return [
    card(name, [...half, ...rim]),
    ...textBlock(words, { left: reach + GAP, top: middle + height / 2 }),
  ];
}

/**
 * A card with a slot in its upper side, into which a wedge goes.
 *
 * @param left, right - from the bottom of the slot up to its mouth.
 */
export function slotCard(
  name: string,
  left: Segment,
  right: Segment,
  words: readonly TextLine[],
): DrawingItem[] {
  const mouth = right.to.y;
  const { width, height } = blockSize(words);
  const foot = Math.min(right.from.y - RIM, mouth - height - 2 * GAP);
  const [west, east] = [Math.min(left.from.x, left.to.x), Math.max(right.from.x, right.to.x)];
  const end = east + 2 * GAP + width;
  const floor = left.from.x === right.from.x ? [] : through(left.from, right.from);
  const rim = through(
    right.to,
    { x: end, y: mouth },
    { x: end, y: foot },
    { x: west - RIM, y: foot },
    { x: west - RIM, y: mouth },
    left.to,
  );
  return [
    card(name, [reverseSegment(left), ...floor, right, ...rim]),
    ...textBlock(words, { left: east + GAP, top: mouth - GAP }),
  ];
}

/** Flat ground beside an arc, so that its ends can be seen, mm. */
const SHOULDER_RISE = 45;

/**
 * A card whose upper side is an arc.
 *
 * @param chord - width of the arc, mm.
 * @param bulge - 1: it stands out, to be laid into a hollow; −1: it is cut in, to go over a bulge.
 */
export function arcCard(
  name: string,
  radius: number,
  chord: number,
  bulge: 1 | -1,
  words: readonly TextLine[],
): DrawingItem[] {
  const half = Math.min(chord / 2, radius);
  const turn = 2 * Math.asin(half / radius);
  const rise = radius * Math.cos(turn / 2);
  const start = Math.PI / 2 + turn / 2;
  const arc =
    bulge === 1
      ? arcAround({ x: 0, y: -rise }, radius, start, -turn)
      : arcAround({ x: 0, y: rise }, radius, -start, turn);
  const { width, height } = blockSize(words);
  const side = Math.max(half, width / 2 + GAP);
  const lowest = Math.min(0, bulge * radius * (1 - Math.cos(turn / 2)));
  // Beside a short arc the card falls away at half a right angle, so that nothing but the arc touches the work.
  const fall = Math.min(side - half, SHOULDER_RISE);
  const top = Math.min(lowest, -fall) - GAP;
  const foot = top - height - GAP;
  const rim = through(
    arc.to,
    { x: half + fall, y: -fall },
    { x: side, y: -fall },
    { x: side, y: foot },
    { x: -side, y: foot },
    { x: -side, y: -fall },
    { x: -half - fall, y: -fall },
    arc.from,
  );
  return [card(name, [arc, ...rim.filter(hasLength)]), ...textBlock(words, { left: -side + GAP, top })];
}

const hasLength = ({ from, to }: Segment): boolean => Math.hypot(to.x - from.x, to.y - from.y) > 1e-9;

/** A card with a quarter circle twice: cut in, to go over an eased edge, and standing out at its lower right corner. */
export function quarterCard(name: string, radius: number, words: readonly TextLine[]): DrawingItem[] {
  const leg = radius + LEG;
  const { width, height } = blockSize(words);
  const right = leg + 2 * GAP + width;
  // The lettering ends above the rounded corner below.
  const foot = -Math.max(leg + RIM, GAP + height + Math.max(GAP, radius));
  const notch = arcAround({ x: leg - radius, y: -leg + radius }, radius, -Math.PI / 2, Math.PI / 2);
  const corner = arcAround({ x: right - radius, y: foot + radius }, radius, 0, -Math.PI / 2);
  return [
    card(name, [
      ...through({ x: 0, y: -leg }, notch.from),
      notch,
      ...through(notch.to, { x: leg, y: 0 }, { x: right, y: 0 }, corner.from),
      corner,
      ...through(corner.to, { x: 0, y: foot }, { x: 0, y: -leg }),
    ]),
    ...textBlock(words, { left: leg + GAP, top: -GAP }),
  ];
}
