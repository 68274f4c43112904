import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mapSegment, pointAt } from "../../src/plane/segment.js";
import { anySegment, between, point, SEED } from "./arbitraries.js";

describe("a curve on the other side of a map", () => {
  it("has every point where the map sends it, at the same parameter: moved, turned, mirrored and made larger", () => {
    const map = fc.record({
      turn: between(-4, 4),
      factor: between(0.1, 8),
      by: point,
      mirrors: fc.boolean(),
    });
    fc.assert(
      fc.property(anySegment, map, (segment, { turn, factor, by, mirrors }) => {
        const [cos, sin] = [factor * Math.cos(turn), factor * Math.sin(turn)];
        // Mirrored in the level axis first.
        const to = ({ x, y }: { x: number; y: number }): { x: number; y: number } => {
          const level = mirrors ? -y : y;
          return { x: cos * x - sin * level + by.x, y: sin * x + cos * level + by.y };
        };
        const mapped = mapSegment(segment, {
          point: to,
          direction: (angle) => (mirrors ? -angle : angle) + turn,
          radius: (mm) => mm * factor,
          mirrors,
        });
        expect(mapped.kind).toBe(segment.kind);
        expect([mapped.from, mapped.to]).toEqual([to(segment.from), to(segment.to)]);
        const size = segment.kind === "arc" ? segment.radius : 0;
        for (let i = 0; i <= 20; i++) {
          const [p, q] = [to(pointAt(segment, i / 20)), pointAt(mapped, i / 20)];
          const rounding = 1e-12 * (1 + factor * (200 + size));
          expect(Math.hypot(q.x - p.x, q.y - p.y)).toBeLessThan(rounding);
        }
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("keeps what the map leaves alone", () => {
    fc.assert(
      fc.property(anySegment, (segment) => {
        expect(mapSegment(segment, { point: (p) => p })).toEqual(segment);
      }),
      { seed: SEED, numRuns: 50 },
    );
  });
});
