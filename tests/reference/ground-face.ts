// One ground face at one station, straight from section 4 of docs/model.md: its height outward from the centre plane
// over the distance v from the edge.
import type { FaceSpec } from "@scantling/geometry";
import type { Law } from "./law.js";

/** Everything that makes one face at one station; lengths in mm. */
export interface FaceStation {
  readonly form: FaceSpec["form"];
  /** Distance from the edge run to the top of the outline, and the bevel line's. */
  readonly top: number;
  readonly bevel: number;
  /** Heights of the face where it starts, at its bevel line and at the spine. */
  readonly start: number;
  readonly line: number;
  readonly spine: number;
  /** Height of the edge line. */
  readonly apex: number;
  /** Sagitta asked for; undefined: level at the bevel line. */
  readonly crown: number | undefined;
  readonly wheel: number | undefined;
}

/** Sharpening planes of one side; undefined on a side that has none. */
export interface Planes {
  readonly tan: number;
  readonly micro?: { readonly height: number; readonly tan: number };
}

/** The laws of one face. */
export interface FaceLaws {
  readonly form: FaceSpec["form"];
  readonly height: Law;
  readonly crown: { readonly law: Law; readonly isShare: boolean } | undefined;
  readonly wheel: number | undefined;
  readonly planes: Planes | undefined;
}

/** Laws of a face at one station. @param side - 1 on the right, −1 on the left */
export function faceStation(
  { form, height, crown, wheel }: FaceLaws,
  x: number,
  side: 1 | -1,
  shared: {
    readonly top: number;
    readonly full: number;
    readonly flank: number;
    readonly edge: number;
    readonly apex: number;
  },
): FaceStation {
  const { top, full, flank, edge } = shared;
  const bevel = Math.min(height.at(x), top);
  const atBevel = top > bevel ? full - flank * Math.min(1, (4 * (top - bevel)) / top) : full;
  const a = side * shared.apex;
  return {
    form,
    top,
    bevel,
    start: (a * full) / 2 + (edge * (1 - a)) / 2,
    line: atBevel / 2,
    spine: full / 2,
    apex: (a * full) / 2,
    crown: crown && crown.law.at(x) * (crown.isShare ? atBevel - edge : 1),
    wheel,
  };
}

/** Height of the face as ground and sharpened, and the name of the piece that it is. */
export function sharpened(s: FaceStation, v: number, planes: Planes | undefined): readonly [number, string] {
  const ground = groundFace(s, v);
  if (planes === undefined) return ground;
  const { tan, micro } = planes;
  const isMicro = micro !== undefined && v <= micro.height;
  const onPlane =
    micro === undefined
      ? v * tan
      : isMicro
        ? v * micro.tan
        : micro.height * micro.tan + (v - micro.height) * tan;
  const height = s.apex + onPlane;
  return height < ground[0] ? [height, isMicro ? "micro" : "plane"] : ground;
}

function groundFace(s: FaceStation, v: number): readonly [number, string] {
  const { top, bevel, start, line, spine } = s;
  if (v >= top) return [spine, "beyond"];
  if (v >= bevel) return [line + ((spine - line) * (v - bevel)) / (top - bevel), "flank"];
  const straight = start + ((line - start) * v) / bevel;
  if (s.form === "flat") return [straight, "bevel"];
  return [(s.form === "convex" ? bulged(s, v) : caved(s, v)) ?? straight, "bevel"];
}

/** Arc through both ends of the bevel that bulges outward; undefined where there is none. */
function bulged({ start, line, bevel, crown }: FaceStation, v: number): number | undefined {
  const rise = line - start;
  if (rise <= 0) return undefined;
  const chord = Math.hypot(bevel, rise);
  const lean = Math.atan2(rise, bevel);
  const level = (chord / 2) * Math.tan(lean / 2);
  const upright = (chord / 2) * Math.tan((Math.PI / 2 - lean) / 2);
  const sagitta = Math.min(crown ?? level, upright);
  if (sagitta <= 0) return undefined;
  const radius = chord ** 2 / (8 * sagitta) + sagitta / 2;
  const back = radius - sagitta;
  const centre = { v: bevel / 2 + (back * rise) / chord, z: (start + line) / 2 - (back * bevel) / chord };
  return centre.z + Math.sqrt(Math.max(0, radius ** 2 - (v - centre.v) ** 2));
}

/** Arc of the wheel through both ends of the bevel; the wheel stands outside the steel. */
function caved({ start, line, bevel, wheel }: FaceStation, v: number): number | undefined {
  if (wheel === undefined) return undefined;
  const rise = line - start;
  const chord = Math.hypot(bevel, rise);
  // No smaller than the circle that arrives upright at the bevel line: (s/2)/cos λ with cos λ = B/s.
  const radius = Math.max(wheel, chord ** 2 / (2 * bevel));
  const out = Math.sqrt(Math.max(0, radius ** 2 - chord ** 2 / 4));
  const centre = { v: bevel / 2 - (out * rise) / chord, z: (start + line) / 2 + (out * bevel) / chord };
  return centre.z - Math.sqrt(Math.max(0, radius ** 2 - (v - centre.v) ** 2));
}
