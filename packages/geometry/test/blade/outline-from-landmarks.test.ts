import { describe, expect, it } from "vitest";
import type { Outline } from "../../src/blade/outline.js";
import { outlineFromLandmarks } from "../../src/blade/outline-from-landmarks.js";
import type { LandmarkOutlineSpec, TangSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";
import type { Issue } from "../../src/errors/issue.js";
import { parametersAtX } from "../../src/plane/at-x.js";
import { signedArea } from "../../src/plane/measure.js";
import { type Arc, endTangent, pointAt, type Segment } from "../../src/plane/segment.js";

/** The market garden's harvest knife. */
const harvest: LandmarkOutlineSpec = {
  family: "vegetable",
  edgeLength: 225,
  heelHeight: 92,
  straightEdge: 150,
  tipHeight: 80,
};
const harvestTang: TangSpec = { form: "full", length: 128, heights: { front: 28, middle: 25, butt: 30 } };

const issuesOf = (build: () => unknown): readonly Issue[] => {
  try {
    build();
  } catch (error) {
    if (error instanceof SpecError) return error.issues;
    throw error;
  }
  return [];
};
const codesAndPaths = (build: () => unknown): string[] =>
  issuesOf(build).map((found) => `${found.code} ${found.path}`);

describe("square front", () => {
  const outline = outlineFromLandmarks(harvest, 10, harvestTang);

  it("reads its stations off the runs", () => {
    expect(outline).toMatchObject({ edgeLength: 225, handleFront: -10, butt: -138, ricasso: 10 });
  });

  it("lifts the edge by one arc with the radius of chord and sagitta, (75² + 12²)/24", () => {
    const belly = outline.runs.edge[1];
    expect(belly?.kind).toBe("arc");
    expect(belly).toMatchObject({ from: { x: 150, y: 0 }, to: { x: 225, y: 12 } });
    expect((belly as { radius: number }).radius).toBeCloseTo(240.375, 10);
    expect(endTangent(belly as never, "from")?.y).toBeCloseTo(0, 14);
  });

  it("has the area of its trapezoids, rectangles and circular segment", () => {
    // Above the chord of the belly, then the segment of the arc below the chord: r²/2 (θ − sin θ).
    const theta = 2 * Math.atan2(12, 75);
    const segment = (240.375 ** 2 / 2) * (theta - Math.sin(theta));
    const blade = 150 * 92 + (75 * (92 + 80)) / 2 + segment;
    const ricasso = 10 * 28;
    const tang = (64 * (28 + 25)) / 2 + (64 * (25 + 30)) / 2;
    expect(signedArea(outline.path)).toBeCloseTo(blade + ricasso + tang, 8);
  });

  it("puts the heel face level from the handle front and then straight down to the heel", () => {
    expect(outline.runs.heelFace.map(({ from, to }) => [from, to])).toEqual([
      [
        { x: -10, y: 64 },
        { x: 0, y: 64 },
      ],
      [
        { x: 0, y: 64 },
        { x: 0, y: 0 },
      ],
    ]);
  });

  it("steps down at the handle front where the tang is dropped", () => {
    const dropped = outlineFromLandmarks(harvest, 10, { ...harvestTang, drop: 5 });
    expect(dropped.runs.tangTop.map(({ to }) => to)).toEqual([
      { x: -10, y: 87 },
      { x: -138, y: 87 },
    ]);
    expect(dropped.runs.heelFace[0]?.from).toEqual({ x: -10, y: 59 });
  });

  it("has a straight edge where the front is as high as the heel, and no ricasso where there is none", () => {
    const plain = outlineFromLandmarks({ ...harvest, tipHeight: 92 }, 0, harvestTang);
    expect(plain.runs.edge).toHaveLength(1);
    expect(plain.runs.heelFace).toHaveLength(1);
    expect(Object.is(plain.ricasso, 0) && Object.is(plain.handleFront, 0)).toBe(true);
  });

  it("keeps its shape where the lift all but vanishes", () => {
    for (const lift of [1e-1, 1e-3, 1e-5]) {
      const flat = outlineFromLandmarks({ ...harvest, tipHeight: 92 - lift }, 10, harvestTang);
      const belly = flat.runs.edge[1];
      const middle = pointAt(belly as never, 0.5);
      // A flat circular arc is a parabola to leading order: a quarter of the lift half way.
      expect(middle.y / (92 - (92 - lift))).toBeCloseTo(0.25, 5);
    }
  });
});

describe("pointed families", () => {
  it("straight back: the spine stays level to the tip", () => {
    const outline = outlineFromLandmarks({ family: "straight-back", edgeLength: 150, heelHeight: 34 }, 6, {
      form: "full",
      length: 110,
    });
    expect(outline.runs.front).toEqual([]);
    expect(outline.runs.spine).toEqual([{ kind: "line", from: { x: 150, y: 34 }, to: { x: -6, y: 34 } }]);
  });

  it("drop point: the spine leaves its level without a corner and bows down to the tip", () => {
    const outline = outlineFromLandmarks(
      { family: "drop-point", edgeLength: 110, heelHeight: 30, tipHeight: 16, spineBreak: 50 },
      6,
      { form: "full", length: 105 },
    );
    const [fall, level] = outline.runs.spine;
    expect(fall).toMatchObject({ kind: "cubic", from: { x: 110, y: 16 }, to: { x: 50, y: 30 } });
    expect(endTangent(fall as never, "to")).toEqual({ x: -1, y: 0 });
    expect(level).toMatchObject({ kind: "line", to: { x: -6, y: 30 } });
  });

  it("the belly is a circular arc to 3 parts in 10 000 of its radius where it rises less than it runs", () => {
    const outline = outlineFromLandmarks(
      { family: "straight-back", edgeLength: 150, heelHeight: 40, straightEdge: 80 },
      0,
      { form: "full", length: 110 },
    );
    const radius = (70 ** 2 + 40 ** 2) / 80;
    const belly = outline.runs.edge[1];
    for (let i = 0; i <= 100; i++) {
      const p = pointAt(belly as never, i / 100);
      expect(Math.abs(Math.hypot(p.x - 80, p.y - radius) / radius - 1)).toBeLessThan(3e-4);
    }
  });
});

describe("families with a form of their own", () => {
  const tang: TangSpec = { form: "full", length: 110 };
  const draw = (spec: LandmarkOutlineSpec): Outline => outlineFromLandmarks(spec, 8, tang);
  const kinds = (run: readonly Segment[]): string[] => run.map(({ kind }) => kind);
  /** Height of the run that falls or rises to the tip, at x. */
  const heightAt = (segment: Segment | undefined, x: number): number => {
    const [t] = segment === undefined ? [] : parametersAtX(segment, x);
    return segment === undefined || t === undefined ? Number.NaN : pointAt(segment, t).y;
  };

  it("clip point: a hollow circular arc from a corner in the spine, below its chord and above the tip", () => {
    const { spine } = draw({
      family: "clip-point",
      edgeLength: 200,
      heelHeight: 40,
      tipHeight: 16,
      spineBreak: 120,
    }).runs;
    expect(kinds(spine)).toEqual(["arc", "line"]);
    const [clip] = spine as [Arc, Segment];
    expect(clip).toMatchObject({ from: { x: 200, y: 16 }, to: { x: 120, y: 40 } });
    expect(heightAt(clip, 160)).toBeLessThan(28);
    expect(heightAt(clip, 160)).toBeGreaterThan(16);
    // Leaves the corner 1.7 times and reaches the tip 0.3 times as steep as its chord, in angle.
    const fall = Math.atan2(24, 80);
    expect(Math.atan2(endTangent(clip, "to")?.y ?? 0, -(endTangent(clip, "to")?.x ?? 0))).toBeCloseTo(
      1.7 * fall,
      12,
    );
    expect(Math.atan2(endTangent(clip, "from")?.y ?? 0, -(endTangent(clip, "from")?.x ?? 0))).toBeCloseTo(
      0.3 * fall,
      12,
    );
  });

  it("trailing point: the spine leaves its level without a corner and rises to a tip above it", () => {
    const { spine } = draw({
      family: "trailing-point",
      edgeLength: 120,
      heelHeight: 28,
      tipHeight: 40,
      spineBreak: 50,
    }).runs;
    expect(spine[0]).toMatchObject({ kind: "cubic", from: { x: 120, y: 40 }, to: { x: 50, y: 28 } });
    expect(endTangent(spine[0] as never, "to")).toEqual({ x: -1, y: 0 });
    expect(heightAt(spine[0], 85)).toBeLessThan(34);
  });

  it("trailing point: says where edge and spine would meet before the tip", () => {
    const spec = {
      family: "trailing-point",
      edgeLength: 120,
      heelHeight: 5,
      straightEdge: 0,
      tipHeight: 100,
      spineBreak: 110,
    } as const;
    expect(codesAndPaths(() => draw(spec))).toContain("edge-meets-spine blade.outline.tipHeight");
  });

  it("sheepsfoot: straight edge, the spine bowing down to its end", () => {
    const { edge, spine } = draw({ family: "sheepsfoot", edgeLength: 100, heelHeight: 26 }).runs;
    expect(edge).toEqual([{ kind: "line", from: { x: 0, y: 0 }, to: { x: 100, y: 0 } }]);
    expect(spine[0]).toMatchObject({ kind: "cubic", from: { x: 100, y: 0 }, to: { x: 70, y: 26 } });
    expect(heightAt(spine[0], 85)).toBeGreaterThan(13);
  });

  it("seax: straight edge, the spine broken at an angle", () => {
    const outline = draw({ family: "seax", edgeLength: 240, heelHeight: 36, spineBreak: 150 });
    expect(outline.runs.spine.map(({ from, to }) => [from, to])).toEqual([
      [
        { x: 240, y: 0 },
        { x: 150, y: 36 },
      ],
      [
        { x: 150, y: 36 },
        { x: -8, y: 36 },
      ],
    ]);
    const full = outlineFromLandmarks(
      { family: "seax", edgeLength: 240, heelHeight: 36, spineBreak: 150 },
      0,
      {
        form: "full",
        length: 110,
        heights: { front: 20, middle: 20, butt: 20 },
      },
    );
    expect(signedArea(full.path)).toBeCloseTo(150 * 36 + (90 * 36) / 2 + 110 * 20, 9);
  });

  it("tanto: the edge turns at a corner and runs straight to the tip", () => {
    const { edge, spine } = draw({
      family: "tanto",
      edgeLength: 160,
      heelHeight: 32,
      straightEdge: 130,
    }).runs;
    expect(edge.map(({ kind, to }) => [kind, to])).toEqual([
      ["line", { x: 130, y: 0 }],
      ["line", { x: 160, y: 32 }],
    ]);
    expect(kinds(spine)).toEqual(["line"]);
  });

  it("spear point: edge and spine mirror each other in the middle line", () => {
    const { edge, spine } = draw({ family: "spear-point", edgeLength: 140, heelHeight: 32 }).runs;
    for (const x of [90, 110, 130]) {
      expect(heightAt(edge[1], x) + heightAt(spine[0], x)).toBeCloseTo(32, 9);
    }
  });
});

describe("landmarks that cannot be", () => {
  const bad = (spec: Partial<LandmarkOutlineSpec>, ricasso = 10, tang: Partial<TangSpec> = {}): string[] =>
    codesAndPaths(() => outlineFromLandmarks({ ...harvest, ...spec }, ricasso, { ...harvestTang, ...tang }));

  it("names each with its place in the file", () => {
    expect(bad({ straightEdge: 240 })).toEqual(["straight-edge-too-long blade.outline.straightEdge"]);
    expect(bad({ tipHeight: 93 })).toEqual(["tip-above-spine blade.outline.tipHeight"]);
    expect(bad({ straightEdge: 220 })).toEqual(["belly-too-short blade.outline.straightEdge"]);
    expect(bad({ straightEdge: 225 })).toEqual(["belly-too-short blade.outline.straightEdge"]);
    expect(bad({ family: "drop-point", spineBreak: 225 })).toEqual([
      "spine-break-beyond-tip blade.outline.spineBreak",
    ]);
    expect(bad({ family: "drop-point", tipHeight: 93 })).toEqual(["tip-above-spine blade.outline.tipHeight"]);
    expect(bad({ family: "tanto", straightEdge: 225 })).toEqual([
      "belly-too-short blade.outline.straightEdge",
    ]);
    expect(bad({ family: "falchion" as never })).toEqual(["unknown-family blade.outline.family"]);
    expect(bad({ edgeLength: 1e6 })).toEqual(["length-too-great blade.outline.edgeLength"]);
    expect(bad({ spineBreak: 100 })).toEqual(["spine-break-unused blade.outline.spineBreak"]);
    expect(bad({}, 10, { drop: 92 })).toEqual(["tang-drop-too-deep tang.drop"]);
    expect(codesAndPaths(() => outlineFromLandmarks(harvest, 10, { form: "full" }))).toEqual([
      "tang-length-missing tang.length",
    ]);
  });

  it("lists zero, negative and non-finite sizes all at once", () => {
    expect(
      bad({ edgeLength: 0, heelHeight: -3, tipHeight: Number.NaN }, Number.POSITIVE_INFINITY, {
        length: -1,
        heights: { front: 0, middle: 25, butt: -2 },
      }),
    ).toEqual([
      "zero-length blade.outline.edgeLength",
      "negative-length blade.outline.heelHeight",
      "not-a-length blade.outline.tipHeight",
      "not-a-length blade.ricasso",
      "negative-length tang.length",
      "zero-length tang.heights.front",
      "negative-length tang.heights.butt",
    ]);
  });

  it("fills every placeholder of its message", () => {
    for (const found of issuesOf(() =>
      outlineFromLandmarks({ ...harvest, straightEdge: 240, tipHeight: 99 }, 10, harvestTang),
    )) {
      for (const [, name] of found.text.matchAll(/\{(\w+)\}/g)) {
        expect(Object.keys(found.values ?? {})).toContain(name);
      }
    }
  });
});
