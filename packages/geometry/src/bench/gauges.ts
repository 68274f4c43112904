import { bevelAt } from "../blade/bevel-at.js";
import type { Knife } from "../blade/knife.js";
import { bevelsBegin, type Side } from "../blade/knife-faces.js";
import { sideAngle } from "../blade/size-states.js";
import { arcBetween, line, type Segment } from "../plane/segment.js";
import { type HandleSection, handleBody } from "./handle-sections.js";

/** Where along the handle a section is taken. */
export type HandlePlace = "front" | "middle" | "butt" | "widest";

/** A section of the handle as a gauge holds it against the work; lengths in mm. */
export interface HandleGauge extends HandleSection {
  /** Where it fits, with the distance behind the handle's own front. */
  readonly places: readonly { readonly place: HandlePlace; readonly behindFront: number }[];
}

/** One ground face of a bevel gauge. */
export interface BevelFace {
  /** From the unsharpened edge to the bevel line, as (z, v): v is the distance from the edge, z positive on the right. */
  readonly profile: Segment;
  /** Angle of the chord against the centre plane, rad. */
  readonly angle: number;
  /** Greatest distance of the profile from its chord, mm; 0 of a flat one. */
  readonly sagitta: number;
}

/** The bevels of both faces before sharpening, at the stations where they are the same. */
export interface BevelGauge {
  /** mm ahead of the heel. */
  readonly at: readonly number[];
  /** Full thickness at the edge and at the bevel line, and height of the bevel, square to the edge, mm. */
  readonly edge: number;
  readonly bevelLine: number;
  readonly height: number;
  readonly right: BevelFace;
  readonly left: BevelFace;
}

/** What a radius gauge is held against. */
export type RadiusUse = "convex" | "hollow" | "spine" | "handle";

/** A radius of the knife, mm. */
export interface RadiusGauge {
  readonly use: RadiusUse;
  readonly radius: number;
  /** Width of the face that it is held against: a chord, or the eased edge itself. */
  readonly chord: number;
  /** Where it holds, mm ahead of the heel; none where it holds everywhere. */
  readonly at: readonly number[];
  readonly faces: "both" | Side;
}

/** A hollow or convex face that is too flat for a card: it is held against a straight edge. */
export interface FlatFace extends RadiusGauge {
  readonly use: "convex" | "hollow";
  /** Light between face and straight edge over the chord, mm: in the middle of a hollow, at both ends of a bulge. */
  readonly light: number;
}

/** The angles of the edge against the centre plane, rad; 0 on a face without a plane. */
export interface EdgeGauge {
  readonly use: "edge" | "microbevel";
  readonly right: number;
  readonly left: number;
}

/** Everything of a knife that a gauge can be cut for; empty lists where it has none of a kind. */
export interface GaugeSet {
  readonly handle: readonly HandleGauge[];
  readonly bevels: readonly BevelGauge[];
  readonly radii: readonly RadiusGauge[];
  /** Instead of a gauge: what a straight edge and a feeler find. */
  readonly flatFaces: readonly FlatFace[];
  readonly edges: readonly EdgeGauge[];
}

/** Sizes nearer than this are one on a card, mm: half of what a caliper shows. */
const SAME = 0.01;
/** A place where the handle is more than this larger, height and width together, gets a gauge of its own, mm. */
const WIDER = 0.5;
/** How far inside its end a section is taken, mm. */
const INSIDE = 1e-6;
const SEARCHED = 64;
/** Shares of the edge length at which bevels are gauged, besides where they begin. */
const SHARES = [0.5, 0.75] as const;

/**
 * What gauges can be cut for: sections of the handle at its front, middle and butt and where it is widest, bevels before
 * sharpening, radii of convex and hollow faces, of the eased spine and of the handle's edges, and the edge's angle. Faces so
 * flat that no scissors follow them are told apart.
 *
 * @example
 * gaugeSet(knife).edges[0]; // { use: "edge", right: 0.3, left: 0.3 }
 */
export function gaugeSet(knife: Knife): GaugeSet {
  const bevels = bevelGauges(knife);
  const arcs = faceArcs(bevels);
  const faces = joinedRadii(arcs);
  return {
    handle: handleGauges(knife),
    bevels,
    radii: [...faces.filter(canBeCut(knife)), ...edgeRadii(knife)],
    flatFaces: joinedFlats(
      arcs.filter((arc) => !faces.some((gauge) => canBeCut(knife)(gauge) && isSame(gauge, arc))),
    ),
    edges: edgeGauges(knife),
  };
}

