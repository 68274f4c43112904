// The thickness of the finished steel at a point, straight from docs/model.md: no line of it comes from the kernel.
import type { KnifeSpec, LawSpec, Outline, StationSpec } from "@scantling/geometry";
import { Slicer } from "./curve.js";
import { makeLaw } from "./law.js";
import { makeNearest } from "./nearest.js";

export interface Hole {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

export interface ReferenceBody {
  /** Half of the full thickness at (x, y), mm; meant for points inside the outline. */
  half(x: number, y: number): number;
  /** Names the smooth piece of the surface that the point lies on, `face:piece of the edge run`: where it changes there may be a crease. */
  zone(x: number, y: number): string;
  readonly slicer: Slicer;
  readonly holes: readonly Hole[];
  /** Stations where the thickness or one of its slopes may break, with those of the outline, ascending. */
  readonly breaks: readonly number[];
}

/** Everything the section at one station needs. */
interface Station {
  /** Distance from the edge run to the top of the outline. */
  readonly top: number;
  /** Bevel line. */
  readonly bevel: number;
  readonly thickness: number;
  /** Thickness at the bevel line. */
  readonly atBevel: number;
  readonly edge: number;
  /** Share of the grinding reached behind the plunge, 0 to 1. */
  readonly ground: number;
  readonly crown: number | "level";
}

/** Reads the description by the definitions of docs/model.md; `sharpened: false` leaves the sharpening planes out. */
export function referenceBody(
  spec: KnifeSpec,
  outline: Outline,
  { sharpened = true }: { readonly sharpened?: boolean } = {},
): ReferenceBody {
  const { blade, tang } = spec;
  const length = outline.edgeLength;
  const place = (station: StationSpec): number => {
    const { at } = station;
    if (at.kind === "heel") return 0;
    if (at.kind === "tip") return length;
    if (at.kind === "distance") return at.mm;
    if (at.kind === "fraction") return at.share * length;
    throw new Error(`a blade station cannot stand at the ${at.kind}`);
  };
  // `between` is said of the thickness; every other law is straight between its stations.
  const thickness = makeLaw(blade.thickness, place, blade.between === "smooth");
  const law = (value: LawSpec) => makeLaw(value, place, false);
  const { bevel } = blade;
  const height = law(bevel.height === "full" ? Number.POSITIVE_INFINITY : bevel.height);
  const edge = law(bevel.edgeThickness);
  const flank = law(blade.flankTaper ?? 0);
  const crown = bevel.crown && law("mm" in bevel.crown ? bevel.crown.mm : bevel.crown.share);
  const crownIsShare = bevel.crown !== undefined && "share" in bevel.crown;
  const plunge = blade.plunge ?? { at: 0, length: 0 };
  if (typeof blade.edgeAngle !== "number" || bevel.form === "hollow") {
    throw new Error("the reference is written for flat and convex blades with both sides alike");
  }
  const form = bevel.form;
  const tanEdge = Math.tan(blade.edgeAngle);

  // The tang's own coordinate runs from the handle front toward the butt.
  const tangLength = outline.handleFront - outline.butt;
  const frontThickness = thickness.at(0);
  const tangLaw = tang.thickness
    ? makeLaw(tang.thickness, (station) => tangPlace(station, tangLength), tang.between === "smooth")
    : makeLaw(
        [
          { at: { kind: "distance", mm: 0 }, is: frontThickness },
          { at: { kind: "distance", mm: tangLength }, is: tang.buttThickness ?? frontThickness },
        ],
        (station) => tangPlace(station, tangLength),
        false,
      );

  const nearest = makeNearest(outline.runs.edge);
  const slicer = new Slicer(outline.path.segments);

  const stationAt = (x: number): Station => {
    const ys = slicer.crossings(x);
    const y = ys[ys.length - 1];
    if (y === undefined) throw new Error(`the outline has no top at x = ${x}`);
    const top = nearest(x, y).distance;
    const bevelLine = Math.min(height.at(x), top);
    const full = thickness.at(x);
    const lost = top > bevelLine ? flank.at(x) * Math.min(1, (4 * (top - bevelLine)) / top) : 0;
    const atBevel = full - lost;
    const e = edge.at(x);
    const u = plunge.length > 0 ? (x - plunge.at) / plunge.length : x >= plunge.at ? 1 : 0;
    const w = u <= 0 ? 0 : u >= 1 ? 1 : u * u * (3 - 2 * u);
    const level = crown === undefined ? "level" : crown.at(x) * (crownIsShare ? atBevel - e : 1);
    return { top, bevel: bevelLine, thickness: full, atBevel, edge: e, ground: w, crown: level };
  };
  let cached: { readonly x: number; readonly station: Station } | undefined;
  const station = (x: number): Station => {
    if (cached?.x !== x) cached = { x, station: stationAt(x) };
    return cached.station;
  };

  const section = (x: number, y: number): { half: number; zone: string } => {
    if (x < outline.handleFront) return { half: tangLaw.at(outline.handleFront - x) / 2, zone: "tang" };
    if (x < 0) return { half: thickness.at(0) / 2, zone: "ricasso" };
    const s = station(x);
    if (s.ground === 0) return { half: s.thickness / 2, zone: "unground" };
    const { distance: v, piece } = nearest(x, y);
    const [face, name] = groundFace(s, v, form);
    const plane = sharpened ? v * tanEdge : Number.POSITIVE_INFINITY;
    const finished = Math.min(face, plane);
    const half = (s.thickness / 2) * (1 - s.ground) + finished * s.ground;
    return { half, zone: `${plane < face ? "plane" : name}:${piece}` };
  };

  const breaks = new Set([...slicer.breaks, 0, plunge.at, plunge.at + plunge.length, outline.handleFront]);
  for (const one of [thickness, height, edge, flank, crown]) for (const x of one?.breaks ?? []) breaks.add(x);
  for (const s of tangLaw.breaks) breaks.add(outline.handleFront - s);

  return {
    half: (x, y) => section(x, y).half,
    zone: (x, y) => section(x, y).zone,
    slicer,
    holes: [...(blade.holes ?? []), ...(tang.holes ?? [])].map(({ at, diameter }) => ({
      x: at.x,
      y: at.y,
      radius: diameter / 2,
    })),
    breaks: [...breaks].sort((a, b) => a - b),
  };
}

function tangPlace(station: StationSpec, tangLength: number): number {
  const { at } = station;
  if (at.kind === "handle") return 0;
  if (at.kind === "butt") return tangLength;
  if (at.kind === "distance") return at.mm;
  if (at.kind === "fraction") return at.share * tangLength;
  throw new Error(`a tang station cannot stand at the ${at.kind}`);
}

/** Half-thickness of the ground face at the distance v from the edge, and which part of it that is. */
function groundFace(s: Station, v: number, form: "flat" | "convex"): readonly [number, string] {
  const low = s.edge / 2;
  const high = s.atBevel / 2;
  if (v >= s.top) return [s.thickness / 2, "beyond"];
  if (v >= s.bevel) {
    return [high + ((s.thickness / 2 - high) * (v - s.bevel)) / (s.top - s.bevel), "flank"];
  }
  const chord = low + ((high - low) * v) / s.bevel;
  if (form === "flat") return [chord, "bevel"];
  return [bulged(s, v, low, high) ?? chord, "bevel"];
}

/**
 * The circular arc through (0, low) and (bevel, high), bulging outward; undefined where there is none. Close to a tip,
 * where the bevel is lower than it is thick, the arc asked for would lean out over the edge: there it is the one that
 * stands upright at the edge.
 */
function bulged(s: Station, v: number, low: number, high: number): number | undefined {
  const rise = high - low;
  const run = s.bevel;
  if (rise <= 0 || (s.crown !== "level" && s.crown <= 0)) return undefined;
  const chord = Math.hypot(run, rise);
  let centre: { v: number; z: number };
  if (s.crown === "level") {
    // Centre straight below the bevel line.
    centre = { v: run, z: high - chord ** 2 / (2 * rise) };
  } else {
    // Centre on the chord's perpendicular through its middle, on the inner side.
    const back = chord ** 2 / (8 * s.crown) - s.crown / 2;
    centre = { v: run / 2 + (back * rise) / chord, z: (low + high) / 2 - (back * run) / chord };
  }
  // Upright at the edge: centre level with it.
  if (centre.z > low) centre = { v: chord ** 2 / (2 * run), z: low };
  const radius = Math.hypot(centre.v, low - centre.z);
  return centre.z + Math.sqrt(Math.max(0, radius ** 2 - (v - centre.v) ** 2));
}
