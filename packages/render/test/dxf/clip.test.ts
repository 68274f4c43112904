import { arcAround, cubic, line, pathBounds, pathLength, vec2 } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { polyline } from "../../src/drawing.js";
import { circlePath, clipPath } from "../../src/dxf/clip.js";

const BOX = { minX: 0, minY: 0, maxX: 10, maxY: 10 };

describe("clipPath", () => {
  it("leaves what lies inside as it is, and nothing of what lies outside", () => {
    const arc = { segments: [arcAround(vec2(5, 5), 4, 0, 3)], closed: false };
    expect(clipPath(arc, BOX, 0.01)).toEqual([arc]);
    expect(clipPath(polyline([vec2(11, 0), vec2(20, 5)]), BOX, 0.01)).toEqual([]);
    expect(clipPath({ segments: [], closed: false }, BOX, 0.01)).toEqual([]);
    // Past a corner, where its own box meets the box.
    expect(clipPath(polyline([vec2(-3, 9), vec2(2, 14)]), BOX, 0.01)).toEqual([]);
  });

  it("cuts a line at the rim", () => {
    const [cut] = clipPath({ segments: [line(vec2(-5, 5), vec2(15, 5))], closed: false }, BOX, 0.01);
    expect(cut?.segments).toEqual([line(vec2(0, 5), vec2(10, 5))]);
  });

  it("cuts a circle about a corner to the quarter that lies inside", () => {
    const parts = clipPath(circlePath(vec2(0, 0), 6), BOX, 1e-4);
    const length = parts.reduce((sum, part) => sum + pathLength(part), 0);
    expect(length).toBeCloseTo((Math.PI / 2) * 6, 2);
    for (const part of parts) {
      const { minX, minY } = pathBounds(part);
      expect(Math.min(minX, minY)).toBeGreaterThanOrEqual(0);
    }
  });

  it("keeps apart the pieces of a curve that leaves and comes back", () => {
    const wave = { segments: [cubic(vec2(1, 5), vec2(1, 25), vec2(9, 25), vec2(9, 5))], closed: false };
    const parts = clipPath(wave, BOX, 0.01);
    expect(parts).toHaveLength(2);
    for (const part of parts) expect(pathBounds(part).maxY).toBeCloseTo(10, 9);
  });
});
