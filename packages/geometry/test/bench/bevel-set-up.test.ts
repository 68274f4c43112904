import { describe, expect, test } from "vitest";
import { bevelSetUps } from "../../src/bench/bevel-set-up.js";
import { bevelAt } from "../../src/blade/bevel-at.js";
import { makeKnife } from "../../src/blade/knife.js";
import { randomKnives } from "../blade/random-knives.js";
import { chopper, withBevel } from "./bench-knives.js";
import { convexArc, hollowArc } from "./closed-forms.js";

describe("a flat bevel", () => {
  // Ready to harden: 5.2 at the heel, edge 0.8, bevel line 30 up: (5.2 − 0.8) / 2 = 2.2 a side.
  const [face] = bevelSetUps(chopper(), { jigLever: 150 });
  const first = face?.stations[0];

  test("is set from the ready-to-harden sizes", () => {
    expect(face).toMatchObject({ side: "both", form: "flat" });
    expect(first?.angle).toBeCloseTo(Math.atan(2.2 / 30), 9);
    expect(first?.depth).toBeCloseTo(2.2, 9);
    expect(face?.leverShim).toBeCloseTo(150 * Math.sin(Math.atan(2.2 / 30)), 9);
    expect(first?.arc).toBeUndefined();
  });

  test("comes off what the hammer left", () => {
    // Forged edge 1.6: 0.8 a side, less the 0.4 that stays.
    expect(first?.fromHammered).toBeCloseTo(0.4, 9);
  });

  test("droops toward the tip at a fixed angle: b = (t − e)/(2 tan α)", () => {
    const half = face?.stations.find(({ x }) => x === 100);
    expect(half?.thickness).toBeCloseTo(3.7, 9);
    expect(half?.heightAtFirstAngle).toBeCloseTo((30 * (3.7 - 0.8)) / (5.2 - 0.8), 6);
    expect(half?.angle).toBeCloseTo(Math.atan(1.45 / 30), 6);
    expect(face?.droop).toBeLessThan(0.7);
  });

  test("does not droop on a parallel blade", () => {
    const parallel = chopper((spec) => ({
      ...spec,
      blade: { ...spec.blade, thickness: [{ at: { kind: "heel" }, is: 5 }] },
    }));
    expect(bevelSetUps(parallel, {})[0]?.droop).toBeCloseTo(1, 9);
  });

  test("is not set where the bevels are left from the hammer", () => {
    const forged = chopper((spec) => ({ ...spec, finish: { bevels: "forged" } }));
    expect(bevelSetUps(forged, {})).toEqual([]);
  });
});

test("ground to its angle every face leaves the edge it is to leave", () => {
  for (const { knife } of randomKnives(80)) {
    for (const { stations, form } of bevelSetUps(knife, {})) {
      for (const { thickness, depth, edge, height, angle, x } of stations) {
        expect(edge).toBeCloseTo(thickness - 2 * depth, 9);
        const flank = knife.laws.flankTaper.valueAt(x);
        if (form !== "flat" || flank > 0) continue;
        expect(thickness - 2 * height * Math.tan(angle)).toBeCloseTo(edge, 6);
      }
    }
  }
});

describe("arcs", () => {
  test("of a convex face with a crown are those of its chord", () => {
    const [face] = bevelSetUps(withBevel({ form: "convex", crown: { mm: 0.3 } }), {});
    const { height = 0, angle = 0, arc } = face?.stations[0] ?? {};
    const wanted = convexArc({ height, rise: height * Math.tan(angle) }, 0.3);
    expect(arc?.depth).toBeCloseTo(0.3, 9);
    expect(arc?.radius).toBeCloseTo(wanted.radius, 6);
    expect(arc?.atEdge).toBeCloseTo(wanted.atEdge, 9);
    expect(arc?.atLine).toBeCloseTo(wanted.atLine, 9);
  });

  test("of a convex face by default are level at the bevel line", () => {
    const [face] = bevelSetUps(withBevel({ form: "convex" }), {});
    expect(face?.stations[0]?.arc?.atLine).toBeCloseTo(0, 9);
  });

  test("of a hollow face are those of the wheel, and the wheels are judged", () => {
    // R_min = (30² + 2.2²)/(2 · 2.2) = 205.65 at the heel, more where the blade is thinner.
    const [face] = bevelSetUps(withBevel({ form: "hollow", wheelRadius: 600 }), { wheels: [250, 1200] });
    const { height = 0, angle = 0, arc } = face?.stations[0] ?? {};
    const wanted = hollowArc({ height, rise: height * Math.tan(angle) }, 600);
    expect(arc?.radius).toBeCloseTo(600, 6);
    expect(arc?.depth).toBeCloseTo(wanted.depth, 9);
    expect(arc?.atEdge).toBeCloseTo(wanted.atEdge, 9);
    expect(face?.smallestRadius).toBeGreaterThan(205.65);
    expect(face?.wheels?.map(({ diameter, fits }) => [diameter, fits])).toEqual([
      [1200, true],
      [250, false],
    ]);
  });
});

