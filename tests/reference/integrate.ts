// Brute force: adaptive Gauss–Kronrod over strips square to x, each strip again adaptive along y between the places
// where the surface changes piece. Slow, simple, and nothing in common with a boundary integral.
import type { Hole, ReferenceBody } from "./body.js";
import { bisect } from "./curve.js";

/** Volume, first and second moments of the steel about the heel, for density 1 (mm³, mm⁴, mm⁵). */
export interface Moments {
  readonly volume: number;
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
  readonly zz: number;
}

type Vector = readonly number[];

// Gauss–Kronrod 7/15 on −1…1. Source: Piessens et al., QUADPACK (1983), routine QK15.
const KRONROD_NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
];
const KRONROD_WEIGHTS = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
];
const GAUSS_WEIGHTS = [0.1294849661688697, 0.27970539148927664, 0.3818300505051189, 0.4179591836734694];

interface Estimate {
  readonly value: Vector;
  /** Largest gap between the two rules, relative to `scales`. */
  readonly error: number;
}

function kronrod(f: (t: number) => Vector, a: number, b: number, scales: Vector): Estimate {
  const half = (b - a) / 2;
  const middle = (a + b) / 2;
  const fine = scales.map(() => 0);
  const coarse = scales.map(() => 0);
  const add = (t: number, wk: number, wg: number): void => {
    f(t).forEach((v, k) => {
      fine[k] = (fine[k] ?? 0) + wk * half * v;
      coarse[k] = (coarse[k] ?? 0) + wg * half * v;
    });
  };
  KRONROD_NODES.forEach((node, i) => {
    const wk = KRONROD_WEIGHTS[i] ?? 0;
    const wg = i % 2 === 1 ? (GAUSS_WEIGHTS[(i - 1) / 2] ?? 0) : 0;
    add(middle + half * node, wk, wg);
    if (node !== 0) add(middle - half * node, wk, wg);
  });
  const error = Math.max(...fine.map((v, k) => Math.abs(v - (coarse[k] ?? 0)) / (scales[k] || 1)));
  return { value: fine, error };
}

/** Halves the worst pieces until each is good to its share of the tolerance, or too short to matter. */
function adaptive(
  f: (t: number) => Vector,
  a: number,
  b: number,
  scales: Vector,
  tolerance: number,
  depth: number,
): Vector {
  const whole = kronrod(f, a, b, scales);
  if (whole.error <= tolerance || depth === 0) return whole.value;
  const middle = (a + b) / 2;
  const left = adaptive(f, a, middle, scales, tolerance / 2, depth - 1);
  const right = adaptive(f, middle, b, scales, tolerance / 2, depth - 1);
  return left.map((v, k) => v + (right[k] ?? 0));
}

/**
 * Moments of the body by nested adaptive quadrature.
 *
 * @param tolerance - aimed-at error relative to the whole, for every moment
 */
export function integrateBody(body: ReferenceBody, tolerance = 1e-9): Moments {
  const { breaks, slicer } = body;
  const first = slicer.breaks[0] ?? 0;
  const last = slicer.breaks[slicer.breaks.length - 1] ?? 0;
  const inside = breaks.filter((x) => x >= first && x <= last);
  const span = last - first;
  const rough = roughMoments(body, first, last);
  const strip = (x: number): Vector => integrateStrip(body, x, rough, span, tolerance / 30);
  let total: Vector = rough.map(() => 0);
  for (let i = 0; i + 1 < inside.length; i++) {
    const a = inside[i] ?? 0;
    const b = inside[i + 1] ?? 0;
    if (b - a < 1e-12) continue;
    const piece = adaptive(strip, a, b, rough, tolerance / inside.length, 26);
    total = total.map((v, k) => v + (piece[k] ?? 0));
  }
  for (const hole of body.holes) {
    const drilled = integrateHole(body, hole, rough, tolerance / 30);
    total = total.map((v, k) => v - (drilled[k] ?? 0));
  }
  const [volume = 0, x = 0, y = 0, xx = 0, yy = 0, xy = 0, zz = 0] = total;
  return { volume, x, y, xx, yy, xy, zz };
}

/** The integrands at a point: full thickness, its moments, and ∫z² across it. */
function integrand(body: ReferenceBody, x: number, y: number): Vector {
  const right = body.face(x, y, "right");
  const left = body.alike ? right : body.face(x, y, "left");
  const t = right + left;
  return [t, t * x, t * y, t * x * x, t * y * y, t * x * y, (right ** 3 + left ** 3) / 3];
}

