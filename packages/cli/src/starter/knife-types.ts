import type { FamilyName, TangSpec } from "@scantling/geometry";

/** From the least to the most that is usual. */
export type Range = readonly [least: number, most: number];

/**
 * What is usual for a type of knife. Lengths in mm, masses in g, angles per side in degrees; edges before they are sharpened;
 * balance ahead of the heel, behind it negative. Basis of every figure: common practice, no source, except that chef's
 * knives up to 3.5 mm at the spine and 0.45 mm at the edge, slicers down to 0.35 mm at the edge, and tall cleavers of 180 to 220
 * mm by about 100 mm and 300 to 900 g are as sellers' pages have them.
 */
export interface KnifeType {
  readonly edgeLength: Range;
  readonly heelHeight: Range;
  readonly spine: Range;
  readonly edge: Range;
  readonly angle: Range;
  readonly mass: Range;
  readonly balance: Range;
}

const HUNTER: KnifeType = {
  edgeLength: [75, 120],
  heelHeight: [22, 32],
  spine: [2.8, 4.5],
  edge: [0.3, 0.6],
  angle: [16, 22],
  mass: [100, 220],
  balance: [-30, 0],
};

/** How a starter of a family begins: of which type it is, and its sizes in mm, chosen inside the type's. */
export interface FamilyStarter {
  readonly type: KnifeType;
  readonly edgeLength: number;
  readonly heelHeight: number;
  readonly spine: number;
  readonly edge: number;
  readonly angle: number;
  readonly ricasso: number;
  readonly tangLength: number;
  /** Of one slab. */
  readonly slab: number;
  readonly pin: number;
  readonly tang: TangSpec["form"];
}

const KITCHEN = { ricasso: 8, tangLength: 120, slab: 7.5, pin: 4, tang: "full" } as const;
const BELT = { ricasso: 8, tangLength: 105, slab: 7.5, pin: 4, tang: "full" } as const;
const LARGE = { ricasso: 12, tangLength: 125, slab: 9.5, pin: 6, tang: "full" } as const;

/** Every family with the type that it is most often made as; those that the trade has no other ranges for are hunters. */
export const FAMILY_STARTERS: Readonly<Record<FamilyName, FamilyStarter>> = {
  vegetable: {
    type: {
      edgeLength: [150, 190],
      heelHeight: [48, 58],
      spine: [1.8, 3.5],
      edge: [0.15, 0.35],
      angle: [10, 15],
      mass: [130, 220],
      balance: [15, 45],
    },
    ...KITCHEN,
    edgeLength: 175,
    heelHeight: 52,
    spine: 2.8,
    edge: 0.25,
    angle: 13,
    tang: "hidden",
  },
  cleaver: {
    type: {
      edgeLength: [180, 220],
      heelHeight: [90, 110],
      spine: [2, 4],
      edge: [0.2, 0.4],
      angle: [12, 17],
      mass: [300, 900],
      balance: [25, 60],
    },
    ...KITCHEN,
    edgeLength: 200,
    heelHeight: 100,
    spine: 3.2,
    edge: 0.3,
    angle: 15,
    pin: 5,
  },
  "straight-back": { type: HUNTER, ...BELT, ...belt(115, 27, 3.6) },
  "drop-point": { type: HUNTER, ...BELT, ...belt(100, 28, 3.6) },
  "clip-point": {
    type: {
      edgeLength: [180, 280],
      heelHeight: [36, 52],
      spine: [5, 9],
      edge: [0.5, 0.9],
      angle: [18, 24],
      mass: [350, 700],
      balance: [10, 60],
    },
    ...LARGE,
    edgeLength: 230,
    heelHeight: 44,
    spine: 6.4,
    edge: 0.6,
    angle: 20,
  },
  "spear-point": { type: HUNTER, ...BELT, ...belt(110, 28, 3.6) },
  "trailing-point": { type: HUNTER, ...BELT, ...belt(105, 28, 3.6) },
  sheepsfoot: { type: HUNTER, ...BELT, ...belt(92, 28, 3.6) },
  tanto: { type: HUNTER, ...BELT, ...belt(115, 28, 4) },
  seax: {
    type: {
      edgeLength: [150, 400],
      heelHeight: [25, 50],
      spine: [4, 8],
      edge: [0.5, 1],
      angle: [18, 24],
      mass: [150, 700],
      balance: [20, 90],
    },
    ...LARGE,
    edgeLength: 220,
    heelHeight: 36,
    spine: 5,
    edge: 0.6,
    angle: 20,
    pin: 5,
    tang: "hidden",
  },
  chefs: {
    type: {
      edgeLength: [180, 270],
      heelHeight: [44, 56],
      spine: [2, 3.5],
      edge: [0.15, 0.45],
      angle: [10, 17],
      mass: [140, 280],
      balance: [0, 30],
    },
    ...KITCHEN,
    edgeLength: 215,
    heelHeight: 50,
    spine: 2.8,
    edge: 0.3,
    angle: 14,
  },
  petty: {
    type: {
      edgeLength: [110, 160],
      heelHeight: [24, 34],
      spine: [1.6, 2.6],
      edge: [0.15, 0.3],
      angle: [10, 16],
      mass: [50, 110],
      balance: [-20, 10],
    },
    ...KITCHEN,
    edgeLength: 140,
    heelHeight: 28,
    spine: 2.1,
    edge: 0.25,
    angle: 13,
    ricasso: 5,
    tangLength: 100,
    slab: 7,
  },
  boning: {
    type: {
      edgeLength: [120, 170],
      heelHeight: [16, 26],
      spine: [2, 3.2],
      edge: [0.2, 0.4],
      angle: [14, 20],
      mass: [80, 160],
      balance: [-40, -10],
    },
    ...KITCHEN,
    edgeLength: 150,
    heelHeight: 24,
    spine: 2.6,
    edge: 0.3,
    angle: 17,
  },
  slicer: {
    type: {
      edgeLength: [240, 320],
      heelHeight: [30, 42],
      spine: [1.5, 2.8],
      edge: [0.15, 0.35],
      angle: [10, 15],
      mass: [110, 220],
      balance: [0, 40],
    },
    ...KITCHEN,
    edgeLength: 275,
    heelHeight: 36,
    spine: 2.4,
    edge: 0.3,
    angle: 13,
  },
};

/** Sizes of a knife for the belt. */
function belt(edgeLength: number, heelHeight: number, spine: number) {
  return { edgeLength, heelHeight, spine, edge: 0.4, angle: 18 };
}
