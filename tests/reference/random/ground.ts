// Bevels, edges and everything cut into a blade, drawn by lot.
import type {
  BevelSpec,
  BladeSpec,
  FaceSpec,
  FullerSpec,
  HoleSpec,
  LawSpec,
  StationSpec,
  Vec2,
} from "@scantling/geometry";
import type { Chance } from "./chance.js";

export const DEGREE = Math.PI / 180;
export const heel = (is: number): StationSpec => ({ at: { kind: "heel" }, is });
export const tip = (is: number): StationSpec => ({ at: { kind: "tip" }, is });
export const share = (part: number, is: number): StationSpec => ({
  at: { kind: "fraction", share: part },
  is,
});

/** Sizes that everything is drawn to, mm: edge length, heel height, thickness at the heel. */
export interface Sizes {
  readonly length: number;
  readonly height: number;
  readonly thick: number;
}

function faceOf(c: Chance, { length, height, thick }: Sizes): FaceSpec {
  const form = c.pick("flat", "flat", "convex", "convex", "hollow");
  const part = c.between(0.25, 0.95) * height;
  const bevel = c.pick<"full" | LawSpec>(
    "full",
    part,
    part,
    [heel(part), tip(c.between(0.2, 0.9) * height)],
    [heel(part), share(c.between(0.3, 0.7), c.between(0.3, 1.1) * height), tip(c.between(0.2, 0.6) * height)],
    [{ at: { kind: "distance", mm: 0.2 * length }, is: part }, tip(1.3 * part)],
  );
  if (form === "hollow") {
    // From a wheel that just clears the edge to one as good as flat.
    const rise = thick / 2 - 0.2;
    const run = bevel === "full" ? height : part;
    return { form, height: bevel, wheelRadius: ((run * run + rise * rise) / (2 * rise)) * c.between(0.9, 6) };
  }
  if (form === "convex" && c.in(0.6)) {
    const most = (thick / 2) * 0.22;
    const crown = c.in(0.5)
      ? { mm: c.in(0.5) ? c.between(0.02, 1) * most : [heel(most), tip(0.2 * most)] }
      : { share: c.between(0.01, 0.12) };
    return { form, height: bevel, crown };
  }
  return { form, height: bevel };
}

/** The ground faces, the edge on them and where they begin. */
export function ground(
  c: Chance,
  sizes: Sizes,
): Pick<BladeSpec, "bevel" | "edgeAngle" | "microbevel" | "plunge" | "flankTaper"> {
  const edge = c.pick(c.between(0.1, 0.6), c.between(0.1, 0.6), 0);
  const angle = c.between(9, 28) * DEGREE;
  const base: BevelSpec = {
    ...faceOf(c, sizes),
    edgeThickness: c.in(0.3) && edge > 0 ? [heel(edge), tip(0.7 * edge)] : edge,
  };
  const kind = c.pick("alike", "alike", "alike", "alike", "faces", "apex", "single", "one plane");
  const { crown, ...plain } = base;
  // A share of the thickness gained is said of a bevel that stands in the middle.
  const off = crown !== undefined && "share" in crown ? plain : base;
  const turned = c.in(0.5);
  const one = turned ? "left" : "right";
  const bevel: BevelSpec =
    kind === "faces"
      ? { ...base, [one]: faceOf(c, sizes) }
      : kind === "apex"
        ? { ...off, apex: c.between(-0.8, 0.8) }
        : kind === "single"
          ? { ...off, apex: turned ? 1 : -1 }
          : base;
  const edgeAngle: BladeSpec["edgeAngle"] =
    kind === "single" || kind === "one plane"
      ? turned
        ? { right: "flat", left: angle }
        : { right: angle, left: "flat" }
      : kind === "apex" || (kind === "faces" && c.in(0.5))
        ? { right: angle, left: angle * c.between(0.7, 1.3) }
        : angle;
  const plunge = c.in(0.5)
    ? {
        at: c.in(0.5) ? 0 : c.between(0, 0.12) * sizes.length,
        length: c.in(0.4) ? 0 : c.between(0.02, 0.25) * sizes.length,
      }
    : undefined;
  return {
    bevel,
    edgeAngle,
    ...(c.in(0.2)
      ? { microbevel: { height: c.between(0.1, 1.2), angle: angle * 1.3 + c.between(1, 8) * DEGREE } }
      : {}),
    ...(plunge === undefined ? {} : { plunge }),
    ...(c.in(0.45)
      ? { flankTaper: c.in(0.6) ? c.between(0.05, 0.5) : [heel(c.between(0.05, 0.5)), tip(0)] }
      : {}),
  };
}

/** Swedge, eased spine, fullers and holes. */
export function cuts(
  c: Chance,
  { length, height, thick }: Sizes,
): Pick<BladeSpec, "swedge" | "easedSpine" | "fullers" | "holes"> {
  const from = c.between(0.3, 0.75);
  const p = (x: number, y: number): Vec2 => ({ x: x * length, y: y * height });
  const fullers: FullerSpec[] = [];
  if (c.in(0.15)) {
    const radius = c.between(0.1, 0.6) * height;
    fullers.push({
      from: p(c.between(0.08, 0.25), c.between(0.45, 0.75)),
      to: p(c.between(0.35, 0.6), c.between(0.45, 0.75)),
      radius,
      depth: Math.min(c.between(0.04, 0.25) * thick, radius),
      ...(c.in(0.5) ? {} : { faces: c.pick("left", "right", "both") }),
    });
  }
  const holes: HoleSpec[] = [];
  if (c.in(0.25)) {
    const diameter = c.between(0.05, 0.2) * height;
    const at = p(c.between(0.1, 0.6), c.between(0.3, 0.75));
    const turn = c.between(-0.6, 0.6);
    const slot = c.in(0.5) ? c.between(1.2, 4) * diameter : 0;
    holes.push({
      kind: "lightening",
      at,
      diameter,
      ...(slot === 0 ? {} : { to: { x: at.x + slot * Math.cos(turn), y: at.y + slot * Math.sin(turn) } }),
    });
  }
  return {
    ...(c.in(0.15)
      ? {
          swedge: {
            from: { kind: "fraction", share: from },
            to: c.in(0.6) ? { kind: "tip" } : { kind: "fraction", share: c.between(from + 0.1, 1) },
            angle: c.between(12, 45) * DEGREE,
            thickness: c.in(0.5) ? c.between(0.1, 0.7) * thick : [heel(0.8 * thick), tip(0.15 * thick)],
          },
        }
      : {}),
    ...(c.in(0.15) ? { easedSpine: c.between(0.1, 0.6) * thick } : {}),
    ...(fullers.length === 0 ? {} : { fullers }),
    ...(holes.length === 0 ? {} : { holes }),
  };
}
