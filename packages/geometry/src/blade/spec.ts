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
  /** Of a wood from the table: its moisture as a share of the oven-dry mass; left out: air-dry, 0.12. */
  readonly moisture?: number;
}

/** Where a station stands. `distance` is mm from the heel toward the tip (in a tang law: from the handle front toward the butt). */
export type StationPlace =
  | { readonly kind: "heel" }
  | { readonly kind: "tip" }
  | { readonly kind: "handle" }
  | { readonly kind: "butt" }
  | { readonly kind: "distance"; readonly mm: number }
  | { readonly kind: "fraction"; readonly share: number };

/** A value at a place along the blade or the tang. */
export interface StationSpec {
  readonly at: StationPlace;
  /** The value there, mm. */
  readonly is: number;
}

/** One value everywhere, or values at stations. */
export type LawSpec = number | readonly StationSpec[];
/** How a law runs between its stations: straight, or a monotone cubic that never overshoots. */
export type Between = "straight" | "smooth";

/** Name of a blade family: a table of default ratios over one set of landmarks. */
export type FamilyName =
  | "vegetable"
  | "cleaver"
  | "straight-back"
  | "drop-point"
  | "clip-point"
  | "spear-point"
  | "trailing-point"
  | "sheepsfoot"
  | "tanto"
  | "seax"
  | "chefs"
  | "petty"
  | "boning"
  | "slicer";

