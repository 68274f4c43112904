import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FAMILY_NAMES } from "../../src/blade/families.js";
import { makeKnife, rebuildKnife } from "../../src/blade/knife.js";
import { moveSides } from "../../src/blade/move-sides.js";
import type { Outline } from "../../src/blade/outline.js";
import { outlineFromLandmarks } from "../../src/blade/outline-from-landmarks.js";
import { Reweigher } from "../../src/blade/reweigher.js";
import { sidesMoved, uncertainSides } from "../../src/blade/sides-moved.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { weighInterval } from "../../src/blade/weigh-interval.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { pathLength } from "../../src/plane/length.js";
import { signedArea } from "../../src/plane/measure.js";
import { nearestOnPath } from "../../src/plane/nearest.js";
import { endTangent, pointAt, type Segment } from "../../src/plane/segment.js";
import { validateOutline } from "../../src/plane/validate.js";
import { dot } from "../../src/plane/vec2.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { BLOCK_KNIFE, NOTHING_UNCERTAIN, SINGLE_BEVEL, SLAB_KNIFE } from "./interval-knives.js";
import { at, heel, SEED } from "./random-knives.js";
import { anyOutline } from "./random-outlines.js";

const moved = (outline: Outline, by: number): Outline => {
  const out = moveSides(outline, () => by);
  if (out === undefined) throw new Error("a piece is too small for this");
  return out;
};

/** Every side but one run's, by hand. */
const only = (outline: Outline, run: string, by: number): Outline | undefined =>
  moveSides(outline, (name) => (name === run ? by : 0));

/** Angle between the edge's end and the spine's start, rad. */
function tipAngle({ runs }: Outline): number {
  const edge = endTangent(runs.edge.at(-1) as Segment, "to") ?? p(1, 0);
  const spine = endTangent(runs.spine[0] as Segment, "from") ?? p(-1, 0);
  return Math.acos(-dot(edge, spine));
}

describe("sides of an outline moved out", () => {
  const box = makeKnife(boxKnife()).outline;

  it("corners of a box go where their sides meet, and the heel stays the origin", () => {
    const out = moved(box, 0.5);
    expect(out.path.segments.map(({ from }) => [from.x, from.y])).toEqual([
      [0, 0],
      [121, 0],
      [121, 31],
      // The handle front lies on one straight line: it moves up only, but the heel has moved back from it.
      [-19.5, 31],
      [-100, 31],
      [-100, 10],
      [-19.5, 10],
      [0, 10],
    ]);
    expect(out.handleFront).toBe(-19.5);
  });

  it("one run alone", () => {
    expect(only(box, "front", 2)?.edgeLength).toBe(122);
    expect(only(box, "butt", 2)?.butt).toBe(-102);
    expect(only(box, "edge", -2)?.path.segments[2]?.from).toEqual({ x: 120, y: 28 });
  });

  it("arcs stay on their centre: a rounded butt", () => {
    const { outline } = makeKnife(
      boxKnife({
        outline: {
          runs: {
            edge: "M0 0 L120 0",
            front: "L120 30",
            spine: "L-20 30",
            tangTop: "L-100 30",
            butt: "A10 10 0 0 1 -100 10",
            tangBottom: "L-20 10",
            heelFace: "L0 10 L0 0",
          },
        },
      }),
    );
    const [arc] = moved(outline, 0.5).runs.butt;
    if (arc?.kind !== "arc") throw new Error("the butt is an arc");
    expectWithin(arc.radius, 10.5, 1e-12);
    // Half a millimetre right and up, as the heel went left and down.
    expectWithin(arc.centre.x, -99.5, 1e-12);
    expectWithin(arc.centre.y, 20.5, 1e-12);
  });

  for (const family of FAMILY_NAMES) {
    for (const form of ["full", "hidden"] as const) {
      it(`${family}, ${form} tang: every side lies as far from where it was, and the area grows by its length`, () => {
        const outline = outlineFromLandmarks(
          { family, edgeLength: 150, heelHeight: 40 },
          8,
          { form, length: 110, ...(form === "full" ? {} : { shoulderRadius: 2 }) },
          form === "full" ? { radius: 3 } : undefined,
        );
        for (const by of [0.5, -0.5]) {
          const out = moved(outline, by);
          expect(validateOutline(out.path)).toEqual([]);
          // Undo the way of the heel: the corner of edge and heel face, or the end of a level line.
          const heelFace = outline.runs.heelFace.at(-1) ?? outline.runs.tangBottom.at(-1);
          const isCorner = heelFace?.from.x === heelFace?.to.x;
          const back = { x: isCorner ? -by : 0, y: -by };
          for (const segment of out.path.segments) {
            for (const t of [0.3, 0.5, 0.7]) {
              const point = pointAt(segment, t);
              const there = { x: point.x + back.x, y: point.y + back.y };
              const nearest = nearestOnPath(outline.path, there);
              const distance = nearest?.distance ?? Number.NaN;
              // Round a corner the sides are drawn on to where they meet, which is farther from it than they are.
              const isAtCorner = nearest !== undefined && Math.abs(nearest.t - 0.5) > 0.5 - 1e-6;
              if (isAtCorner) expect(distance).toBeGreaterThan(0.98 * Math.abs(by));
              else expectWithin(distance, Math.abs(by), 0.02 * Math.abs(by), `${family} at ${point.x}`);
            }
          }
          // Steiner: A(d) = A + L·d + d² times what the turns make of it, a few units.
          const gained = signedArea(out.path) - signedArea(outline.path);
          expectWithin(gained, pathLength(outline.path) * by, 12 * by * by, "area");
        }
      });
    }
  }

  it("goes a part of the way where a piece is too small, and the change is scaled up", () => {
    // The same box with a nick of 0.2 mm in the spine: out by half a millimetre it would close.
    const nicked = boxKnife({
      outline: {
        runs: {
          edge: "M0 0 L120 0",
          front: "L120 30",
          spine: "L60 30 L60 29.9 L59.8 29.9 L59.8 30 L-20 30",
          tangTop: "L-100 30",
          butt: "L-100 10",
          tangBottom: "L-20 10",
          heelFace: "L0 10 L0 0",
        },
      },
    });
    expect(moveSides(makeKnife(nicked).outline, () => 0.5)).toBeUndefined();
    const only = { ...NOTHING_UNCERTAIN, outline: 0.5 };
    const [low, high] = weighInterval(nicked, [], only).massInterval;
    const plain = weighInterval(boxKnife(), [], only).massInterval;
    expectRelative(high - low, plain[1] - plain[0], 0.01);
  });

  it("of random proportions: the area grows by the length as far as the way goes", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FAMILY_NAMES).chain((family) => anyOutline(family, "full")),
        fc.constantFrom(0.02, -0.02),
        ({ spec, ricasso, tang, choil }, way) => {
          const outline = outlineFromLandmarks(spec, ricasso, tang, choil);
          // No spikes of a few degrees: their points are held back.
          const heights = Object.values(tang.heights ?? {});
          fc.pre(tipAngle(outline) > 0.2 && Math.max(...heights) < (tang.length ?? 0));
          let by = way;
          while (moveSides(outline, () => by) === undefined) by /= 2;
          expect(Math.abs(by)).toBeGreaterThan(1e-5);
          const gained = (signedArea(moved(outline, by).path) - signedArea(outline.path)) / by;
          expectWithin(gained, pathLength(outline.path), 0.05 * pathLength(outline.path) + 20 * Math.abs(by));
        },
      ),
      { seed: SEED, numRuns: 400 },
    );
  });
});

