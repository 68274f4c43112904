import { type Arc, arcAround, cubic, line, type Path, pathBounds, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { polyline } from "../../src/drawing.js";
import { pathData } from "../../src/svg/path-data.js";
import { boundsOfPoints, pointsOfPathData } from "../read-svg.js";

const HEIGHT = 100;
const page = { height: HEIGHT, origin: vec2(0, 0) };
const open = (...segments: Path["segments"]): Path => ({ segments, closed: false });

describe("pathData", () => {
  it("writes lines and cubics with y turned over", () => {
    expect(pathData([polyline([vec2(0, 0), vec2(10, 5)])], page)).toBe("M0 100 L10 95");
    const curve = open(cubic(vec2(0, 0), vec2(1, 2), vec2(3, 4), vec2(5, 6)));
    expect(pathData([curve], page)).toBe("M0 100 C1 98 3 96 5 94");
  });

  it("closes a closed path", () => {
    expect(pathData([polyline([vec2(0, 0), vec2(4, 0), vec2(4, 3)], true)], page)).toBe(
      "M0 100 L4 100 L4 97 L0 100 Z",
    );
  });

  it("writes nothing for an empty path", () => {
    expect(pathData([open()], page)).toBe("");
  });

  it("turns a counter-clockwise quarter into sweep 0", () => {
    expect(pathData([open(arcAround(vec2(0, 0), 10, 0, Math.PI / 2))], page)).toBe(
      "M10 100 A10 10 0 0 0 0 90",
    );
    expect(pathData([open(arcAround(vec2(0, 0), 10, 0, -Math.PI / 2))], page)).toBe(
      "M10 100 A10 10 0 0 1 0 110",
    );
  });

  it("keeps every arc true to the rounding step, full and half turns among them", () => {
    const arcs = fc.record({
      x: fc.integer({ min: -200_000, max: 200_000 }).map((n) => n / 997),
      radius: fc.integer({ min: 1, max: 300_000 }).map((n) => n / 991),
      start: fc.integer({ min: -700, max: 700 }).map((n) => n / 100),
      sweep: fc.oneof(
        fc.integer({ min: 1, max: 628 }).map((n) => n / 100),
        fc.constantFrom(Math.PI, 2 * Math.PI, Math.PI - 1e-6, Math.PI + 1e-6, Math.PI / 2),
      ),
      side: fc.constantFrom(1, -1),
    });
    fc.assert(
      fc.property(arcs, ({ x, radius, start, sweep, side }) => {
        const arc: Arc = arcAround(vec2(x, 20), radius, start, side * sweep);
        const d = pathData([open(arc)], page);
        const points = pointsOfPathData(d, 12);
        for (const point of points) {
          const off = Math.hypot(point.x - arc.centre.x, HEIGHT - point.y - arc.centre.y) - radius;
          expect(Math.abs(off)).toBeLessThan(3e-5);
        }
        expect(d.match(/A/g)).toHaveLength(Math.max(1, Math.ceil(sweep / (Math.PI / 2) - 1e-9)));
      }),
      { seed: 20261, numRuns: 300 },
    );
  });

  it("keeps the bounds of a whole circle", () => {
    const circle = open(arcAround(vec2(30, 40), 12.5, 0.3, 2 * Math.PI));
    const drawn = boundsOfPoints(pointsOfPathData(pathData([circle], page), 4000));
    const wanted = pathBounds(circle);
    expect(drawn.minX).toBeCloseTo(wanted.minX, 5);
    expect(HEIGHT - drawn.minY).toBeCloseTo(wanted.maxY, 5);
  });

  it("trims zeros, but not those before the point", () => {
    const line = polyline([vec2(100, 0), vec2(200, -0.000001), vec2(0.1, 99.99999)]);
    expect(pathData([line], page)).toBe("M100 100 L200 100 L0.1 0.00001");
  });

  it("keeps several paths apart", () => {
    const paths = [open(line(vec2(0, 0), vec2(1, 0))), open(line(vec2(5, 5), vec2(6, 5)))];
    expect(pathData(paths, page)).toBe("M0 100 L1 100 M5 95 L6 95");
  });
});
