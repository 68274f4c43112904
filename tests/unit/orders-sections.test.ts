import { bevelAt, edgeBevelAt, sectionAt, stationFigures, thicknessAbove } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { edgeBevelByHalving } from "../orders/by-rule.js";
import { at } from "../orders/hand-sums.js";
import { loadOrder } from "../orders/load.js";
import { ORDERS, type Order } from "../orders/orders.js";

// Angles, thicknesses and edge bevels of the six orders, beside what was worked out by hand.
const ANGLE = 0.05;
const THICKNESS = 0.01;
/** The hand writes two decimals. */
const WRITTEN = 0.005;

const degrees = (angle: number): number => (angle * 180) / Math.PI;
const radians = (angle: number): number => (angle * Math.PI) / 180;

const expectWithin = (value: number, figure: number, within: number): void =>
  expect(Math.abs(value - figure)).toBeLessThanOrEqual(within + 1e-9);

/** Bevel angle by hand, atan((t − e)/2b), rad. */
function angleByHand(order: Order): number {
  const bevel = order.bevel === undefined ? at(order.height, 0) : at(order.bevel, 0);
  return Math.atan2(at(order.thickness, 0) - at(order.edge, 0), 2 * bevel);
}

/** Edge bevel by hand, on a face as straight as its chord: height e/2(tan θ − tan α), width height/cos θ. */
function edgeBevelByHand(order: Order): readonly [height: number, width: number] {
  const theta = radians(order.edgeAngle);
  const height = at(order.edge, 0) / (2 * (Math.tan(theta) - Math.tan(angleByHand(order))));
  return [height, height / Math.cos(theta)];
}

describe.each(ORDERS)("$code, $name", async (order) => {
  const { knife } = await loadOrder(order.name);
  const { hand } = order;

  test("bevel angle at the heel within 0.05°", () => {
    expectWithin(degrees(angleByHand(order)), hand.bevelAngle, WRITTEN);
    expectWithin(degrees(bevelAt(knife, 0).angle), hand.bevelAngle, ANGLE);
  });

  test("thickness at the stations, between them and on the tang within 0.01 mm", () => {
    for (const share of [0.001, 0.2, 0.4, 0.6, 0.8, 0.999]) {
      const x = share * order.edgeLength;
      expectWithin(sectionAt(knife, x).thickness, at(order.thickness, x), THICKNESS);
      const back = share * order.tang.length;
      expectWithin(sectionAt(knife, -back).thickness, at(order.tang.thickness, back), THICKNESS);
    }
    for (const [x, thickness] of order.thickness) {
      expectWithin(stationFigures(knife, x).thickness, thickness, THICKNESS);
    }
  });

  test("the hand's edge bevel comes out of its own formula", () => {
    const [height, width] = edgeBevelByHand(order);
    expectWithin(height, hand.edgeBevel[0], WRITTEN);
    expectWithin(width, hand.edgeBevel[1], WRITTEN);
  });

  test("the edge bevel is where plane and face meet, found by halving", () => {
    expectWithin(edgeBevelAt(knife, 1e-9)?.height ?? Number.NaN, edgeBevelByHalving(order), 1e-6);
  });

  test("1 mm above the edge: the hand's e + 2·tan α with the convex face's bulge, or the plane where that is lower", () => {
    const bevel = order.bevel === undefined ? at(order.height, 0) : at(order.bevel, 0);
    const [thickness, edge] = [at(order.thickness, 0), at(order.edge, 0)];
    // The arc nearly is a parabola: 4·s·(1 − u)·u on each of the two faces.
    const bulge = 2 * 4 * (order.crown ?? 0) * (thickness - edge) * (1 - 1 / bevel) * (1 / bevel);
    const face = edge + 2 * Math.tan(angleByHand(order)) + bulge;
    const plane = 2 * Math.tan(radians(order.edgeAngle));
    const [first] = thicknessAbove(knife, 1e-9, [1]);
    expectWithin(first?.thickness ?? Number.NaN, Math.min(face, plane), THICKNESS);
  });

  if (order.crown === undefined) {
    test("edge bevel within 0.01 mm of the hand's", () => {
      const bevel = edgeBevelAt(knife, 1e-9);
      expectWithin(bevel?.height ?? Number.NaN, hand.edgeBevel[0], THICKNESS);
      expectWithin(bevel?.width ?? Number.NaN, hand.edgeBevel[1], THICKNESS);
    });
  } else {
    test("edge bevel: wider than the hand's, for the arc comes in steeper than its chord", () => {
      const bevel = edgeBevelAt(knife, 1e-9);
      expect((bevel?.width ?? 0) - hand.edgeBevel[1]).toBeGreaterThan(THICKNESS);
      // At the angle with which the arc arrives, α + 2·atan(2s/c), the hand's formula gives what we have.
      const rise = (at(order.thickness, 0) - at(order.edge, 0)) / 2;
      const chord = Math.hypot(at(order.height, 0), rise);
      const arriving = angleByHand(order) + 2 * Math.atan((2 * (order.crown ?? 0) * 2 * rise) / chord);
      const theta = radians(order.edgeAngle);
      const height = at(order.edge, 0) / (2 * (Math.tan(theta) - Math.tan(arriving)));
      expectWithin(bevel?.height ?? Number.NaN, height, THICKNESS);
      expectWithin(bevel?.width ?? Number.NaN, height / Math.cos(theta), THICKNESS);
    });
  }
});

describe("single figures", () => {
  test("nakiri: 0.40 mm thick 1 mm above the edge at the heel", async () => {
    const { knife } = await loadOrder("forge-finish-nakiri");
    expectWithin(thicknessAbove(knife, 1e-9, [1])[0]?.thickness ?? Number.NaN, 0.4, THICKNESS);
  });

  test("nakiri: the bevel keeps its 28 mm at the tip at 1.94° per side", async () => {
    const { knife } = await loadOrder("forge-finish-nakiri");
    const bevel = bevelAt(knife, 165 - 1e-9);
    expectWithin(degrees(bevel.angle), 1.94, ANGLE);
    expectWithin(bevel.height, 28, THICKNESS);
  });

  test("boning knife: the convex face comes in at 4.77° at the edge", async () => {
    const { knife } = await loadOrder("boning-knife");
    const body = knife.body("unsharpened");
    const step = 1e-4;
    const rise = body.faceAt({ x: 1e-9, y: 2 * step }, "right") - body.faceAt({ x: 1e-9, y: step }, "right");
    expectWithin(degrees(Math.atan2(rise, step)), 4.77, ANGLE);
  });

  test("boning knife: 2.13 mm of tang at the last pin", async () => {
    const { knife } = await loadOrder("boning-knife");
    expectWithin(sectionAt(knife, -96).thickness, 2.13, THICKNESS);
  });
});
