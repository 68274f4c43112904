import { describe, expect, it } from "vitest";
import { type HandlePart, handleParts } from "../../src/blade/handle-parts.js";
import { makeKnife } from "../../src/blade/knife.js";
import { measureBody } from "../../src/blade/measure-body.js";
import { VOLUME, X, XX, XY, Y, YY, ZZ } from "../../src/blade/moments.js";
import type { SteelBody } from "../../src/blade/steel-body.js";
import { Law } from "../../src/numeric/law.js";
import { arcAround, line } from "../../src/plane/segment.js";
import { expectRelative } from "../numeric/close.js";
import { bladeOnly, boxKnife, lines, p } from "./bodies.js";
import { EXACT, expectMoments, volume } from "./closed-moments.js";

const [T, e] = [4, 0.4];

describe("bevels square to an edge that bends", () => {
  const [b, high] = [9, 60];
  const taken = T - e;
  const section = { bevelHeight: Law.constant(b) };
  /** Slab volume less what a bevel takes. */
  const body = (
    edge: ReturnType<typeof lines> | [ReturnType<typeof line>, ReturnType<typeof arcAround>],
    area: number,
  ): readonly [SteelBody, number] => {
    const end = edge[edge.length - 1];
    const x = end === undefined ? 0 : end.to.x;
    return [bladeOnly({ edge, around: [p(x, high), p(0, high)], section }), area * T];
  };

  it("round an arc: the strip is longer by its curvature, dA = (1 − κv) dv ds", () => {
    const [a, R] = [50, 40];
    for (const turn of [0.3, 0.7, 1.1]) {
      const arc = arcAround(p(a, R), R, -Math.PI / 2, turn);
      const [x, y] = [a + R * Math.sin(turn), R * (1 - Math.cos(turn))];
      // Down to y = 0: the trapezoid under the centre less the sector and the triangle beside it.
      const areaUnderArc = (x - a) * R - (R * R * turn) / 2 - ((x - a) * (R - y)) / 2;
      const [blade, slab] = body([line(p(0, 0), p(a, 0)), arc], x * high - areaUnderArc);
      // Straight part, sector of the arc, and the wedge between its last normal and the upright front.
      const removed =
        taken * ((a * b) / 2 + turn * ((R * b) / 2 - (b * b) / 6) + (Math.tan(turn) * b * b) / 6);
      expectRelative(volume(blade), slab - removed, EXACT, `turn ${turn}`);
    }
  });

  it("a left turn: two facets that meet in a ridge on the bisector", () => {
    for (const turn of [0.2, 0.6, 1]) {
      const [a, c] = [60, 30];
      const end = p(a + c * Math.cos(turn), c * Math.sin(turn));
      const [blade, slab] = body(lines(p(0, 0), p(a, 0), end), end.x * high - ((end.x - a) * end.y) / 2);
      // At the distance v each facet is shorter by v·tan(turn/2); the second is longer by v·tan(turn) at the upright front.
      const removed =
        taken * (((a + c) * b) / 2 - (2 * Math.tan(turn / 2) * b * b) / 6 + (Math.tan(turn) * b * b) / 6);
      expectRelative(volume(blade), slab - removed, EXACT, `turn ${turn}`);
    }
  });

  it("a right turn: two facets and a fan between their normals", () => {
    for (const turn of [0.2, 0.5]) {
      const [a, c] = [60, 40];
      const end = p(a + c * Math.cos(turn), -c * Math.sin(turn));
      const [blade, slab] = body(lines(p(0, 0), p(a, 0), end), end.x * high + ((end.x - a) * -end.y) / 2);
      const removed = taken * (((a + c) * b) / 2 + (turn * b * b) / 6 - (Math.tan(turn) * b * b) / 6);
      expectRelative(volume(blade), slab - removed, 1e-11, `turn ${turn}`);
    }
  });

  it("an edge that slopes all the way: its bevel is as long as the edge", () => {
    const [blade, slab] = body(lines(p(0, 0), p(90, 24)), 90 * high - (90 * 24) / 2);
    // Both upright ends cut the strip the same way round: v·slope is taken at one end and given at the other.
    expectRelative(volume(blade), slab - (taken * Math.hypot(90, 24) * b) / 2, EXACT);
  });
});

