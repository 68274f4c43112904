/** A drill in hand; its shank serves as a scribing gauge too. */
export interface Drill {
  /** As it is called: `#30`, `F`, `1/8 in`, `4.1 mm`. */
  readonly name: string;
  /** mm. */
  readonly diameter: number;
}

/** A piece for a handle on the shelf, mm. */
export interface HandlePiece {
  readonly material: string;
  readonly length: number;
  readonly height: number;
  readonly thickness: number;
  /** How many alike; left out: one. A pair of slabs takes two, or one thick enough to be parted. */
  readonly count?: number;
}

/** Tools of the bench that the shop owns; whatever is left out is not known. */
export interface BenchTools {
  readonly drills?: readonly Drill[];
  /** Diameters of the wheels that hollow faces are ground on, mm. */
  readonly wheels?: readonly number[];
  /** Angle wedges, rad, every one in hand listed: two of an angle are listed twice. */
  readonly wedges?: readonly number[];
  /** From the edge to where a shim lifts the bevel jig, mm. */
  readonly jigLever?: number;
  /** Pieces for handles on the shelf. */
  readonly handleStock?: readonly HandlePiece[];
}
