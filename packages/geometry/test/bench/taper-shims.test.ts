import { describe, expect, test } from "vitest";
import { benchSetUp } from "../../src/bench/bench-setup.js";
import { levelSetUp } from "../../src/bench/level-shims.js";
import { tangShims, tangTaper, taperLean, taperShim } from "../../src/bench/taper-shims.js";
import { type Vec2, vec2 } from "../../src/plane/vec2.js";
import { DEFAULT_SHOP } from "../../src/stock/defaults.js";
import { randomKnives } from "../blade/random-knives.js";
import { chopper } from "./bench-knives.js";

const FRONT = 4.6;
const BUTT = 2.4;
const LENGTH = 128;

/** A point turned about the origin, as a tang is that rests on the end of the plate and on a shim. */
const turned = ({ x, y }: Vec2, by: number): Vec2 =>
  vec2(x * Math.cos(by) - y * Math.sin(by), x * Math.sin(by) + y * Math.cos(by));

const ORIGIN = vec2(0, 0);

/** Angle at which a flat underside lies on a shim at a distance from the plate's end. */
const tilt = (shim: number, at: number): number => Math.atan(shim / at);

describe("grinding a parallel tang to its taper, each face in one setting", () => {
  test.each([30, 64, 128])("by shims %s mm behind the handle front", (at) => {
    const { oneFace, twoFace } = taperShim(FRONT, FRONT + ((BUTT - FRONT) * at) / LENGTH, at);
    // First side: the flat face lies on the shim; the level wheel grinds through the top of the handle front.
    const first = tilt(oneFace, at);
    const top = turned(vec2(0, FRONT), first).y;
    // Thickness left at the butt, square to the face below.
    const butt = turned(vec2(LENGTH, 0), first);
    const afterFirst = (top - butt.y) / Math.cos(first);
    expect(afterFirst).toBeCloseTo((FRONT + BUTT) / 2, 3);
    // Second side: the ground face below, in a frame of its own: the other face falls toward the butt by the first lean.
    const second = tilt(twoFace, at);
    const topAgain = turned(vec2(0, FRONT), second).y;
    const buttAgain = turned(vec2(LENGTH, 0), second);
    const left = (topAgain - buttAgain.y) / Math.cos(second);
    expect(left).toBeCloseTo(BUTT, 3);
    // Both faces have come down by as much: the tang is centred.
    expect(FRONT - afterFirst).toBeCloseTo(afterFirst - left, 3);
  });

  test("leans as the model says, and not at all where it does not taper", () => {
    expect(taperLean(FRONT, BUTT, LENGTH)).toBeCloseTo(Math.atan(2.2 / 256), 12);
    expect(taperLean(3, 3, 100)).toBe(0);
    expect(taperShim(3, 3, 50)).toEqual({ at: 50, oneFace: 0, twoFace: 0 });
    expect(turned(ORIGIN, 1)).toEqual(ORIGIN);
  });
});

describe("a knife's own tang", () => {
  test("straight from handle front to butt", () => {
    const taper = tangTaper(chopper());
    expect(taper).toMatchObject({ front: 5, butt: 3, length: 120, even: true });
    expect(taper?.lean).toBeCloseTo(Math.atan(1 / 120), 12);
    expect(tangShims(chopper(), [60, 120])).toEqual([
      { at: 60, oneFace: 0.5, twoFace: 1 },
      { at: 120, oneFace: 1, twoFace: 2 },
    ]);
  });

  test("a parallel one has no taper", () => {
    const parallel = chopper(({ tang: { buttThickness: _, ...tang }, ...spec }) => ({ ...spec, tang }));
    expect(tangTaper(parallel)).toBeUndefined();
    expect(tangShims(parallel, [60])).toEqual([{ at: 60, oneFace: 0, twoFace: 0 }]);
  });

  test("one that thickens toward the butt rests there: no shim is less than nothing", () => {
    const thickening = chopper((spec) => ({ ...spec, tang: { ...spec.tang, buttThickness: 6 } }));
    expect(tangTaper(thickening)?.lean).toBeLessThan(0);
    expect(tangShims(thickening, [0, 60, 120])).toEqual([
      { at: 0, oneFace: 0.5, twoFace: 1 },
      { at: 60, oneFace: 0.25, twoFace: 0.5 },
      { at: 120, oneFace: 0, twoFace: 0 },
    ]);
    const shims = benchSetUp(thickening, DEFAULT_SHOP).taper?.shims ?? [];
    expect([shims[0]?.at, shims.at(-1)?.at]).toEqual([0, 120]);
    expect(benchSetUp(chopper(), DEFAULT_SHOP).taper?.shims[0]?.at).toBe(20);
  });

  test("one that bends is not ground in one setting", () => {
    const bent = chopper(({ tang: { buttThickness: _, ...tang }, ...spec }) => ({
      ...spec,
      tang: {
        ...tang,
        thickness: [
          { at: { kind: "handle" }, is: 5 },
          { at: { kind: "fraction", share: 0.5 }, is: 4.5 },
          { at: { kind: "butt" }, is: 3 },
        ],
      },
    }));
    expect(tangTaper(bent)?.even).toBe(false);
    expect(tangShims(bent, [60])[0]).toMatchObject({ oneFace: 0.25, twoFace: 0.5 });
  });
});

