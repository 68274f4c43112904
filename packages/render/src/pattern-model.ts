import type { Path, Segment, Vec2 } from "@scantling/geometry";

/** A station marked on the pattern: where it stands and how thick the spine is there. */
export interface PatternStation {
  /** mm from the heel. */
  readonly x: number;
  /** y of the outline above and below the station, mm. */
  readonly top: number;
  readonly bottom: number;
  /** Full thickness at the spine, mm. */
  readonly thickness: number;
}

export interface PatternHole {
  readonly centre: Vec2;
  readonly diameter: number;
  readonly kind: string;
}

/** Everything that a pattern sheet shows of the knife: the measured curves themselves, in mm, y up, heel at the origin. */
export interface PatternModel {
  readonly code: string;
  readonly title: string;
  readonly steel: string;
  /** Which size state this outline is of: "finished", "ready to harden", "as forged". */
  readonly state: string;
  readonly outline: Path;
  /** The bevel line as connected pieces (exact or dense polyline as segments). */
  readonly bevelLine: readonly (readonly Segment[])[];
  readonly holes: readonly PatternHole[];
  readonly stations: readonly PatternStation[];
  /** x of the handle front, mm. */
  readonly handleFront: number;
  readonly edgeLength: number;
  readonly heelHeight: number;
  readonly overallLength: number;
  /** Finished steel mass and whole knife mass, g. */
  readonly steelMass: number;
  readonly knifeMass: number;
  readonly units: "mm" | "in";
  /** Date or revision text given by the caller; the drawing itself has no clock. */
  readonly revision?: string;
}
