// A second way to the same numbers, written from docs/model.md with no line in common with the kernel: a thickness
// function of (x, y) with its own nearest-point search, summed over stations by repeated halving.

import type { Outline } from "../../src/blade/outline.js";
import type { KnifeSpec, StationSpec } from "../../src/blade/spec.js";
import type { Segment } from "../../src/plane/segment.js";

import {
  along,
  distanceField,
  type Fn,
  halving,
  lawFunction,
  type Point,
  refine,
} from "./independent-parts.js";

/** What is known of one station before its points are asked for. */
interface Station {
  readonly x: number;
  /** Half-thickness of the section over the distance from the edge. */
  readonly half: Fn;
  /** Distances at which that function may have a corner. */
  readonly corners: readonly number[];
}

export interface IndependentBody {
  /** Full thickness, mm; the point has to lie inside the outline. */
  thickness(x: number, y: number): number;
  /** Volume and ∫x, ∫y, ∫x², ∫y², ∫z², ∫xy; cut-outs not taken out. */
  moments(share: number): readonly number[];
}

/** The finished blade and tang of a description, or with `sharpened: false` before it gets its edge. */
export function independentBody(spec: KnifeSpec, outline: Outline, sharpened = true): IndependentBody {
  const { blade, tang } = spec;
  const place = ({ at }: StationSpec): number => {
    if (at.kind === "heel") return 0;
    if (at.kind === "tip") return outline.edgeLength;
    if (at.kind === "distance") return at.mm;
    if (at.kind === "fraction") return at.share * outline.edgeLength;
    throw new Error(`no station of the blade: ${at.kind}`);
  };
  const T = lawFunction(blade.thickness, place, blade.between === "smooth");
  const f = lawFunction(blade.flankTaper ?? 0, place, false);
  const height = blade.bevel.height;
  const b = height === "full" ? () => Number.POSITIVE_INFINITY : lawFunction(height, place, false);
  const e = lawFunction(blade.bevel.edgeThickness, place, false);
  const crownSpec = blade.bevel.crown;
  const crown =
    crownSpec === undefined
      ? undefined
      : lawFunction("mm" in crownSpec ? crownSpec.mm : crownSpec.share, place, false);
  const field = distanceField(outline.runs.edge);
  const plunge = blade.plunge ?? { at: 0, length: 0 };
  const tangLength = outline.handleFront - outline.butt;
  const tangPlace = ({ at }: StationSpec): number => {
    if (at.kind === "handle") return 0;
    if (at.kind === "butt") return tangLength;
    if (at.kind === "distance") return at.mm;
    if (at.kind === "fraction") return at.share * tangLength;
    throw new Error(`no station of the tang: ${at.kind}`);
  };
  const tangLaw: Fn =
    tang.thickness !== undefined
      ? lawFunction(tang.thickness, tangPlace, tang.between === "smooth")
      : (s) => T(0) + (((tang.buttThickness ?? T(0)) - T(0)) * s) / tangLength;

  const eased = (x: number): number => {
    if (x < plunge.at) return 0;
    const u = plunge.length === 0 ? 1 : Math.min(1, (x - plunge.at) / plunge.length);
    return u * u * (3 - 2 * u);
  };
  const slabAt: Fn = (x) => (x < outline.handleFront ? tangLaw(outline.handleFront - x) : T(Math.max(0, x)));

  const stationAt = (x: number, top: number): Station => {
    const V = field(x, top).distance;
    const B = Math.min(b(x), V);
    const flank = V > 0 ? f(x) * Math.min(1, (4 * (V - B)) / V) : 0;
    const t = T(x);
    const line = t - flank;
    const edge = e(x);
    const rise = (line - edge) / 2;
    const arc =
      blade.bevel.form === "convex" && rise > 0 && B > 0
        ? bulge(B, rise, crown && crown(x) * (crownSpec && "share" in crownSpec ? line - edge : 1))
        : undefined;
    const ground = (v: number): number => {
      if (v >= V) return t / 2;
      if (v >= B) return line / 2 + (((t - line) / 2) * (v - B)) / (V - B);
      return edge / 2 + (arc === undefined ? (rise * v) / B : arc(v));
    };
    if (typeof blade.edgeAngle !== "number") throw new Error("written for blades with both sides alike");
    const tan = Math.tan(blade.edgeAngle);
    const half: Fn = sharpened ? (v) => Math.min(ground(v), v * tan) : ground;
    const corners = [B, V];
    if (sharpened) {
      const top = Math.max(V, t / 2 / tan) * 1.01;
      const gap: Fn = (v) => v * tan - ground(v);
      for (let i = 0; i < 64; i++) {
        const [p, q] = [(top * i) / 64, (top * (i + 1)) / 64];
        if (gap(p) < 0 !== gap(q) < 0) corners.push(halving(gap, p, q));
      }
    }
    return { x, half, corners };
  };

  const cutter = new Cutter(outline.path.segments);
  const topAt = (x: number): number => {
    const ys = cutter.heights(x);
    return ys[ys.length - 1] ?? 0;
  };
  const fullAt = (station: Station, y: number): number => {
    const slab = T(station.x);
    const share = eased(station.x);
    return slab - share * (slab - 2 * station.half(field(station.x, y).distance));
  };

  const strip = (x: number): number[] => {
    const ys = cutter.heights(x);
    const sum = [0, 0, 0, 0, 0, 0, 0];
    const bevelled = x >= plunge.at && x >= 0;
    const station = bevelled ? stationAt(x, ys[ys.length - 1] ?? 0) : undefined;
    const slab = slabAt(x);
    for (let k = 0; k + 1 < ys.length; k += 2) {
      const [low, high] = [ys[k] as number, ys[k + 1] as number];
      const cuts = station === undefined ? [low, high] : creases(station, low, high);
      for (let i = 0; i + 1 < cuts.length; i++) {
        const [a, c] = [cuts[i] as number, cuts[i + 1] as number];
        if (c - a < 1e-14) continue;
        const part = halves(
          (y) => {
            const full = station === undefined ? slab : fullAt(station, y);
            return [full, full * y, full * y * y, full ** 3 / 12];
          },
          a,
          c,
          [1e-9, 1e-9, 1e-9, 1e-9].map(
            (r, j) => r * (high - low) * slab * ([1, high, high * high, slab][j] as number),
          ),
          10,
        );
        const [m0, m1, m2, mz] = part as [number, number, number, number];
        [m0, x * m0, m1, x * x * m0, m2, mz, x * m1].forEach((m, j) => {
          sum[j] = (sum[j] as number) + m;
        });
      }
    }
    return sum;
  };

  /** Heights between which the thickness is smooth along a station. */
  const creases = (station: Station, low: number, high: number): number[] => {
    const cuts = [low, high];
    const steps = 16;
    let before = field(station.x, low);
    for (let i = 1; i <= steps; i++) {
      const [p, q] = [low + ((high - low) * (i - 1)) / steps, low + ((high - low) * i) / steps];
      const here = field(station.x, q);
      for (const corner of station.corners) {
        if (before.distance < corner !== here.distance < corner) {
          const rising = before.distance < corner ? 1 : -1;
          cuts.push(refine((y) => rising * (field(station.x, y).distance - corner), p, q));
        }
      }
      if (here.piece !== before.piece) {
        const was = before.piece;
        cuts.push(halving((y) => (field(station.x, y).piece === was ? -1 : 1), p, q, 40));
      }
      before = here;
    }
    return cuts.sort((p, q) => p - q);
  };

  const stops = new Set([...cutter.breaks, 0, plunge.at, plunge.at + plunge.length, outline.handleFront]);
  const laws = [blade.thickness, blade.flankTaper, blade.bevel.edgeThickness, height === "full" ? 0 : height];
  if (crownSpec !== undefined) laws.push("mm" in crownSpec ? crownSpec.mm : crownSpec.share);
  for (const law of laws) if (Array.isArray(law)) for (const s of law as StationSpec[]) stops.add(place(s));
  for (const s of tang.thickness ?? []) stops.add(outline.handleFront - tangPlace(s));

  return {
    thickness: (x, y) => {
      if (x < plunge.at || x < 0) return slabAt(x);
      return fullAt(stationAt(x, topAt(x)), y);
    },
    moments: (share) => {
      const [from, to] = [cutter.breaks[0] as number, cutter.breaks[cutter.breaks.length - 1] as number];
      const inside = [...stops].filter((x) => x >= from && x <= to).sort((p, q) => p - q);
      const rough = strips(strip, from, to, 40);
      const scale = rough.map((m, j) => Math.max(Math.abs(m), 1e-2 * (rough[0] as number), j === 0 ? 0 : 1));
      const total = [0, 0, 0, 0, 0, 0, 0];
      for (let i = 0; i + 1 < inside.length; i++) {
        const [a, c] = [inside[i] as number, inside[i + 1] as number];
        if (c - a < 1e-10) continue;
        const limit = scale.map((m) => (m * share * Math.max(0.02, (c - a) / (to - from))) / 2);
        halves(strip, a, c, limit, 16).forEach((m, j) => {
          total[j] = (total[j] as number) + m;
        });
      }
      return total;
    },
  };
}

