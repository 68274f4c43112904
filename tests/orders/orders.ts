// The six orders as they were written down: sizes at stations, and what was worked out for them by hand before the program
// could read them. Invented; mm, g, degrees. x from the heel toward the tip, on the tang from its front toward the butt.

export type Table = readonly (readonly [x: number, value: number])[];

export interface HandValues {
  /** cm³ and g. */
  readonly bladeVolume: number;
  readonly bladeMass: number;
  readonly tangMass: number;
  readonly totalMass: number;
  /** mm ahead of the heel. */
  readonly balance: number;
  /** Bevel angle per side at the heel, degrees. */
  readonly bevelAngle: number;
  /** Edge bevel at the heel: height square to the edge, and width on the face, mm. */
  readonly edgeBevel: readonly [height: number, width: number];
  /** Forged blade, cm³. */
  readonly forgedVolume: number;
}

/** What the hammer leaves on, mm; the ends are drawn on by 3 mm. */
export interface Forging {
  /** Along edge and spine. */
  readonly outline: number;
  /** Per side in all, and how much of it is still on after hardening. */
  readonly face: number;
  readonly afterHardening: number;
  /** Thickness of the forged edge. */
  readonly edge: number;
  /** Height of the forged bevel; left out: to the spine. */
  readonly bevel?: number;
  /** Of a tang: left out, it is forged to its taper. */
  readonly tang?: "parallel";
  /** The flats keep the forge finish. */
  readonly keptFlats?: true;
}

/** A table from x, value, x, value, … */
const stations = (...numbers: readonly number[]): Table =>
  numbers.flatMap((value, i) => (i % 2 === 0 ? [] : [[numbers[i - 1] ?? Number.NaN, value] as const]));

const FORGED: Forging = { outline: 1.5, face: 0.5, afterHardening: 0.1, edge: 1.6 };

export interface Order {
  /** Folder and file of examples/. */
  readonly name: string;
  readonly code: string;
  readonly edgeLength: number;
  readonly height: Table;
  readonly thickness: Table;
  /** Left out: the bevel runs to the spine. */
  readonly bevel?: Table;
  readonly edge: Table;
  /** Crown of a convex face as a share of the thickness gained. */
  readonly crown?: number;
  /** Degrees per side. */
  readonly edgeAngle: number;
  readonly tang: {
    readonly length: number;
    readonly height: Table;
    readonly thickness: Table;
    readonly holes: Table;
  };
  readonly forging: Forging;
  /** Fittings: mass and x. */
  readonly parts: readonly (readonly [mass: number, x: number])[];
  readonly hand: HandValues;
}

