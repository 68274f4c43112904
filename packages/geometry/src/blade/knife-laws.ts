import { Law, type LawPoint } from "../numeric/law.js";
import type { Outline } from "./outline.js";
import type { Between, KnifeSpec, LawSpec, StationPlace, StationSpec } from "./spec.js";

/** The laws along the knife, in mm from the heel (tang: mm behind the handle front). */
export interface KnifeLaws {
  readonly spine: Law;
  readonly tang: Law | undefined;
  readonly flankTaper: Law;
  readonly bevelHeight: Law | "full";
  readonly edgeThickness: Law;
  readonly crown?: { readonly kind: "mm" | "share"; readonly law: Law };
}

export function knifeLaws(spec: KnifeSpec, outline: Outline): KnifeLaws {
  const blade = (law: LawSpec): Law => lawOf(law, "straight", (place) => bladeStation(place, outline));
  const { bevel } = spec.blade;
  const spine = lawOf(spec.blade.thickness, spec.blade.between ?? "straight", (place) =>
    bladeStation(place, outline),
  );
  const crown = bevel.form === "convex" ? bevel.crown : undefined;
  return {
    spine,
    tang: tangLaw(spec, outline, spine.valueAt(0)),
    flankTaper: blade(spec.blade.flankTaper ?? 0),
    bevelHeight: bevel.height === "full" ? "full" : blade(bevel.height),
    edgeThickness: blade(bevel.edgeThickness),
    ...(crown === undefined
      ? {}
      : {
          crown:
            "mm" in crown
              ? { kind: "mm" as const, law: blade(crown.mm) }
              : { kind: "share" as const, law: blade(crown.share) },
        }),
  };
}

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

/** x of a station of the blade, mm from the heel. */
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
