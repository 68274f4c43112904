import { type Knife, makeKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";

/** A chopper with a tapered full tang, slabs and pins; every size a round number. */
export const CHOPPER: KnifeSpec = {
  steel: { name: "test steel", density: 0.00785 },
  blade: {
    outline: { family: "straight-back", edgeLength: 200, heelHeight: 50 },
    ricasso: 10,
    thickness: [
      { at: { kind: "heel" }, is: 5 },
      { at: { kind: "tip" }, is: 2 },
    ],
    bevel: { form: "flat", height: 30, edgeThickness: 0.6 },
    edgeAngle: 0.35,
  },
  tang: {
    form: "full",
    length: 120,
    heights: { front: 28, middle: 28, butt: 28 },
    buttThickness: 3,
    holes: [
      { kind: "pin", at: { x: -30, y: 36 }, diameter: 6, pin: 4 },
      { kind: "pin", at: { x: -110, y: 36 }, diameter: 4 },
      { kind: "lightening", at: { x: -70, y: 36 }, diameter: 10 },
    ],
  },
  handle: {
    slabs: { material: { name: "European ash" }, thickness: 8 },
    pins: { material: { name: "brass" } },
  },
  allowances: { afterHardening: 0.1, minEdge: 0.7, face: 0.5, forgedEdge: 1.6, forgedBevel: "line" },
};

export const chopper = (change: (spec: KnifeSpec) => KnifeSpec = (spec) => spec): Knife =>
  makeKnife(change(CHOPPER));

/** The same blade with other bevels. */
export const withBevel = (bevel: Partial<KnifeSpec["blade"]["bevel"]>): Knife =>
  chopper((spec) => ({ ...spec, blade: { ...spec.blade, bevel: { ...spec.blade.bevel, ...bevel } } }));

/** The same blade on a hidden tang that narrows and thins, with guard and handle. */
export const hidden = (): Knife =>
  chopper((spec) => ({
    ...spec,
    tang: {
      form: "hidden",
      length: 100,
      heights: { front: 20, middle: 15, butt: 10 },
      thickness: [
        { at: { kind: "handle" }, is: 4 },
        { at: { kind: "butt" }, is: 2 },
      ],
    },
    handle: {
      guard: { material: { name: "brass" }, at: -10, length: 8, height: 60, width: 16 },
      block: {
        material: { name: "European ash" },
        section: "oval",
        length: 120,
        height: 34,
        width: 24,
      },
    },
  }));