function handleGauges(knife: Knife): HandleGauge[] {
  const body = handleBody(knife);
  if (body === undefined) return [];
  const take = (place: HandlePlace, x: number, stands = x): HandleGauge[] => {
    const section = body.sectionAt(x);
    return section === undefined
      ? []
      : [{ ...section, places: [{ place, behindFront: body.front - stands }] }];
  };
  const ends = [
    ...take("front", body.front - INSIDE, body.front),
    ...take("middle", (body.front + body.rear) / 2),
    ...take("butt", body.buttFront + INSIDE, body.buttFront),
  ];
  const size = ({ height, width }: HandleSection): number => height + width;
  const span = body.front - body.buttFront;
  const between = Array.from({ length: SEARCHED - 1 }, (_, i) =>
    body.sectionAt(body.front - (span * (i + 1)) / SEARCHED),
  ).flatMap((section) => section ?? []);
  const widest = between.reduce<HandleSection | undefined>(
    (a, b) => (a === undefined || size(b) > size(a) + INSIDE ? b : a),
    undefined,
  );
  const isOwn = widest !== undefined && ends.every((end) => size(widest) > size(end) + WIDER);
  const all = isOwn ? [...ends, ...take("widest", widest.x)] : ends;
  return alike(all, sameSection, (a, b) => ({ ...a, places: [...a.places, ...b.places] }));
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < SAME;

function sameSection(a: HandleSection, b: HandleSection): boolean {
  return near(a.height, b.height) && near(a.width, b.width) && Math.abs(a.area - b.area) < SAME * a.height;
}

/** The same list with what is alike joined, in the order of the first of each. */
function alike<T>(all: readonly T[], same: (a: T, b: T) => boolean, join: (a: T, b: T) => T): T[] {
  const kept: T[] = [];
  for (const next of all) {
    const index = kept.findIndex((one) => same(one, next));
    const known = kept[index];
    if (known === undefined) kept.push(next);
    else kept[index] = join(known, next);
  }
  return kept;
}

function bevelGauges(knife: Knife): BevelGauge[] {
  const from = bevelsBegin(knife);
  const { edgeLength } = knife.outline;
  const places = [from, ...SHARES.map((share) => share * edgeLength).filter((x) => x > from + 1)];
  const gauges = places
    .filter((x) => x < edgeLength)
    .flatMap((x): BevelGauge[] => {
      const { height, edge, bevelLine, rise } = bevelAt(knife, x);
      // Close to a tip the bevel is lower than it is thick: there is no face to hold a gauge against.
      if (!(height > 4 * Math.abs(rise)) || !(height > 1)) return [];
      return [
        {
          at: [x],
          edge,
          bevelLine,
          height,
          right: faceOf(knife, x, "right"),
          left: faceOf(knife, x, "left"),
        },
      ];
    });
  const same = (a: BevelGauge, b: BevelGauge): boolean =>
    near(a.edge, b.edge) &&
    near(a.bevelLine, b.bevelLine) &&
    near(a.height, b.height) &&
    near(a.right.sagitta, b.right.sagitta) &&
    near(a.left.sagitta, b.left.sagitta);
  return alike(gauges, same, (a, b) => ({ ...a, at: [...a.at, ...b.at] }));
}

/** The ground face before sharpening, from the edge to the bevel line. */
function faceOf(knife: Knife, x: number, side: Side): BevelFace {
  const body = knife.body("unsharpened");
  const right = body.sectionAt(x);
  const half = side === "right" ? right : (body.section.left ?? right);
  const { height, rise } = bevelAt(knife, x, side);
  body.sectionAt(x);
  const sign = side === "right" ? 1 : -1;
  const from = { x: sign * half.pieceValue(0, 0), y: 0 };
  const to = { x: sign * half.pieceValue(0, height), y: height };
  const angle = Math.atan2(rise, height);
  if (!half.isArc(0)) return { profile: line(from, to), angle, sagitta: 0 };
  const radius = half.radiusOf(0);
  const chord = Math.hypot(to.x - from.x, height);
  const turn = 2 * Math.asin(Math.min(1, chord / (2 * radius)));
  const outward = half.sigma[0] === 1 ? 1 : -1;
  return {
    profile: arcBetween(from, to, sign * outward * turn),
    angle,
    sagitta: radius * (1 - Math.cos(turn / 2)),
  };
}

/**
 * How far the middle of an arc stands off its chord, mm.
 *
 * @param radius, chord - mm; the chord no longer than the diameter.
 *
 * @example
 * arcBulge(5, 8); // 2
 */
export const arcBulge = (radius: number, chord: number): number =>
  radius - Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));

