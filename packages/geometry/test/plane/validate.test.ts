import { describe, expect, it } from "vitest";
import type { Path } from "../../src/plane/path.js";
import { arcAround, arcBetween, cubic, line, reverseSegment, type Segment } from "../../src/plane/segment.js";
import { validateOutline } from "../../src/plane/validate.js";
import { type Vec2, vec2 } from "../../src/plane/vec2.js";

const closed = (...segments: Segment[]): Path => ({ segments, closed: true });
const polygon = (...corners: Vec2[]): Path =>
  closed(...corners.map((p, i) => line(p, corners[(i + 1) % corners.length] as Vec2)));
const kinds = (path: Path): string[] => validateOutline(path).map((fault) => fault.kind);

describe("validateOutline", () => {
  it("passes a square, a circle in one arc, a half disc, and a lens of two arcs", () => {
    expect(kinds(polygon(vec2(0, 0), vec2(4, 0), vec2(4, 4), vec2(0, 4)))).toEqual([]);
    expect(kinds(closed(arcAround(vec2(0, 0), 3, 0, 2 * Math.PI)))).toEqual([]);
    const half = arcAround(vec2(0, 0), 3, 0, Math.PI);
    expect(kinds(closed(half, line(half.to, half.from)))).toEqual([]);
    expect(
      kinds(closed(arcBetween(vec2(0, 0), vec2(9, 0), 2), arcBetween(vec2(9, 0), vec2(0, 0), 2))),
    ).toEqual([]);
  });

  it("passes smooth joints: a slot of two lines and two half circles, at any radius", () => {
    for (const r of [1e-3, 1, 1e4]) {
      const right = arcBetween(vec2(1, -r), vec2(1, r), Math.PI);
      const left = arcBetween(vec2(0, r), vec2(0, -r), Math.PI);
      expect(
        kinds(closed(line(vec2(0, -r), vec2(1, -r)), right, line(vec2(1, r), vec2(0, r)), left)),
      ).toEqual([]);
    }
  });

  it("passes a smooth joint of a line and a very flat arc", () => {
    for (const lift of [12, 1e-2, 1e-5]) {
      const belly = arcBetween(vec2(150, 0), vec2(225, lift), 2 * Math.atan2(lift, 75));
      const path = closed(
        line(vec2(0, 0), vec2(150, 0)),
        belly,
        line(vec2(225, lift), vec2(225, 92)),
        line(vec2(225, 92), vec2(0, 92)),
        line(vec2(0, 92), vec2(0, 0)),
      );
      expect(kinds(path)).toEqual([]);
    }
  });

  it("passes a point of no angle, where two curves run into each other along one tangent", () => {
    const lower = cubic(vec2(0, 0), vec2(40, 0), vec2(80, 10), vec2(100, 10));
    const upper = cubic(vec2(100, 10), vec2(80, 10), vec2(40, 30), vec2(0, 30));
    expect(kinds(closed(lower, upper, line(vec2(0, 30), vec2(0, 0))))).toEqual([]);
  });

  it("names the two that cross, and where", () => {
    const bow = polygon(vec2(0, 0), vec2(4, 4), vec2(4, 0), vec2(0, 4));
    expect(validateOutline(bow)).toEqual([
      { kind: "crossing", segment: 0, other: 2, at: { x: expect.closeTo(2, 12), y: expect.closeTo(2, 12) } },
    ]);
  });

  it("finds neighbours that cross again, loops, doubled lines and touching corners", () => {
    const swing = cubic(vec2(10, 0), vec2(4, 8), vec2(4, -20), vec2(0, 9));
    expect(kinds(closed(line(vec2(0, 0), vec2(10, 0)), swing, line(vec2(0, 9), vec2(0, 0))))).toContain(
      "crossing",
    );
    const loop = cubic(vec2(0, 0), vec2(20, -20), vec2(-10, -20), vec2(10, 0));
    expect(kinds(closed(loop, line(vec2(10, 0), vec2(5, 9)), line(vec2(5, 9), vec2(0, 0))))).toEqual([
      "crossing",
    ]);
    const spike = polygon(vec2(0, 0), vec2(4, 0), vec2(9, 0), vec2(4, 0), vec2(4, 4));
    expect(kinds(spike)).toContain("overlap");
    const pinched = polygon(vec2(0, 0), vec2(4, 0), vec2(2, 2), vec2(4, 4), vec2(0, 4), vec2(2, 2));
    expect(kinds(pinched)).toContain("crossing");
    const there = cubic(vec2(0, 0), vec2(10, 20), vec2(20, 20), vec2(30, 0));
    expect(kinds(closed(there, reverseSegment(there)))).toEqual(["overlap"]);
  });

  it("finds what is wrong with single segments and joints", () => {
    expect(kinds({ segments: [], closed: true })).toEqual(["empty"]);
    expect(kinds(polygon(vec2(0, 0), vec2(0, 4), vec2(4, 4), vec2(4, 0)))).toEqual(["clockwise"]);
    expect(kinds(polygon(vec2(0, 0), vec2(Number.NaN, 0), vec2(4, 4)))).toEqual(["not-finite", "not-finite"]);
    expect(kinds(polygon(vec2(0, 0), vec2(4, 0), vec2(4, 0), vec2(4, 4)))).toEqual(["zero-length"]);
    expect(kinds(closed(line(vec2(0, 0), vec2(4, 0)), line(vec2(4, 0.1), vec2(0, 0))))).toEqual(["open"]);
    const broken = { ...arcAround(vec2(0, 0), 3, 0, Math.PI), to: vec2(-3, 1) };
    expect(kinds(closed(broken, line(vec2(-3, 1), vec2(3, 0))))).toEqual(["arc-off-its-ends"]);
  });
});
