import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EdgeRun } from "../../src/blade/edge-run.js";
import { FacetField } from "../../src/blade/facet-field.js";
import { line, type Segment } from "../../src/plane/segment.js";
import type { Vec2 } from "../../src/plane/vec2.js";
import { expectWithin } from "../numeric/close.js";
import { distanceField } from "./independent-parts.js";
import { between, SEED } from "./random-knives.js";

/** Straight strokes, each turning toward the blade against the one before; some turn by nothing. */
const traced: fc.Arbitrary<Segment[]> = fc
  .array(fc.tuple(between(0.5, 12), fc.oneof(fc.constant(0), between(0, 0.12))), {
    minLength: 2,
    maxLength: 18,
  })
  .map((strokes) => {
    let at: Vec2 = { x: 0, y: 0 };
    let heading = -0.3;
    return strokes.map(([length, turn]) => {
      heading += turn;
      const from = at;
      at = { x: at.x + length * Math.cos(heading), y: at.y + length * Math.sin(heading) };
      return line(from, at);
    });
  });

const fieldOf = (run: readonly Segment[]): FacetField | undefined => {
  const { elements, joints } = new EdgeRun(run);
  return FacetField.of(elements, joints);
};

/** Height of the traced edge, or of its prolongations, at x. */
function edgeAt(run: readonly Segment[], x: number): number {
  const first = run[0] as Segment;
  const last = run[run.length - 1] as Segment;
  const piece = run.find((s) => x >= s.from.x && x <= s.to.x) ?? (x < first.from.x ? first : last);
  return piece.from.y + ((x - piece.from.x) * (piece.to.y - piece.from.y)) / (piece.to.x - piece.from.x);
}

describe("an edge traced in straight strokes", () => {
  it("has its nearest point where a search over all strokes finds it, and the walk agrees all the way up", () => {
    fc.assert(
      fc.property(traced, between(-0.2, 1.2), between(0.1, 60), (run, u, rise) => {
        expect(fieldOf(run)).toBeDefined();
        const edges = new EdgeRun(run);
        const field = distanceField(run);
        const end = (run[run.length - 1] as Segment).to.x;
        const x = u * end;
        const y0 = edgeAt(run, x);
        const y1 = y0 + rise;
        let y = y0;
        edges.walk(x, y0, y1, (element, from, v0, _foot0, to, v1) => {
          expectWithin(from, y, 1e-12, "starts where the last one ended");
          y = to;
          for (const share of [0, 0.2, 0.7, 1]) {
            const at = from + share * (to - from);
            const truth = field(x, at).distance;
            expectWithin(v0 + share * (v1 - v0), truth, 1e-9, `walk at ${x}, ${at}`);
            expectWithin(edges.nearest(x, at), truth, 1e-9, `nearest of ${x}, ${at}`);
          }
          const own = edges.elements[element];
          expectWithin(
            own?.distanceInside(x, (from + to) / 2, Number.NaN) ?? Number.NaN,
            (v0 + v1) / 2,
            1e-9,
          );
        });
        expectWithin(y, y1, 1e-12, "ends at the top");
      }),
      { seed: SEED, numRuns: 300, endOnFailure: true },
    );
  });

  it("is left to the general search where a stroke turns away from the blade, or one is a curve", () => {
    const away = [line({ x: 0, y: 0 }, { x: 20, y: 0 }), line({ x: 20, y: 0 }, { x: 40, y: -5 })];
    expect(fieldOf(away)).toBeUndefined();
    expect(fieldOf([...away, line({ x: 40, y: -5 }, { x: 60, y: 9 })])).toBeUndefined();
  });

  it("says nothing of a point on the outer side", () => {
    const run = [line({ x: 0, y: 0 }, { x: 20, y: 0 }), line({ x: 20, y: 0 }, { x: 30, y: 10 })];
    expect(fieldOf(run)?.nearest(10, -1)).toBe(-1);
    expectWithin(new EdgeRun(run).nearest(10, -1), 1, 1e-14);
  });
});
