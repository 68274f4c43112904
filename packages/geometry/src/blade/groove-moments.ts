import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import { MOMENTS, type Moments, VOLUME } from "./moments.js";
import { type Groove, grooveDepthAt, type SteelBody } from "./steel-body.js";

/** Half the width of a groove where it runs out at the face, mm. */
export const grooveHalfWidth = ({ radius, depth }: Groove): number =>
  depth >= radius ? radius : Math.sqrt(2 * radius * depth - depth * depth);

/** Relative error aimed at, along the groove and across it. */
const AIM = 1e-8;
const AIM_ACROSS = 2e-9;

/**
 * Steel that a groove takes out of a body: strips across it, summed along it, both by adaptive quadrature, for the face that
 * it is cut into may have creases. The volume needs no more than the groove's own section; the moments across the flats
 * need the face.
 */
export function grooveMoments(body: SteelBody, groove: Groove, aim = 1e-12): Moments {
  // Creases cost many pieces and touch only what depends on the face: a rough weighing does not follow them far.
  const [mostAlong, mostAcross] = aim < 1e-8 ? [28, 16] : [4, 3];
  const w = grooveHalfWidth(groove);
  const dx = groove.to.x - groove.from.x;
  const dy = groove.to.y - groove.from.y;
  const length = Math.hypot(dx, dy);
  const tx = length === 0 ? 1 : dx / length;
  const ty = length === 0 ? 0 : dy / length;
  const size = sizes(body, groove, length + 2 * w, w);
  const across = [
    { from: -Math.PI / 2, to: 0 },
    { from: 0, to: Math.PI / 2 },
  ];
  let innerError: Float64Array = new Float64Array(MOMENTS);
  // A strip across at s along the line, half as wide as `wide`; q = wide·sin φ takes the root out of its ends.
  const strip = (s: number, wide: number, out: Float64Array): void => {
    const at = (phi: number, sum: Float64Array): void => {
      const q = wide * Math.sin(phi);
      const x = groove.from.x + s * tx - q * ty;
      const y = groove.from.y + s * ty + q * tx;
      take(body, groove, x, y, wide * Math.cos(phi), sum);
    };
    const tolerance = size.map((value) => (AIM_ACROSS * value) / (length + 2 * w));
    const result = integrateAdaptive(at, MOMENTS, across, {
      tolerance,
      maxPieces: mostAcross,
      trust: "wary",
    });
    out.set(result.value);
    innerError = result.error;
  };
  const value = new Float64Array(MOMENTS);
  const error = new Float64Array(MOMENTS);
  const add = (f: (u: number, out: Float64Array) => void, pieces: readonly Piece[], extent: number): void => {
    const result = integrateAdaptive(f, MOMENTS, pieces, {
      tolerance: size.map((s) => AIM * s),
      maxPieces: mostAlong,
      trust: "wary",
    });
    for (let i = 0; i < MOMENTS; i++) {
      value[i] = (value[i] as number) + (result.value[i] as number);
      error[i] = (error[i] as number) + (result.error[i] as number) + extent * (innerError[i] as number);
    }
  };
  if (length > 0) add((s, out) => strip(s, w, out), [{ from: 0, to: length }], length);
  // The round ends, by the angle from the end of the line outward.
  for (const [start, side] of [
    [0, -1],
    [length, 1],
  ] as const) {
    const end = (angle: number, out: Float64Array): void => {
      strip(start + side * w * Math.sin(angle), w * Math.cos(angle), out);
      const stretch = w * Math.cos(angle);
      for (let i = 0; i < MOMENTS; i++) out[i] = (out[i] as number) * stretch;
    };
    add(end, [{ from: 0, to: Math.PI / 2 }], w);
  }
  return { value, error };
}

/** How large each integral may be: the steel taken out by the greatest lever. */
function sizes(body: SteelBody, groove: Groove, long: number, w: number): Float64Array {
  const sides = groove.faces === "both" ? 2 : 1;
  const volume = sides * long * w * groove.depth;
  const x = Math.max(Math.abs(groove.from.x), Math.abs(groove.to.x), w);
  const y = Math.max(Math.abs(groove.from.y), Math.abs(groove.to.y), w);
  const z = Math.max(body.slab.thicknessAt(groove.from.x), body.slab.thicknessAt(groove.to.x)) / 2;
  return Float64Array.from([1, x, y, x * x, y * y, z * z, x * y, z, y * z, z * x], (lever) => volume * lever);
}

function take(
  body: SteelBody,
  groove: Groove,
  x: number,
  y: number,
  weight: number,
  out: Float64Array,
): void {
  out.fill(0);
  const depth = grooveDepthAt(groove, { x, y });
  const share = weight * depth;
  const sides = groove.faces === "both" ? (["right", "left"] as const) : ([groove.faces] as const);
  for (const side of sides) {
    const h = body.faceUncut({ x, y }, side);
    const floor = h - depth;
    const z = ((h + floor) / 2) * (side === "right" ? 1 : -1);
    out[VOLUME] = (out[VOLUME] as number) + share;
    out[1] = (out[1] as number) + share * x;
    out[2] = (out[2] as number) + share * y;
    out[3] = (out[3] as number) + share * x * x;
    out[4] = (out[4] as number) + share * y * y;
    out[5] = (out[5] as number) + (share * (h * h + h * floor + floor * floor)) / 3;
    out[6] = (out[6] as number) + share * x * y;
    out[7] = (out[7] as number) + share * z;
    out[8] = (out[8] as number) + share * y * z;
    out[9] = (out[9] as number) + share * z * x;
  }
}