/** Arc over a chord that rises by `rise` over `run`, as height above its lower end; `asked` undefined: level at its upper end. */
function bulge(run: number, rise: number, asked: number | undefined): Fn | undefined {
  const chord = Math.hypot(run, rise);
  // Unit vector square to the chord, outward; the centre lies on the other side of the chord's middle.
  const out = { v: -rise / chord, z: run / chord };
  const centreFor = (sagitta: number): Point => {
    const back = (chord * chord) / (8 * sagitta) - sagitta / 2;
    return { x: run / 2 - back * out.v, y: rise / 2 - back * out.z };
  };
  // Level at the upper end: the centre straight below it. Upright at the lower end: the centre level with it.
  let centre: Point =
    asked === undefined ? { x: run, y: rise - (chord * chord) / (2 * rise) } : centreFor(asked);
  if (asked !== undefined && !(asked > 0)) return undefined;
  if (centre.y > 0) centre = { x: (chord * chord) / (2 * run), y: 0 };
  const radius = Math.hypot(centre.x, centre.y);
  return (v) => centre.y + Math.sqrt(Math.max(0, radius * radius - (v - centre.x) ** 2));
}

// Kronrod's 15 points on −1…1, every second one also Gauss's 7. Source: QUADPACK (1983), rule qk15.
const NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
];
const FINE = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
];
const COARSE = [0, 0.1294849661688697, 0, 0.27970539148927664, 0, 0.3818300505051189, 0, 0.4179591836734694];

