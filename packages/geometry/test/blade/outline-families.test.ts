import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FAMILIES, FAMILY_NAMES } from "../../src/blade/families.js";
import { type Outline, RUN_NAMES } from "../../src/blade/outline.js";
import { outlineFromLandmarks } from "../../src/blade/outline-from-landmarks.js";
import type { FamilyName, TangSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";
import { extremeParameters } from "../../src/plane/bounds.js";
import { segmentLength } from "../../src/plane/length.js";
import { signedArea } from "../../src/plane/measure.js";
import {
  derivativeAt,
  endTangent,
  pointAt,
  type Segment,
  secondDerivativeAt,
} from "../../src/plane/segment.js";
import { validateOutline } from "../../src/plane/validate.js";
import { cross, dot, norm, type Vec2 } from "../../src/plane/vec2.js";
import { anyOutline, type OutlineInput } from "./random-outlines.js";

const SEED = 20_260_714;
const RUNS = 700;
const FORMS = ["full", "hidden", "through"] as const;

const build = ({ spec, ricasso, tang, choil }: OutlineInput): Outline =>
  outlineFromLandmarks(spec, ricasso, tang, choil);

/** Points along the whole outline, `pieces` to a curve. */
const polygon = (outline: Outline, pieces: number): Vec2[] =>
  outline.path.segments.flatMap((segment) =>
    segment.kind === "line"
      ? [segment.from]
      : Array.from({ length: pieces }, (_, i) => pointAt(segment, i / pieces)),
  );

const polygonArea = (points: readonly Vec2[]): number =>
  points.reduce((sum, p, i) => sum + cross(p, points[(i + 1) % points.length] as Vec2) / 2, 0);

/** The second method for the area: polygons of n and 2n chords, whose error falls by 4, carried on to no error. */
const areaByPolygons = (outline: Outline): number =>
  (4 * polygonArea(polygon(outline, 64)) - polygonArea(polygon(outline, 32))) / 3;

/** Whether one segment runs on from another without a corner, as far as the digits of a short piece can tell. */
function smooth(before: Segment, after: Segment): boolean {
  const into = endTangent(before, "to");
  const out = endTangent(after, "from");
  const slack = 1e-9 + 1e-12 / Math.min(segmentLength(before), segmentLength(after));
  return into !== undefined && out !== undefined && dot(into, out) > 0 && Math.abs(cross(into, out)) < slack;
}

const joints = (run: readonly Segment[]): (readonly [Segment, Segment])[] =>
  run.slice(1).map((after, i) => [run[i] as Segment, after] as const);

/** What is wrong with an outline of a family, in words. */
function faults(outline: Outline, family: FamilyName): string[] {
  const { edge, spine, tangTop, tangBottom, heelFace } = outline.runs;
  const { segments } = outline.path;
  const form = FAMILIES[family];
  const found: string[] = validateOutline(outline.path).map((fault) => fault.kind);
  const demand = (holds: boolean, what: string): void => {
    if (!holds) found.push(what);
  };
  segments.forEach((segment, i) => {
    const next = segments[(i + 1) % segments.length] as Segment;
    demand(segment.to.x === next.from.x && segment.to.y === next.from.y, `joint ${i} open`);
    demand(segmentLength(segment) > 1e-7, `piece ${i} has no length`);
  });
  demand(segments[0] === edge[0] && edge[0]?.from.x === 0 && edge[0].from.y === 0, "edge off the heel");
  demand(spine[0]?.from.x === outline.edgeLength, "spine off the tip");
  for (const segment of [...edge, ...spine]) {
    demand(extremeParameters(segment, "x").length === 0, "blade turns back along x");
  }
  for (const segment of edge) demand(bends(segment) >= 0, "edge bends inward");
  for (const [before, after] of joints(edge)) {
    demand(smooth(before, after) === (form.edge === "belly"), "edge not smooth, or no corner at its facet");
  }
  if (form.spine === "bow") {
    for (const [before, after] of joints(spine)) demand(smooth(before, after), "spine not smooth");
  }
  for (const run of [tangTop, [...tangBottom, ...heelFace.slice(0, 1)]]) {
    for (const [before, after] of joints(run)) {
      const fillet = (before.kind === "arc" || after.kind === "arc") && !heelFace.includes(before);
      if (fillet && !isChoil(before) && !isChoil(after)) demand(smooth(before, after), "fillet not tangent");
    }
  }
  return found;
}

/** Every arc of the tang is a fillet of the radius asked for, and a choil is one half circle. */
function expectRadii(outline: Outline, { tang, choil }: OutlineInput): void {
  for (const segment of [...outline.runs.tangTop, ...outline.runs.tangBottom]) {
    if (segment.kind !== "arc") continue;
    expect(Math.abs(segment.radius / (tang.shoulderRadius ?? 0) - 1)).toBeLessThan(1e-6);
  }
  const notches = outline.runs.heelFace.filter((segment) => segment.kind === "arc");
  expect(notches.map(({ radius, to }) => [radius, to.x])).toEqual(
    choil === undefined ? [] : [[choil.radius, 0]],
  );
}

const isChoil = (segment: Segment): boolean => segment.kind === "arc" && segment.sweep === -Math.PI;

/** Smallest turning along a segment, as the sine of an angle; negative where it bends clockwise. */
function bends(segment: Segment): number {
  let least = 0;
  for (let k = 0; k <= 16; k++) {
    const first = derivativeAt(segment, k / 16);
    const second = secondDerivativeAt(segment, k / 16);
    const scale = norm(first) * norm(second);
    if (scale > 0) least = Math.min(least, cross(first, second) / scale);
  }
  return least > -1e-9 ? 0 : least;
}

describe.each(FAMILY_NAMES)("every %s", (family) => {
  it.each(FORMS)("with a %s tang is closed, simple, counter-clockwise and smooth", (form) => {
    fc.assert(
      fc.property(anyOutline(family, form), (input) => {
        const outline = build(input);
        expect(faults(outline, family)).toEqual([]);
        expectRadii(outline, input);
        expect(RUN_NAMES.flatMap((name) => outline.runs[name])).toEqual(outline.path.segments);
        const exact = signedArea(outline.path);
        expect(exact).toBeGreaterThan(0);
        expect(Math.abs(areaByPolygons(outline) - exact)).toBeLessThan(1e-6 * exact);
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it.each(FORMS)("with a %s tang does not cross itself as a polygon either", (form) => {
    fc.assert(
      fc.property(anyOutline(family, form), (input) => {
        const points = polygon(build(input), 24);
        expect(crossings(points)).toEqual([]);
      }),
      { seed: SEED + 1, numRuns: RUNS / 20 },
    );
  });

  it.each(FORMS)("fills in what is left out, with a %s tang", (form) => {
    const outline = outlineFromLandmarks({ family, edgeLength: 160, heelHeight: 45 }, 5, {
      form,
      length: 120,
    });
    expect(faults(outline, family)).toEqual([]);
    expect(outline).toMatchObject({ edgeLength: 160, handleFront: -5, butt: -125 });
  });
});

/** Chords of a polygon that cross, neither of them a neighbour of the other: the plain test by sides. */
function crossings(points: readonly Vec2[]): string[] {
  const side = (a: Vec2, b: Vec2, p: Vec2): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
  const n = points.length;
  const at = (i: number): Vec2 => points[i % n] as Vec2;
  const found: string[] = [];
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n - (i === 0 ? 1 : 0); j++) {
      const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) found.push(`${i} ${j}`);
    }
  }
  return found;
}

describe("any numbers at all", () => {
  const sizes = fc.oneof(
    fc.double({ min: -10, max: 300 }),
    fc.double(),
    fc.constantFrom(0, 1e-9, 1e-6, 1, 30, 100),
  );
  const maybe = fc.oneof(fc.constant(undefined), sizes);
  const given = <T extends object>(values: T): T =>
    Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as T;

  it("make an outline that is sound, or issues with a place and a way out", () => {
    const inputs = fc.record({
      family: fc.constantFrom(...FAMILY_NAMES),
      form: fc.constantFrom(...FORMS),
      blade: fc.tuple(sizes, sizes, maybe, maybe, maybe),
      ricasso: sizes,
      tang: fc.tuple(maybe, fc.oneof(fc.constant(undefined), fc.tuple(sizes, sizes, sizes)), maybe, maybe),
      choil: maybe,
    });
    fc.assert(
      fc.property(inputs, ({ family, form, blade, ricasso, tang, choil }) => {
        const [edgeLength, heelHeight, straightEdge, tipHeight, spineBreak] = blade;
        const [length, heights, drop, shoulderRadius] = tang;
        const [front = 0, middle = 0, butt = 0] = heights ?? [];
        const tangSpec = {
          form,
          ...given({ length, drop, shoulderRadius }),
          ...(heights === undefined ? {} : { heights: { front, middle, butt } }),
        } as TangSpec;
        const spec = { family, edgeLength, heelHeight, ...given({ straightEdge, tipHeight, spineBreak }) };
        try {
          const outline = outlineFromLandmarks(
            spec as OutlineInput["spec"],
            ricasso,
            tangSpec,
            choil === undefined ? undefined : { radius: choil },
          );
          expect(validateOutline(outline.path)).toEqual([]);
        } catch (error) {
          if (!(error instanceof SpecError)) throw error;
          expect(error.issues.length).toBeGreaterThan(0);
          for (const issue of error.issues) {
            expect(issue.path).toMatch(/^(blade|tang)\.(?!outline\.runs)/);
            for (const [, name] of issue.text.matchAll(/\{(\w+)\}/g)) {
              expect(Object.keys(issue.values ?? {})).toContain(name);
            }
          }
        }
      }),
      { seed: SEED, numRuns: 20_000 },
    );
  });
});
