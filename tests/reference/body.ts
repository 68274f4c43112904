// The two faces of the finished steel at a point, straight from docs/model.md: no line of it comes from the kernel.
import type { FaceSpec, KnifeSpec, LawSpec, Outline, StationSpec, Vec2 } from "@scantling/geometry";
import { Slicer } from "./curve.js";
import { type FaceLaws, type FaceStation, faceStation, type Planes, sharpened } from "./ground-face.js";
import { makeLaw } from "./law.js";
import { makeNearest, type Nearest } from "./nearest.js";
import { distanceToLine, grooveDepth, lineBreaks, spineBound } from "./spine-cuts.js";
import { spineDistance } from "./spine-distance.js";

export type FaceSide = "right" | "left";

export interface Hole {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Centre of a slot's other end arc. */
  readonly to?: Vec2;
}

export interface ReferenceBody {
  /**
   * Height of a face outward from the centre plane, mm: the right face lies at z = face(…, "right"), the left one at
   * z = −face(…, "left"). With the apex off centre one of the two may be negative near the edge. For points inside the
   * outline; holes are not asked.
   */
  face(x: number, y: number, side: FaceSide): number;
  /** Half of the full thickness at (x, y), mm: the mean of both faces. */
  half(x: number, y: number): number;
  /** Names the smooth piece of a face that the point lies on, `piece:piece of the edge run`: where it changes there may be a crease. */
  faceZone(x: number, y: number, side: FaceSide): string;
  /** The same of both faces together, so that it changes where either does. */
  zone(x: number, y: number): string;
  /** Distance from the edge run, v of the model, mm. */
  distance(x: number, y: number): number;
  /** How far from the edge the section at x reaches: V of the model, mm; 0 where the blade is not bevelled. */
  reach(x: number): number;
  /** Whether a point of the flats is drilled away. */
  isDrilled(x: number, y: number): boolean;
  /** Both faces are the same by their description. */
  readonly alike: boolean;
  readonly slicer: Slicer;
  readonly holes: readonly Hole[];
  /** Stations where the thickness or one of its slopes may break, with those of the outline, ascending. */
  readonly breaks: readonly number[];
}

interface Station {
  readonly x: number;
  /** y of the outline's highest point. */
  readonly highest: number;
  readonly thickness: number;
  /** Share of the grinding reached behind the plunge, 0 to 1. */
  readonly ground: number;
  readonly faces: Readonly<Record<FaceSide, FaceStation>> | undefined;
}

export interface ReadingOptions {
  /** False: the sharpening planes are left out. */
  readonly sharpened?: boolean;
  /** Another rule for the distance from the edge than the model's: what tells the right rule from a wrong one. */
  readonly distance?: (x: number, y: number) => number;
}

