import { arcAround, isInside, line, type Path, pathBounds, pointAt, signedArea } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { cutBelow } from "../../../src/sheets/sections/cut-level.js";
import { hatch } from "../../../src/sheets/sections/hatch.js";

const disc: Path = {
  segments: [arcAround({ x: 3, y: 2 }, 10, 0, Math.PI), arcAround({ x: 3, y: 2 }, 10, Math.PI, Math.PI)],
  closed: true,
};

describe("hatching", () => {
  it("ends exactly on the outline, at 45°", () => {
    const lines = hatch([disc]).flatMap(({ paths }) => paths.flatMap(({ segments }) => segments));
    expect(lines.length).toBeGreaterThan(6);
    for (const { from, to } of lines) {
      expect(Math.hypot(from.x - 3, from.y - 2)).toBeCloseTo(10, 9);
      expect(Math.hypot(to.x - 3, to.y - 2)).toBeCloseTo(10, 9);
      expect(to.y - from.y).toBeCloseTo(to.x - from.x, 9);
    }
  });

  it("leaves a notch out", () => {
    const points = [
      [0, 0],
      [20, 0],
      [20, 20],
      [12, 20],
      [12, 5],
      [8, 5],
      [8, 20],
      [0, 20],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    const notched: Path = {
      segments: points.map((from, i) => line(from, points[(i + 1) % points.length] ?? from)),
      closed: true,
    };
    const lines = hatch([notched]).flatMap(({ paths }) => paths.flatMap(({ segments }) => segments));
    for (const one of lines) {
      for (const t of [0.02, 0.35, 0.5, 0.98]) expect(isInside(notched, pointAt(one, t))).toBe(true);
    }
  });
});

describe("cutting off at a level", () => {
  it("keeps the area below, and leaves the outline open there", () => {
    const { open, region } = cutBelow([disc], 2);
    expect(region.map((path) => signedArea(path)).reduce((a, b) => a + b)).toBeCloseTo(50 * Math.PI, 9);
    expect(open).toHaveLength(1);
    expect(open[0]?.closed).toBe(false);
    expect(open[0] && pathBounds(open[0]).maxY).toBeCloseTo(2, 12);
  });

  it("leaves what lies below as it is, and nothing of what lies above", () => {
    expect(cutBelow([disc], 13)).toEqual({ open: [disc], region: [disc] });
    expect(cutBelow([disc], -9)).toEqual({ open: [], region: [] });
  });
});
