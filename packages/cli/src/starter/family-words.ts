import type { FamilyName } from "@scantling/geometry";

/** What a knife of each family is called; written out, so that help does not load the geometry. */
export const FAMILY_WORDS = {
  vegetable: "Vegetable knife",
  cleaver: "Tall cleaver",
  "straight-back": "Straight-back knife",
  "drop-point": "Drop-point hunter",
  "clip-point": "Clip-point bowie",
  "spear-point": "Spear-point knife",
  "trailing-point": "Trailing-point skinner",
  sheepsfoot: "Sheepsfoot knife",
  tanto: "Tanto",
  seax: "Seax",
  chefs: "Chef's knife",
  petty: "Petty",
  boning: "Boning knife",
  slicer: "Slicer",
} as const satisfies Readonly<Record<FamilyName, string>>;

/** All families, in the order in which they are listed. */
export const FAMILY_CHOICES = Object.keys(FAMILY_WORDS) as readonly FamilyName[];

/** The family of a starter of which nothing is said. */
export const USUAL_FAMILY: FamilyName = "drop-point";
