import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { wallAround } from "../../src/plane/disc.js";
import type { Path } from "../../src/plane/path.js";
import { arcAround, cubic, line } from "../../src/plane/segment.js";
import {
  distanceOfLines,
  type Slot,
  slotArea,
  slotOutsideArea,
  wallAroundSlot,
  wallBetweenSlots,
} from "../../src/plane/slot.js";
import { distance, interpolate, type Vec2, vec2 } from "../../src/plane/vec2.js";
import { between, point, SEED } from "./arbitraries.js";

const slot = (from: Vec2, to: Vec2, radius: number): Slot => ({ from, to, radius });

describe("the distance of two lines", () => {
  const scan = (a: Vec2, b: Vec2, c: Vec2, d: Vec2, steps: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= steps; i++) {
      const p = interpolate(a, b, i / steps);
      for (let j = 0; j <= steps; j++) least = Math.min(least, distance(p, interpolate(c, d, j / steps)));
    }
    return least;
  };

  it("is that of a dense scan, never more, and less by no more than the scan is coarse", () => {
    const STEPS = 200;
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const found = distanceOfLines(a, b, c, d);
        const seen = scan(a, b, c, d, STEPS);
        expect(found).toBeLessThanOrEqual(seen + 1e-12);
        // Each of the two nearest places is at most half a step from one that was looked at.
        const coarse = (distance(a, b) + distance(c, d)) / (2 * STEPS);
        expect(seen - found).toBeLessThanOrEqual(coarse + 1e-12);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("is the same whichever way they run, and of lines that are points", () => {
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const found = distanceOfLines(a, b, c, d);
        expect(distanceOfLines(d, c, a, b)).toBeCloseTo(found, 11);
        expect(distanceOfLines(a, a, c, c)).toBe(distance(a, c));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("is 0 where they cross, share an end, or lie on each other", () => {
    const cross = distanceOfLines(vec2(0, 0), vec2(9, 9), vec2(0, 9), vec2(9, 0));
    expect(cross).toBe(0);
    expect(distanceOfLines(vec2(0, 0), vec2(9, 0), vec2(9, 0), vec2(12, 5))).toBe(0);
    expect(distanceOfLines(vec2(0, 0), vec2(9, 0), vec2(4, 0), vec2(20, 0))).toBe(0);
    // In one line, but apart.
    expect(distanceOfLines(vec2(0, 0), vec2(9, 0), vec2(12, 0), vec2(20, 0))).toBe(3);
  });
});

const polygon = (...corners: readonly Vec2[]): Path => ({
  closed: true,
  segments: corners.map((p, i) => line(p, corners[(i + 1) % corners.length] as Vec2)),
});

describe("slots", () => {
  // A plate with a level side, an arc and a curve, counter-clockwise.
  const plate: Path = {
    closed: true,
    segments: [
      line(vec2(0, 0), vec2(60, 0)),
      arcAround(vec2(60, 15), 15, -Math.PI / 2, Math.PI),
      cubic(vec2(60, 30), vec2(40, 12), vec2(20, 12), vec2(0, 30)),
      line(vec2(0, 30), vec2(0, 0)),
    ],
  };

  it("that run into each other by a hair between the places of a row of discs have no wall", () => {
    expect(
      wallBetweenSlots(slot(vec2(20, 7), vec2(80, 7), 5), slot(vec2(20.615, 16.99), vec2(80.615, 16.99), 5)),
    )
      // 9.99 from middle to middle, and two radii of 5.
      .toBeCloseTo(-0.01, 12);
  });

  it("tell the wall that a dense row of discs would, never more", () => {
    const STEPS = 2000;
    const place = fc.record({ x: between(-5, 80), y: between(-5, 35) });
    let inside = 0;
    fc.assert(
      fc.property(place, place, between(0.5, 6), (from, to, radius) => {
        const found = wallAroundSlot(slot(from, to, radius), plate);
        const walls = Array.from({ length: STEPS + 1 }, (_, i) =>
          wallAround({ centre: interpolate(from, to, i / STEPS), radius }, plate),
        );
        const seen = Math.min(...walls);
        const coarse = distance(from, to) / (2 * STEPS);
        if (seen + radius > coarse) {
          inside++;
          expect(found.wall).toBeLessThanOrEqual(seen + 1e-9);
          expect(seen - found.wall).toBeLessThanOrEqual(coarse + 1e-9);
          expect(wallAround({ centre: found.centre, radius }, plate)).toBeCloseTo(found.wall, 9);
        } else {
          // Out by the radius at least; how far is seen in steps of a quarter of it.
          expect(found.wall).toBeLessThanOrEqual(-radius + coarse);
          expect(Math.abs(found.wall - seen)).toBeLessThanOrEqual(radius / 8 + coarse);
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
    expect(inside).toBeGreaterThan(40);
  });

  it("that span a notch come out of the steel, though both ends lie in it", () => {
    const notched = polygon(
      ...[vec2(0, 0), vec2(40, 0), vec2(40, 20), vec2(20.001, 20)],
      ...[vec2(20, 4), vec2(19.999, 20), vec2(0, 20)],
    );
    // The notch is 1 µm wide where the slot passes it.
    const over = wallAroundSlot(slot(vec2(9.87, 12), vec2(31, 12), 2), notched);
    expect(over.wall).toBeLessThanOrEqual(-2);
    expect(over.centre.x).toBeCloseTo(20, 2);
  });

  it("tell how much of them lies outside", () => {
    const square = polygon(vec2(0, 0), vec2(40, 0), vec2(40, 20), vec2(0, 20));
    const half = slot(vec2(10, 0), vec2(20, 0), 2);
    // The lower half of it.
    expect(slotOutsideArea(half, square) / (slotArea(half) / 2)).toBeCloseTo(1, 3);
    expect(slotOutsideArea(slot(vec2(10, 2), vec2(20, 2), 2), square)).toBe(0);
    const away = slot(vec2(60, 5), vec2(90, 9), 2);
    expect(slotOutsideArea(away, square) / slotArea(away)).toBeCloseTo(1, 3);
  });
});
