import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Knife, makeKnife, rebuildKnife } from "../../src/blade/knife.js";
import { ledgerBodies } from "../../src/blade/ledger-bodies.js";
import { measureBody } from "../../src/blade/measure-body.js";
import { VOLUME, X, XX, Y } from "../../src/blade/moments.js";
import { SIZE_STATES } from "../../src/blade/size-states.js";
import type { AllowanceSpec, FinishSpec, KnifeSpec, LawSpec } from "../../src/blade/spec.js";
import { expectRelative } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { between, knifeSpec, randomKnives, SEED } from "./random-knives.js";

const volume = (knife: Knife, state: (typeof SIZE_STATES)[number] = "finished"): number =>
  measureBody(knife.body(state), 1e-11).value[VOLUME] as number;

const madeOf = (spec: KnifeSpec): Knife | undefined => {
  try {
    return makeKnife(spec);
  } catch {
    return undefined;
  }
};

/** Holds for every random description that makes a knife. */
function forKnives(runs: number, check: (spec: KnifeSpec, knife: Knife, u: number) => void): void {
  let made = 0;
  fc.assert(
    fc.property(knifeSpec, between(0, 1), (spec, u) => {
      const knife = madeOf(spec);
      if (knife === undefined) return;
      made++;
      check(spec, knife, u);
    }),
    { seed: SEED, numRuns: runs, endOnFailure: true },
  );
  expect(made).toBeGreaterThan(runs / 2);
}

const scaledLaw = (law: LawSpec, s: number): LawSpec =>
  typeof law === "number"
    ? law * s
    : law.map((station) => ({
        at: station.at.kind === "distance" ? { kind: "distance", mm: station.at.mm * s } : station.at,
        is: station.is * s,
      }));

function scaled(spec: KnifeSpec, s: number): KnifeSpec {
  const { blade, tang } = spec;
  const outline = blade.outline;
  if (!("family" in outline)) throw new Error("scaled by landmarks");
  const bevel = blade.bevel;
  const crown = bevel.crown;
  return {
    ...spec,
    blade: {
      ...blade,
      outline: {
        family: outline.family,
        edgeLength: outline.edgeLength * s,
        heelHeight: outline.heelHeight * s,
        ...(outline.straightEdge === undefined ? {} : { straightEdge: outline.straightEdge * s }),
        ...(outline.tipHeight === undefined ? {} : { tipHeight: outline.tipHeight * s }),
        ...(outline.spineBreak === undefined ? {} : { spineBreak: outline.spineBreak * s }),
      },
      ricasso: (blade.ricasso ?? 0) * s,
      thickness: scaledLaw(blade.thickness, s) as KnifeSpec["blade"]["thickness"],
      flankTaper: scaledLaw(blade.flankTaper ?? 0, s),
      plunge: { at: (blade.plunge?.at ?? 0) * s, length: (blade.plunge?.length ?? 0) * s },
      bevel: {
        form: bevel.form,
        height: bevel.height === "full" ? "full" : scaledLaw(bevel.height, s),
        edgeThickness: scaledLaw(bevel.edgeThickness, s),
        ...(crown === undefined ? {} : { crown: "mm" in crown ? { mm: scaledLaw(crown.mm, s) } : crown }),
      },
    },
    tang: {
      ...tang,
      ...(tang.length === undefined ? {} : { length: tang.length * s }),
      ...(tang.heights === undefined
        ? {}
        : {
            heights: {
              front: tang.heights.front * s,
              middle: tang.heights.middle * s,
              butt: tang.heights.butt * s,
            },
          }),
      ...(tang.buttThickness === undefined ? {} : { buttThickness: tang.buttThickness * s }),
      ...(tang.thickness === undefined
        ? {}
        : { thickness: scaledLaw(tang.thickness, s) as NonNullable<KnifeSpec["tang"]["thickness"]> }),
    },
  };
}

