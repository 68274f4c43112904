import { describe, expect, it } from "vitest";
import { measureSurface } from "../../src/blade/body-surface.js";
import { forgedOutline } from "../../src/blade/forged-outline.js";
import { makeKnife } from "../../src/blade/knife.js";
import { ledgerBodies } from "../../src/blade/ledger-bodies.js";
import { VOLUME, X, Y, YZ, Z, ZX, ZZ } from "../../src/blade/moments.js";
import { profileStrips } from "../../src/blade/profile-strips.js";
import { stateSection } from "../../src/blade/state-section.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { PIECE_STATES, weighState } from "../../src/blade/weigh-state.js";
import { pathLength } from "../../src/plane/length.js";
import { signedArea } from "../../src/plane/measure.js";
import type { Vec2 } from "../../src/plane/vec2.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../src/stock/defaults.js";
import { makeSteelChain } from "../../src/stock/steel-chain.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { heel, randomKnives, tip } from "./random-knives.js";

const knives = randomKnives(6, 77).map(({ knife }) => knife);

describe("a size state on the scale", () => {
  it("finished is the knife's own steel", () => {
    for (const knife of knives) {
      const { steel } = weighKnife(knife);
      const weighed = weighState(knife, "finished");
      expect(weighed.state).toBe("finished");
      for (const key of ["volume", "mass", "surface"] as const)
        expectRelative(weighed[key], steel[key], 1e-12, key);
      for (const key of ["x", "y"] as const) expectWithin(weighed.centre[key], steel.centre[key], 1e-10);
      for (const key of ["xx", "yy", "zz"] as const)
        expectRelative(weighed.inertia[key], steel.inertia[key], 1e-11, key);
    }
  });

  it("weighs what the ledger says of it, less the scale that hardening takes, and has the surface that the skin is lost from", () => {
    for (const knife of knives) {
      const bodies = ledgerBodies(knife);
      for (const scaleModel of ["fraction", "skin"] as const) {
        const losses = { ...DEFAULT_LOSSES, scaleModel };
        const chain = makeSteelChain(bodies, losses, DEFAULT_LIMITS, knife.forging, "value");
        const [ready, forged] = [weighState(knife, "ready"), weighState(knife, "forged")];
        // The ledger measures its states to 1e-9 each.
        expectRelative(ready.volume, chain.ready - chain.heatTreatmentScale, 1e-8);
        expectRelative(forged.volume, chain.forged - chain.heatTreatmentScale, 1e-8);
        expectRelative(ready.surface, bodies.readySurface, 1e-12);
        expectRelative(forged.surface, bodies.forgedSurface, 1e-12);
        expectRelative(chain.forgedSurface, forged.surface, 1e-12);
      }
      const masses = PIECE_STATES.map((state) => weighState(knife, state).mass);
      expect(masses).toEqual([...masses].sort((a, b) => a - b));
    }
  });

  it("of a plate all equally thick is the forged outline as a prism: volume, surface, centre", () => {
    const plate = makeKnife(
      boxKnife(
        { thickness: [heel(4)], bevel: { form: "flat", height: 30, edgeThickness: 4 } },
        {
          finish: { flats: "ground", bevels: "ground" },
          allowances: { face: 0.5, afterHardening: 0, forgedEdge: 0, outline: 1.5, tip: 3, butt: 2 },
        },
      ),
    );
    const { path } = forgedOutline(plate.outline, plate.allowances);
    const area = signedArea(path);
    const forged = weighState(plate, "forged");
    expectRelative(forged.volume, 5 * area, 1e-10);
    expectRelative(forged.surface, 2 * area + 5 * pathLength(path), 1e-9);
    // 126 × 33 and 102 × 23 and what lies between: by rectangles of the outline, about the heel.
    const blade = { a: 123 * 33, x: 61.5, y: 15 };
    const back = { a: 102 * 23, x: -51, y: 20 };
    expectRelative(area, blade.a + back.a, 1e-12);
    expectWithin(forged.centre.x, (blade.a * blade.x + back.a * back.x) / area, 1e-8);
    expectWithin(forged.centre.y, (blade.a * blade.y + back.a * back.y) / area, 1e-8);
    expectWithin(forged.centre.z, 0, 1e-12);
  });

  it("with faces left from the hammer keeps them at their size: no face allowance on those, and all on the others", () => {
    const spec = boxKnife(
      { bevel: { form: "flat", height: 18, edgeThickness: 0.4 } },
      { allowances: { face: 0.5, afterHardening: 0, minEdge: 0.4 } },
    );
    const knife = (flats: "forged" | "ground", bevels: "forged" | "ground") =>
      makeKnife({ ...spec, finish: { flats, bevels } });
    const thickness = (flats: "forged" | "ground", bevels: "forged" | "ground", y: number): number =>
      knife(flats, bevels).body("forged").thicknessAt(p(60, y));
    expectRelative(thickness("forged", "ground", 25), 4, 1e-12);
    expectRelative(thickness("ground", "ground", 25), 5, 1e-12);
    const finished = knife("ground", "forged").body("unsharpened").thicknessAt(p(60, 9));
    expectRelative(thickness("ground", "forged", 9), finished, 1e-12);
    expect(thickness("ground", "ground", 9)).toBeGreaterThanOrEqual(finished + 1 - 1e-12);
  });
});

