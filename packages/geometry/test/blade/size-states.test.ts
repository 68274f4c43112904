import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Knife, makeKnife, rebuildKnife } from "../../src/blade/knife.js";
import { ledgerBodies } from "../../src/blade/ledger-bodies.js";
import { measureBody } from "../../src/blade/measure-body.js";
import { VOLUME, X, XX, Y } from "../../src/blade/moments.js";
import { profileStrips } from "../../src/blade/profile-strips.js";
import { SIZE_STATES } from "../../src/blade/size-states.js";
import type { AllowanceSpec, FinishSpec, KnifeSpec, LawSpec } from "../../src/blade/spec.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { between, heel, knifeSpec, randomKnives, SEED, tip } from "./random-knives.js";

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

describe("the ledger's bodies", () => {
  const knives = randomKnives(14, 11);

  it("have rows that are never negative and stations that sum to the forged blade", () => {
    knives.forEach(({ knife }, i) => {
      const rows = ledgerBodies(knife);
      const added = [
        rows.sharpening,
        rows.finishGrinding,
        rows.drilling,
        rows.bevelGrinding,
        rows.tangGrinding,
        rows.faceGrinding,
        rows.profileTrimming,
      ];
      for (const [k, row] of added.entries())
        expect(row, `knife ${i}, row ${k}`).toBeGreaterThanOrEqual(-1e-6);
      const forged = knife.body("forged");
      const own = measureBody(forged).value[VOLUME] as number;
      const upToForged = rows.finished + added.slice(0, 6).reduce((a, b) => a + b, 0);
      expectRelative(upToForged, own, 1e-10, `knife ${i}, forged`);
      const sides = profileStrips(forged, knife.outline, { ...knife.allowances, tip: 0, butt: 0 });
      let sum = 0;
      rows.stations.forEach((station, k) => {
        const before = rows.stations[k - 1];
        if (before === undefined) return;
        expect(station.x).toBeGreaterThan(before.x);
        sum += ((station.area + before.area) / 2) * (station.x - before.x);
      });
      expectRelative(sum, own + (sides.value[VOLUME] as number), 1e-3, `knife ${i}, stations`);
      for (const { height, area, thickness } of rows.stations) {
        expect(height).toBeGreaterThan(0);
        expect(thickness ?? 0).toBeGreaterThan(0);
        expect(area).toBeLessThanOrEqual(height * (thickness ?? 0) * (1 + 1e-9));
      }
      expect(rows.readySurface).toBeGreaterThan(0);
      expect(rows.forgedSurface).toBeGreaterThan(rows.readySurface * 0.9);
    });
  });
});

describe("profile strips of a rectangular blade and tang", () => {
  const spec = boxKnife({ thickness: [heel(4), tip(3)] });
  const knife = makeKnife(spec);
  const body = knife.body("unsharpened");

  it("along the sides: as thick as the rim beside them", () => {
    const { value } = profileStrips(body, knife.outline, { outline: 2, tip: 0, butt: 0 });
    // Edge side 0.4 along 120, spine side 4 to 3; ricasso and tang 4 on both sides along 100.
    expectRelative(value[VOLUME] as number, 2 * (120 * 0.4 + 120 * 3.5 + 2 * 100 * 4), 1e-10);
    const edge = 2 * 120 * 0.4 * -1;
    const spine = 2 * 120 * 3.5 * 31;
    const back = 2 * 100 * 4 * (31 + 9);
    expectRelative(value[Y] as number, edge + spine + back, 1e-10);
    const spineX = 2 * 120 * 120 * (4 / 6 + 3 / 3);
    expectRelative(value[X] as number, 2 * 0.4 * 7200 + spineX + 2 * 2 * 4 * 100 * -50, 1e-9);
  });

  it("at the ends: the end's section drawn on", () => {
    const { value } = profileStrips(body, knife.outline, { outline: 0, tip: 5, butt: 4 });
    const tipEnd = (5 * 30 * (0.4 + 3)) / 2;
    const buttEnd = 4 * 20 * 4;
    expectRelative(value[VOLUME] as number, tipEnd + buttEnd, 1e-10);
    expectRelative(value[X] as number, tipEnd * 122.5 + buttEnd * -102, 1e-10);
  });

  it("nothing is nothing", () => {
    const { value, surface } = profileStrips(body, knife.outline, { outline: 0, tip: 0, butt: 0 });
    expect(Math.max(...value.map(Math.abs))).toBe(0);
    expectWithin(surface, 0, 1e-12);
  });
});

describe("the weight of a knife", () => {
  it("is the sum of its parts, and balances where they do", () => {
    const { knife, parts, steel } = weighKnife(
      makeKnife(
        boxKnife(
          {},
          {
            tang: { holes: [{ kind: "pin", at: p(-60, 20), diameter: 5 }] },
            handle: {
              slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8, edgeRadius: 2 },
              pins: { material: { name: "pin metal", density: 0.0085 } },
              parts: [{ name: "bolster", mass: 31, at: p(-15, 20) }],
            },
          },
        ),
      ),
    );
    expect(parts.map(({ name }) => name)).toEqual(["steel", "slabs", "pins", "bolster"]);
    expectRelative(
      knife.mass,
      parts.reduce((sum, { mass }) => sum + mass, 0),
      1e-14,
    );
    const moment = parts.reduce((sum, { mass, centre }) => sum + mass * centre.x, 0);
    expectRelative(knife.balanceFromHeel, moment / knife.mass, 1e-12);
    expectWithin(knife.balanceFromHandle - knife.balanceFromHeel, 20, 1e-12);
    expectRelative(parts[0]?.mass ?? 0, steel.volume * 0.00785, 1e-14);
    expectRelative(parts[2]?.mass ?? 0, Math.PI * 2.5 ** 2 * 20 * 0.0085, 1e-9);
  });

  it("of two boxes, done by hand", () => {
    // Unsharpened boxes: an edge as thick as the spine and nothing for the planes to take but a sliver.
    const spec = boxKnife({
      bevel: { form: "flat", height: 30, edgeThickness: 4 },
      edgeAngle: Math.PI / 2 - 1e-7,
    });
    const { knife, steel } = weighKnife(
      makeKnife({
        ...spec,
        handle: { slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8 } },
      }),
    );
    // Blade 120 × 30 × 4 about x = 60; ricasso and tang 100 × 20 × 4 about −50; wood 80 × 20 × 16 about −60.
    const [blade, back, wood] = [14_400 * 0.00785, 8000 * 0.00785, 25_600 * 0.0007];
    expectRelative(knife.mass, blade + back + wood, 1e-6);
    expectWithin(knife.balanceFromHeel, (blade * 60 - back * 50 - wood * 60) / (blade + back + wood), 1e-5);
    // Inertia about z of the steel by the parallel-axis theorem.
    const centre = {
      x: (blade * 60 - back * 50) / (blade + back),
      y: (blade * 15 + back * 20) / (blade + back),
    };
    const own = (m: number, l: number, h: number): number => (m * (l * l + h * h)) / 12;
    const zz =
      own(blade, 120, 30) +
      own(back, 100, 20) +
      blade * ((60 - centre.x) ** 2 + (15 - centre.y) ** 2) +
      back * ((-50 - centre.x) ** 2 + (20 - centre.y) ** 2);
    expectRelative(steel.inertia.zz, zz, 1e-6);
    const xy = blade * (60 - centre.x) * (15 - centre.y) + back * (-50 - centre.x) * (20 - centre.y);
    expectRelative(steel.inertia.xy, xy, 1e-6);
  });
});
