import { boundsMeet, segmentBounds } from "./bounds.js";
import { type Contact, MEETING_TOLERANCE } from "./contact.js";
import { cubicContacts } from "./intersect-cubics.js";
import { curveContacts } from "./intersect-implicit.js";
import { partedAtJoint } from "./joint-cones.js";
import { nearestOnSegment } from "./nearest.js";
import { type Cubic, line, pointAt, type Segment } from "./segment.js";
import { cross, distance, dot, subtract } from "./vec2.js";

/** A stretch along which two curves keep within the tolerance is a touch up to this length, mm, and an overlap above. */
const LONGEST_TOUCH = 0.05;

/** How two segments meet: in a point (crossing or touching), or along a stretch that both run over. */
export type Meeting =
  | ({ readonly kind: "point" } & Contact)
  | { readonly kind: "overlap"; readonly from: Contact; readonly to: Contact };

/**
 * Everywhere that two segments meet, in the order of the first one's parameter.
 *
 * Against a line or an arc the roots of the distance along the other curve are isolated and found exactly; two cubics
 * are halved until only their contacts are left, which Newton then refines. Ends are tested one by one, so a shared end
 * is always found; a tangent touch is one point; curves that coincide come back as an overlap. Parameters are good to
 * rounding at a crossing, to about 1e-5 mm along the curve at a touch.
 *
 * @throws {GeometryError} `intersection-unresolved` where two cubics run so near to each other for so long that their
 *   contacts cannot be told apart.
 *
 * @example
 * meetings(line({ x: 0, y: 0 }, { x: 8, y: 0 }), line({ x: 2, y: -1 }, { x: 2, y: 3 }));
 * // [{ kind: "point", t1: 0.25, t2: 0.25, point: { x: 2, y: 0 } }]
 */
export function meetings(first: Segment, second: Segment): Meeting[] {
  if (!boundsMeet(segmentBounds(first), segmentBounds(second), MEETING_TOLERANCE)) return [];
  const joint = sharedEnd(first, second);
  if (joint !== undefined && partedAtJoint(first, second, joint.point)) return [{ kind: "point", ...joint }];
  const ends = endContacts(first, second);
  const shared = mergeContacts(first, second, ends);
  // Cubics that coincide along a stretch are one and the same curve; halving them would never come to an end.
  if (first.kind === "cubic" && second.kind === "cubic") {
    if (shared.some((meeting) => meeting.kind === "overlap")) return shared;
    return mergeContacts(first, second, [...ends, ...contactsOfCubics(first, second)]);
  }
  return mergeContacts(first, second, [...ends, ...curveContacts(first, second)]);
}

/** The first pair of ends that are the same point to the last bit. */
function sharedEnd(first: Segment, second: Segment): Contact | undefined {
  for (const [t1, a] of [
    [1, first.to],
    [0, first.from],
  ] as const) {
    for (const [t2, b] of [
      [0, second.from],
      [1, second.to],
    ] as const) {
      if (a.x === b.x && a.y === b.y) return { t1, t2, point: a };
    }
  }
  return undefined;
}

/** A cubic that is a straight line in disguise, as drawing programs write them, is met as the line that it is. */
function contactsOfCubics(first: Cubic, second: Cubic): Contact[] {
  if (isStraight(second)) {
    return curveContacts(first, line(second.from, second.to)).map((contact) => ({
      ...contact,
      t2: nearestOnSegment(second, contact.point).t,
    }));
  }
  if (!isStraight(first)) return cubicContacts(first, second);
  return contactsOfCubics(second, first).map(({ t1, t2, point }) => ({ t1: t2, t2: t1, point }));
}

/** Whether the control points follow one another along the chord, to rounding. */
function isStraight({ from, control1, control2, to }: Cubic): boolean {
  const length = distance(from, to);
  const chord = subtract(to, from);
  const offsets = [control1, control2].map((p) => subtract(p, from));
  const along = offsets.map((offset) => dot(offset, chord) / length);
  const [a = Number.NaN, b = Number.NaN] = along;
  const across = Math.max(...offsets.map((offset) => Math.abs(cross(offset, chord)) / length));
  return across <= 1e-13 * length && 0 <= a && a <= b && b <= length;
}

/** Ends of either segment that lie on the other. */
function endContacts(first: Segment, second: Segment): Contact[] {
  const contacts: Contact[] = [];
  for (const t of [0, 1]) {
    const end = t === 0 ? first.from : first.to;
    const near = nearestOnSegment(second, end);
    if (near.distance <= MEETING_TOLERANCE) contacts.push({ t1: t, t2: near.t, point: end });
  }
  for (const t of [0, 1]) {
    const end = t === 0 ? second.from : second.to;
    const near = nearestOnSegment(first, end);
    if (near.distance <= MEETING_TOLERANCE) contacts.push({ t1: near.t, t2: t, point: end });
  }
  return contacts;
}

/** Joins contacts between which the first curve does not leave the second. */
function mergeContacts(first: Segment, second: Segment, contacts: readonly Contact[]): Meeting[] {
  const sorted = [...contacts].sort((a, b) => a.t1 - b.t1);
  const groups: Contact[][] = [];
  for (const contact of sorted) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    if (group !== undefined && last !== undefined && staysOn(first, second, last.t1, contact.t1)) {
      group.push(contact);
    } else {
      groups.push([contact]);
    }
  }
  return groups.map((group) => {
    const from = group[0] as Contact;
    const to = group.at(-1) as Contact;
    if (spanOf(first, from.t1, to.t1) > LONGEST_TOUCH) return { kind: "overlap", from, to };
    return { kind: "point", ...best(group, first, second) };
  });
}

const SAMPLES = 11;

/** Two different cubics meet in at most nine points; eleven samples on both cannot all be chance. */
function staysOn(first: Segment, second: Segment, t0: number, t1: number): boolean {
  if (t1 === t0) return true;
  for (let i = 1; i <= SAMPLES; i++) {
    const t = t0 + ((t1 - t0) * i) / (SAMPLES + 1);
    if (nearestOnSegment(second, pointAt(first, t)).distance > 2 * MEETING_TOLERANCE) return false;
  }
  return true;
}

function spanOf(segment: Segment, t0: number, t1: number): number {
  let span = 0;
  for (let i = 0; i < SAMPLES; i++) {
    const a = pointAt(segment, t0 + ((t1 - t0) * i) / SAMPLES);
    span += distance(a, pointAt(segment, t0 + ((t1 - t0) * (i + 1)) / SAMPLES));
  }
  return span;
}

/** A contact at ends of both curves stands for its group before one at a single end, and that before an inner one. */
function best(group: readonly Contact[], first: Segment, second: Segment): Contact {
  const rank = (contact: Contact): number => {
    const ends = [contact.t1, contact.t2].filter((t) => t === 0 || t === 1).length;
    const gap = distance(pointAt(first, contact.t1), pointAt(second, contact.t2));
    return gap - ends * MEETING_TOLERANCE * 10;
  };
  return group.reduce((a, b) => (rank(b) < rank(a) ? b : a));
}