describe("a knife", () => {
  it("of lengths s times as great has s³ the volume and s⁵ the second moments", () => {
    forKnives(40, (spec, knife, u) => {
      const s = 0.1 * 100 ** u;
      const one = measureBody(knife.body("finished")).value;
      const other = measureBody(rebuildKnife(scaled(spec, s)).body("finished")).value;
      expectRelative(other[VOLUME] as number, s ** 3 * (one[VOLUME] as number), 1e-9, `volume × ${s}`);
      expectRelative(other[XX] as number, s ** 5 * (one[XX] as number), 1e-9, `∫x² × ${s}`);
      expectRelative(other[Y] as number, s ** 4 * (one[Y] as number), 1e-9, `∫y × ${s}`);
    });
  });

  it("with a thicker spine is never lighter, with a thinner edge never heavier", () => {
    forKnives(40, (spec, knife, u) => {
      const { blade } = spec;
      const thicker = rebuildKnife({
        ...spec,
        blade: { ...blade, thickness: blade.thickness.map((s) => ({ ...s, is: s.is + 0.01 + u })) },
      });
      const thinner = rebuildKnife({
        ...spec,
        blade: {
          ...blade,
          bevel: { ...blade.bevel, edgeThickness: scaledLaw(blade.bevel.edgeThickness, 0.2 + 0.7 * u) },
        },
      });
      expect(volume(thicker)).toBeGreaterThan(volume(knife));
      expect(volume(thinner)).toBeLessThan(volume(knife) + 1e-9 * volume(knife));
    });
  });

  it("keeps its mass when a hole in a parallel tang moves, and shifts its centre the other way", () => {
    const drilled = (x: number): KnifeSpec =>
      boxKnife({}, { tang: { holes: [{ kind: "lightening", at: p(x, 20), diameter: 9 }] } });
    const [a, b] = [makeKnife(drilled(-40)), makeKnife(drilled(-80))].map(
      (knife) => measureBody(knife.body("finished")).value,
    );
    expectRelative(a?.[VOLUME] ?? 0, b?.[VOLUME] ?? 1, 1e-13);
    expectRelative((b?.[X] ?? 0) - (a?.[X] ?? 0), 40 * Math.PI * 4.5 ** 2 * 4, 1e-9);
  });
});

const allowances: fc.Arbitrary<AllowanceSpec> = fc.record({
  face: between(0, 1.2),
  outline: between(0, 3),
  tip: between(0, 5),
  butt: between(0, 5),
  forgedEdge: between(0, 3),
  forgedBevel: fc.constantFrom("line" as const, "full" as const, "none" as const),
  afterHardening: between(0, 0.3),
  minEdge: between(0, 1),
  tang: fc.constantFrom("tapered" as const, "parallel" as const),
});
const finish: fc.Arbitrary<FinishSpec> = fc.record({
  flats: fc.constantFrom("forged" as const, "ground" as const),
  bevels: fc.constantFrom("forged" as const, "ground" as const),
});