/** Scales for relative errors: coarse midpoint sums of the absolute integrands. */
function roughMoments(body: ReferenceBody, first: number, last: number): Vector {
  const count = 60;
  const sums = [0, 0, 0, 0, 0, 0, 0];
  const dx = (last - first) / count;
  for (let i = 0; i < count; i++) {
    const x = first + (i + 0.5) * dx;
    for (const [a, b] of intervals(body.slicer.crossings(x))) {
      for (let j = 0; j < 8; j++) {
        const values = integrand(body, x, a + ((j + 0.5) * (b - a)) / 8);
        values.forEach((v, k) => {
          sums[k] = (sums[k] ?? 0) + (Math.abs(v) * dx * (b - a)) / 8;
        });
      }
    }
  }
  return sums;
}

function* intervals(ys: readonly number[]): Generator<readonly [number, number]> {
  for (let i = 0; i + 1 < ys.length; i += 2) {
    const a = ys[i];
    const b = ys[i + 1];
    if (a !== undefined && b !== undefined && b > a) yield [a, b];
  }
}

const PROBES = 48;

/** Integral along y at one station. */
function integrateStrip(
  body: ReferenceBody,
  x: number,
  scales: Vector,
  span: number,
  tolerance: number,
): Vector {
  const perStrip = scales.map((s) => s / span);
  let total: Vector = scales.map(() => 0);
  for (const [bottom, top] of intervals(body.slicer.crossings(x))) {
    const piece = integrateInterval(body, x, bottom, top, perStrip, tolerance);
    total = total.map((v, k) => v + (piece[k] ?? 0));
  }
  return total;
}

/** Integral along y between two heights, broken where the surface changes piece. */
function integrateInterval(
  body: ReferenceBody,
  x: number,
  bottom: number,
  top: number,
  scales: Vector,
  tolerance: number,
): Vector {
  const step = top - bottom;
  const cuts = [bottom];
  let before = { y: bottom, zone: body.zone(x, bottom + step * 1e-12) };
  for (let i = 1; i <= PROBES; i++) {
    const y = i === PROBES ? top : bottom + (step * i) / PROBES;
    const zone = body.zone(x, i === PROBES ? top - step * 1e-12 : y);
    // Between two probes more than one piece may end: find the end of the lower one, then go on from there.
    for (let guard = 0; zone !== before.zone && guard < 8; guard++) {
      const from = before.zone;
      const cut = bisect((t) => (body.zone(x, t) === from ? -1 : 1), before.y, y);
      cuts.push(cut);
      const next = Math.min(y, cut + step * 1e-12);
      before = { y: next, zone: body.zone(x, next) };
    }
    before = { y, zone };
  }
  cuts.push(top);
  let total: Vector = scales.map(() => 0);
  for (let i = 0; i + 1 < cuts.length; i++) {
    const a = cuts[i] ?? 0;
    const b = cuts[i + 1] ?? 0;
    if (b <= a) continue;
    const piece = adaptive((y) => integrand(body, x, y), a, b, scales, tolerance / 4, 12);
    total = total.map((v, k) => v + (piece[k] ?? 0));
  }
  return total;
}

/** Integral over a round hole: strips across it, placed by angle so that its round ends cost nothing. */
function integrateHole(
  body: ReferenceBody,
  { x, y, radius, to }: Hole,
  scales: Vector,
  tolerance: number,
): Vector {
  if (to !== undefined) throw new Error("this quadrature drills round holes only");
  const across = (angle: number): Vector => {
    const half = radius * Math.sin(angle);
    const at = x - radius * Math.cos(angle);
    const strip = integrateInterval(
      body,
      at,
      y - half,
      y + half,
      scales.map((s) => s / (2 * radius)),
      tolerance,
    );
    return strip.map((v) => v * half);
  };
  const cuts = body.breaks.filter((b) => Math.abs(b - x) < radius).map((b) => Math.acos((x - b) / radius));
  const angles = [0, ...cuts, Math.PI];
  let total: Vector = scales.map(() => 0);
  for (let i = 0; i + 1 < angles.length; i++) {
    const piece = adaptive(across, angles[i] ?? 0, angles[i + 1] ?? 0, scales, tolerance, 16);
    total = total.map((v, k) => v + (piece[k] ?? 0));
  }
  return total;
}