describe("what the outline's tolerance does to the weight", () => {
  const all = uncertainSides([])?.runs ?? [];

  it("is what a knife weighs whose every size is moved by hand", () => {
    // A box knife without ricasso, heel face and front at right angles; its bevel of fixed height goes with the edge.
    const runs = (by: number): KnifeSpec =>
      boxKnife({
        outline: {
          runs: {
            edge: `M0 0 L${120 + 2 * by} 0`,
            front: `L${120 + 2 * by} ${30 + 2 * by}`,
            spine: `L${-20 + by} ${30 + 2 * by}`,
            tangTop: `L-100 ${30 + 2 * by}`,
            butt: "L-100 10",
            tangBottom: `L${-20 + by} 10`,
            heelFace: "L0 10 L0 0",
          },
        },
        // The taper stays where it was forged.
        thickness: [heel(4), at(110, 2)],
        bevel: { form: "flat", height: 12, edgeThickness: 0.4 },
      });
    const scale = new Reweigher(rebuildKnife(runs(0)));
    for (const by of [0.5, -0.5]) {
      const { mass, balance } = sidesMoved(scale, all, by);
      const { knife } = weighKnife(makeKnife(runs(by)));
      expectRelative(mass, knife.mass, 1e-8);
      expectWithin(balance, knife.balanceFromHeel, 1e-5);
    }
  });

  it("grows evenly with the way, so that a part of it tells the whole", () => {
    for (const spec of [SLAB_KNIFE, BLOCK_KNIFE, SINGLE_BEVEL]) {
      const scale = new Reweigher(rebuildKnife(spec));
      const slope = (by: number): number => (sidesMoved(scale, all, by).mass - scale.middle.mass) / by;
      for (const by of [-0.5, -0.1, 0.1]) expectRelative(slope(by), slope(0.5), 0.03);
    }
  });

  it("is the blade's alone, the tang's alone, or none, where heights have tolerances of their own", () => {
    const height = { path: "blade.outline.heelHeight", plus: 1, minus: 1 };
    const tang = { path: "tang.heights.butt", plus: 1, minus: 1 };
    expect(uncertainSides([height])?.input).toBe("outline.tang");
    expect(uncertainSides([tang])?.input).toBe("outline.blade");
    expect(uncertainSides([height, tang])).toBeUndefined();
    const inputs = weighInterval(SLAB_KNIFE, [height]).contributions.map(({ input }) => input);
    expect(inputs).toContain("outline.tang");
    expect(inputs).not.toContain("outline");
  });
});