/** Halves until two rules say the same; the plain difference of the rules is far more than the finer one's error. */
export function halves(
  f: (t: number) => readonly number[],
  a: number,
  b: number,
  limit: readonly number[],
  depth: number,
): readonly number[] {
  const half = (b - a) / 2;
  const middle = (a + b) / 2;
  const fine = limit.map(() => 0);
  const coarse = limit.map(() => 0);
  NODES.forEach((node, i) => {
    for (const t of node === 0 ? [middle] : [middle - half * node, middle + half * node]) {
      const values = f(t);
      for (let j = 0; j < limit.length; j++) {
        fine[j] = (fine[j] as number) + half * (FINE[i] as number) * (values[j] as number);
        coarse[j] = (coarse[j] as number) + half * (COARSE[i] as number) * (values[j] as number);
      }
    }
  });
  if (depth === 0 || fine.every((v, j) => Math.abs(v - (coarse[j] as number)) <= (limit[j] as number))) {
    return fine;
  }
  const less = limit.map((v) => v / 2);
  const one = halves(f, a, middle, less, depth - 1);
  const two = halves(f, middle, b, less, depth - 1);
  return one.map((v, j) => v + (two[j] as number));
}

function strips(strip: (x: number) => readonly number[], from: number, to: number, count: number): number[] {
  const sum = [0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < count; i++) {
    strip(from + ((i + 0.5) * (to - from)) / count).forEach((m, j) => {
      sum[j] = (sum[j] as number) + (Math.abs(m) * (to - from)) / count;
    });
  }
  return sum;
}

/** Cuts a closed outline at stations. */
class Cutter {
  readonly breaks: readonly number[];
  private readonly pieces: { s: Segment; t0: number; t1: number; x0: number; x1: number }[] = [];

  constructor(segments: readonly Segment[]) {
    const breaks = new Set<number>();
    for (const s of segments) {
      const stops = [0];
      const count = s.kind === "line" ? 1 : 64;
      const rate = (t: number): number => along(s, t).d.x;
      for (let i = 0; i < count; i++) {
        const [a, b] = [i / count, (i + 1) / count];
        if (rate(a) * rate(b) < 0) stops.push(halving(rate, a, b));
      }
      stops.push(1);
      for (let i = 0; i + 1 < stops.length; i++) {
        const [t0, t1] = [stops[i] as number, stops[i + 1] as number];
        const x0 = t0 === 0 ? s.from.x : along(s, t0).p.x;
        const x1 = t1 === 1 ? s.to.x : along(s, t1).p.x;
        breaks.add(x0).add(x1);
        if (x0 !== x1) this.pieces.push({ s, t0, t1, x0, x1 });
      }
    }
    this.breaks = [...breaks].sort((a, b) => a - b);
  }

  heights(x: number): number[] {
    const ys: number[] = [];
    for (const { s, t0, t1, x0, x1 } of this.pieces) {
      if (x < Math.min(x0, x1) || x >= Math.max(x0, x1)) continue;
      const t = s.kind === "line" ? (x - x0) / (x1 - x0) : halving((u) => along(s, u).p.x - x, t0, t1);
      ys.push(along(s, t).p.y);
    }
    return ys.sort((a, b) => a - b);
  }
}
