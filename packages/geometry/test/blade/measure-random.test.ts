import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { measureBody } from "../../src/blade/measure-body.js";
import { VOLUME } from "../../src/blade/moments.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { expectWithin } from "../numeric/close.js";
import { boxKnife } from "./bodies.js";
import { independentBody } from "./independent.js";
import { at, heel, randomKnives, SEED, share, tip } from "./random-knives.js";

// Held against a thickness function of its own, summed station by station (independent.ts). That sum is good to about
// a tenth of the share asked for.
const SHARE = 2e-6;
const AGREED = 3e-7;

/** Sizes of the seven integrals for a body of volume V: a first moment may be near nothing. */
function scales(volume: number, length: number): number[] {
  const h = length / 4;
  return [1, length, h, length ** 2, h ** 2, 1, length * h].map((s) => s * volume);
}

function expectAgreement(spec: KnifeSpec, sharpened: boolean, what: string, asked = SHARE): void {
  const knife = makeKnife(spec);
  const { outline } = knife;
  const { value } = measureBody(knife.body(sharpened ? "finished" : "unsharpened"));
  const truth = independentBody(spec, outline, sharpened).moments(asked);
  const scale = scales(truth[0] as number, outline.edgeLength - outline.butt);
  truth.forEach((expected, i) => {
    expectWithin(value[i] as number, expected, AGREED * (scale[i] as number), `${what}, integral ${i}`);
  });
}

describe("random knives against a second method", () => {
  const knives = randomKnives(64);

  it("there are 64 of them, of every kind", () => {
    expect(knives).toHaveLength(64);
    const kinds = new Set(
      knives.map(({ spec }) => {
        const { outline, bevel } = spec.blade;
        const height = Array.isArray(bevel.height) ? "stations" : typeof bevel.height;
        return `${"family" in outline ? outline.family : ""} ${bevel.form} ${height}`;
      }),
    );
    // Three families, two forms, three kinds of bevel height.
    expect(kinds.size).toBeGreaterThan(15);
  });

  it.each(knives.map(({ spec }, i) => [i, spec] as const))(
    `number %i (seed ${SEED}): volume and all moments`,
    (i, spec) => {
      expectAgreement(spec, i % 3 !== 2, `knife ${i}`);
    },
  );

  it("the error that comes with a coarse measurement covers what a fine one finds", () => {
    for (const [i, { knife }] of knives.entries()) {
      const body = knife.body(i % 2 === 0 ? "finished" : "unsharpened");
      const fine = measureBody(body, 1e-13);
      for (const aim of [1e-4, 1e-7, 1e-10]) {
        const coarse = measureBody(body, aim);
        coarse.value.forEach((value, j) => {
          const off = Math.abs(value - (fine.value[j] as number));
          const covered = (coarse.error[j] as number) + (fine.error[j] as number);
          // Rounding of the finest sums, 1e-14 of the size of their terms.
          const rounding = 1e-14 * (scales(fine.value[VOLUME] as number, 400)[j] ?? 0);
          expect(off, `knife ${i}, aim ${aim}, integral ${j}`).toBeLessThanOrEqual(covered + rounding);
        });
      }
    }
  });
});

const runs = (edge: string, spine: string, front?: string) => ({
  runs: {
    edge,
    ...(front === undefined ? {} : { front }),
    spine,
    tangTop: "L-90 28",
    butt: "L-90 8",
    tangBottom: "L-10 8",
    heelFace: "L0 8 L0 0",
  },
});

const shapes: readonly (readonly [string, KnifeSpec["blade"]["outline"]])[] = [
  ["a corner in the edge", runs("M0 0 L110 0 L140 28", "L-10 28")],
  [
    "a notch: the edge turns away",
    runs("M0 0 L60 5 L120 0 C135 0 145 12 150 24", "C130 30 110 30 90 30 L-10 30"),
  ],
  ["a round nose by arc", runs("M0 0 L100 0 A14 14 0 0 1 114 14", "C114 22 106 30 92 30 L-10 30")],
  ["a round nose by cubic", runs("M0 0 L100 0 C107.7 0 114 6.3 114 14", "C114 22 106 30 92 30 L-10 30")],
  ["a recurve in one cubic", runs("M0 0 C45 12 95 -14 140 20", "C120 29 90 30 60 30 L-10 30")],
  ["a belly from the heel on", runs("M0 0 A220 220 0 0 1 140 32", "L-10 32")],
  ["a front that leans forward", runs("M0 0 L80 0 L100 20", "L-10 30", "L112 30")],
  ["a front that leans back", runs("M0 0 L90 0 C100 0 110 3 116 8", "L-10 30", "L104 30")],
  ["a clip: the spine dips", runs("M0 0 L70 0 C95 0 118 8 130 22", "C118 22 104 25 92 30 L-10 30")],
];

describe("outlines drawn by hand against the second method", () => {
  it.each(shapes)("%s, flat with part height", (name, outline) => {
    const { blade } = boxKnife({ outline, bevel: { form: "flat", height: 14, edgeThickness: 0.5 } });
    expectAgreement({ ...boxKnife(), blade: { ...blade, flankTaper: 0.3 } }, true, name, 5e-7);
  });

  it.each(shapes)("%s, convex to the spine, easing in, tapered", (name, outline) => {
    const { blade } = boxKnife({
      outline,
      thickness: [heel(4.4), share(0.5, 3.6), tip(2)],
      between: "smooth",
      plunge: { at: 3, length: 12 },
      bevel: { form: "convex", height: "full", edgeThickness: [heel(0.6), at(80, 0.4)] },
    });
    expectAgreement({ ...boxKnife(), blade }, true, name);
  });

  it.each(shapes)("%s, convex and unsharpened", (name, outline) => {
    const bevel = {
      form: "convex",
      height: [heel(10), tip(20)],
      edgeThickness: 0.5,
      crown: { share: 0.1 },
    } as const;
    const { blade } = boxKnife({ outline, bevel });
    expectAgreement({ ...boxKnife(), blade }, false, name);
  });
});