describe("a whole knife of boxes", () => {
  it("adds blade, ricasso and tang", () => {
    const knife = makeKnife(boxKnife());
    const body = knife.body("unsharpened");
    // Blade 120 × 30 as a trapezoid; ricasso 20 × 20 and tang 80 × 20 full.
    expectMoments(body, [120 * 66 + 20 * 20 * 4 + 80 * 20 * 4]);
  });

  it("a tapered tang: mean thickness, and its centre of a trapezoid", () => {
    const knife = makeKnife(boxKnife({}, { tang: { buttThickness: 2 } }));
    const m = measureBody(knife.body("unsharpened")).value;
    const parallel = measureBody(makeKnife(boxKnife()).body("unsharpened")).value;
    expectRelative((parallel[VOLUME] as number) - (m[VOLUME] as number), 80 * 20 * 1, 1e-11);
    // What is missing is a wedge: its centre is two thirds of the way to the butt.
    const moved = (parallel[X] as number) - (m[X] as number);
    expectRelative(moved, 80 * 20 * (-20 - (2 / 3) * 80), 1e-11);
    expect([Y, XX, YY, ZZ, XY].every((i) => Number.isFinite(m[i]))).toBe(true);
  });
});

describe("slabs and pins", () => {
  const slabs = (radius: number, bottom = "L-20 10", butt = "L-100 10"): HandlePart => {
    const spec = boxKnife();
    const { outline } = spec.blade;
    if ("family" in outline || "drawing" in outline) throw new Error("a box knife is given by runs");
    const knife = makeKnife({
      ...spec,
      blade: { ...spec.blade, outline: { runs: { ...outline.runs, butt, tangBottom: bottom } } },
      handle: { slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8, edgeRadius: radius } },
    });
    return handleParts(knife.spec.handle, knife.outline, knife.body("finished").slab, [])[0] as HandlePart;
  };
  /** What a quarter circle leaves out of its square. */
  const lost = (r: number): number => r * r * (1 - Math.PI / 4);

  it("plain boxes without a radius", () => {
    const { value } = slabs(0).moments;
    expectRelative(value[VOLUME] as number, 2 * 8 * 80 * 20, 1e-10);
    expectRelative(value[X] as number, 2 * 8 * 80 * 20 * -60, 1e-10);
    // Each slab lies between 2 and 10 from the centre plane.
    expectRelative(value[ZZ] as number, (2 * 80 * 20 * (10 ** 3 - 2 ** 3)) / 3, 1e-10);
  });

  it.each([1, 4, 8])("long edges rounded by %f: two quarter circles are missing from each slab", (r) => {
    const { value } = slabs(r).moments;
    expectRelative(value[VOLUME] as number, 2 * 8 * 80 * 20 - 4 * lost(r) * 80, 1e-10);
    expectRelative(value[X] as number, -60 * (2 * 8 * 80 * 20 - 4 * lost(r) * 80), 1e-10);
  });

  it("edges that slope are rounded square to themselves", () => {
    for (const drop of [5, 3, 1]) {
      const { value } = slabs(6, "L-20 10", `L-100 ${10 - drop}`).moments;
      const area = 80 * (20 + drop / 2);
      const truth = 16 * area - 2 * lost(6) * (80 + Math.hypot(80, drop));
      expectRelative(value[VOLUME] as number, truth, 1e-10, `bottom drops by ${drop}`);
    }
  });

  it("pins are cylinders through tang and slabs; holes go through the slabs, but not through what is covered", () => {
    const spec = boxKnife(
      {},
      {
        tang: {
          holes: [
            { kind: "pin", at: p(-40, 20), diameter: 5 },
            { kind: "pin", at: p(-70, 20), diameter: 6, pin: 4 },
            { kind: "thong", at: p(-90, 20), diameter: 7 },
            { kind: "lightening", at: p(-55, 20), diameter: 8 },
          ],
        },
        handle: {
          slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8, edgeRadius: 3 },
          pins: { material: { name: "pin metal", density: 0.0085 } },
        },
      },
    );
    const knife = makeKnife(spec);
    const [wood, pins] = handleParts(
      knife.spec.handle,
      knife.outline,
      knife.body("finished").slab,
      knife.holes,
    );
    const through = 4 + 16;
    expectRelative(pins?.moments.value[VOLUME] ?? 0, Math.PI * through * (2.5 ** 2 + 2 ** 2), 1e-9);
    expectRelative(
      wood?.moments.value[VOLUME] ?? 0,
      16 * 80 * 20 - 4 * lost(3) * 80 - 16 * Math.PI * (2.5 ** 2 + 2 ** 2 + 3.5 ** 2),
      1e-9,
    );
  });
});
