import { describe, expect, test } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { measureBody } from "../../src/blade/measure-body.js";
import { SIMILAR_CHANGES, similarKnife, similarSize } from "../../src/blade/similar-knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { DRAWN, LANDMARKS, measureArea, RUNS } from "./similar-fixtures.js";

const SOURCES = [
  ["landmarks", LANDMARKS],
  ["runs with an arc over the heel", RUNS],
  ["a drawing", DRAWN],
] as const satisfies readonly (readonly [string, KnifeSpec])[];

const volume = (spec: KnifeSpec): number => measureBody(makeKnife(spec).body("finished")).value[0] as number;

describe.each(SOURCES)("%s", (_, spec) => {
  const knife = makeKnife(spec);

  test("left whole it is the same knife", () => {
    for (const change of SIMILAR_CHANGES) {
      const same = makeKnife(similarKnife(knife, change, 1));
      expect(measureBody(same.body("finished")).value[0] as number).toBeCloseTo(volume(spec), 4);
      expect(same.outline.butt).toBeCloseTo(knife.outline.butt, 9);
      expect(same.outline.handleFront).toBeCloseTo(knife.outline.handleFront, 9);
    }
  });

  test("the size that is meant to change does, by that share", () => {
    for (const change of SIMILAR_CHANGES) {
      const smaller = makeKnife(similarKnife(knife, change, 0.9));
      expect(similarSize(smaller, change)).toBeCloseTo(0.9 * similarSize(knife, change), 6);
      for (const other of SIMILAR_CHANGES.filter((each) => each !== change)) {
        expect(similarSize(smaller, other), other).toBeCloseTo(similarSize(knife, other), 6);
      }
    }
  });

  test("it always gets lighter, the more the smaller", () => {
    for (const change of SIMILAR_CHANGES) {
      const volumes = [1, 0.97, 0.9, 0.8].map((share) => volume(similarKnife(knife, change, share)));
      for (const [i, one] of volumes.slice(1).entries()) expect(one).toBeLessThan(volumes[i] ?? 0);
    }
  });
});

describe("shorter", () => {
  test("runs: the area ahead of the heel shrinks by the share, that behind it not at all", () => {
    const knife = makeKnife(RUNS);
    const smaller = makeKnife(similarKnife(knife, "shorter", 0.8));
    const [before, after] = [measureArea(knife.outline), measureArea(smaller.outline)];
    expect(after.behind).toBeCloseTo(before.behind, 6);
    // An arc becomes cubics within a hundredth of a micrometre.
    expect(after.ahead).toBeCloseTo(0.8 * before.ahead, 3);
  });

  test("landmarks: what lies behind the heel stays, the family's belly is drawn anew for its length", () => {
    const [whole, short] = [LANDMARKS, similarKnife(makeKnife(LANDMARKS), "shorter", 0.5)].map((one) =>
      measureArea(makeKnife(one).outline),
    );
    expect(short?.behind).toBeCloseTo(whole?.behind ?? 0, 9);
    // Near its share, not on it.
    expect((short?.ahead ?? 0) / (whole?.ahead ?? 1)).toBeCloseTo(0.5, 2);
  });

  test("distances of stations, holes, plunge, swedge and fullers go with it; shares, heights and diameters stay", () => {
    const { blade, tang } = similarKnife(makeKnife(LANDMARKS), "shorter", 0.5);
    expect(blade.thickness.map(({ at }) => at)).toEqual([
      { kind: "heel" },
      { kind: "distance", mm: 60 },
      { kind: "tip" },
    ]);
    expect(blade.thickness.map(({ is }) => is)).toEqual(LANDMARKS.blade.thickness.map(({ is }) => is));
    expect(blade.holes?.[0]).toEqual({ kind: "hanging", at: { x: 90, y: 50 }, diameter: 8 });
    expect(blade.plunge).toEqual({ at: 1, length: 4 });
    expect(blade.bevel.height).toEqual([
      { at: { kind: "distance", mm: 10 }, is: 30 },
      { at: { kind: "fraction", share: 0.9 }, is: 28 },
    ]);
    expect(blade.fullers?.[0]?.from).toEqual({ x: 20, y: 45 });
    expect(tang).toEqual(LANDMARKS.tang);
  });
});

describe("lower", () => {
  test("runs: every area shrinks by the share, and nothing moves along x", () => {
    const knife = makeKnife(RUNS);
    const smaller = makeKnife(similarKnife(knife, "lower", 0.9));
    const [before, after] = [measureArea(knife.outline), measureArea(smaller.outline)];
    expect(after.ahead).toBeCloseTo(0.9 * before.ahead, 3);
    expect(after.behind).toBeCloseTo(0.9 * before.behind, 3);
    expect(smaller.outline.edgeLength).toBeCloseTo(knife.outline.edgeLength, 9);
  });

  test("landmarks: the edge stays straight as far as it was, holes keep their share of the height", () => {
    const { blade, tang } = similarKnife(makeKnife(LANDMARKS), "lower", 0.9);
    const edge = makeKnife({ ...LANDMARKS, blade, tang }).outline.runs.edge[0];
    expect(edge).toMatchObject({ kind: "line", from: { x: 0, y: 0 }, to: { x: 150, y: 0 } });
    expect(blade.holes?.[0]?.at).toEqual({ x: 180, y: 45 });
    expect(tang.holes?.[0]?.at.y).toBeCloseTo(0.9 * 70, 12);
    expect(tang.heights?.front).toBeCloseTo(0.9 * 28, 12);
  });
});

describe("thinner toward the tip", () => {
  const knife = makeKnife(LANDMARKS);

  test("the heel stays, stations between go evenly with their place", () => {
    const { thickness } = similarKnife(knife, "thinner-tip", 0.5).blade;
    // 120 of 225 mm: 1 − 0.5·120/225
    expect(thickness.map(({ is }) => is)).toEqual([4.6, 3.6 * (1 - (0.5 * 120) / 225), 1.1]);
  });

  test("a blade of one thickness gets a station at the tip", () => {
    const even: KnifeSpec = {
      ...LANDMARKS,
      blade: { ...LANDMARKS.blade, thickness: [{ at: { kind: "fraction", share: 0.6 }, is: 4 }] },
    };
    const { spine } = makeKnife(similarKnife(makeKnife(even), "thinner-tip", 0.75)).laws;
    expect(spine.valueAt(0)).toBe(4);
    expect(spine.valueAt(225)).toBe(3);
  });
});
