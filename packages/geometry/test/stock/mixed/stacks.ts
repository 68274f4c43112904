import { type Knife, type KnifeSpec, makeKnife } from "../../../src/index.js";
import { alternateBars } from "../../../src/stock/mixed/layers.js";
import type { CladSpec, PatternWeldedSpec } from "../../../src/stock/mixed/spec.js";
import { exactly } from "../fixtures.js";

const IN = 25.4;

/** Bowie of pattern-welded steel: 7 bars and 6 in turn, restacked twice, yields of 85 %, grooves of 8 %. */
export const BOWIE_STACK: PatternWeldedSpec = {
  kind: "pattern-welded",
  layers:
    alternateBars([
      { steel: { name: "1084" }, thickness: IN / 8, count: 7 },
      { steel: { name: "15N20" }, thickness: 1.57, count: 6 },
    ]) ?? [],
  width: 1.75 * IN,
  restacks: [{ pieces: 4 }, { pieces: 4 }],
  yields: [exactly(0.85)],
  grooves: { share: 0.08 },
  lastBar: { width: 38.1, thickness: 12.7 },
};

/** Petty with a core: bars in mm. */
export const pettyStack = (core: number, cladding: number): CladSpec => ({
  kind: "clad",
  core: { steel: { name: "1095" }, thickness: core },
  cladding: { steel: { name: "1020" }, thickness: cladding },
  width: 1.25 * IN,
  cleaning: exactly(0.2),
});

/** A petty drawn over a straight edge, so that heights above it are distances from it; forged 1 mm thicker. */
export const PETTY: KnifeSpec = {
  steel: { name: "1095" },
  blade: {
    outline: {
      runs: {
        edge: "M 0 0 L 150 0",
        front: "L 150 2",
        spine: "L 130 14 L 100 24 L 0 30",
        tangTop: "L 0 23 L -95 20",
        butt: "L -95 14",
        tangBottom: "L 0 11",
      },
    },
    thickness: [
      { at: { kind: "heel" }, is: 2.4 },
      { at: { kind: "distance", mm: 75 }, is: 1.9 },
      { at: { kind: "distance", mm: 140 }, is: 1 },
      { at: { kind: "tip" }, is: 0.6 },
    ],
    bevel: {
      form: "flat",
      height: "full",
      edgeThickness: [
        { at: { kind: "heel" }, is: 0.25 },
        { at: { kind: "tip" }, is: 0.2 },
      ],
    },
    edgeAngle: (14 * Math.PI) / 180,
  },
  tang: { form: "hidden", buttThickness: 2 },
  allowances: {
    face: 0.4,
    afterHardening: 0.1,
    outline: 1.5,
    tip: 3,
    butt: 3,
    forgedEdge: 1.6,
    forgedBevel: "full",
  },
};

export const petty = (bevel: Partial<KnifeSpec["blade"]["bevel"]> = {}): Knife =>
  makeKnife({ ...PETTY, blade: { ...PETTY.blade, bevel: { ...PETTY.blade.bevel, ...bevel } } });
