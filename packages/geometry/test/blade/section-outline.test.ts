import { describe, expect, test } from "vitest";
import {
  type BladeSpec,
  type KnifeSpec,
  makeKnife,
  type Segment,
  sectionAt,
  sectionMarks,
  sectionOutline,
  signedArea,
} from "../../src/index.js";

/** A blade with a level edge 100 long, 30 high and 4 thick, bevels 20 high from 0.4 at the edge. */
const spec = (blade: Partial<BladeSpec> = {}): KnifeSpec => ({
  steel: { name: "1084" },
  blade: {
    outline: {
      runs: {
        edge: "M0 0 L100 0",
        front: "L100 30",
        spine: "L-10 30",
        tangTop: "L-80 30",
        butt: "L-80 6",
        tangBottom: "L0 6",
      },
    },
    ricasso: 10,
    thickness: [{ at: { kind: "heel" }, is: 4 }],
    bevel: { form: "flat", height: 20, edgeThickness: 0.4 },
    edgeAngle: Math.atan(0.25),
    ...blade,
  },
  tang: { form: "full" },
});

const outlineAt = (knifeSpec: KnifeSpec, x = 40): readonly Segment[] => {
  const { contours } = sectionOutline(makeKnife(knifeSpec), x);
  expect(contours).toHaveLength(1);
  return contours[0]?.segments ?? [];
};
const kinds = (segments: readonly Segment[]): string[] => segments.map(({ kind }) => kind);

