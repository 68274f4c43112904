import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FAMILY_NAMES } from "../../src/blade/families.js";
import { type Outline, RUN_NAMES } from "../../src/blade/outline.js";
import { outlineFromLandmarks } from "../../src/blade/outline-from-landmarks.js";
import type { FamilyName, LandmarkOutlineSpec, TangSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";
import type { Issue } from "../../src/errors/issue.js";
import { parametersAtX } from "../../src/plane/at-x.js";
import { extremeParameters } from "../../src/plane/bounds.js";
import { signedArea } from "../../src/plane/measure.js";
import { derivativeAt, endTangent, pointAt, secondDerivativeAt } from "../../src/plane/segment.js";
import { validateOutline } from "../../src/plane/validate.js";
import { cross, dot, type Vec2 } from "../../src/plane/vec2.js";

const SEED = 20_260_714;

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

/** Even over the range, with its ends and round shares among the values. */
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((i) => min + ((max - min) * i) / 1_000_000);

const anyOutline = (
  family: FamilyName,
): fc.Arbitrary<{ spec: LandmarkOutlineSpec; ricasso: number; tang: TangSpec }> => {
  const share = between(0, 1);
  return fc
    .record({
      edgeLength: between(20, 400),
      slimness: between(0.05, 1.5),
      straight: share,
      tip: share,
      spineBreak: share,
      ricasso: fc.oneof(fc.constant(0), between(0.1, 30)),
      tangLength: between(5, 200),
      tangShares: fc.tuple(share, share, share),
      drop: fc.oneof(fc.constant(0), between(0, 0.3)),
    })
    .map((r) => {
      const heelHeight = r.edgeLength * r.slimness;
      const straightEdge = r.straight * r.edgeLength * 0.98;
      const belly = r.edgeLength - straightEdge;
      const tipHeight =
        family === "vegetable" ? heelHeight - r.tip * Math.min(belly, 0.98 * heelHeight) : heelHeight * r.tip;
      const [front, middle, butt] = r.tangShares.map((s) => heelHeight * (0.05 + 0.9 * s));
      return {
        spec: {
          family,
          edgeLength: r.edgeLength,
          heelHeight,
          straightEdge,
          tipHeight,
          ...(family === "vegetable" ? {} : { spineBreak: 0.99 * r.spineBreak * r.edgeLength }),
        },
        ricasso: r.ricasso,
        tang: {
          form: "full" as const,
          length: r.tangLength,
          drop: r.drop * heelHeight,
          heights: { front: front as number, middle: middle as number, butt: butt as number },
        },
      };
    });
};

/** Area of a polygon through many points of every segment: the second method for the area. */
function polygonArea(outline: Outline, pieces: number): number {
  const points: Vec2[] = outline.path.segments.flatMap((segment) =>
    segment.kind === "line"
      ? [segment.from]
      : Array.from({ length: pieces }, (_, i) => pointAt(segment, i / pieces)),
  );
  return points.reduce((sum, p, i) => sum + cross(p, points[(i + 1) % points.length] as Vec2) / 2, 0);
}

describe.each(FAMILY_NAMES)("every %s", (family) => {
  it("is closed, simple and counter-clockwise, with an edge that leads forward and bends one way", () => {
    fc.assert(
      fc.property(anyOutline(family), ({ spec, ricasso, tang }) => {
        const outline = outlineFromLandmarks(spec, ricasso, tang);
        expect(validateOutline(outline.path)).toEqual([]);
        const { segments } = outline.path;
        segments.forEach((segment, i) => {
          expect(segments[(i + 1) % segments.length]?.from).toEqual(segment.to);
        });
        expect(RUN_NAMES.flatMap((name) => outline.runs[name])).toEqual(segments);
        expectForward(outline);
        const exact = signedArea(outline.path);
        expect(exact).toBeGreaterThan(0);
        // Chords of n pieces miss about (1/n²) of what a bow holds.
        expect(Math.abs(polygonArea(outline, 400) - exact)).toBeLessThan(1e-5 * exact);
      }),
      { seed: SEED, numRuns: 700 },
    );
  });

  it("fills in what is left out", () => {
    const outline = outlineFromLandmarks({ family, edgeLength: 160, heelHeight: 45 }, 5, {
      form: "full",
      length: 120,
    });
    expect(validateOutline(outline.path)).toEqual([]);
    expect(outline.edgeLength).toBe(160);
  });
});

function expectForward(outline: Outline): void {
  const edge = outline.runs.edge;
  edge.forEach((segment, i) => {
    expect(extremeParameters(segment, "x")).toEqual([]);
    expect(parametersAtX(segment, (segment.from.x + segment.to.x) / 2)).toHaveLength(1);
    for (let k = 0; k <= 20; k++) {
      const turning = cross(derivativeAt(segment, k / 20), secondDerivativeAt(segment, k / 20));
      expect(turning).toBeGreaterThanOrEqual(-1e-9);
    }
    const next = edge[i + 1];
    if (next !== undefined) {
      const before = endTangent(segment, "to") as Vec2;
      const after = endTangent(next, "from") as Vec2;
      expect(dot(before, after)).toBeCloseTo(1, 12);
    }
  });
}

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
