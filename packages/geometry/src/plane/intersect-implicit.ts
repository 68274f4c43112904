import {
  bernsteinRoots,
  bracketedRoot,
  differentiateBernstein,
  evaluateBernstein,
  multiplyBernstein,
} from "../numeric/polynomial.js";
import { arcParameter, distanceFromCircle } from "./arc-parameter.js";
import { type Contact, MEETING_TOLERANCE } from "./contact.js";
import { nearestOnSegment } from "./nearest.js";
import { type Arc, type Cubic, derivativeAt, type Line, pointAt, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/**
 * Contacts of two segments of which at least one is a line or an arc: the base. Along the other, the probe, the signed
 * distance from the base's whole line or circle is cut where it stands still, so that each piece has one root at most.
 */
export function curveContacts(first: Segment, second: Segment): Contact[] {
  const { probe, base, swapped } = chooseBase(first, second);
  const contacts: Contact[] = [];
  for (const t of rootsAlong(probe, base)) {
    const point = pointAt(probe, t);
    const near = nearestOnSegment(base, point);
    if (near.distance > MEETING_TOLERANCE) continue;
    contacts.push(swapped ? { t1: near.t, t2: t, point } : { t1: t, t2: near.t, point });
  }
  return contacts;
}

interface Choice {
  readonly probe: Segment;
  readonly base: Line | Arc;
  readonly swapped: boolean;
}

function chooseBase(first: Segment, second: Segment): Choice {
  if (second.kind === "line") return first.kind === "arc" ? swap(first, second) : keep(first, second);
  if (first.kind === "line") return second.kind === "arc" ? keep(first, second) : swap(first, second);
  if (second.kind === "arc") return keep(first, second);
  return swap(first as Arc, second);
}
const keep = (probe: Segment, base: Line | Arc): Choice => ({ probe, base, swapped: false });
const swap = (base: Line | Arc, probe: Segment): Choice => ({ probe, base, swapped: true });

function rootsAlong(probe: Segment, base: Line | Arc): number[] {
  if (probe.kind === "arc") return base.kind === "arc" ? arcRoots(probe, base) : [];
  const polynomial = base.kind === "line" ? fromLine(probe, base) : fromCircle(probe, base);
  const stationary = bernsteinRoots(differentiateBernstein(polynomial));
  return piecewiseRoots((t) => evaluateBernstein(polynomial, t), stationary);
}

/** Roots of a function that is monotone between its stationary points, and places where it all but touches zero. */
function piecewiseRoots(
  f: (t: number) => { value: number; slope: number },
  stationary: readonly number[],
): number[] {
  const breaks = [0, ...stationary.filter((t) => t > 0 && t < 1), 1];
  const values = breaks.map((t) => f(t).value);
  const roots: number[] = [];
  breaks.forEach((t, i) => {
    const value = values[i] as number;
    const before = values[i - 1];
    if (before !== undefined && before !== 0 && value !== 0 && before > 0 !== value > 0) {
      roots.push(bracketedRoot(f, breaks[i - 1] as number, t, before));
    }
    if (Math.abs(value) <= MEETING_TOLERANCE) roots.push(t);
  });
  return roots;
}

const controlPoints = (probe: Line | Cubic): Vec2[] =>
  probe.kind === "line" ? [probe.from, probe.to] : [probe.from, probe.control1, probe.control2, probe.to];

/** Bernstein coefficients of the signed distance from a line, mm; all zero where the line has no length. */
function fromLine(probe: Line | Cubic, base: Line): number[] {
  const dx = base.to.x - base.from.x;
  const dy = base.to.y - base.from.y;
  const length = Math.hypot(dx, dy) || 1;
  return controlPoints(probe).map((p) => (dx * (p.y - base.from.y) - dy * (p.x - base.from.x)) / length);
}

/** Bernstein coefficients of (|p − c|² − r²)/2r, which near the circle is the distance from it, mm. */
function fromCircle(probe: Line | Cubic, base: Arc): number[] {
  const ex = Math.cos(base.startAngle);
  const ey = Math.sin(base.startAngle);
  const points = controlPoints(probe);
  const qx = points.map((p) => p.x - base.from.x);
  const qy = points.map((p) => p.y - base.from.y);
  const ones = points.map(() => 1);
  const along = multiplyBernstein(
    ones,
    qx.map((x, i) => ex * x + ey * (qy[i] as number)),
  );
  const squareX = multiplyBernstein(qx, qx);
  const squareY = multiplyBernstein(qy, qy);
  return along.map(
    (value, i) => value + ((squareX[i] as number) + (squareY[i] as number)) / (2 * base.radius),
  );
}

/** Along an arc the distance from another circle stands still where the radius lies along the line of centres. */
function arcRoots(probe: Arc, base: Arc): number[] {
  const dx = base.centre.x - probe.centre.x;
  const dy = base.centre.y - probe.centre.y;
  const apart = Math.hypot(dx, dy);
  const stationary: number[] = [];
  if (apart > 0) {
    for (const side of [1, -1]) {
      const reach = (side * probe.radius) / apart;
      stationary.push(
        arcParameter(probe, { x: probe.centre.x + dx * reach, y: probe.centre.y + dy * reach }),
      );
    }
    stationary.sort((a, b) => a - b);
  }
  const f = (t: number): { value: number; slope: number } => {
    const p = pointAt(probe, t);
    const d = derivativeAt(probe, t);
    const rx = p.x - base.centre.x;
    const ry = p.y - base.centre.y;
    return { value: distanceFromCircle(base, p), slope: (rx * d.x + ry * d.y) / (Math.hypot(rx, ry) || 1) };
  };
  return piecewiseRoots(f, stationary);
}
