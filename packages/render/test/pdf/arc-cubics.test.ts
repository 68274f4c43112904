import { arcAround, cubic, pointAt, signedArea, type Vec2 } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { arcCubics } from "../../src/pdf/arc-cubics.js";

const centre = { x: 30, y: -7 };
const cases = [0.01, Math.PI / 20, 1, Math.PI / 2, -Math.PI, 2 * Math.PI, -2 * Math.PI].map((sweep) =>
  arcAround(centre, 250, 0.7, sweep),
);

describe("arcCubics", () => {
  it.each(cases)("stays within 10⁻⁹ of the radius on a sweep of $sweep", (arc) => {
    let from: Vec2 = arc.from;
    const pieces = arcCubics(arc);
    for (const { control1, control2, to } of pieces) {
      const piece = cubic(from, control1, control2, to);
      for (let step = 0; step <= 20; step++) {
        const { x, y } = pointAt(piece, step / 20);
        expect(Math.abs(Math.hypot(x - centre.x, y - centre.y) / arc.radius - 1)).toBeLessThan(1e-9);
      }
      from = to;
    }
    expect(from).toBe(arc.to);
    expect(pieces.length).toBe(Math.max(1, Math.ceil((Math.abs(arc.sweep) / Math.PI) * 20 - 1e-9)));
  });

  it("turns the way the arc turns", () => {
    const first = arcCubics(arcAround({ x: 0, y: 0 }, 1, 0, -Math.PI / 2))[0];
    expect(first?.to.y).toBeLessThan(0);
    expect(first?.control1.y).toBeLessThan(0);
  });

  it("holds the area of a circle to 10⁻⁹", () => {
    const circle = arcAround(centre, 250, 0.7, 2 * Math.PI);
    let from: Vec2 = circle.from;
    const segments = arcCubics(circle).map(({ control1, control2, to }) => {
      const piece = cubic(from, control1, control2, to);
      from = to;
      return piece;
    });
    expect(Math.abs(signedArea({ segments, closed: true }) / (Math.PI * 250 ** 2) - 1)).toBeLessThan(1e-9);
  });
});
