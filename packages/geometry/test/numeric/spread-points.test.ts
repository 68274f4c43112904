import { expect, it } from "vitest";
import { spreadPoints } from "../../src/numeric/spread-points.js";
import { expectWithin } from "./close.js";

it("steps by the golden ratio along a line", () => {
  const golden = (1 + Math.sqrt(5)) / 2;
  for (const [k, [x = Number.NaN]] of spreadPoints(1, 20).entries())
    expectWithin(x, (0.5 + (k + 1) / golden) % 1, 1e-12);
});

it("leaves no part of a square out, however few points there are", () => {
  for (const count of [16, 48, 200]) {
    const points = spreadPoints(2, count);
    // Squares of four times the area that falls to a point: each holds one.
    const cells = Math.floor(Math.sqrt(count) / 2);
    const held = new Set(points.map((point) => point.map((x) => Math.floor(x * cells)).join(" ")));
    expect(held.size).toBe(cells * cells);
  }
});

it("stays inside the cube and comes to no point twice", () => {
  for (const dimensions of [1, 2, 3, 6]) {
    const points = spreadPoints(dimensions, 100);
    expect(points.flat().every((x) => x >= 0 && x < 1)).toBe(true);
    expect(new Set(points.map((point) => point.join(" "))).size).toBe(100);
  }
});
