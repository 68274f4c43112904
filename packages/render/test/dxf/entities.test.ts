import {
  arcAround,
  arcBetween,
  type Cubic,
  cubic,
  line,
  type Path,
  pathLength,
  pointAt,
  type Segment,
  signedArea,
  type Vec2,
  vec2,
} from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lettering } from "../../src/drawing.js";
import { circleEntity, pathEntity, textEntity } from "../../src/dxf/entities.js";
import { type Group, groupLines } from "../../src/dxf/groups.js";
import { numberOf, pathOf, type ReadEntity, readEntities } from "../read-dxf.js";

const MAX_ERROR = 0.005;
/** Points are written to 10⁻⁶ mm. */
const STEP = 1e-6;

const read = (groups: readonly Group[]): ReadEntity[] =>
  readEntities(groupLines([[0, "SECTION"], [2, "ENTITIES"], ...groups, [0, "ENDSEC"]]));
const entity = (path: Path, maxError = MAX_ERROR): ReadEntity => {
  const [first, ...others] = read(pathEntity(path, "OUTLINE", maxError));
  if (first === undefined || others.length > 0) throw new Error("not one entity");
  return first;
};
const open = (...segments: Segment[]): Path => ({ segments, closed: false });
const closed = (...segments: Segment[]): Path => ({ segments, closed: true });

describe("pathEntity", () => {
  it("writes a single line as a LINE on its layer", () => {
    const found = entity(open(line(vec2(1, 2), vec2(201, 2))));
    expect([found.type, found.layer]).toEqual(["LINE", "OUTLINE"]);
    expect([10, 20, 11, 21].map((code) => numberOf(found, code))).toEqual([1, 2, 201, 2]);
  });

  it("writes a single arc as an ARC from its first angle to its last, counter-clockwise whichever way it ran", () => {
    for (const sweep of [Math.PI / 2, -Math.PI / 2]) {
      const start = sweep > 0 ? -Math.PI / 6 : Math.PI / 3;
      const found = entity(open(arcAround(vec2(3, 4), 10, start, sweep)));
      expect(found.type).toBe("ARC");
      expect(numberOf(found, 40)).toBe(10);
      expect(numberOf(found, 50)).toBeCloseTo(330, 9);
      expect(numberOf(found, 51)).toBeCloseTo(60, 9);
    }
  });

  it("writes a full turn as a CIRCLE", () => {
    const found = entity(closed(arcAround(vec2(3, 4), 2.5, 1, 2 * Math.PI)));
    expect([found.type, numberOf(found, 10), numberOf(found, 20), numberOf(found, 40)]).toEqual([
      "CIRCLE",
      3,
      4,
      2.5,
    ]);
  });

  it("writes a slot as a closed polyline of four points whose half turns have a bulge of 1", () => {
    const slot = closed(
      line(vec2(0, -2), vec2(10, -2)),
      arcAround(vec2(10, 0), 2, -Math.PI / 2, Math.PI),
      line(vec2(10, 2), vec2(0, 2)),
      arcAround(vec2(0, 0), 2, Math.PI / 2, Math.PI),
    );
    const found = entity(slot);
    expect(found.vertices.map((vertex) => numberOf(vertex, 42))).toEqual([Number.NaN, 1, Number.NaN, 1]);
    // A rectangle of 10 × 4 and a disc of radius 2.
    expect(signedArea(pathOf(found))).toBeCloseTo(40 + 4 * Math.PI, 9);
  });

  it("keeps arcs exact, flat ones and those of nearly a full turn among them", () => {
    const arcs = fc.record({
      radius: fc.integer({ min: 1, max: 5_000_000 }).map((n) => n / 97),
      sweep: fc.oneof(
        fc.integer({ min: 1, max: 628 }).map((n) => n / 100),
        fc.constantFrom(1e-5, Math.PI, Math.PI + 1e-6, 6.28),
      ),
      side: fc.constantFrom(1, -1),
      start: fc.integer({ min: -314, max: 314 }).map((n) => n / 100),
    });
    fc.assert(
      fc.property(arcs, ({ radius, sweep, side, start }) => {
        const arc = arcAround(vec2(5, -7), radius, start, side * sweep);
        fc.pre(Math.abs(arc.radius * arc.sweep) < 5000);
        const path = open(line(vec2(arc.from.x - 20, arc.from.y), arc.from), arc);
        const found = pathOf(entity(path));
        const arcsOf = found.segments.slice(1);
        expect(arcsOf.every(({ kind }) => kind === "arc") || radius * sweep < 1e-4).toBe(true);
        for (const part of arcsOf) {
          for (const t of [0, 0.25, 0.5, 0.75, 1]) {
            const { x, y } = pointAt(part, t);
            // Far off its centre the doubles themselves end at 1e-11 of the radius.
            expect(Math.abs(Math.hypot(x - 5, y + 7) - radius)).toBeLessThan(4 * STEP + 1e-9 * radius);
          }
        }
      }),
      { seed: 4201, numRuns: 400 },
    );
  });

  it("keeps cubics within the chord error, sampled densely against the chords", () => {
    const number = fc.integer({ min: -150_000, max: 150_000 }).map((n) => n / 1000);
    const point = fc.record({ x: number, y: number });
    fc.assert(
      fc.property(point, point, point, point, fc.constantFrom(0.2, 0.02, 0.005), (a, b, c, d, maxError) => {
        const curve = cubic(a, b, c, d);
        const chords = pathOf(entity(open(curve), maxError)).segments;
        const worst = Math.max(...farthest(curve, chords));
        expect(worst).toBeLessThanOrEqual(maxError + 2 * STEP);
      }),
      { seed: 77, numRuns: 60 },
    );
  });

  it("uses no more chords than the curve asks for", () => {
    // A curve that rises 1 mm over 100 mm: sagitta s = |B″| / 8n², |B″| ≤ 6 · 2/3 here.
    const gentle = cubic(vec2(0, 0), vec2(100 / 3, 0), vec2(200 / 3, 1 / 3), vec2(100, 1));
    expect(pathOf(entity(open(gentle))).segments.length).toBeLessThan(12);
  });

  it("encloses the area of a curved outline within perimeter × chord error", () => {
    const outline = closed(
      line(vec2(0, 0), vec2(120, 0)),
      cubic(vec2(120, 0), vec2(170, 2), vec2(210, 20), vec2(225, 40)),
      arcBetween(vec2(225, 40), vec2(0, 45), 0.4),
      line(vec2(0, 45), vec2(0, 0)),
    );
    for (const maxError of [0.1, 0.005]) {
      const written = signedArea(pathOf(entity(outline, maxError)));
      const bound = pathLength(outline) * (maxError + 2 * STEP);
      expect(Math.abs(written - signedArea(outline))).toBeLessThan(bound);
    }
  });

  it("leaves out what has no length, and empty paths", () => {
    expect(pathEntity(open(), "OUTLINE", MAX_ERROR)).toEqual([]);
    expect(pathEntity(open(line(vec2(1, 1), vec2(1, 1))), "OUTLINE", MAX_ERROR)).toEqual([]);
    const corner = entity(
      closed(
        line(vec2(0, 0), vec2(4, 0)),
        line(vec2(4, 0), vec2(4, 1e-9)),
        line(vec2(4, 1e-9), vec2(4, 3)),
        line(vec2(4, 3), vec2(0, 0)),
      ),
    );
    expect(corner.vertices).toHaveLength(3);
  });
});

