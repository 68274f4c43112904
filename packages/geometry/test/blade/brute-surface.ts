import type { SteelBody } from "../../src/blade/steel-body.js";
import { parametersAtX } from "../../src/plane/at-x.js";
import { derivativeAt, pointAt } from "../../src/plane/segment.js";

type Side = "right" | "left";
const SIDES: readonly Side[] = ["right", "left"];

/** Way to a neighbouring point for a slope, mm. */
const STEP = 1e-6;
const stepIn = (room: number): number => Math.max(1e-12, Math.min(STEP, 0.01 * room));

/** A hair inside the steel, mm. */
const HAIR = 1e-9;

/** Nodes and weights of Gauss's rule of four points on [0, 1] (Abramowitz & Stegun, table 25.4). */
const GAUSS = [0.861136311594053, 0.339981043584856].flatMap((z, i) => {
  const weight = [0.347854845137454, 0.652145154862546][i] as number;
  return [-1, 1].map((sign) => ({ at: (1 + sign * z) / 2, weight: weight / 2 }));
});

const gauss = (f: (t: number) => number, a: number, b: number): number =>
  (b - a) * GAUSS.reduce((sum, { at, weight }) => sum + weight * f(a + (b - a) * at), 0);

/** Halves until both halves agree with the whole. */
function halved(f: (t: number) => number, a: number, b: number, limit: number, depth: number): number {
  const whole = gauss(f, a, b);
  const inner = (from: number, to: number, known: number, allowed: number, left: number): number => {
    const middle = (from + to) / 2;
    const [low, high] = [gauss(f, from, middle), gauss(f, middle, to)];
    if (left === 0 || Math.abs(low + high - known) < allowed) return low + high;
    return (
      inner(from, middle, low, allowed / 1.5, left - 1) + inner(middle, to, high, allowed / 1.5, left - 1)
    );
  };
  return inner(a, b, whole, limit, depth);
}

/** The same in parts, with the points drawn together at both ends, where a face or an outline may stand upright. */
function drawnTogether(
  f: (t: number) => number,
  a: number,
  b: number,
  limit: number,
  parts: number,
  depth: number,
): number {
  const g = (u: number): number =>
    f(a + (b - a) * Math.sin((Math.PI / 2) * u) ** 2) * (b - a) * (Math.PI / 2) * Math.sin(Math.PI * u);
  let sum = 0;
  for (let k = 0; k < parts; k++) sum += halved(g, k / parts, (k + 1) / parts, limit / parts, depth);
  return sum;
}

/**
 * Surface of a body by nothing but {@link SteelBody.faceAt}: slopes by differences, the area by halving down to the creases,
 * first along y, then along x; rims by many steps; walls across the stations given. Knows nothing of zones,
 * pieces or distances. Cut-outs, and faces that step along a bevel line, are beyond it.
 *
 * @param accuracy - of the whole, relative.
 */
export function bruteSurface(body: SteelBody, stations: readonly number[], accuracy: number): number {
  const steps = [...new Set(stations)].sort((a, b) => a - b);
  if (body.input.cutouts.length > 0) throw new Error("cut-outs are not looked at");
  const { footprint } = body;
  const size = (footprint.maxX - footprint.minX) * (footprint.maxY - footprint.minY);
  let total = 0;
  for (const { x0, x1 } of footprint.intervals) {
    const ends = [x0, ...steps.filter((x) => x > x0 && x < x1), x1];
    for (let i = 0; i + 1 < ends.length; i++) {
      const [from, to] = [ends[i] as number, ends[i + 1] as number];
      const share = (to - from) / (footprint.maxX - footprint.minX);
      total += drawnTogether(
        (x) =>
          faces(body, x, Math.min(x - from, to - x), (accuracy * size) / (footprint.maxX - footprint.minX)),
        from,
        to,
        accuracy * size * Math.max(share, 0.02),
        4,
        7,
      );
    }
  }
  return total + rims(body, steps) + walls(body, steps);
}

/** Area in mm² a mm of x that both faces have at a station. */
function faces(body: SteelBody, x: number, room: number, limit: number): number {
  const dx = stepIn(room);
  let sum = 0;
  for (const [low, high] of body.footprint.spansAt(x)) {
    for (const side of SIDES) {
      sum += drawnTogether(
        (y) => {
          const dy = stepIn(Math.min(y - low, high - y));
          const h = (px: number, py: number): number => body.faceAt({ x: px, y: py }, side);
          return Math.hypot(
            1,
            (h(x + dx, y) - h(x - dx, y)) / (2 * dx),
            (h(x, y + dy) - h(x, y - dy)) / (2 * dy),
          );
        },
        low,
        high,
        limit,
        // A crease in the outermost part of a cell escapes it: cells are small from the start.
        32,
        10,
      );
    }
  }
  return sum;
}

function rims(body: SteelBody, steps: readonly number[]): number {
  let sum = 0;
  for (const segment of body.input.path.segments) {
    const isUpright = segment.kind === "line" && segment.from.x === segment.to.x;
    const cuts = isUpright ? [] : steps.flatMap((x) => parametersAtX(segment, x));
    const ends = [...new Set([0, ...cuts, 1])].sort((a, b) => a - b);
    const count = 2000;
    for (let i = 0; i + 1 < ends.length; i++) {
      const [a, b] = [ends[i] as number, ends[i + 1] as number];
      for (let k = 0; k < count; k++) {
        // Denser at both ends.
        const u = (k + 0.5) / count;
        const t = a + (b - a) * Math.sin((Math.PI / 2) * u) ** 2;
        const p = pointAt(segment, t);
        const d = derivativeAt(segment, t);
        const x = p.x - (isUpright ? Math.sign(d.y) * HAIR : 0);
        const stretch = ((b - a) * (Math.PI / 2) * Math.sin(Math.PI * u)) / count;
        sum += body.thicknessIgnoringOutline({ x, y: p.y }) * Math.hypot(d.x, d.y) * stretch;
      }
    }
  }
  return sum;
}

/** Where a face differs on both sides of a station, and there is steel on both. */
function walls(body: SteelBody, steps: readonly number[]): number {
  const { footprint } = body;
  let sum = 0;
  for (const x of steps) {
    if (x - HAIR <= footprint.minX || x + HAIR >= footprint.maxX) continue;
    for (const [a, b] of footprint.spansAt(x - HAIR)) {
      for (const [c, d] of footprint.spansAt(x + HAIR)) {
        const [low, high] = [Math.max(a, c), Math.min(b, d)];
        const count = 20_000;
        for (let k = 0; k < count && high > low; k++) {
          const y = low + ((high - low) * (k + 0.5)) / count;
          for (const side of SIDES) {
            const ahead = body.faceAt({ x: x + HAIR, y }, side);
            sum += (Math.abs(body.faceAt({ x: x - HAIR, y }, side) - ahead) * (high - low)) / count;
          }
        }
      }
    }
  }
  return sum;
}
