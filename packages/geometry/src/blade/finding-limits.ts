const PRACTICE = "common practice, no source";

/** Where a value becomes unwise; one table. Lengths in mm, angles in rad, distances of pin and thong holes in their diameters. */
export const FINDING_LIMITS = {
  holeEdgeStop: {
    value: 1.5,
    basis: "common practice, after the riveting rule of 1.5 diameters (Indian Boiler Regulations, reg. 184)",
  },
  holeEdgeGood: { value: 2, basis: "common practice, after the aircraft rule of 2 diameters" },
  holeWall: { value: 3, basis: PRACTICE },
  tangAtPin: { value: 1.6, basis: PRACTICE },
  /** What a tang may stand out behind its handle to be peened over. */
  peening: { value: 3, basis: PRACTICE },
  /** Share of the oven-dry mass. */
  greenMoisture: {
    value: 0.3,
    basis: "fibre saturation about 30 % (Wood Handbook, FPL-GTR-190, chapter 4; from memory, unconfirmed)",
  },
  /** Share of the blade's height. */
  swedgeDepth: { value: 0.5, basis: PRACTICE },
  bevelAngle: { value: (5 * Math.PI) / 180, basis: PRACTICE },
  thickSpine: { value: 10, basis: PRACTICE },
  thickSlab: { value: 25, basis: PRACTICE },
} as const;