describe("circleEntity", () => {
  it("gives centre and radius to 10⁻⁶ mm", () => {
    const [found] = read(circleEntity(vec2(-26.1234567, 76), 2, "OUTLINE"));
    if (found === undefined) throw new Error("no circle");
    expect([10, 20, 40].map((code) => numberOf(found, code))).toEqual([-26.123457, 76, 2]);
  });
});

describe("textEntity", () => {
  it("stands on its point by the codes for the way it is justified", () => {
    const codes = (anchor: "start" | "middle" | "end"): number[] => {
      const item = lettering("heel", vec2(5, 6), { height: 2.5, anchor, rotation: Math.PI / 2 });
      const [found] = read(textEntity(item, "TEXT"));
      if (found === undefined) throw new Error("no text");
      return [10, 20, 40, 50, 72, 11, 21].map((code) => numberOf(found, code));
    };
    expect(codes("start")).toEqual([5, 6, 2.5, 90, Number.NaN, Number.NaN, Number.NaN]);
    expect(codes("middle")).toEqual([5, 6, 2.5, 90, 1, 5, 6]);
    expect(codes("end")).toEqual([5, 6, 2.5, 90, 2, 5, 6]);
  });
});

/** How far points of the curve, sampled densely, lie from the nearest of the chords about the same parameter. */
function farthest(curve: Cubic, chords: readonly Segment[]): number[] {
  const samples = Math.max(400, 6 * chords.length);
  return Array.from({ length: samples + 1 }, (_, i) => {
    const t = i / samples;
    const at = Math.min(chords.length - 1, Math.floor(t * chords.length));
    const near = chords.slice(Math.max(0, at - 2), at + 3);
    return Math.min(...near.map((chord) => toChord(pointAt(curve, t), chord.from, chord.to)));
  });
}

function toChord(p: Vec2, a: Vec2, b: Vec2): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y);
}
