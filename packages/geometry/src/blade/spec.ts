import type { Vec2 } from "../plane/vec2.js";

/**
 * A knife as the smith describes it, in mm, g, rad. It has the same shape and the same names as the knife file, so
 * that a path such as `blade.thickness[1].is` means the same in both; the file layer has turned units into mm and
 * radians and dropped what was not given.
 */
export interface KnifeSpec {
  readonly steel: MaterialSpec;
  readonly blade: BladeSpec;
  readonly tang: TangSpec;
  readonly handle?: HandleSpec;
  readonly finish?: Partial<FinishSpec>;
  readonly allowances?: Partial<AllowanceSpec>;
  readonly forging?: Partial<ForgingSpec>;
}

/** A name from the materials table, or one with a density of its own (g/mm³: 7.85 g/cm³ is 0.00785). */
export interface MaterialSpec {
  readonly name: string;
  readonly density?: number;
}

/** Where a station stands. `distance` is mm from the heel toward the tip (in a tang law: from the handle front toward the butt). */
export type StationPlace =
  | { readonly kind: "heel" }
  | { readonly kind: "tip" }
  | { readonly kind: "handle" }
  | { readonly kind: "butt" }
  | { readonly kind: "distance"; readonly mm: number }
  | { readonly kind: "fraction"; readonly share: number };

export interface StationSpec {
  readonly at: StationPlace;
  /** The value there, mm. */
  readonly is: number;
}

/** One value everywhere, or values at stations. */
export type LawSpec = number | readonly StationSpec[];
export type Between = "straight" | "smooth";

export type FamilyName = "vegetable" | "straight-back" | "drop-point";

export interface LandmarkOutlineSpec {
  readonly family: FamilyName;
  /** Distance along x from heel to tip, mm. */
  readonly edgeLength: number;
  /** Spine height above the heel, mm. */
  readonly heelHeight: number;
  /** Straight length of edge before the belly, mm. */
  readonly straightEdge?: number;
  /** Square front: height of the front itself. Pointed: y of the tip. */
  readonly tipHeight?: number;
  /** Pointed forms: x where the spine begins to fall toward the tip, mm. */
  readonly spineBreak?: number;
}

/** Each run as SVG path data, mm, y up. A run left out is the straight line that closes the gap. */
export interface RunsOutlineSpec {
  readonly runs: {
    readonly edge: string;
    readonly front?: string;
    readonly spine?: string;
    readonly tangTop?: string;
    readonly butt?: string;
    readonly tangBottom?: string;
    readonly heelFace?: string;
  };
}

export type OutlineSpec = LandmarkOutlineSpec | RunsOutlineSpec;

export interface BevelSpec {
  readonly form: "flat" | "convex";
  readonly height: "full" | LawSpec;
  /** Full thickness at the edge before sharpening, mm. */
  readonly edgeThickness: LawSpec;
  /** Convex: greatest distance from the chord, mm, or a share of the thickness gained. Left out: level at the bevel line. */
  readonly crown?: { readonly mm: LawSpec } | { readonly share: LawSpec };
}

export interface HoleSpec {
  readonly kind: "pin" | "lightening" | "hanging" | "thong";
  readonly at: Vec2;
  readonly diameter: number;
  /** The pin's own diameter where it differs from its hole's, mm. */
  readonly pin?: number;
}

export interface BladeSpec {
  readonly outline: OutlineSpec;
  /** Unground length between heel and handle front, mm. */
  readonly ricasso?: number;
  readonly thickness: readonly StationSpec[];
  readonly between?: Between;
  readonly flankTaper?: LawSpec;
  readonly plunge?: { readonly at: number; readonly length: number };
  readonly bevel: BevelSpec;
  /** Sharpening angle per side, rad. */
  readonly edgeAngle: number;
  readonly holes?: readonly HoleSpec[];
}

export interface TangSpec {
  readonly form: "full";
  /** Handle front to butt, mm. Needed with landmarks; with runs it is read off the outline. */
  readonly length?: number;
  readonly heights?: { readonly front: number; readonly middle: number; readonly butt: number };
  /** How far the tang's top lies below the spine's end, mm. */
  readonly drop?: number;
  /** Straight taper from the handle front to this at the butt. */
  readonly buttThickness?: number;
  readonly thickness?: readonly StationSpec[];
  readonly between?: Between;
  readonly holes?: readonly HoleSpec[];
}

export interface HandleSpec {
  readonly slabs?: {
    readonly material: MaterialSpec;
    readonly thickness: number;
    readonly edgeRadius?: number;
  };
  readonly pins?: { readonly material: MaterialSpec };
  /** Parts given simply by their mass (g) and place. */
  readonly parts?: readonly { readonly name: string; readonly mass: number; readonly at: Vec2 }[];
}

export interface FinishSpec {
  readonly flats: "forged" | "ground";
  readonly bevels: "forged" | "ground";
}

/** What is still on the steel at earlier stages, mm. */
export interface AllowanceSpec {
  readonly face: number;
  readonly outline: number;
  readonly tip: number;
  readonly butt: number;
  readonly forgedEdge: number;
  readonly forgedBevel: "line" | "full" | "none";
  readonly afterHardening: number;
  readonly minEdge: number;
  readonly tang: "tapered" | "parallel";
}

export interface ForgingSpec {
  readonly heats: number;
  readonly weldingHeats: number;
}
