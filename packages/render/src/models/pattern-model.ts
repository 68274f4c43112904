import type { Path, PatternFitting, PatternFuller, PatternSwedge, Segment, Vec2 } from "@scantling/geometry";
import type { SheetUnits } from "../sheet-units.js";

/** A station marked on the pattern: where it stands and how thick the spine is there. */
export interface PatternStation {
  /** mm from the heel. */
  readonly x: number;
  /** y of the outline above and below the station, mm. */
  readonly top: number;
  readonly bottom: number;
  /** Full thickness at the spine, as if no swedge were ground, mm. */
  readonly thickness: number;
  /** What a swedge leaves at the spine, mm, where there is one. */
  readonly atSwedge?: number;
}

/** A round hole, or a slot from `centre` to `slot.to`; mm. */
export interface PatternHole {
  readonly centre: Vec2;
  /** Width of a slot. */
  readonly diameter: number;
  readonly kind: string;
  readonly slot?: { readonly to: Vec2; readonly rim: Path };
}

/** A height measured upright at x, with its two ends; mm. */
export interface PatternHeight {
  readonly x: number;
  readonly low: number;
  readonly high: number;
}

/** A further outline of the same piece, in the frame of the one that it is drawn with; mm. */
export interface PatternOutline {
  /** Its size state, or states where several have the same outline: "ready to harden, finished". */
  readonly state: string;
  readonly outline: Path;
  /** What is drilled through it; shown without letters. */
  readonly holes?: readonly PatternHole[];
}

/** A line to saw or to scribe along, beside the true outline. */
export interface PatternCutLine {
  /** Distance from the outline, mm: positive outside, negative inside. */
  readonly offset: number;
  readonly paths: readonly Path[];
}

/** Everything that a pattern sheet shows of the knife: the measured curves themselves, in mm, y up, heel at the origin. */
export interface PatternModel {
  readonly code: string;
  readonly title: string;
  readonly steel: string;
  /** Whether the masses rest on a density that nobody has looked up: of the steel, of any part of the knife. */
  readonly densityFromMemory?: { readonly steel: boolean; readonly knife: boolean };
  /** Which size state this outline is of: "finished", "ready to harden", "as forged". */
  readonly state: string;
  readonly outline: Path;
  /** The finished outline inside it; left out where it is the outline itself. */
  readonly finishedOutline?: Path;
  /**
   * Further outlines nested in it, from the outermost in. Where given, even empty, each line is labelled with its state,
   * and the drawing's origin is the finished heel.
   */
  readonly further?: readonly PatternOutline[];
  /** Where the finished blade's heel lies in this frame; left out: at the origin. */
  readonly finishedHeel?: Vec2;
  /** Left out where the outline itself is what is cut. */
  readonly cutLine?: PatternCutLine;
  /**
   * `true`: seen from the other side, the left face with the tip to the left. `false`: the right face, said in words.
   * Left out: the right face. Everything else in the model is given as for the right face, but for the bevel line, which is
   * that of the face that is seen.
   */
  readonly mirror?: boolean;
  /** The bevel line as connected pieces (exact or dense polyline as segments). */
  readonly bevelLine: readonly (readonly Segment[])[];
  readonly swedge?: PatternSwedge;
  readonly fullers?: readonly PatternFuller[];
  readonly fittings?: readonly PatternFitting[];
  readonly holes: readonly PatternHole[];
  readonly stations: readonly PatternStation[];
  /** x of the handle front, mm. */
  readonly handleFront: number;
  readonly edgeLength: number;
  readonly heelHeight: number;
  /** Of the blade with its tang, as drawn; a handle or a pommel may reach farther. */
  readonly overallLength: number;
  /** Steel of the tang at the handle front, half way and at the butt. */
  readonly tangHeights?: {
    readonly front: PatternHeight;
    readonly middle: PatternHeight;
    readonly butt: PatternHeight;
  };
  /** The upright front, where the blade ends in one. */
  readonly frontHeight?: PatternHeight;
  /** The tip above the level of the heel, where the blade ends in one. */
  readonly tipHeight?: PatternHeight;
  /** The highest place of the spine above the level of the heel, where it is higher than at the heel. */
  readonly greatestHeight?: PatternHeight;
  /** The bevel at its rear end, from the edge to the bevel line; left out where it reaches the spine. */
  readonly bevelHeight?: PatternHeight;
  /** Distance along x from the heel to where the edge begins to lift, mm; left out where it does not. */
  readonly straightEdge?: number;
  /** Mass of the steel as drawn, g; left out: that of the finished steel. */
  readonly stateMass?: number;
  /** Finished steel mass and whole knife mass, g. */
  readonly steelMass: number;
  readonly knifeMass: number;
  /** How many mm of the knife are one of this model, where it is drawn smaller; left out: 1. Figures tell the knife's. */
  readonly drawnAt?: number;
  readonly units: SheetUnits;
  /** Date or revision text given by the caller; the drawing itself has no clock. */
  readonly revision?: string;
}
