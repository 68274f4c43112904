/**
 * A tolerance on one input: 95 % limits above and below, normal, independent of the others. The path is the input's place
 * in the knife's description; a path to a whole law (`blade.thickness`) moves all its stations together.
 */
export interface InputTolerance {
  readonly path: string;
  readonly plus: number;
  readonly minus: number;
}

/** Tolerances that hold where the file gives none; 95 % limits, mm and shares. */
export interface ToleranceDefaults {
  /** Full thickness left from the hammer. */
  readonly forgedThickness: number;
  /** Full thickness that is ground, and thickness of slabs. */
  readonly groundThickness: number;
  /** Thickness of the edge before sharpening. */
  readonly edgeThickness: number;
  /** Each side of the outline, and each side of a handle that is shaped by hand. */
  readonly outline: number;
  /** Density of steel, as a share. */
  readonly steelDensity: number;
  /** Density of handle materials, as a share, where their table row gives no band of its own. */
  readonly handleDensity: number;
  /** Moisture of a wood whose moisture is given, in shares of its dry mass: 0.02 is two percentage points. */
  readonly moisture: number;
  /** Mass of a part that is given by its mass, as a share. */
  readonly partMass: number;
}

/** Basis: common practice, no source. The shop file can change thicknesses, outline and density of steel. */
export const DEFAULT_TOLERANCES: ToleranceDefaults = {
  forgedThickness: 0.2,
  groundThickness: 0.1,
  edgeThickness: 0.05,
  outline: 0.5,
  steelDensity: 0.01,
  handleDensity: 0.1,
  moisture: 0.02,
  partMass: 0.05,
};