describe("size states from finished to forged", () => {
  const stages = fc.sample(fc.tuple(allowances, finish), { numRuns: 40, seed: SEED });
  const knives = randomKnives(40, 7);

  it("never lose steel anywhere, nor in volume", () => {
    knives.forEach(({ spec }, i) => {
      const [left, surface] = stages[i] as (typeof stages)[number];
      const tangHump: KnifeSpec["tang"] =
        i % 4 === 0
          ? {
              form: "full",
              length: 110,
              thickness: [
                { at: { kind: "handle" }, is: 3 },
                { at: { kind: "fraction", share: 0.3 }, is: 6 },
                { at: { kind: "fraction", share: 0.7 }, is: 6.2 },
                { at: { kind: "butt" }, is: 2 },
              ],
              between: "smooth",
            }
          : spec.tang;
      const knife = rebuildKnife({
        ...spec,
        tang: { ...tangHump, ...(spec.tang.heights === undefined ? {} : { heights: spec.tang.heights }) },
        allowances: left,
        finish: surface,
      });
      const { minX, maxX } = knife.body("finished").footprint;
      let before = knife.body("finished");
      let held = volume(knife);
      for (const state of SIZE_STATES.slice(1)) {
        const body = knife.body(state);
        for (let k = 0; k < 150; k++) {
          // A lattice that never repeats (Weyl's sequence in two directions).
          const x = minX + (maxX - minX) * ((0.5 + k * 0.754877666) % 1);
          const spans = body.footprint.spansAt(x);
          const [low, high] = spans[0] ?? [0, 0];
          const point = p(x, low + (high - low) * ((0.5 + k * 0.569840291) % 1));
          const [less, more] = [before.thicknessAt(point), body.thicknessAt(point)];
          expect(more, `knife ${i}, ${state} at ${point.x}, ${point.y}`).toBeGreaterThanOrEqual(less - 1e-9);
        }
        const whole = volume(knife, state);
        expect(whole, `knife ${i}, ${state}`).toBeGreaterThanOrEqual(held * (1 - 1e-10));
        before = body;
        held = whole;
      }
    });
  });

  it("of the box knife, row by row", () => {
    const knife = makeKnife(
      boxKnife(
        { holes: [{ kind: "hanging", at: p(100, 20), diameter: 6 }] },
        {
          tang: { buttThickness: 2 },
          allowances: {
            face: 0.5,
            outline: 1.5,
            tip: 3,
            butt: 2,
            forgedEdge: 2,
            forgedBevel: "line",
            afterHardening: 0.1,
            minEdge: 0.7,
            tang: "parallel",
          },
        },
      ),
    );
    const rows = ledgerBodies(knife);
    const tan = Math.tan(0.3);
    expectRelative(rows.sharpening, (120 * 0.4 ** 2) / 4 / (tan - 0.06), 1e-8);
    // Ready: edge 0.4 + 0.2 but not under 0.7; spine and flats 0.2 more; tang 0.2 more.
    const tang = 20 * 80;
    const hole = Math.PI * 9;
    const bladeReady = 120 * 30 * ((0.7 + 4.2) / 2);
    const inHole = (e: number, t: number): number => hole * (e + ((t - e) * 20) / 30);
    const unsharpened = 120 * 66 - inHole(0.4, 4) + 400 * 4 + tang * 3;
    const ready = bladeReady - inHole(0.7, 4.2) + 400 * 4.2 + tang * 3.2;
    expectRelative(rows.finished + rows.sharpening, unsharpened, 1e-10);
    expectRelative(rows.finishGrinding, ready - unsharpened, 1e-8);
    expectRelative(rows.drilling, inHole(0.7, 4.2), 1e-8);
    // Hammered from 2 straight to the bevel line, which here is the spine.
    expectRelative(rows.bevelGrinding, (120 * 30 * (2 - 0.7)) / 2, 1e-8);
    expectRelative(rows.tangGrinding, tang * 1, 1e-8);
    // Face grinding: over the ready body 0.5 a side on every face, or the hammered face where that is thicker. Ready
    // with the allowance runs from 1.7 to 5.2, hammered from 2 to 4.2: they meet at v where 2 + 2.2u = 1.7 + 3.5u.
    const meet = 0.3 / 1.3;
    const bladeForged = 120 * 30 * ((1.7 + 5.2) / 2 + (0.3 * meet) / 2);
    const bladeHammered = 120 * 30 * ((2 + 4.2) / 2);
    expectRelative(rows.faceGrinding, bladeForged - bladeHammered + (400 + tang) * 1, 1e-8);
    // Strips of 1.5: along the edge 2 thick, along the spine 5.2, under and over ricasso and tang 5.2; ends drawn on.
    const strips = 1.5 * (120 * (2 + 5.2) + 100 * 2 * 5.2);
    const tipEnd = 3 * (30 * ((1.7 + 5.2) / 2 + (0.3 * meet) / 2) + 1.5 * (2 + 5.2));
    const buttEnd = 2 * (20 + 3) * 5.2;
    expectRelative(rows.profileTrimming, strips + tipEnd + buttEnd, 1e-9);
  });
});
