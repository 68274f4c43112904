import { describe, expect, test } from "vitest";
import { edgeSetUp, spineLift } from "../../src/bench/edge-bevel.js";
import { chopper, withBevel } from "./bench-knives.js";
import { bevelBehindEdge, sharpeningBevel } from "./closed-forms.js";

const DEGREE = Math.PI / 180;

// Published values: the project's table of edge bevels, face width and height by thickness behind the edge.
const ANGLES = [10, 12, 15, 17, 20, 25];
const TABLE: Readonly<Record<string, readonly string[]>> = {
  "0.25": [
    "0.7198/0.7089",
    "0.6012/0.5881",
    "0.4830/0.4665",
    "0.4275/0.4089",
    "0.3655/0.3434",
    "0.2958/0.2681",
  ],
  "0.40": [
    "1.1518/1.1343",
    "0.9619/0.9409",
    "0.7727/0.7464",
    "0.6841/0.6542",
    "0.5848/0.5495",
    "0.4732/0.4289",
  ],
  "0.50": [
    "1.4397/1.4178",
    "1.2024/1.1762",
    "0.9659/0.9330",
    "0.8551/0.8177",
    "0.7310/0.6869",
    "0.5916/0.5361",
  ],
  "0.80": [
    "2.3035/2.2685",
    "1.9239/1.8819",
    "1.5455/1.4928",
    "1.3681/1.3083",
    "1.1695/1.0990",
    "0.9465/0.8578",
  ],
};

test.each(
  Object.entries(TABLE).flatMap(([behind, row]) =>
    row.map((text, i) => [behind, ANGLES[i] as number, text] as const),
  ),
)("%s mm behind the edge at %s° per side: %s", (behind, angle, text) => {
  const { width, height } = bevelBehindEdge(Number(behind), angle * DEGREE);
  expect(`${width.toFixed(4)}/${height.toFixed(4)}`).toBe(text);
  // A blade ground to no thickness change above its edge is as thick behind the edge as before it was sharpened.
  const knife = chopper(({ blade, ...spec }) => ({
    ...spec,
    blade: {
      ...blade,
      thickness: [{ at: { kind: "heel" }, is: Number(behind) }],
      bevel: { ...blade.bevel, edgeThickness: Number(behind) },
      edgeAngle: angle * DEGREE,
    },
    tang: { form: "full", length: 120, heights: { front: 28, middle: 28, butt: 28 } },
    handle: {},
  }));
  const station = edgeSetUp(knife, [])[0]?.stations[0];
  expect(station?.width).toBeCloseTo(width, 9);
  expect(station?.height).toBeCloseTo(height, 9);
  expect(station?.behind).toBeCloseTo(Number(behind), 9);
});

test.each([
  [12, 8.3165],
  [15, 10.3528],
  [17.5, 12.0282],
  [20, 13.6808],
])("a spine 40 mm from the edge is lifted at %s° by %s mm", (angle, lift) => {
  expect(spineLift(40, angle * DEGREE, 3).centre).toBeCloseTo(lift, 4);
  expect(spineLift(40, angle * DEGREE, 3).underside).toBeCloseTo(lift - 1.5 * Math.cos(angle * DEGREE), 4);
});

describe("the sharpening bevel from the edge before it", () => {
  test("ends where plane and face meet", () => {
    const [edge, theta, alpha] = [0.5, 0.3, 0.06];
    const { height, width } = sharpeningBevel(edge, theta, alpha);
    expect(height * Math.tan(theta)).toBeCloseTo(edge / 2 + height * Math.tan(alpha), 12);
    expect(width).toBeCloseTo(Math.hypot(height, height * Math.tan(theta)), 12);
    // Behind the edge it is as thick as both faces there: the two forms agree.
    const behind = edge + 2 * height * Math.tan(alpha);
    expect(bevelBehindEdge(behind, theta).height).toBeCloseTo(height, 12);
  });

  test("of parallel faces is the quick form", () => {
    expect(sharpeningBevel(0.4, 0.35, 0).width).toBeCloseTo(bevelBehindEdge(0.4, 0.35).width, 12);
  });
});

describe("a knife's own edge", () => {
  test("is the closed form at the heel", () => {
    const [set] = edgeSetUp(chopper(), [0.35]);
    const { width, height } = sharpeningBevel(0.6, 0.35, Math.atan(2.2 / 30));
    expect(set?.side).toBe("both");
    expect(set?.stations[0]?.width).toBeCloseTo(width, 9);
    expect(set?.stations[0]?.height).toBeCloseTo(height, 9);
    // 1 mm up is still on the sharpening planes, which end 1.03 mm up.
    expect(set?.stations[0]?.oneAbove).toBeCloseTo(2 * Math.tan(0.35), 6);
    expect(set?.stations[0]?.lift.centre).toBeCloseTo(50 * Math.sin(0.35), 6);
    expect(set?.wedges).toMatchObject({ add: [0.35], error: 0 });
  });

  test("with an apex on the right face is sharpened on the left one alone", () => {
    const single = edgeSetUp(withBevel({ apex: 1 }), []);
    expect(single.map(({ side }) => side)).toEqual(["left"]);
    // Seen from the left face the apex lies half of the spine's 5 mm beyond the middle.
    expect(single[0]?.stations[0]?.lift.centre).toBeCloseTo(50 * Math.sin(0.35) - 2.5 * Math.cos(0.35), 6);
  });

  test("with one flat side has one set-up", () => {
    const knife = chopper((spec) => ({
      ...spec,
      blade: {
        ...spec.blade,
        bevel: { ...spec.blade.bevel, apex: -1 },
        edgeAngle: { right: 0.35, left: "flat" },
      },
    }));
    expect(edgeSetUp(knife, []).map(({ side }) => side)).toEqual(["right"]);
  });

  test("is held by what a swedge leaves of the spine", () => {
    const swedged = chopper((spec) => ({
      ...spec,
      blade: {
        ...spec.blade,
        swedge: {
          from: { kind: "distance", mm: 80 },
          to: { kind: "distance", mm: 120 },
          angle: 25 * DEGREE,
          thickness: [{ at: { kind: "heel" }, is: 1.5 }],
        },
      },
    }));
    const undersides = (knife: ReturnType<typeof chopper>) =>
      new Map(edgeSetUp(knife, [])[0]?.stations.map(({ x, lift }) => [x, lift.underside]));
    const [plain, ground] = [undersides(chopper()), undersides(swedged)];
    expect([...ground.keys()]).toEqual([...plain.keys()]);
    // Half way it is 50 mm from edge to spine and 5 − 3/2 = 3.5 mm thick, of which the swedge leaves 1.5 mm.
    expect(plain.get(100)).toBeCloseTo(50 * Math.sin(0.35) - 1.75 * Math.cos(0.35), 6);
    expect(ground.get(100)).toBeCloseTo(50 * Math.sin(0.35) - 0.75 * Math.cos(0.35), 6);
    // Ahead of the swedge and behind it nothing changes.
    for (const x of [50, 150, 190]) expect(ground.get(x)).toBe(plain.get(x));
    // 6.3 mm from the edge at 20° with 1.5 mm left: 2.155 − 0.705.
    expect(spineLift(6.3, 20 * DEGREE, 1.5).underside).toBeCloseTo(1.45, 2);
  });
});
