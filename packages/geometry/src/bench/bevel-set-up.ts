import { bevelAt } from "../blade/bevel-at.js";
import type { FaceForm } from "../blade/face-section.js";
import { insideEnds } from "../blade/inside-ends.js";
import type { Knife } from "../blade/knife.js";
import { bevelsBegin, facesOf, type Side } from "../blade/knife-faces.js";
import { reportStations } from "../blade/station-figures.js";
import type { BenchTools } from "../stock/bench-tools.js";
import {
  type Chord,
  type FaceArc,
  heightAtAngle,
  leverShim,
  ownedWheels,
  smallestRadius,
  type WheelFit,
} from "./face-arc.js";
import { greatestAlong, placesBetween } from "./largest-along.js";

/** One face of the ready-to-harden blade at a station; mm, rad from the centre plane. */
export interface BevelStation {
  /** mm ahead of the heel. */
  readonly x: number;
  /** Of the bevel line above the edge, square to the edge. */
  readonly height: number;
  /** Full thickness: between the flats, and of the edge that is left for hardening. */
  readonly thickness: number;
  readonly edge: number;
  /** Of the face's chord: what a jig is set to so that the bevel comes out as drawn. */
  readonly angle: number;
  /** What comes off at the edge: from the flat, and from what the hammer left. */
  readonly depth: number;
  readonly fromHammered: number;
  /**
   * How high the bevel comes out where the jig keeps the angle of the first station, were there spine enough; left out on
   * a face that does not rise there.
   */
  readonly heightAtFirstAngle?: number;
  /** Hollow and convex faces. */
  readonly arc?: FaceArc;
}

/** How one face is ground; both where they are alike. */
export interface BevelSetUp {
  readonly side: Side | "both";
  readonly form: FaceForm;
  readonly stations: readonly BevelStation[];
  /** Least along the blade of the heights at the first station's angle over the drawn ones: below 1 the bevel line droops. */
  readonly droop?: number;
  /** Shim under the jig's lever for the first station's angle, mm; left out where the lever is not known. */
  readonly leverShim?: number;
  /** Hollow: the smallest wheel that thins the blade nowhere above its edge (radius), and the owned wheels. */
  readonly smallestRadius?: number;
  readonly wheels?: readonly WheelFit[];
}

/**
 * How the bevels are ground, station by station, on the ready-to-harden blade: the same faces that are weighed.
 *
 * @returns one entry for faces that are alike; none where the bevels are left from the hammer.
 *
 * @example
 * const [face] = bevelSetUps(knife, {});
 * face?.stations[0]?.angle; // 0.0500, atan((3.4 − 0.6) / (2 · 28))
 */
export function bevelSetUps(knife: Knife, tools: BenchTools): BevelSetUp[] {
  if (knife.finish.bevels !== "ground") return [];
  return facesOf(knife).map((side) => faceSetUp(knife, side, tools));
}

function faceSetUp(knife: Knife, side: Side, { jigLever, wheels = [] }: BenchTools): BevelSetUp {
  const { form, wheelRadius } = knife.laws[side];
  const stations = bevelStationsOf(knife, side);
  const [first] = stations;
  const drawn = drawnAlong(knife, side);
  const kept = first === undefined ? undefined : droopAt(drawn, first.angle);
  const least = form === "hollow" ? greatestAlong(drawn.places, (x) => radiusAt(drawn, x))?.value : undefined;
  return {
    side: knife.laws.symmetric ? "both" : side,
    form,
    stations,
    ...(kept === undefined ? {} : { droop: kept }),
    ...(jigLever === undefined || first === undefined ? {} : { leverShim: leverShim(jigLever, first.angle) }),
    ...(least === undefined ? {} : { smallestRadius: least }),
    ...(form !== "hollow" || first === undefined || wheels.length === 0
      ? {}
      : { wheels: ownedWheels(wheels, wheelRadius, chordOf(first), least) }),
  };
}

const chordOf = ({ height, angle }: Pick<BevelStation, "height" | "angle">): Chord => ({
  height,
  rise: height * Math.tan(angle),
});