export const ORDERS: readonly Order[] = [
  {
    name: "long-slicer",
    code: "SL-2602",
    edgeLength: 292.1,
    height: stations(0, 38.1, 200, 35, 260, 24, 280, 13, 292.1, 2),
    thickness: stations(0, 2.6, 150, 2.0, 282, 1.1, 292.1, 0.6),
    edge: stations(0, 0.2),
    crown: 0.08,
    edgeAngle: 12,
    tang: {
      length: 110,
      height: stations(0, 14, 20, 12, 110, 7),
      thickness: stations(0, 2.6, 110, 2.0),
      holes: [],
    },
    forging: FORGED,
    parts: [[47, -73]],
    hand: {
      bladeVolume: 12.4,
      bladeMass: 97,
      tangMass: 20,
      totalMass: 164,
      balance: 42,
      bevelAngle: 1.8,
      edgeBevel: [0.55, 0.56],
      forgedVolume: 28.9,
    },
  },
  {
    name: "camp-knife",
    code: "CK-2603",
    edgeLength: 241.3,
    height: stations(0, 41.3, 140, 47.6, 200, 38, 230, 18, 241.3, 3),
    thickness: stations(0, 6.35, 120, 5.0, 231, 2.4, 241.3, 1.2),
    bevel: stations(0, 38, 140, 40, 200, 34, 230, 16, 241.3, 3),
    edge: stations(0, 0.76, 241.3, 0.6),
    edgeAngle: 20,
    tang: {
      length: 127,
      height: stations(0, 30, 60, 26, 110, 30, 127, 28),
      thickness: stations(0, 6.35, 127, 3.2),
      holes: stations(20, 6.5, 62, 6.5, 118, 6.5),
    },
    forging: { ...FORGED, tang: "parallel" },
    parts: [
      [90, -62],
      [14, -41],
    ],
    hand: {
      bladeVolume: 29.3,
      bladeMass: 230,
      tangMass: 130,
      totalMass: 464,
      balance: 20,
      bevelAngle: 4.21,
      edgeBevel: [1.31, 1.39],
      forgedVolume: 68.5,
    },
  },
  {
    name: "three-layer-petty",
    code: "PT-2605",
    edgeLength: 150,
    height: stations(0, 30, 100, 24, 130, 14, 150, 2),
    thickness: stations(0, 2.4, 75, 1.9, 140, 1.0, 150, 0.6),
    edge: stations(0, 0.25, 150, 0.2),
    edgeAngle: 14,
    tang: {
      length: 95,
      height: stations(0, 12, 95, 6),
      thickness: stations(0, 2.4, 95, 2.0),
      holes: [],
    },
    forging: FORGED,
    parts: [[28, -62]],
    hand: {
      bladeVolume: 3.6,
      bladeMass: 29,
      tangMass: 15,
      totalMass: 71,
      balance: -10,
      bevelAngle: 2.05,
      edgeBevel: [0.59, 0.6],
      forgedVolume: 12.5,
    },
  },
  {
    name: "pattern-welded-bowie",
    code: "BW-2606",
    edgeLength: 254,
    height: stations(0, 38, 100, 50.8, 152, 50.8, 200, 36, 235, 18, 254, 2),
    thickness: stations(0, 8.0, 120, 6.0, 200, 4.2, 244, 2.4, 254, 1.2),
    bevel: stations(0, 32, 100, 40, 152, 40, 200, 30, 235, 15, 254, 2),
    edge: stations(0, 0.7, 254, 0.5),
    edgeAngle: 20,
    tang: {
      length: 115,
      height: stations(0, 19, 115, 9.5),
      thickness: stations(0, 7.0, 115, 4.5),
      holes: [],
    },
    forging: FORGED,
    parts: [
      [42, -4],
      [86, -68],
    ],
    hand: {
      bladeVolume: 38.8,
      bladeMass: 305,
      tangMass: 76,
      totalMass: 509,
      balance: 42,
      bevelAngle: 6.51,
      edgeBevel: [1.4, 1.49],
      forgedVolume: 60.8,
    },
  },
  {
    name: "boning-knife",
    code: "BN-2608",
    edgeLength: 152.4,
    height: stations(0, 22.2, 40, 17, 110, 13, 140, 8, 152.4, 2),
    thickness: stations(0, 2.8, 76, 2.0, 143, 1.3, 152.4, 0.8),
    edge: stations(0, 0.3, 152.4, 0.25),
    crown: 0.06,
    edgeAngle: 17,
    tang: {
      length: 114.3,
      height: stations(0, 17.5, 60, 16, 114.3, 19),
      thickness: stations(0, 2.8, 114.3, 2.0),
      holes: stations(18, 3.96875, 57, 3.96875, 96, 3.96875),
    },
    forging: { ...FORGED, tang: "parallel" },
    parts: [
      [43, -57],
      [6, -57],
    ],
    hand: {
      bladeVolume: 3.0,
      bladeMass: 23,
      tangMass: 36,
      totalMass: 109,
      balance: -32,
      bevelAngle: 3.22,
      edgeBevel: [0.6, 0.63],
      forgedVolume: 15.3,
    },
  },
  {
    name: "forge-finish-nakiri",
    code: "NK-2609",
    edgeLength: 165,
    height: stations(0, 54, 155, 53, 165, 50),
    thickness: stations(0, 3.2, 165, 2.2),
    bevel: stations(0, 28),
    edge: stations(0, 0.3),
    edgeAngle: 15,
    tang: {
      length: 100,
      height: stations(0, 14, 100, 8),
      thickness: stations(0, 3.2, 100, 2.2),
      holes: [],
    },
    forging: { outline: 1, face: 0.1, afterHardening: 0, edge: 1.6, bevel: 29, keptFlats: true },
    parts: [[37, -65]],
    hand: {
      bladeVolume: 18.3,
      bladeMass: 143,
      tangMass: 24,
      totalMass: 204,
      balance: 37,
      bevelAngle: 2.96,
      edgeBevel: [0.69, 0.72],
      forgedVolume: 27.6,
    },
  },
];
