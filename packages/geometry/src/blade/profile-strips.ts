import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import { derivativeAt, pointAt, type Segment } from "../plane/segment.js";
import { distinct } from "./footprint.js";
import { MOMENTS, type Moments, VOLUME, Y, YZ, Z, ZX, ZZ } from "./moments.js";
import type { Outline } from "./outline.js";
import { stationPieces } from "./station-pieces.js";
import type { SteelBody } from "./steel-body.js";

/** Steel outside the profile before it is trimmed, mm. */
export interface ProfileAllowance {
  /** On the edge side and on the spine side, square to x. */
  readonly outline: number;
  /** Length added at tip and butt, with the end's own section. */
  readonly tip: number;
  readonly butt: number;
}

/** Integrals and surface of what profile trimming takes off a forged body. */
export interface ProfileStrips extends Moments {
  /** What the strips add to the surface of the body inside them, mm². */
  readonly surface: number;
}

/**
 * The strips around a body: along the edge side as thick as the body's lower rim, along the spine side as thick as its
 * upper rim, and at both ends the end's section, strips included, drawn on.
 */
export function profileStrips(body: SteelBody, outline: Outline, allowance: ProfileAllowance): ProfileStrips {
  const sum = new Float64Array(MOMENTS + 1);
  const error = new Float64Array(MOMENTS + 1);
  // mm³, mm⁴ and mm⁵: each component by its own size.
  const long = Math.max(1, body.footprint.maxX - body.footprint.minX);
  const tolerance = Float64Array.from({ length: MOMENTS + 1 }, (_, i) =>
    i === VOLUME || i === MOMENTS ? 1e-7 : i <= Y || i === Z ? 1e-7 * long : 1e-7 * long * long,
  );
  const take = (f: (t: number, out: Float64Array) => void, pieces: readonly Piece[]): void => {
    const result = integrateAdaptive(f, MOMENTS + 1, pieces, { tolerance });
    for (let i = 0; i <= MOMENTS; i++) {
      sum[i] = (sum[i] as number) + (result.value[i] as number);
      error[i] = (error[i] as number) + (result.error[i] as number);
    }
  };
  const o = allowance.outline;
  const rectangle = (x: number, y0: number, y1: number, rim: Rim, w: number, out: Float64Array): void => {
    const area = (rim.right + rim.left) * (y1 - y0) * w;
    const y = (y0 + y1) / 2;
    out[0] = (out[0] as number) + area;
    out[1] = (out[1] as number) + area * x;
    out[2] = (out[2] as number) + area * y;
    out[3] = (out[3] as number) + area * x * x;
    out[4] = (out[4] as number) + area * (y * y + (y1 - y0) ** 2 / 12);
    out[6] = (out[6] as number) + area * x * y;
    addAcross(rim, area, x, y, out);
    out[MOMENTS] = (out[MOMENTS] as number) + 2 * (y1 - y0) * w;
  };
  if (o > 0) {
    for (const interval of body.footprint.intervals) {
      const lowest = interval.spans[0]?.lower;
      const highest = interval.spans[interval.spans.length - 1]?.upper;
      if (lowest === undefined || highest === undefined) continue;
      take(
        (x, out) => {
          out.fill(0);
          const low = lowest.heightAt(x);
          const high = highest.heightAt(x);
          rectangle(x, low - o, low, rimAt(body, { x, y: low }), 1, out);
          rectangle(x, high, high + o, rimAt(body, { x, y: high }), 1, out);
        },
        piecesOver(body, interval.x0, interval.x1),
      );
    }
  }
  const ends: readonly [readonly Segment[], number, number][] = [
    [outline.runs.front, allowance.tip, 1],
    [outline.runs.butt, allowance.butt, -1],
  ];
  for (const [run, added, direction] of ends) {
    if (added <= 0) continue;
    for (const segment of run) {
      take(
        (t, out) => {
          out.fill(0);
          const p = pointAt(segment, t);
          const dy = Math.abs(derivativeAt(segment, t).y);
          block(p.x, p.y, rimAt(body, p), dy, added * direction, out);
        },
        [{ from: 0, to: 1 }],
      );
    }
  }
  const tip = tipEnds(outline);
  const butt = buttEnds(outline);
  for (const [points, added, direction] of [
    [tip, allowance.tip, 1],
    [butt, allowance.butt, -1],
  ] as const) {
    if (added <= 0 || o <= 0) continue;
    for (const { point, side } of points) {
      const rim = rimAt(body, point);
      const out = new Float64Array(MOMENTS + 1);
      block(point.x, point.y + (side * o) / 2, rim, o, added * direction, out);
      // A block of height o: its own spread about its middle.
      out[4] = (out[4] as number) + ((rim.right + rim.left) * o * added * o * o) / 12;
      for (let i = 0; i <= MOMENTS; i++) sum[i] = (sum[i] as number) + (out[i] as number);
    }
  }
  return {
    value: sum.slice(0, MOMENTS),
    error: error.slice(0, MOMENTS),
    // Faces of the strips, the rims along the drawn-on ends, the strips' own end faces.
    surface:
      (sum[MOMENTS] as number) +
      (allowance.tip + o) * rimThickness(body, tip) +
      (allowance.butt + o) * rimThickness(body, butt),
  };
}

