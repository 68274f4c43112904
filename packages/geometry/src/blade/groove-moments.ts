import { gaussRule } from "../numeric/gauss.js";
import { type Moments, noMoments } from "./moments.js";
import { type Groove, grooveDepthAt, type SteelBody } from "./steel-body.js";

/** Half the width of a groove where it runs out at the face, mm. */
export const grooveHalfWidth = ({ radius, depth }: Groove): number =>
  depth >= radius ? radius : Math.sqrt(2 * radius * depth - depth * depth);

/**
 * Steel that a groove takes out of a body: its straight part in strips along and across, its two round ends in rings.
 * The volume needs no more than the groove's own section; the moments across the flats need the face it is cut into.
 */
export function grooveMoments(body: SteelBody, groove: Groove): Moments {
  const fine = sum(body, groove, 20);
  const rough = sum(body, groove, 14);
  return { value: fine, error: fine.map((v, i) => Math.abs(v - (rough[i] as number)) + 4e-15 * Math.abs(v)) };
}

function sum(body: SteelBody, groove: Groove, points: number): Float64Array {
  const out = noMoments().value;
  const w = grooveHalfWidth(groove);
  const dx = groove.to.x - groove.from.x;
  const dy = groove.to.y - groove.from.y;
  const length = Math.hypot(dx, dy);
  const tx = length === 0 ? 1 : dx / length;
  const ty = length === 0 ? 0 : dy / length;
  const { nodes, weights } = gaussRule(points);
  const each = (visit: (share: number, weight: number) => void): void => {
    for (let i = 0; i < points; i++) visit(nodes[i] as number, weights[i] as number);
  };
  each((along, a) => {
    for (const side of [-1, 1]) {
      each((across, b) => {
        const q = side * w * across;
        const x = groove.from.x + along * dx - q * ty;
        const y = groove.from.y + along * dy + q * tx;
        take(body, groove, x, y, a * b * length * w, out);
      });
    }
  });
  for (const [end, turn] of [
    [groove.from, 1],
    [groove.to, -1],
  ] as const) {
    for (const quarter of [-1, 1]) {
      each((angleShare, a) => {
        const angle = (quarter * angleShare * Math.PI) / 2;
        const ux = -turn * (tx * Math.cos(angle) - ty * Math.sin(angle));
        const uy = -turn * (ty * Math.cos(angle) + tx * Math.sin(angle));
        each((radial, b) => {
          const q = w * radial;
          take(body, groove, end.x + q * ux, end.y + q * uy, (a * b * Math.PI * w * q) / 2, out);
        });
      });
    }
  }
  return out;
}

function take(
  body: SteelBody,
  groove: Groove,
  x: number,
  y: number,
  weight: number,
  out: Float64Array,
): void {
  const depth = grooveDepthAt(groove, { x, y });
  const share = weight * depth;
  const sides = groove.faces === "both" ? (["right", "left"] as const) : ([groove.faces] as const);
  for (const side of sides) {
    const h = body.faceUncut({ x, y }, side);
    const floor = h - depth;
    const z = ((h + floor) / 2) * (side === "right" ? 1 : -1);
    out[0] = (out[0] as number) + share;
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