test("a single bevel is set on its own face and not on the other", () => {
  const sets = bevelSetUps(withBevel({ apex: -1, left: { form: "flat" } }), {});
  const [right, left] = sets;
  expect([right?.side, left?.side]).toEqual(["right", "left"]);
  expect(right?.stations[0]?.depth).toBeGreaterThan(4);
  expect(left?.stations[0]?.depth).toBeCloseTo(0, 6);
  expect(left?.droop).toBeUndefined();
});

describe("what is stated for all of the blade holds at every place of it", () => {
  // A wheel's bevel 20 high on a belly that rises to the tip: it reaches the spine between two stations of the report.
  const bellied = makeKnife({
    steel: { name: "1095" },
    blade: {
      outline: {
        runs: {
          edge: "M0 0 L160 0 C180 0 200 8 210 20",
          front: "L210 22",
          spine: "C190 36 60 40 0 40",
          tangTop: "L0 30 L-100 24",
          butt: "L-100 14",
          tangBottom: "L0 10",
        },
      },
      thickness: [
        { at: { kind: "heel" }, is: 5 },
        { at: { kind: "tip" }, is: 2.5 },
      ],
      bevel: { form: "hollow", height: 20, wheelRadius: 300, edgeThickness: 0.3 },
      edgeAngle: 0.26,
    },
    tang: { form: "full" },
  });
  const knives = [bellied, ...randomKnives(25).map(({ knife }) => knife)];

  test("the smallest wheel and the droop", () => {
    for (const knife of knives) {
      for (const { side, form, stations, smallestRadius, droop } of bevelSetUps(knife, {})) {
        const face = side === "left" ? "left" : "right";
        const first = stations[0]?.angle ?? 0;
        const from = stations[0]?.x ?? 0;
        const along = Array.from({ length: 1999 }, (_, i) => {
          const x = from + ((knife.outline.edgeLength - from) * (i + 1)) / 2000;
          const { height } = bevelAt(knife, x, face);
          const right = knife.body("ready").sectionAt(x);
          const section = face === "right" ? right : (knife.body("ready").section.left ?? right);
          return { height, rise: section.pieceValue(0, height) - section.valueAt(0) };
        });
        const highest = Math.max(...along.map(({ height }) => height));
        if (form === "hollow") {
          const needed = along
            .filter(({ height, rise }) => rise > 0 && height > 4 * rise)
            .map(({ height, rise }) => (height ** 2 + rise ** 2) / (2 * rise));
          expect(Math.max(...needed)).toBeLessThan((smallestRadius ?? 0) * (1 + 1e-9));
          if (knife === bellied) expect(smallestRadius).toBeLessThan(Math.max(...needed) * 1.001);
        }
        if (droop === undefined) continue;
        for (const { height, rise } of along) {
          if (height < (highest / 2) * (1 + 1e-6)) continue;
          expect(rise / Math.tan(first) / height).toBeGreaterThan(droop - 1e-9);
        }
      }
    }
  });

  test("of the bellied blade are found beside its stations: where the bevel reaches the spine", () => {
    const [face] = bevelSetUps(bellied, {});
    const atStations = Math.max(
      ...(face?.stations ?? []).map(({ height, angle }) => height / (2 * Math.sin(angle) * Math.cos(angle))),
    );
    expect(face?.smallestRadius).toBeGreaterThan(1.1 * atStations);
  });
});