/** A piece of height dy drawn on by `length` (signed) along x; integrals per unit of whatever dy is measured in. */
function block(x: number, y: number, rim: Rim, dy: number, length: number, out: Float64Array): void {
  const volume = (rim.right + rim.left) * dy * Math.abs(length);
  const middle = x + length / 2;
  out[0] = (out[0] as number) + volume;
  out[1] = (out[1] as number) + volume * middle;
  out[2] = (out[2] as number) + volume * y;
  out[3] = (out[3] as number) + volume * (middle * middle + (length * length) / 12);
  out[4] = (out[4] as number) + volume * y * y;
  out[6] = (out[6] as number) + volume * middle * y;
  addAcross(rim, volume, middle, y, out);
  out[MOMENTS] = (out[MOMENTS] as number) + 2 * dy * Math.abs(length);
}

/** Distances of both faces from the centre plane at a rim, mm. */
interface Rim {
  readonly right: number;
  readonly left: number;
}

const rimAt = (body: SteelBody, point: { readonly x: number; readonly y: number }): Rim => ({
  right: body.faceAt(point, "right"),
  left: body.faceAt(point, "left"),
});

/** Moments across the flats of a piece as thick as a rim; its middle is off the centre plane where the faces differ. */
function addAcross({ right, left }: Rim, volume: number, x: number, y: number, out: Float64Array): void {
  const z = (right - left) / 2;
  out[ZZ] = (out[ZZ] as number) + volume * ((right + left) ** 2 / 12 + z * z);
  out[Z] = (out[Z] as number) + volume * z;
  out[YZ] = (out[YZ] as number) + volume * y * z;
  out[ZX] = (out[ZX] as number) + volume * x * z;
}

interface StripEnd {
  readonly point: { readonly x: number; readonly y: number };
  /** −1: edge side, 1: spine side. */
  readonly side: 1 | -1;
}

function tipEnds(outline: Outline): readonly StripEnd[] {
  const edgeEnd = outline.runs.edge[outline.runs.edge.length - 1];
  const spineStart = outline.runs.spine[0];
  const pointed = outline.runs.front.length === 0;
  return [
    ...(edgeEnd === undefined
      ? []
      : [{ point: pointed ? pointAt(edgeEnd, 1 - BESIDE_TIP) : edgeEnd.to, side: -1 as const }]),
    ...(spineStart === undefined
      ? []
      : [{ point: pointed ? pointAt(spineStart, BESIDE_TIP) : spineStart.from, side: 1 as const }]),
  ];
}

/**
 * In the very point of a tip, edge and bevel line are one place, and rounding would decide which thickness is read: each side is
 * read this share of its last segment before it.
 */
const BESIDE_TIP = 1e-9;

function buttEnds(outline: Outline): readonly StripEnd[] {
  const butt = outline.runs.butt;
  const first = butt[0];
  const last = butt[butt.length - 1];
  if (first === undefined || last === undefined) return [];
  return [
    { point: last.to, side: -1 },
    { point: first.from, side: 1 },
  ];
}

const rimThickness = (body: SteelBody, ends: readonly StripEnd[]): number =>
  ends.reduce((sum, { point }) => sum + body.thicknessIgnoringOutline(point), 0);

function piecesOver(body: SteelBody, x0: number, x1: number): Piece[] {
  const from = Math.max(x0, Math.min(x1, body.input.plunge.at));
  const pieces: Piece[] = from < x1 ? stationPieces(body, from, x1) : [];
  const behind = distinct([x0, from, ...body.slab.breaks.filter((x) => x > x0 && x < from)]);
  for (let i = 0; i + 1 < behind.length; i++) {
    pieces.push({ from: behind[i] as number, to: behind[i + 1] as number });
  }
  return pieces;
}