/** How finely a face is looked through for its worst place, mm. */
const STEP = 1;

/** The faces' chords along the blade, and where to look at them. */
interface DrawnBevel {
  readonly places: readonly number[];
  readonly highest: number;
  readonly chordAt: (x: number) => Chord;
}

/** Everywhere between the plunge and the tip, in small steps and where a law bends. */
function drawnAlong(knife: Knife, side: Side): DrawnBevel {
  const { edgeLength } = knife.outline;
  const ready = knife.body("ready");
  const places = placesBetween(bevelsBegin(knife), edgeLength, STEP, [
    ...reportStations(knife),
    ...ready.section.breaks,
  ]);
  const chordAt = (x: number): Chord => chordAlong(knife, side, insideEnds(knife, x));
  return { places, chordAt, highest: greatestAlong(places, (x) => chordAt(x).height)?.value ?? 0 };
}

/** Least share of its drawn height that a bevel keeps at one angle; undefined where it rises nowhere. */
function droopAt({ places, highest, chordAt }: DrawnBevel, angle: number): number | undefined {
  if (!(angle > 0)) return undefined;
  // Close to a point the bevel is ground by eye: only where it is at least half as high as at its highest.
  const lost = greatestAlong(places, (x) => {
    const { height, rise } = chordAt(x);
    return height < highest / 2 ? Number.NaN : -heightAtAngle(rise, angle) / height;
  });
  return lost === undefined ? undefined : -lost.value;
}

/** Smallest wheel for the place; none where the bevel is lower than four times what it rises by: there is no face to judge. */
function radiusAt({ chordAt }: DrawnBevel, x: number): number {
  const chord = chordAt(x);
  return chord.height > 4 * Math.abs(chord.rise) ? (smallestRadius([chord]) ?? Number.NaN) : Number.NaN;
}

function chordAlong(knife: Knife, side: Side, x: number): Chord {
  const { height } = bevelAt(knife, x, side);
  const ready = knife.body("ready");
  const right = ready.sectionAt(x);
  const face = side === "right" ? right : (ready.section.left ?? right);
  return { height, rise: face.pieceValue(0, height) - face.valueAt(0) };
}

function bevelStationsOf(knife: Knife, side: Side): BevelStation[] {
  const stations = reportStations(knife).map((x) => stationOf(knife, side, x));
  const first = stations[0]?.angle ?? 0;
  if (!(first > 0)) return stations;
  return stations.map((station) => ({
    ...station,
    heightAtFirstAngle: heightAtAngle(chordOf(station).rise, first),
  }));
}

function stationOf(knife: Knife, side: Side, x: number): Omit<BevelStation, "heightAtFirstAngle"> {
  const at = insideEnds(knife, x);
  const { height } = bevelAt(knife, at, side);
  const hammered = knife.body("hammered");
  const forged = hammered.sectionAt(at);
  const fromHammered = (side === "right" ? forged : (hammered.section.left ?? forged)).valueAt(0);
  const ready = knife.body("ready");
  const right = ready.sectionAt(at);
  const left = ready.section.left ?? right;
  const face = side === "right" ? right : left;
  const reach = face.valueAt(0);
  const rise = face.pieceValue(0, height) - reach;
  const thickness = ready.slab.thicknessAt(x);
  return {
    x,
    height,
    thickness,
    edge: right.valueAt(0) + left.valueAt(0),
    angle: Math.atan2(rise, height),
    depth: thickness / 2 - reach,
    fromHammered: fromHammered - reach,
    ...(face.isArc(0) && height > 0
      ? {
          arc: {
            radius: face.radiusOf(0),
            depth: sagittaOf(face.radiusOf(0), Math.hypot(height, rise)),
            atEdge: Math.atan(face.pieceSlope(0, 0)),
            atLine: Math.atan(face.pieceSlope(0, height)),
          },
        }
      : {}),
  };
}

/** Depth of an arc over its chord, mm, in the form that keeps its digits on a huge wheel. */
function sagittaOf(radius: number, chord: number): number {
  const half = chord / 2;
  return (half * half) / (radius + Math.sqrt(Math.max(0, radius * radius - half * half)));
}
