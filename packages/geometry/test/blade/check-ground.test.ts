import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import type { BevelSpec, FullerSpec, HoleSpec, KnifeSpec, StationPlace } from "../../src/blade/spec.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { SpecError } from "../../src/errors/errors.js";
import { boxKnife, p } from "./bodies.js";
import { DEGREE } from "./random-knives.js";

const issuesOf = (spec: KnifeSpec): readonly (readonly [code: string, path: string])[] => {
  try {
    makeKnife(spec);
  } catch (error) {
    if (error instanceof SpecError) return error.issues.map(({ code, path }) => [code, path]);
    throw error;
  }
  return [];
};

// The blade is a box of 120 × 30, 4 thick; the bevel leaves 12 mm of flat below the spine.
const flat: BevelSpec = { form: "flat", height: 18, edgeThickness: 0.4 };
const fuller = (y: number, more: Partial<FullerSpec> = {}): FullerSpec => ({
  from: p(20, y),
  to: p(100, y),
  radius: 5,
  depth: 0.5,
  ...more,
});
const grooved = (...fullers: readonly FullerSpec[]): KnifeSpec => boxKnife({ bevel: flat, fullers });

describe("fullers", () => {
  // Half the width where a groove runs out at the face: √(2·5·0.5 − 0.5²) = 2.18.
  const HALF = Math.sqrt(2 * 5 * 0.5 - 0.25);

  it("beside each other are two; one that runs into another of its face is refused", () => {
    expect(issuesOf(grooved(fuller(21), fuller(21 + 2 * HALF)))).toEqual([]);
    expect(issuesOf(grooved(fuller(21), fuller(21 + 2 * HALF - 0.01)))).toEqual([
      ["fuller-overlaps", "blade.fullers[1].from"],
    ]);
  });

  it("on opposite faces may lie over each other, as long as steel is left between them", () => {
    const opposite = (depth: number): KnifeSpec =>
      grooved(fuller(22, { faces: "right", depth }), fuller(22, { faces: "left", depth }));
    expect(issuesOf(opposite(1.99))).toEqual([]);
    // The sum of both, by one weighing each: what is taken off twice would be missing here.
    const volume = (...fullers: readonly FullerSpec[]): number =>
      weighKnife(makeKnife(grooved(...fullers))).steel.volume;
    const none = volume();
    const one = none - volume(fuller(22, { faces: "right" }));
    expect(none - volume(fuller(22, { faces: "right" }), fuller(22, { faces: "left" }))).toBeCloseTo(
      2 * one,
      8,
    );
    expect(issuesOf(opposite(2.01)).map(([code]) => code)).toEqual(["fuller-through", "fuller-through"]);
  });

  it("go through in the middle of a thin bevel, not only at their ends", () => {
    // Across the blade from flat to flat there is steel enough at both ends of it, but not over the hollow between.
    const hollow: BevelSpec = { form: "hollow", wheelRadius: 95, height: 18, edgeThickness: 1 };
    const down = fuller(0, { from: p(60, 25), to: p(60, 4), depth: 0.6 });
    expect(issuesOf(boxKnife({ bevel: hollow, fullers: [down] }))).toEqual([
      ["fuller-through", "blade.fullers[0].depth"],
    ]);
    expect(issuesOf(boxKnife({ bevel: hollow, fullers: [{ ...down, depth: 0.3 }] }))).toEqual([]);
  });

  it("do not run into holes or slots", () => {
    const hole = (y: number, more: Partial<HoleSpec> = {}): HoleSpec => ({
      kind: "lightening",
      at: p(60, y),
      diameter: 6,
      ...more,
    });
    const both = (one: HoleSpec): KnifeSpec => boxKnife({ bevel: flat, fullers: [fuller(25)], holes: [one] });
    expect(issuesOf(both(hole(25 - 3 - HALF - 0.01)))).toEqual([]);
    expect(issuesOf(both(hole(25 - 3 - HALF + 0.1)))).toEqual([["fuller-overlaps", "blade.fullers[0].from"]]);
    const slot = hole(12, { to: p(60, 21) });
    expect(issuesOf(both(slot))).toEqual([["fuller-overlaps", "blade.fullers[0].from"]]);
  });

  it("and slots lie at places that are numbers", () => {
    expect(issuesOf(grooved(fuller(21, { from: p(Number.NaN, 21) })))).toContainEqual([
      "not-a-number",
      "blade.fullers[0].from",
    ]);
    const slot: HoleSpec = { kind: "lightening", at: p(60, 20), to: p(70, Number.NaN), diameter: 4 };
    expect(issuesOf(boxKnife({ holes: [slot] }))).toContainEqual(["not-a-number", "blade.holes[0].to"]);
  });
});

describe("a swedge", () => {
  const swedged = (from: StationPlace, to: StationPlace): KnifeSpec =>
    boxKnife({ swedge: { from, to, angle: 0.5, thickness: 1 } });
  const mm = (value: number): StationPlace => ({ kind: "distance", mm: value });

  it("lies along the spine of the blade, from the handle front to the tip", () => {
    expect(issuesOf(swedged({ kind: "handle" }, { kind: "tip" }))).toEqual([]);
    expect(issuesOf(swedged(mm(-20), mm(120)))).toEqual([]);
    expect(issuesOf(swedged(mm(-21), mm(120)))).toEqual([["swedge-outside-blade", "blade.swedge.from"]]);
    expect(issuesOf(swedged(mm(60), mm(121)))).toEqual([["swedge-outside-blade", "blade.swedge.to"]]);
    expect(issuesOf(swedged({ kind: "butt" }, { kind: "tip" }))).toEqual([
      ["swedge-outside-blade", "blade.swedge.from"],
    ]);
  });
});

describe("hollow faces", () => {
  const hollow = (wheelRadius: number, more: Partial<BevelSpec> = {}): KnifeSpec =>
    boxKnife({ bevel: { form: "hollow", height: 30, edgeThickness: 0.4, wheelRadius, ...more } });
  // Where the faces would touch: the hollow, (v² − 30v)/2R about, is as deep as the flat face, 0.2 + 0.06v.
  const thinnest = (R: number): number => {
    const chord = Math.hypot(30, 1.8);
    const toCentre = Math.sqrt(R * R - (chord / 2) ** 2);
    const centre = { v: 15 - (toCentre * 1.8) / chord, h: 1.1 + (toCentre * 30) / chord };
    return centre.h - R;
  };

  it("that pass each other are refused, for there is no steel between them to weigh", () => {
    let low = 100;
    let high = 250;
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (thinnest(middle) < 0) low = middle;
      else high = middle;
    }
    expect(issuesOf(hollow(low * 1.002))).toEqual([]);
    expect(issuesOf(hollow(low * 0.99))).toEqual([["hollow-through", "blade.bevel.wheelRadius"]]);
  });

  it("also where one of them alone is hollow, and is the one that is named", () => {
    expect(issuesOf(hollow(300, { left: { wheelRadius: 60 } }))).toEqual([
      ["hollow-through", "blade.bevel.left.wheelRadius"],
    ]);
    const back = boxKnife({
      bevel: {
        form: "flat",
        height: 30,
        edgeThickness: 0.4,
        apex: 1,
        right: { form: "hollow", wheelRadius: 50 },
      },
      edgeAngle: { right: "flat", left: 15 * DEGREE },
    });
    expect(issuesOf(back)).toEqual([["hollow-through", "blade.bevel.right.wheelRadius"]]);
  });
});
