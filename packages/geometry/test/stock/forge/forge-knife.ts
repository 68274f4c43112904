import type { KnifeSpec } from "../../../src/blade/spec.js";

/** An invented field knife with a hidden tang: shoulders on both sides. */
export const HIDDEN: KnifeSpec = {
  steel: { name: "1084" },
  blade: {
    outline: { family: "drop-point", edgeLength: 120, heelHeight: 30 },
    ricasso: 12,
    thickness: [
      { at: { kind: "heel" }, is: 4 },
      { at: { kind: "tip" }, is: 1.8 },
    ],
    bevel: { form: "flat", height: 22, edgeThickness: 0.5 },
    edgeAngle: 0.3,
  },
  tang: { form: "hidden", length: 90, heights: { front: 14, middle: 12, butt: 8 } },
};

/** An invented tall knife with a full tang at the spine's level: one step, at the heel. */
export const FULL: KnifeSpec = {
  ...HIDDEN,
  blade: {
    ...HIDDEN.blade,
    outline: { family: "vegetable", edgeLength: 180, heelHeight: 70 },
    ricasso: 10,
    bevel: { form: "flat", height: 40, edgeThickness: 0.5 },
  },
  tang: { form: "full", length: 110, heights: { front: 24, middle: 22, butt: 26 }, buttThickness: 2.4 },
};
