import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GeometryError } from "../../src/errors/errors.js";
import { type Arc, arcAround, cubic, line, pointAt, type Segment } from "../../src/plane/segment.js";
import { readPathData, segmentsFromPathData } from "../../src/plane/svg-path.js";
import { pathDataFromSegments } from "../../src/plane/svg-path-data.js";
import { vec2 } from "../../src/plane/vec2.js";
import { anySegment, SEED } from "./arbitraries.js";

const codeOf = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof GeometryError) return error.code;
    throw error;
  }
  return "";
};

describe("segmentsFromPathData", () => {
  it("reads lines in every form", () => {
    const corners = segmentsFromPathData("M1 2 L5 2 l0 3 H1 h-1 V2 v-2 Z").map(({ to }) => to);
    expect(corners).toEqual([
      vec2(5, 2),
      vec2(5, 5),
      vec2(1, 5),
      vec2(0, 5),
      vec2(0, 2),
      vec2(0, 0),
      vec2(1, 2),
    ]);
  });

  it("reads cubics, and mirrors the handle for S", () => {
    expect(segmentsFromPathData("M0 0 C0 1 1 1 1 0 S2 -1 2 0")).toEqual([
      cubic(vec2(0, 0), vec2(0, 1), vec2(1, 1), vec2(1, 0)),
      cubic(vec2(1, 0), vec2(1, -1), vec2(2, -1), vec2(2, 0)),
    ]);
    expect(segmentsFromPathData("m0 0 c0 1 1 1 1 0 s1 -1 1 0")).toEqual(
      segmentsFromPathData("M0 0 C0 1 1 1 1 0 S2 -1 2 0"),
    );
  });

  it("raises quadratics to the same curve, T included", () => {
    const [first, second] = segmentsFromPathData("M0 0 Q10 20 20 0 T40 0") as [Segment, Segment];
    // B(½) of a quadratic: (P0 + 2·P1 + P2)/4; T mirrors its control to (30, −20).
    expect(pointAt(first, 0.5)).toEqual({ x: expect.closeTo(10, 13), y: expect.closeTo(10, 13) });
    expect(pointAt(second, 0.5)).toEqual({ x: expect.closeTo(30, 13), y: expect.closeTo(-10, 13) });
  });

  it("keeps circular arcs exact; sweep flag 1 turns counter-clockwise with y up", () => {
    const [quarter] = segmentsFromPathData("M10 0 A10 10 0 0 1 0 10") as [Arc];
    expect(quarter).toMatchObject({
      kind: "arc",
      sweep: expect.closeTo(Math.PI / 2, 14),
      radius: expect.closeTo(10, 13),
    });
    expect(quarter.centre).toEqual({ x: expect.closeTo(0, 13), y: expect.closeTo(0, 13) });
    const [clockwise] = segmentsFromPathData("M10 0 A10 10 0 0 0 0 10") as [Arc];
    expect(clockwise.centre).toEqual({ x: expect.closeTo(10, 13), y: expect.closeTo(10, 13) });
    const [large] = segmentsFromPathData("M10 0 a10 10 0 1 1 -10 -10") as [Arc];
    expect(large.sweep).toBeCloseTo((3 * Math.PI) / 2, 13);
  });

  it("grows a radius that cannot reach, and makes a line of a radius of zero, as SVG 2 B.2.5 asks", () => {
    const [half] = segmentsFromPathData("M0 0 A1 1 0 0 1 10 0") as [Arc];
    expect(half).toMatchObject({
      kind: "arc",
      radius: expect.closeTo(5, 13),
      sweep: expect.closeTo(Math.PI, 13),
    });
    expect(segmentsFromPathData("M0 0 A0 5 0 0 1 10 0")).toEqual([line(vec2(0, 0), vec2(10, 0))]);
  });

  it("stays within 1e-7 mm of an ellipse, turned or not", () => {
    const half = segmentsFromPathData("M100 0 A100 40 0 0 1 -100 0");
    for (const segment of half) {
      for (let i = 0; i <= 50; i++) {
        const p = pointAt(segment, i / 50);
        // Distance from the ellipse to first order: the implicit function over its gradient.
        const implicit = (p.x / 100) ** 2 + (p.y / 40) ** 2 - 1;
        const gradient = 2 * Math.hypot(p.x / 100 ** 2, p.y / 40 ** 2);
        expect(Math.abs(implicit / gradient)).toBeLessThan(1e-7);
        expect(p.y).toBeGreaterThan(-1e-9);
      }
    }
    const turned = segmentsFromPathData("M0 100 A100 40 90 0 1 0 -100");
    const middle = turned[Math.floor(turned.length / 2)] as Segment;
    expect(middle.from.x).toBeLessThan(-35);
    expect(turned.at(-1)?.to).toEqual(vec2(0, -100));
  });

  it("starts where it is told if there is no M, and reports where pen and stroke stand", () => {
    expect(readPathData("h5", vec2(1, 2))).toEqual({
      start: vec2(1, 2),
      end: vec2(6, 2),
      segments: [line(vec2(1, 2), vec2(6, 2))],
    });
    expect(readPathData("M3 4").end).toEqual(vec2(3, 4));
    expect(segmentsFromPathData("M0 0 L5 0 M5 0 L9 0")).toHaveLength(2);
  });

  it("drops pieces without length", () => {
    expect(segmentsFromPathData("M0 0 L0 0 h0 c0 0 0 0 0 0 L4 0 Z M0 0")).toHaveLength(2);
  });

  it("refuses what is not path data to its last character", () => {
    for (const data of [
      "M0 0 L10 10 garbage",
      "M0 0 L10",
      "M0 0 L10 10,",
      "M0 0 R1 1 2 2 3 3",
      "M0 0 L1e400 0",
      "M0 0 L10 10 20",
      "M0 0 A1 1 0 2 1 3 3",
      "M0 0 LNaN 1",
    ]) {
      expect([data, codeOf(() => segmentsFromPathData(data))]).toEqual([data, "path-data-unreadable"]);
    }
    expect(codeOf(() => segmentsFromPathData("L1 1"))).toBe("path-data-no-start");
    expect(codeOf(() => segmentsFromPathData("M0 0 L1 1 M5 5 L6 6"))).toBe("path-data-gap");
  });
});