/** Reads the description by the definitions of docs/model.md. */
export function referenceBody(
  spec: KnifeSpec,
  outline: Outline,
  { sharpened: isSharp = true, distance }: ReadingOptions = {},
): ReferenceBody {
  const { blade, tang } = spec;
  const { bevel, swedge, fullers = [] } = blade;
  const breaks = new Set<number>();
  const place = ({ at }: Pick<StationSpec, "at">): number => bladePlace(at, outline);
  const law = (value: LawSpec, smooth = false) => {
    const made = makeLaw(value, place, smooth);
    for (const x of made.breaks) breaks.add(x);
    return made;
  };
  // `between` is said of the thickness; every other law is straight between its stations.
  const thickness = law(blade.thickness, blade.between === "smooth");
  const edge = law(bevel.edgeThickness);
  const flank = law(blade.flankTaper ?? 0);
  const plunge = blade.plunge ?? { at: 0, length: 0 };
  const faceLaws = (face: FaceSpec, side: FaceSide): FaceLaws => ({
    form: face.form,
    height: law(face.height === "full" ? Number.POSITIVE_INFINITY : face.height),
    crown: face.crown && {
      law: law("mm" in face.crown ? face.crown.mm : face.crown.share),
      isShare: "share" in face.crown,
    },
    wheel: face.wheelRadius,
    planes: isSharp ? planesOf(blade, side) : undefined,
  });
  const laws = {
    right: faceLaws({ ...bevel, ...bevel.right }, "right"),
    left: faceLaws({ ...bevel, ...bevel.left }, "left"),
  };
  const apex = bevel.apex ?? 0;
  const cuts = {
    eased: blade.easedSpine ?? 0,
    swedge: swedge && {
      from: place({ at: swedge.from }),
      to: place({ at: swedge.to }),
      tan: Math.tan(swedge.angle),
      thickness: law(swedge.thickness),
    },
  };
  const tangLaw = lawOfTang(spec, outline, thickness.at(0));
  const nearest = distance
    ? (x: number, y: number): Nearest => ({ distance: distance(x, y), piece: 0 })
    : makeNearest(outline.runs.edge);
  const slicer = new Slicer(outline.path.segments);
  const holes = [...(blade.holes ?? []), ...(tang.holes ?? [])].map(
    ({ at, to, diameter }): Hole => ({ x: at.x, y: at.y, radius: diameter / 2, ...(to && { to }) }),
  );

  const stationAt = (x: number): Station => {
    const crossed = slicer.crossed(x);
    const highest = crossed[crossed.length - 1]?.y;
    if (highest === undefined) throw new Error(`the outline has no top at x = ${x}`);
    if (x < outline.handleFront)
      return { x, highest, thickness: tangLaw.at(outline.handleFront - x), ground: 0, faces: undefined };
    const full = thickness.at(Math.max(0, x));
    const u = plunge.length > 0 ? (x - plunge.at) / plunge.length : x >= plunge.at ? 1 : 0;
    if (x < plunge.at || (plunge.length > 0 && u <= 0))
      return { x, highest, thickness: full, ground: 0, faces: undefined };
    const top = spineDistance(crossed, outline.runs.edge.length, (y) => nearest(x, y).distance);
    const shared = { top, full, flank: flank.at(x), edge: edge.at(x), apex };
    return {
      x,
      highest,
      thickness: full,
      ground: u >= 1 ? 1 : u * u * (3 - 2 * u),
      faces: {
        right: faceStation(laws.right, x, 1, shared),
        left: faceStation(laws.left, x, -1, shared),
      },
    };
  };
  let station: Station | undefined;
  let found: { readonly x: number; readonly y: number; readonly nearest: Nearest } | undefined;

  const section = (x: number, y: number, side: FaceSide): readonly [number, string] => {
    if (station?.x !== x) station = stationAt(x);
    const { highest, thickness: full, ground, faces } = station;
    let height = full / 2;
    let name = x < outline.handleFront ? "tang" : x < 0 ? "ricasso" : "unground";
    let piece = "";
    if (faces !== undefined) {
      if (found?.x !== x || found.y !== y) found = { x, y, nearest: nearest(x, y) };
      const [finished, part] = sharpened(faces[side], found.nearest.distance, laws[side].planes);
      height = full / 2 - ground * (full / 2 - finished);
      name = part;
      piece = `:${found.nearest.piece}`;
    }
    const bound = x < outline.handleFront ? undefined : spineBound(cuts, x, Math.max(0, highest - y), full);
    if (bound !== undefined && bound[0] < height) {
      [height, name] = bound;
      piece = "";
    }
    fullers.forEach((fuller, k) => {
      if (fuller.faces !== undefined && fuller.faces !== "both" && fuller.faces !== side) return;
      const depth = grooveDepth(fuller, x, y);
      if (depth <= 0) return;
      height -= depth;
      name += ` in groove ${k}`;
    });
    return [height, name + piece];
  };

  for (const x of [...slicer.breaks, 0, plunge.at, plunge.at + plunge.length, outline.handleFront])
    breaks.add(x);
  for (const s of tangLaw.breaks) breaks.add(outline.handleFront - s);
  if (cuts.swedge) breaks.add(cuts.swedge.from).add(cuts.swedge.to);
  for (const { from, to, radius, depth } of fullers)
    for (const x of lineBreaks(from, to, Math.sqrt(depth * (2 * radius - depth)))) breaks.add(x);

  const alike =
    apex === 0 &&
    bevel.left === undefined &&
    bevel.right === undefined &&
    (typeof blade.edgeAngle === "number" || blade.edgeAngle.left === blade.edgeAngle.right) &&
    fullers.every(({ faces = "both" }) => faces === "both");
  const face = (x: number, y: number, side: FaceSide): number => section(x, y, side)[0];
  const faceZone = (x: number, y: number, side: FaceSide): string => section(x, y, side)[1];
  return {
    face,
    half: alike ? (x, y) => face(x, y, "right") : (x, y) => (face(x, y, "right") + face(x, y, "left")) / 2,
    faceZone,
    zone: alike
      ? (x, y) => faceZone(x, y, "right")
      : (x, y) => `${faceZone(x, y, "right")} | ${faceZone(x, y, "left")}`,
    distance: (x, y) => nearest(x, y).distance,
    reach: (x) => stationAt(x).faces?.right.top ?? 0,
    isDrilled: (x, y) => holes.some((hole) => distanceToLine({ x, y }, hole, hole.to ?? hole) < hole.radius),
    alike,
    slicer,
    holes,
    breaks: [...breaks].sort((a, b) => a - b),
  };
}

function planesOf({ edgeAngle, microbevel }: KnifeSpec["blade"], side: FaceSide): Planes | undefined {
  const angle = typeof edgeAngle === "number" ? edgeAngle : edgeAngle[side];
  if (angle === "flat") return undefined;
  return {
    tan: Math.tan(angle),
    ...(microbevel && { micro: { height: microbevel.height, tan: Math.tan(microbevel.angle) } }),
  };
}

function bladePlace(at: StationSpec["at"], { edgeLength }: Outline): number {
  if (at.kind === "heel") return 0;
  if (at.kind === "tip") return edgeLength;
  if (at.kind === "distance") return at.mm;
  if (at.kind === "fraction") return at.share * edgeLength;
  throw new Error(`a blade station cannot stand at the ${at.kind}`);
}

/** Thickness of the tang over the distance behind the handle front. */
function lawOfTang({ tang }: KnifeSpec, outline: Outline, frontThickness: number) {
  const tangLength = outline.handleFront - outline.butt;
  const place = ({ at }: StationSpec): number => {
    if (at.kind === "handle") return 0;
    if (at.kind === "butt") return tangLength;
    if (at.kind === "distance") return at.mm;
    if (at.kind === "fraction") return at.share * tangLength;
    throw new Error(`a tang station cannot stand at the ${at.kind}`);
  };
  if (tang.thickness) return makeLaw(tang.thickness, place, tang.between === "smooth");
  const ends: readonly StationSpec[] = [
    { at: { kind: "handle" }, is: frontThickness },
    { at: { kind: "butt" }, is: tang.buttThickness ?? frontThickness },
  ];
  return makeLaw(ends, place, false);
}
