const PRACTICE = "common practice, no source";

/** Where a value becomes unwise; one table. Lengths in mm, angles in rad, distances of holes in hole diameters. */
export const FINDING_LIMITS = {
  holeEdgeStop: {
    value: 1.5,
    basis: "boiler rule: centre to edge 1.5 d (Indian Boiler Regulations, reg. 184)",
  },
  holeEdgeGood: { value: 2, basis: "aircraft rule: centre to edge 2 d" },
  holeWall: { value: 3, basis: PRACTICE },
  tangAtPin: { value: 1.6, basis: PRACTICE },
  bevelAngle: { value: (5 * Math.PI) / 180, basis: PRACTICE },
} as const;