/** An outline by family and landmarks; what is left out comes from the family's table. */
export interface LandmarkOutlineSpec {
  readonly family: FamilyName;
  /** Distance along x from heel to tip, mm. */
  readonly edgeLength: number;
  /** Spine height above the heel, mm. */
  readonly heelHeight: number;
  /** Straight length of edge before the belly or the facet, mm. */
  readonly straightEdge?: number;
  /** Square front: height of the front itself. Pointed: y of the tip. */
  readonly tipHeight?: number;
  /** Pointed forms: x where the spine leaves its level toward the tip, mm. */
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

/**
 * A drawing from a vector editor: how its runs are told apart, and its scale. Either `runs`, or `corners` with or without
 * `path`. Points are in the drawing's own coordinates as an editor shows them: units of the viewBox, y down.
 */
export interface DrawingOutlineSpec {
  /** Text of the SVG file. */
  readonly drawing: string;
  /** Element id of each run, drawn in either direction. A run left out is the straight line that closes the gap. */
  readonly runs?: Readonly<
    Partial<Record<"edge" | "front" | "spine" | "tangTop" | "butt" | "tangBottom" | "heelFace", string>>
  >;
  /** Element id of one closed path that is cut at `corners`; left out, it is the drawing's only path. */
  readonly path?: string;
  readonly corners?: {
    readonly heel: Vec2;
    readonly tip: Vec2;
    /** Where a square front meets the spine; left out, the blade ends in a point. */
    readonly spineStart?: Vec2;
    readonly handleTop: Vec2;
    readonly buttTop: Vec2;
    readonly buttBottom: Vec2;
    readonly handleBottom: Vec2;
  };
  /** Two points of the drawing and their distance on the knife, mm; left out: the file's own units. */
  readonly scale?: { readonly from: Vec2; readonly to: Vec2; readonly is: number };
}

/** The three ways to give an outline: landmarks, explicit runs, a drawing. */
export type OutlineSpec = LandmarkOutlineSpec | RunsOutlineSpec | DrawingOutlineSpec;

/** One ground face, or both where they are the same. */
export interface FaceSpec {
  readonly form: "flat" | "convex" | "hollow";
  readonly height: "full" | LawSpec;
  /** Convex: greatest distance from the chord, mm, or a share of the thickness gained. Left out: level at the bevel line. */
  readonly crown?: { readonly mm: LawSpec } | { readonly share: LawSpec };
  /** Hollow: radius of the wheel, mm. */
  readonly wheelRadius?: number;
}

/** The ground faces: both alike, with what differs on one of them, and the edge between them. */
export interface BevelSpec extends FaceSpec {
  /** Full thickness at the edge before sharpening, mm. */
  readonly edgeThickness: LawSpec;
  /** What differs on one face. */
  readonly left?: Partial<FaceSpec>;
  readonly right?: Partial<FaceSpec>;
  /** Where the apex lies: −1 on the left face, 0 in the middle, 1 on the right face. */
  readonly apex?: number;
}

/** Sharpening angle per side, rad: both the same, or each its own; a side that is `flat` has no plane. */
export type EdgeAngleSpec = number | { readonly right: number | "flat"; readonly left: number | "flat" };

/** A hole straight through the steel: round, or a slot. mm. */
export interface HoleSpec {
  readonly kind: "pin" | "lightening" | "hanging" | "thong";
  readonly at: Vec2;
  /** Centre of the other end arc of a slot. */
  readonly to?: Vec2;
  /** Diameter, or width of a slot. */
  readonly diameter: number;
  /** The pin's own diameter where it differs from its hole's, mm. */
  readonly pin?: number;
}

/** Planes along the spine between two stations: `thickness` is left at the spine. */
export interface SwedgeSpec {
  readonly from: StationPlace;
  readonly to: StationPlace;
  /** Angle of each plane against the centre plane, rad. */
  readonly angle: number;
  readonly thickness: LawSpec;
}

/** A groove of circular section along a line, with round ends; `depth` is measured from the face it is cut into. */
export interface FullerSpec {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly radius: number;
  readonly depth: number;
  readonly faces?: "both" | "left" | "right";
}

/** The blade from handle front to tip. mm, rad. */
export interface BladeSpec {
  readonly outline: OutlineSpec;
  /** Unground length between heel and handle front, mm. */
  readonly ricasso?: number;
  readonly thickness: readonly StationSpec[];
  readonly between?: Between;
  readonly flankTaper?: LawSpec;
  readonly plunge?: { readonly at: number; readonly length: number };
  readonly bevel: BevelSpec;
  readonly edgeAngle: EdgeAngleSpec;
  readonly microbevel?: { readonly height: number; readonly angle: number };
  readonly swedge?: SwedgeSpec;
  readonly fullers?: readonly FullerSpec[];
  readonly holes?: readonly HoleSpec[];
  /** Half-round notch cut up into the ricasso right behind the heel, mm: part of the outline's heel face. */
  readonly choil?: { readonly radius: number };
  /** Radius of the quarter circle that eases both edges of the spine, from the handle front to the tip, mm. */
  readonly easedSpine?: number;
}

/** The tang behind the handle front. mm. */
export interface TangSpec {
  /** `full` as wide as the handle; `hidden` inside it; `through` hidden and right through to the butt. */
  readonly form: "full" | "hidden" | "through";
  /** Handle front to butt, mm. Needed with landmarks; with runs it is read off the outline. */
  readonly length?: number;
  /** At the handle front, half way and at the butt, mm: below a level top (full), about a level middle line (hidden). */
  readonly heights?: { readonly front: number; readonly middle: number; readonly butt: number };
  /** How far the tang's top lies below the spine's end at the handle front, mm. Left out: 0; hidden: in the middle. */
  readonly drop?: number;
  /** Fillet radius in the corners of the shoulders of a hidden tang, mm. */
  readonly shoulderRadius?: number;
  /** Straight taper from the handle front to this at the butt. */
  readonly buttThickness?: number;
  readonly thickness?: readonly StationSpec[];
  readonly between?: Between;
  readonly holes?: readonly HoleSpec[];
}

/** A pair of slabs on a full tang. */
export interface SlabsSpec {
  readonly material: MaterialSpec;
  /** Thickness across the flats, mm; by stations (handle, butt, distance behind the handle front, fraction): a contour. */
  readonly thickness: LawSpec;
  readonly between?: Between;
  readonly edgeRadius?: number;
}

/**
 * Handle of a hidden or through tang. Sizes across z (`width`) and y (`height`), mm. It begins at the handle front, or
 * behind a guard or bolster there; its stations count from its own front face back.
 */
export interface HandleBlockSpec {
  readonly material: MaterialSpec;
  readonly section: "oval" | "octagonal" | "rounded";
  readonly length: number;
  readonly height: LawSpec;
  readonly width: LawSpec;
  readonly between?: Between;
  /**
   * `rounded`: corner radius, mm. `octagonal`: leg of the 45° cuts, mm; left out, that of a regular octagon as wide as the
   * smaller size.
   */
  readonly cornerRadius?: number;
  /** y of the handle's middle line, mm; left out: the middle of the tang's height at the handle front. */
  readonly centre?: number;
}

/** A block on the tang: bolster pair on a full tang, guard or pommel on a hidden one. */
export interface BlockSpec {
  readonly material: MaterialSpec;
  /** x of its front face and its length back along x, mm. */
  readonly at: number;
  readonly length: number;
  /** Overall height and width, mm; the tang's own section is taken out. */
  readonly height: number;
  readonly width: number;
  /** y of its middle, mm; left out: the middle of the tang there. */
  readonly centre?: number;
  readonly section?: "box" | "oval";
}

/** Everything that is put on the tang. */
export interface HandleSpec {
  readonly slabs?: SlabsSpec;
  /** Sheets between tang and slabs. */
  readonly liners?: { readonly material: MaterialSpec; readonly thickness: number };
  readonly pins?: { readonly material: MaterialSpec };
  readonly block?: HandleBlockSpec;
  readonly bolsters?: readonly BlockSpec[];
  readonly guard?: BlockSpec;
  readonly pommel?: BlockSpec;
  /** Parts given simply by their mass (g) and place. */
  readonly parts?: readonly { readonly name: string; readonly mass: number; readonly at: Vec2 }[];
}

/** Whether a surface is ground or left from the hammer. */
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

/** Trips to the fire. */
export interface ForgingSpec {
  readonly heats: number;
  readonly weldingHeats: number;
}