/** Area inside a closed polygon. */
const polygonArea = (points: readonly Vec2[]): number =>
  points.reduce((sum, a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);

describe("a section in a size state", () => {
  it("has the area inside its contours, strips and all", () => {
    for (const knife of knives) {
      for (const state of PIECE_STATES) {
        for (const share of [-0.7, 0.2, 0.6, 0.9]) {
          const x = share * (share < 0 ? -knife.outline.butt : knife.outline.edgeLength);
          const { contours, area } = stateSection(knife, x, state);
          const inside = contours.reduce((sum, contour) => sum + Math.abs(polygonArea(contour)), 0);
          expectRelative(inside, area, 2e-4, `${state} at ${x}`);
        }
      }
    }
  });

  it("summed along x, with the ends drawn on, is the forged piece", () => {
    const knife = makeKnife(boxKnife({ thickness: [heel(4), tip(3)], plunge: { at: 0, length: 0 } }));
    const { outline, tip: front, butt } = knife.allowances;
    let sum = 0;
    const steps = 2000;
    for (const [from, to] of [
      [-100, 0],
      [0, 120],
    ] as const) {
      for (let i = 0; i < steps; i++)
        sum +=
          (stateSection(knife, from + ((to - from) * (i + 0.5)) / steps, "forged").area * (to - from)) /
          steps;
    }
    sum +=
      front * stateSection(knife, 120 - 1e-9, "forged").area +
      butt * stateSection(knife, -100 + 1e-9, "forged").area;
    expectRelative(sum, weighState(knife, "forged").volume, 1e-6);
    expect(outline).toBe(1.5);
  });

  it("is read from its own rim: 1.5 mm lower, as thick as the forged edge there", () => {
    const knife = makeKnife(boxKnife({}, { allowances: { forgedEdge: 2, face: 0.5, afterHardening: 0.1 } }));
    const { height, edgeThickness, aboveEdge } = stateSection(knife, 60, "forged", [0.5, 1.5, 20, 40]);
    expect(height).toBeCloseTo(33, 12);
    expect(edgeThickness).toBeCloseTo(2, 12);
    expect(aboveEdge.map(({ above }) => above)).toEqual([0.5, 1.5, 20]);
    expect(aboveEdge[0]?.thickness).toBeCloseTo(2, 12);
    const body = knife.body("forged");
    expect(aboveEdge[2]?.thickness).toBeCloseTo(body.thicknessAt(p(60, 18.5)), 12);
  });
});

describe("profile strips of a blade whose faces differ", () => {
  it("lie off the centre plane with the rims beside them", () => {
    const knife = makeKnife(
      boxKnife({
        thickness: [heel(4), tip(3)],
        bevel: { form: "flat", height: 18, edgeThickness: 0.4, apex: 0.6 },
      }),
    );
    const body = knife.body("unsharpened");
    const { value } = profileStrips(body, knife.outline, { outline: 1.5, tip: 0, butt: 0 });
    const sum = new Map<number, number>();
    const put = (place: number, amount: number): void => void sum.set(place, (sum.get(place) ?? 0) + amount);
    const steps = 4000;
    for (const [from, to] of [
      [-100, -20],
      [-20, 0],
      [0, 120],
    ] as const) {
      for (let i = 0; i < steps; i++) {
        const x = from + ((to - from) * (i + 0.5)) / steps;
        const [low = 0, high = 0] = body.footprint.spansAt(x)[0] ?? [];
        for (const [rim, y] of [
          [low, low - 0.75],
          [high, high + 0.75],
        ] as const) {
          const right = body.faceAt({ x, y: rim }, "right");
          const left = body.faceAt({ x, y: rim }, "left");
          const width = (1.5 * (to - from)) / steps;
          put(VOLUME, width * (right + left));
          put(X, width * (right + left) * x);
          put(Y, width * (right + left) * y);
          // ∫ z dz and ∫ z² dz from −left to right.
          put(Z, (width * (right * right - left * left)) / 2);
          put(ZZ, (width * (right ** 3 + left ** 3)) / 3);
          put(YZ, (width * y * (right * right - left * left)) / 2);
          put(ZX, (width * x * (right * right - left * left)) / 2);
        }
      }
    }
    expect(Math.abs(sum.get(Z) ?? 0)).toBeGreaterThan(1);
    for (const [place, amount] of sum)
      expectRelative(value[place] as number, amount, 1e-6, `moment ${place}`);
    expect(measureSurface(body)).toBeGreaterThan(0);
  });
});
