import { type Bounds, boundsMeet, segmentBounds } from "./bounds.js";
import { type Contact, MEETING_TOLERANCE } from "./contact.js";
import { meetings } from "./intersect.js";
import { signedArea } from "./measure.js";
import type { Path } from "./path.js";
import { pointAt, type Segment } from "./segment.js";
import { selfCrossing } from "./self-crossing.js";
import { distance, type Vec2 } from "./vec2.js";

/** What keeps a path from being an outline. `segment` and `other` are indices into the path. */
export type OutlineFault =
  | { readonly kind: "empty" }
  | { readonly kind: "clockwise"; readonly area: number }
  | { readonly kind: "not-finite"; readonly segment: number }
  | { readonly kind: "zero-length"; readonly segment: number; readonly at: Vec2 }
  | { readonly kind: "arc-off-its-ends"; readonly segment: number; readonly gap: number }
  | {
      readonly kind: "open";
      readonly segment: number;
      readonly other: number;
      readonly at: Vec2;
      readonly gap: number;
    }
  | { readonly kind: "crossing"; readonly segment: number; readonly other: number; readonly at: Vec2 }
  | { readonly kind: "overlap"; readonly segment: number; readonly other: number; readonly at: Vec2 };

/** Ends this far apart are a gap, and shorter segments are none, mm. */
const JOINT_TOLERANCE = 1e-9;
/** An arc's stored ends, centre and angles may disagree by this much, mm: more than its own rounding. */
const ARC_TOLERANCE = 1e-6;

/**
 * Everything that keeps a path from being an outline: closed, finite, counter-clockwise, no segment without length, and
 * simple, which means that no segment crosses, touches or covers another except where neighbours join. Joints may be
 * smooth, sharp, or fold back to a point.
 *
 * @returns no faults for a good outline. Crossings are looked for only once every segment is sound in itself.
 * @throws {GeometryError} `intersection-unresolved`, see {@link meetings}.
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * validateOutline(square); // []
 */
export function validateOutline(path: Path): OutlineFault[] {
  if (path.segments.length === 0) return [{ kind: "empty" }];
  const faults = path.segments.flatMap(segmentFaults);
  if (faults.length > 0) return faults;
  const gaps = jointFaults(path);
  if (gaps.length > 0) return gaps;
  const crossings = crossingFaults(path.segments);
  if (crossings.length > 0) return crossings;
  const area = signedArea(path);
  return area > 0 ? [] : [{ kind: "clockwise", area }];
}

function segmentFaults(segment: Segment, index: number): OutlineFault[] {
  if (!numbersOf(segment).every(Number.isFinite)) return [{ kind: "not-finite", segment: index }];
  if (extent(segment) <= JOINT_TOLERANCE) return [{ kind: "zero-length", segment: index, at: segment.from }];
  if (segment.kind === "arc") {
    const gap = arcGap(segment);
    if (gap > ARC_TOLERANCE) return [{ kind: "arc-off-its-ends", segment: index, gap }];
  }
  return [];
}

function numbersOf(segment: Segment): number[] {
  const ends = [segment.from.x, segment.from.y, segment.to.x, segment.to.y];
  switch (segment.kind) {
    case "line":
      return ends;
    case "arc":
      return [...ends, segment.centre.x, segment.centre.y, segment.radius, segment.startAngle, segment.sweep];
    case "cubic":
      return [...ends, segment.control1.x, segment.control1.y, segment.control2.x, segment.control2.y];
  }
}

function extent(segment: Segment): number {
  const { minX, minY, maxX, maxY } = segmentBounds(segment);
  return Math.max(maxX - minX, maxY - minY);
}

function arcGap(segment: Segment & { kind: "arc" }): number {
  const { centre, radius, startAngle, from, to } = segment;
  const start = { x: centre.x + radius * Math.cos(startAngle), y: centre.y + radius * Math.sin(startAngle) };
  // The centre of a very flat arc is far away and rounds coarsely; that is no fault of its ends.
  const slack = radius * 1e-15;
  return Math.max(distance(start, from) - slack, distance(pointAt(segment, 1), to));
}

function jointFaults(path: Path): OutlineFault[] {
  const { segments } = path;
  return segments.flatMap((segment, index): OutlineFault[] => {
    const other = (index + 1) % segments.length;
    const next = segments[other] as Segment;
    const gap = distance(segment.to, next.from);
    return gap > JOINT_TOLERANCE ? [{ kind: "open", segment: index, other, at: segment.to, gap }] : [];
  });
}

function crossingFaults(segments: readonly Segment[]): OutlineFault[] {
  const faults: OutlineFault[] = [];
  const bounds = segments.map(segmentBounds);
  segments.forEach((segment, i) => {
    const self = selfCrossing(segment);
    if (self !== undefined) faults.push({ kind: "crossing", segment: i, other: i, at: self.point });
    for (let j = i + 1; j < segments.length; j++) {
      if (!boundsMeet(bounds[i] as Bounds, bounds[j] as Bounds, MEETING_TOLERANCE)) continue;
      const nextIsJ = j === i + 1;
      const nextIsI = (j + 1) % segments.length === i;
      for (const meeting of meetings(segment, segments[j] as Segment)) {
        if (meeting.kind === "overlap") {
          faults.push({ kind: "overlap", segment: i, other: j, at: meeting.from.point });
        } else if (!((nextIsJ && isJoint(meeting, 1)) || (nextIsI && isJoint(meeting, 0)))) {
          faults.push({ kind: "crossing", segment: i, other: j, at: meeting.point });
        }
      }
    }
  });
  return faults;
}

/** Whether a contact is the joint where the first segment ends (1) or begins (0). */
const isJoint = (contact: Contact, end: 0 | 1): boolean => contact.t1 === end && contact.t2 === 1 - end;
