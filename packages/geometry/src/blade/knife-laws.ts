import { Law, type LawPoint } from "../numeric/law.js";
import type { FaceForm } from "./face-section.js";
import type { Outline } from "./outline.js";
import type { Between, FaceSpec, KnifeSpec, LawSpec, StationPlace, StationSpec } from "./spec.js";

/** One ground face. */
export interface FaceLaws {
  readonly form: FaceForm;
  readonly bevelHeight: Law | "full";
  readonly crown?: { readonly kind: "mm" | "share"; readonly law: Law };
  /** Hollow: radius of the wheel, mm. */
  readonly wheelRadius?: number;
}

/** The laws along the knife, in mm from the heel (tang: mm behind the handle front). */
export interface KnifeLaws {
  readonly spine: Law;
  readonly tang: Law | undefined;
  readonly flankTaper: Law;
  readonly edgeThickness: Law;
  readonly right: FaceLaws;
  readonly left: FaceLaws;
  /** Both faces are ground and sharpened alike, and the apex lies in the middle. */
  readonly symmetric: boolean;
}

export function knifeLaws(spec: KnifeSpec, outline: Outline): KnifeLaws {
  const { bevel, edgeAngle } = spec.blade;
  const spine = lawOf(spec.blade.thickness, spec.blade.between ?? "straight", (place) =>
    bladeStation(place, outline),
  );
  const sameAngles = typeof edgeAngle === "number" || edgeAngle.left === edgeAngle.right;
  return {
    spine,
    tang: tangLaw(spec, outline, spine.valueAt(0)),
    flankTaper: bladeLaw(spec.blade.flankTaper ?? 0, outline),
    edgeThickness: bladeLaw(bevel.edgeThickness, outline),
    right: faceLaws({ ...bevel, ...bevel.right }, outline),
    left: faceLaws({ ...bevel, ...bevel.left }, outline),
    symmetric: (bevel.apex ?? 0) === 0 && sameAngles && bevel.left === undefined && bevel.right === undefined,
  };
}

function faceLaws(face: FaceSpec, outline: Outline): FaceLaws {
  const { form, height, crown, wheelRadius } = face;
  return {
    form,
    bevelHeight: height === "full" ? "full" : bladeLaw(height, outline),
    ...(form !== "convex" || crown === undefined
      ? {}
      : {
          crown:
            "mm" in crown
              ? { kind: "mm" as const, law: bladeLaw(crown.mm, outline) }
              : { kind: "share" as const, law: bladeLaw(crown.share, outline) },
        }),
    ...(form !== "hollow" || wheelRadius === undefined ? {} : { wheelRadius }),
  };
}

/** A law of the blade, over mm from the heel; straight between its stations. */
export const bladeLaw = (law: LawSpec, outline: Outline): Law =>
  lawOf(law, "straight", (place) => bladeStation(place, outline));

function tangLaw(spec: KnifeSpec, outline: Outline, front: number): Law | undefined {
  const length = outline.handleFront - outline.butt;
  const { tang } = spec;
  if (tang.thickness !== undefined) {
    return lawOf(tang.thickness, tang.between ?? "straight", (place) => tangStation(place, length));
  }
  if (tang.buttThickness === undefined) return undefined;
  return Law.straight([
    { at: 0, is: front },
    { at: length, is: tang.buttThickness },
  ]);
}

function lawOf(law: LawSpec, between: Between, where: (place: StationPlace) => number): Law {
  if (typeof law === "number") return Law.constant(law);
  const points: LawPoint[] = law.map((station: StationSpec) => ({ at: where(station.at), is: station.is }));
  return between === "smooth" ? Law.smooth(points) : Law.straight(points);
}

/**
 * x of a station of the blade, mm from the heel.
 *
 * @example
 * bladeStation({ kind: "fraction", share: 0.5 }, outline); // 50
 */
export function bladeStation(place: StationPlace, outline: Outline): number {
  switch (place.kind) {
    case "heel":
      return 0;
    case "tip":
      return outline.edgeLength;
    case "handle":
      return outline.handleFront;
    case "butt":
      return outline.butt;
    case "distance":
      return place.mm;
    case "fraction":
      return place.share * outline.edgeLength;
  }
}

/** A station of the tang, mm behind the handle front. */
export function tangStation(place: StationPlace, length: number): number {
  switch (place.kind) {
    case "handle":
    case "heel":
      return 0;
    case "butt":
    case "tip":
      return length;
    case "distance":
      return place.mm;
    case "fraction":
      return place.share * length;
  }
}
