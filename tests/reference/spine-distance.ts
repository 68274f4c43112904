// V of docs/model.md: how far from the edge the section at one station reaches.
import type { Crossing } from "./curve.js";

const PROBES = 64;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Distance of the station's highest point from the edge, or, where the edge turns back over the station, that of the
 * farthest place on it.
 *
 * @param crossed - the outline's crossings with the station, ascending
 * @param edgeSegments - how many of the outline's segments, from its first, are edge
 */
export function spineDistance(
  crossed: readonly Crossing[],
  edgeSegments: number,
  distance: (y: number) => number,
): number {
  const last = crossed[crossed.length - 1];
  if (!last) throw new Error("a station without an outline has no spine");
  if (last.segment >= edgeSegments) return distance(last.y);
  let farthest = 0;
  for (let i = 0; i + 1 < crossed.length; i += 2)
    farthest = Math.max(farthest, greatest(distance, crossed[i]?.y ?? 0, crossed[i + 1]?.y ?? 0));
  return farthest;
}

/** Greatest value between two heights: dense probes, then golden sections about each of their peaks. */
function greatest(f: (y: number) => number, from: number, to: number): number {
  const ys = Array.from({ length: PROBES + 1 }, (_, i) => from + ((to - from) * i) / PROBES);
  const values = ys.map(f);
  let best = Math.max(...values);
  values.forEach((value, i) => {
    if (value < (values[i - 1] ?? value) || value < (values[i + 1] ?? value)) return;
    best = Math.max(best, peak(f, ys[Math.max(0, i - 1)] ?? from, ys[Math.min(PROBES, i + 1)] ?? to));
  });
  return best;
}

function peak(f: (y: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  let [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  for (let i = 0; i < 60; i++) {
    if (fc > fd) {
      [b, d, fd] = [d, c, fc];
      c = b - GOLDEN * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + GOLDEN * (b - a);
      fd = f(d);
    }
  }
  return Math.max(fc, fd);
}