describe("the whole blade on the plate", () => {
  test("rests where it is thickest, shims under tip and butt", () => {
    // Clean flats carry 0.1 a face: 5.2 at the heel, 2.2 at the tip, 3.2 at the butt.
    const level = levelSetUp(chopper());
    expect(level).toMatchObject({ restsAt: -10, restsOn: "blade", thickness: 5.2, centre: 2.6 });
    expect(level.offWithoutShim).toBeCloseTo(1.5, 12);
    expect(level.shims.find(({ x }) => x === 200)?.shim).toBeCloseTo(1.5, 12);
    expect(level.shims.find(({ x }) => x === -130)?.shim).toBeCloseTo(1, 12);
  });

  test("rests on the tang where that carries more: forged flats, a tang to be ground", () => {
    const forged = chopper((spec) => ({ ...spec, finish: { flats: "forged" } }));
    expect(forged.body("hammered").slab.tangThicknessAt(-10)).toBeCloseTo(5.2, 12);
    const level = levelSetUp(forged);
    expect(level).toMatchObject({ restsAt: -10, restsOn: "tang", thickness: 5.2, centre: 2.6 });
    // The blade, 5 at the heel, hangs 0.1 over the plate.
    expect(level.shims.find(({ x }) => x === 0)?.shim).toBeCloseTo(0.1, 12);
  });

  test("rests on the butt of a tang that thickens toward it", () => {
    // 0.1 a face: 6.2 at the butt, 5.2 at the heel, 2.2 at the tip.
    const thickening = chopper((spec) => ({ ...spec, tang: { ...spec.tang, buttThickness: 6 } }));
    const level = levelSetUp(thickening);
    expect(level).toMatchObject({ restsAt: -130, restsOn: "tang" });
    expect(level.thickness).toBeCloseTo(6.2, 12);
    expect(level.shims.find(({ x }) => x === 0)?.shim).toBeCloseTo(0.5, 12);
    expect(level.shims.find(({ x }) => x === 200)?.shim).toBeCloseTo(2, 12);
  });

  test("with its shims the lower face lies on all of them and the centre plane is level", () => {
    for (const { knife } of randomKnives(60)) {
      const { shims, centre, thickness } = levelSetUp(knife);
      const { slab } = knife.body("hammered");
      expect(centre).toBe(thickness / 2);
      for (const { x, shim } of shims) {
        expect(shim + slab.thicknessAt(x) / 2).toBeCloseTo(centre, 9);
        expect(shim).toBeGreaterThan(0);
      }
      // Nothing of blade or tang reaches below the plate.
      const { butt, handleFront, edgeLength } = knife.outline;
      for (let i = 0; i <= 40; i++) {
        const x = butt + ((edgeLength - butt) * i) / 40;
        expect(slab.thicknessAt(x)).toBeLessThan(thickness + 1e-9);
      }
      expect(slab.tangThicknessAt(handleFront)).toBeLessThan(thickness + 1e-9);
    }
  });
});
