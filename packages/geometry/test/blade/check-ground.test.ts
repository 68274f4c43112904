import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fullerFloor } from "../../src/blade/fuller-floor.js";
import { makeKnife } from "../../src/blade/knife.js";
import type { BevelSpec, FullerSpec, HoleSpec, KnifeSpec, StationPlace } from "../../src/blade/spec.js";
import { SteelBody } from "../../src/blade/steel-body.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { SpecError } from "../../src/errors/errors.js";
import { between, SEED } from "../plane/arbitraries.js";
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

describe("the thinnest place under a fuller", () => {
  // A search ends after some steps, perhaps just short of the lowest place; mm of steel.
  const SEARCHED = 1e-6;

  const sheepsfoot = (more: Partial<FullerSpec>): KnifeSpec =>
    boxKnife(
      {
        outline: { family: "sheepsfoot", edgeLength: 120, heelHeight: 28 },
        edgeAngle: 0.35,
        fullers: [{ from: p(30, 20), to: p(30, 6), radius: 30, depth: 0.58, ...more }],
      },
      { tang: { length: 100 } },
    );

  it("may lie in its round end, beyond the line it is cut along", () => {
    expect(issuesOf(sheepsfoot({}))).toEqual([["fuller-through", "blade.fullers[0].depth"]]);
    // The same the other way round, and one that is shallow enough.
    expect(issuesOf(sheepsfoot({ from: p(30, 6), to: p(30, 20) }))).toEqual([
      ["fuller-through", "blade.fullers[0].depth"],
    ]);
    expect(issuesOf(sheepsfoot({ depth: 0.4 }))).toEqual([]);
  });

  it("may lie where two narrow ones on opposite faces cross", () => {
    // Each is 0.64 wide, and they cross halfway between two places of a grid of 96 along the longer one.
    const step = (104.4 + 0.64) / 96;
    const x = 7.3 - 0.32 + 40.5 * step;
    const crossing = (depth: number): KnifeSpec =>
      grooved(
        fuller(23, { from: p(7.3, 23), to: p(111.7, 23), radius: 0.32, depth: 2.01, faces: "right" }),
        fuller(0, { from: p(x, 27.5), to: p(x, 19.5), radius: 0.32, depth, faces: "left" }),
      );
    expect(issuesOf(crossing(2.01)).map(([code]) => code)).toEqual(["fuller-through", "fuller-through"]);
    expect(issuesOf(crossing(1.98))).toEqual([]);
  });

  it("is no thicker than anywhere in a dense scan", () => {
    const hollow: BevelSpec = { form: "hollow", wheelRadius: 95, height: 18, edgeThickness: 1 };
    fc.assert(
      fc.property(
        fc.constantFrom(flat, hollow),
        fc.tuple(between(20, 100), between(9, 22)),
        fc.tuple(between(20, 100), between(9, 22)),
        fc.tuple(between(20, 100), between(9, 22)),
        between(2, 30),
        between(0.1, 0.6),
        (bevel, a, b, c, radius, depth) => {
          const cut = { from: p(...a), to: p(...b), radius, depth, faces: "right" } as const;
          const other = { from: p(...c), to: p(...a), radius: 3, depth: 0.3, faces: "left" } as const;
          const { input } = makeKnife(boxKnife({ bevel })).body("finished");
          const body = new SteelBody({ ...input, grooves: [cut, other] });
          const w = Math.sqrt(2 * radius * depth - depth * depth);
          let seen = Number.POSITIVE_INFINITY;
          const run = Math.hypot(b[0] - a[0], b[1] - a[1]);
          const t = run === 0 ? p(1, 0) : p((b[0] - a[0]) / run, (b[1] - a[1]) / run);
          for (let i = 0; i <= 240; i++) {
            const s = -w + ((run + 2 * w) * i) / 240;
            const beyond = Math.max(0, -s, s - run);
            for (let j = 0; j <= 60; j++) {
              const q = Math.sqrt(Math.max(0, w * w - beyond * beyond)) * (j / 30 - 1);
              const left = body.thicknessIgnoringOutline(
                p(a[0] + s * t.x - q * t.y, a[1] + s * t.y + q * t.x),
              );
              seen = Math.min(seen, left);
            }
          }
          expect(fullerFloor(body, cut).left).toBeLessThanOrEqual(seen + SEARCHED);
        },
      ),
      { seed: SEED, numRuns: 100 },
    );
  });
});

describe("slots", () => {
  const slot = (y: number, from: number): HoleSpec => ({
    kind: "lightening",
    at: p(from, y),
    to: p(from + 60, y),
    diameter: 10,
  });

  it("that run into each other by a hair are refused", () => {
    // 9.99 from middle to middle, each 10 wide.
    const two = (y: number): KnifeSpec => boxKnife({ bevel: flat, holes: [slot(7, 20), slot(y, 20.615)] });
    expect(issuesOf(two(16.99))).toEqual([["holes-overlap", "blade.holes[1].at"]]);
    expect(issuesOf(two(17.01))).toEqual([]);
  });

  it("that come out of the steel by a hair, at a place between their ends, are refused", () => {
    // The corner of the notch stands 0.01 into the slot, halfway between two places of a row a quarter radius apart.
    const cut = (low: number): KnifeSpec => {
      const runs = {
        edge: "M0 0 L120 0",
        front: "L120 30",
        spine: `L50.625 30 L50.62 ${low} L50.615 30 L-20 30`,
        tangTop: "L-100 30",
        butt: "L-100 10",
        tangBottom: "L-20 10",
        heelFace: "L0 10 L0 0",
      };
      return boxKnife({ outline: { runs }, bevel: flat, holes: [slot(18, 20)] });
    };
    expect(issuesOf(cut(22.99))).toEqual([["hole-outside-steel", "blade.holes[0].to"]]);
    expect(issuesOf(cut(23.01))).toEqual([]);
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

  it("are told the smallest wheel that leaves the blade no thinner above its edge", () => {
    const found = (radius: number) => {
      try {
        return makeKnife(hollow(radius)).findings;
      } catch (error) {
        if (error instanceof SpecError) return error.issues;
        throw error;
      }
    };
    const [issue] = found(60);
    expect(issue?.text).toContain("{least} is the smallest");
    const least = issue?.values?.["least"] as { value: number } | undefined;
    const codes = (radius: number) => found(radius).map(({ code }) => code);
    expect(codes((least?.value ?? 0) * 1.001)).not.toContain("wheel-too-small");
    expect(codes((least?.value ?? 0) * 0.999)).toContain("wheel-too-small");
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
