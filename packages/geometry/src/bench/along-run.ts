import { segmentLength } from "../plane/length.js";
import { derivativeAt, pointAt, type Segment } from "../plane/segment.js";
import { splitSegment } from "../plane/split.js";
import type { Vec2 } from "../plane/vec2.js";

/** A place on a run with its direction of travel, unit length. */
export interface RunPlace {
  readonly at: Vec2;
  readonly along: Vec2;
}

/**
 * Evenly spaced places along a run, as near to the pitch as its length allows.
 *
 * @param inset - from the start of the run to the first place, mm along it; the last is the run's end.
 */
export function evenPlaces(
  run: readonly Segment[],
  pitch: number,
  inset: number,
): { readonly pitch: number; readonly places: readonly RunPlace[] } {
  const lengths = run.map(segmentLength);
  const total = lengths.reduce((sum, length) => sum + length, -inset);
  const count = Math.max(1, Math.round(total / pitch));
  const step = Math.max(0, total / count);
  const places: RunPlace[] = [];
  let passed = 0;
  let next = 0;
  for (const [index, segment] of run.entries()) {
    const length = lengths[index] ?? 0;
    const isLast = index === run.length - 1;
    while (next <= count && (inset + next * step <= passed + length || isLast)) {
      places.push(placeAt(segment, length, Math.min(length, inset + next * step - passed)));
      next++;
    }
    passed += length;
  }
  return { pitch: step, places };
}

function placeAt(segment: Segment, length: number, way: number): RunPlace {
  const t = length > 0 ? parameterAtLength(segment, length, way) : 0;
  const d = derivativeAt(segment, t);
  const speed = Math.hypot(d.x, d.y) || 1;
  return { at: pointAt(segment, t), along: { x: d.x / speed, y: d.y / speed } };
}

/** How closely a place on a cubic is found along it, mm. */
const FINE = 1e-6;

function parameterAtLength(segment: Segment, length: number, way: number): number {
  if (segment.kind !== "cubic" || way <= 0 || way >= length) return way / length;
  let [from, to] = [0, 1];
  for (let pass = 0; pass < 40; pass++) {
    const middle = (from + to) / 2;
    const found = segmentLength(splitSegment(segment, 0, middle));
    if (Math.abs(found - way) < FINE) return middle;
    if (found < way) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