describe("section outline over a level edge", () => {
  test("of a flat grind: edge bevel, bevel, flat, spine, all straight", () => {
    const segments = outlineAt(spec());
    expect(kinds(segments)).toEqual(Array.from({ length: 7 }, () => "line"));
    // The plane 0.25·v meets the bevel 0.2 + 0.09·v at v = 1.25, 0.3125 from the centre plane.
    expect(segments[0]?.to.x).toBeCloseTo(0.3125, 12);
    expect(segments[0]?.to.y).toBeCloseTo(1.25, 12);
    const corners = [
      [2, 20],
      [2, 30],
      [-2, 30],
      [-2, 20],
    ];
    for (const [i, [x = 0, y = 0]] of corners.entries()) {
      expect(segments[i + 1]?.to.x).toBeCloseTo(x, 12);
      expect(segments[i + 1]?.to.y).toBeCloseTo(y, 12);
    }
  });

  test("of a hollow grind: arcs of the wheel itself, centre outside the steel", () => {
    const segments = outlineAt(
      spec({ bevel: { form: "hollow", height: 20, edgeThickness: 0.4, wheelRadius: 125 } }),
    );
    expect(kinds(segments)).toEqual(["line", "arc", "line", "line", "line", "arc", "line"]);
    const arc = segments[1];
    if (arc?.kind !== "arc") throw new Error("an arc was expected");
    expect(arc.radius).toBeCloseTo(125, 9);
    expect(arc.sweep).toBeLessThan(0);
    // The unsharpened face starts 0.2 out at the edge and ends 2 out at the bevel line: both lie on the wheel.
    expect(Math.hypot(arc.centre.x - 0.2, arc.centre.y)).toBeCloseTo(125, 8);
    expect(Math.hypot(arc.centre.x - 2, arc.centre.y - 20)).toBeCloseTo(125, 8);
    expect(arc.centre.x).toBeGreaterThan(100);
  });

  test("of a convex grind: level at the bevel line", () => {
    const segments = outlineAt(spec({ bevel: { form: "convex", height: 20, edgeThickness: 0.4 } }));
    const arc = segments[1];
    if (arc?.kind !== "arc") throw new Error("an arc was expected");
    // Through (0.2, 0), level at (2, 20): r = (20² + 1.8²) / (2 · 1.8).
    expect(arc.radius).toBeCloseTo((400 + 1.8 ** 2) / 3.6, 8);
    expect(arc.centre.y).toBeCloseTo(20, 8);
  });

  test("of an eased spine and a level fuller: arcs", () => {
    const knifeSpec = spec({
      easedSpine: 0.8,
      fullers: [{ from: { x: 10, y: 25 }, to: { x: 80, y: 25 }, radius: 3, depth: 0.7, faces: "right" }],
    });
    const segments = outlineAt(knifeSpec);
    expect(kinds(segments)).toEqual([
      ...["line", "line", "line", "arc", "line", "arc"],
      ...["line"],
      ...["arc", "line", "line", "line"],
    ]);
    const [fuller, eased] = segments.filter(({ kind }) => kind === "arc");
    expect(fuller).toMatchObject({ radius: 3, centre: { y: 25 } });
    // 0.7 deep into a face 2 from the centre plane: its floor stands at 1.3, its centre 3 farther out.
    expect(fuller?.kind === "arc" && fuller.centre.x).toBeCloseTo(4.3, 9);
    expect(eased).toMatchObject({ radius: 0.8 });
    const knife = makeKnife(knifeSpec);
    const [contour] = sectionOutline(knife, 40).contours;
    const half = Math.sqrt(9 - 2.3 ** 2);
    const groove = 9 * Math.asin(half / 3) - 2.3 * half;
    const plain = sectionAt(makeKnife(spec()), 40).area;
    const easing = 2 * (1 - Math.PI / 4) * 0.8 ** 2;
    expect(contour && signedArea(contour)).toBeCloseTo(plain - groove - easing, 9);
  });

  test("through a hole: two pieces, with level walls", () => {
    const knife = makeKnife(spec({ holes: [{ kind: "lightening", at: { x: 40, y: 25 }, diameter: 4 }] }));
    const { contours } = sectionOutline(knife, 40);
    expect(contours).toHaveLength(2);
    expect(contours.map((contour) => signedArea(contour)).reduce((a, b) => a + b)).toBeCloseTo(
      sectionAt(makeKnife(spec()), 40).area - 16,
      9,
    );
  });

  test("of a single bevel: the left face stays flat and upright", () => {
    const knife = makeKnife(
      spec({
        bevel: { form: "flat", height: 20, edgeThickness: 0.4, apex: -1, left: { height: "full" } },
        edgeAngle: { right: Math.atan(0.25), left: "flat" },
      }),
    );
    const [contour] = sectionOutline(knife, 40).contours;
    const left = contour?.segments.filter(({ from, to }) => from.x === -2 && to.x === -2) ?? [];
    expect(left.length).toBeGreaterThan(0);
    expect(sectionMarks(knife, 40).apex).toBeCloseTo(-2, 12);
  });

  test("as forged: carried on by the strips, as wide as the rims", () => {
    const knife = makeKnife(spec());
    const [contour] = sectionOutline(knife, 40, "forged").contours;
    const ys = contour?.segments.map(({ from }) => from.y) ?? [];
    expect(Math.min(...ys)).toBeCloseTo(-knife.allowances.outline, 12);
    expect(Math.max(...ys)).toBeCloseTo(30 + knife.allowances.outline, 12);
  });
});

test("marks of a section: where the ground face begins and ends, and its angles", () => {
  const { right, low, high, edgeLean } = sectionMarks(makeKnife(spec()), 40);
  expect([low, high, edgeLean]).toEqual([0, 30, 0]);
  expect(right?.form).toBe("flat");
  expect(right?.bevelLine.x).toBeCloseTo(2, 9);
  expect(right?.bevelLine.y).toBeCloseTo(20, 9);
  expect(right?.bevelAngle).toBeCloseTo(Math.atan(0.09), 12);
  expect(right?.angleAtEdge).toBeCloseTo(Math.atan(0.09), 12);
  expect(right?.edgeBevel?.top.y).toBeCloseTo(1.25, 9);
  expect(right?.edgeBevel?.behind).toBeCloseTo(0.625, 9);
});