/** A face's arc at the stations of one bevel gauge. */
type FaceRadius = RadiusGauge & Pick<FlatFace, "use">;

function faceArcs(bevels: readonly BevelGauge[]): FaceRadius[] {
  return bevels.flatMap(({ at, right, left }) =>
    (["right", "left"] as const).flatMap((side): FaceRadius[] => {
      const { profile } = side === "right" ? right : left;
      if (profile.kind !== "arc") return [];
      const outward = Math.sign(profile.sweep) === (side === "right" ? 1 : -1);
      return [
        {
          use: outward ? "convex" : "hollow",
          radius: profile.radius,
          chord: Math.hypot(profile.to.x - profile.from.x, profile.to.y - profile.from.y),
          at,
          faces: side,
        },
      ];
    }),
  );
}

/** Two radii that leave no more than a hundredth of a mm between them on the wider face are one gauge. */
function isSame(a: FaceRadius, b: FaceRadius): boolean {
  const chord = Math.max(a.chord, b.chord);
  return a.use === b.use && near(chord ** 2 / (8 * a.radius), chord ** 2 / (8 * b.radius));
}

const joined = (a: FaceRadius, b: FaceRadius): FaceRadius => ({
  ...a,
  chord: Math.max(a.chord, b.chord),
  at: [...new Set([...a.at, ...b.at])].sort((p, q) => p - q),
  faces: a.faces === b.faces ? a.faces : "both",
});

const joinedRadii = (all: readonly FaceRadius[]): FaceRadius[] => alike(all, isSame, joined);

/** Whether the hollow of a gauge can be seen and cut, by the shop's limit. */
const canBeCut =
  ({ limits }: Knife) =>
  ({ radius, chord }: FaceRadius): boolean =>
    arcBulge(radius, chord) >= limits.gaugeBulge.value;

/** Faces on which a straight edge lies over the same length: nearer than this they are one, mm. */
const SAME_CHORD = 0.5;

function joinedFlats(all: readonly FaceRadius[]): FlatFace[] {
  const same = (a: FaceRadius, b: FaceRadius): boolean =>
    isSame(a, b) && Math.abs(a.chord - b.chord) < SAME_CHORD;
  return alike(all, same, joined).map((face) => ({ ...face, light: arcBulge(face.radius, face.chord) }));
}

function edgeRadii({ spec }: Knife): RadiusGauge[] {
  const { easedSpine } = spec.blade;
  const { slabs, block } = spec.handle ?? {};
  const quarter = (use: RadiusUse, radius: number | undefined): RadiusGauge[] =>
    radius === undefined || !(radius > 0) ? [] : [{ use, radius, chord: radius, at: [], faces: "both" }];
  return [
    ...quarter("spine", easedSpine),
    ...quarter("handle", slabs?.edgeRadius),
    ...quarter("handle", block?.section === "rounded" ? block.cornerRadius : undefined),
  ];
}

function edgeGauges(knife: Knife): EdgeGauge[] {
  const { edgeAngle, microbevel } = knife.spec.blade;
  const planes = { right: sideAngle(edgeAngle, 1), left: sideAngle(edgeAngle, -1) };
  if (planes.right === "flat" && planes.left === "flat") return [];
  // A face without a plane goes down to the edge as it was ground.
  const angleOf = (side: Side, plane: number | "flat"): number =>
    plane === "flat" ? Math.max(0, bevelAt(knife, Math.max(0, bevelsBegin(knife)), side).angle) : plane;
  const edge: EdgeGauge = {
    use: "edge",
    right: angleOf("right", planes.right),
    left: angleOf("left", planes.left),
  };
  if (microbevel === undefined) return [edge];
  const steep = (plane: number | "flat", own: number): number => (plane === "flat" ? own : microbevel.angle);
  return [
    edge,
    { use: "microbevel", right: steep(planes.right, edge.right), left: steep(planes.left, edge.left) },
  ];
}