describe("pathDataFromSegments", () => {
  it("writes fixed decimals, no exponent, no negative zero", () => {
    const text = pathDataFromSegments(
      [line(vec2(0, 0), vec2(-1e-9, 1e-9)), line(vec2(-1e-9, 1e-9), vec2(1234567.25, -2.5))],
      { flipY: true, decimals: 2 },
    );
    expect(text).toBe("M0.00 0.00 L0.00 0.00 L1234567.25 2.50");
  });

  it("keeps arcs as A with the sweep flag turned by the flip, and a full circle in two halves", () => {
    const quarter = arcAround(vec2(0, 0), 10, 0, Math.PI / 2);
    expect(pathDataFromSegments([quarter], { decimals: 0 })).toBe("M10 0 A10 10 0 0 1 0 10");
    expect(pathDataFromSegments([quarter], { decimals: 0, flipY: true, offset: vec2(5, 20) })).toBe(
      "M15 20 A10 10 0 0 0 5 10",
    );
    const circle = arcAround(vec2(0, 0), 10, 0, 2 * Math.PI);
    expect(pathDataFromSegments([circle], { decimals: 0, close: true })).toBe(
      "M10 0 A10 10 0 0 1 -10 0 A10 10 0 0 1 10 0 Z",
    );
  });

  it("lifts the pen between strokes that do not join", () => {
    const strokes = [line(vec2(0, 0), vec2(1, 0)), line(vec2(2, 0), vec2(3, 0))];
    expect(pathDataFromSegments(strokes, { decimals: 0 })).toBe("M0 0 L1 0 M2 0 L3 0");
  });

  it("refuses what cannot be drawn", () => {
    expect(codeOf(() => pathDataFromSegments([line(vec2(0, 0), vec2(Number.NaN, 0))]))).toBe(
      "path-not-finite",
    );
  });

  it("comes back the same when read again", () => {
    fc.assert(
      fc.property(anySegment, (segment) => {
        const read = segmentsFromPathData(pathDataFromSegments([segment], { decimals: 9 }));
        const halves = read.length;
        for (let i = 0; i <= 20; i++) {
          const whole = pointAt(segment, i / 20);
          const k = Math.min(halves - 1, Math.floor((i / 20) * halves));
          const p = pointAt(read[k] as Segment, (i / 20) * halves - k);
          // Nine decimals, magnified where an arc is nearly a half or a whole turn.
          expect(Math.hypot(p.x - whole.x, p.y - whole.y)).toBeLessThan(1e-3);
        }
        if (segment.kind !== "arc") expect(read[0]?.kind).toBe(segment.kind);
        else expect(read.every(({ kind }) => kind === "arc")).toBe(true);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});
