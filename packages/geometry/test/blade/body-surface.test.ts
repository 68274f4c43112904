import { describe, expect, it } from "vitest";
import { measureSurface } from "../../src/blade/body-surface.js";
import { makeKnife } from "../../src/blade/knife.js";
import type { Outline } from "../../src/blade/outline.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import type { SteelBody } from "../../src/blade/steel-body.js";
import { Law } from "../../src/numeric/law.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { bladeOnly, boxKnife, linear, lines, p, rectangle } from "./bodies.js";
import { independentBody } from "./independent.js";
import { along, distanceField, halving } from "./independent-parts.js";
import { DEGREE, heel, share, tip } from "./random-knives.js";

/** Slopes along x are differences over 4e-5 mm: what rounding leaves of them. */
const EXACT = 1e-9;
const [L, H, T, e] = [200, 30, 4, 0.4];

describe("surfaces by closed form", () => {
  it("a box", () => {
    const box = rectangle(L, H, { edge: Law.constant(T) });
    expectRelative(measureSurface(box), 2 * L * H + 2 * (L + H) * T, EXACT);
  });

  it("a flat bevel: two sloping faces, edge, spine and two trapezoids", () => {
    const faces = 2 * L * Math.hypot(H, (T - e) / 2);
    expectRelative(measureSurface(rectangle(L, H, {})), faces + L * (e + T) + H * (T + e), EXACT);
  });

  it("a bevel of part height, and a flank", () => {
    const [b, f] = [14, 0.5];
    const body = rectangle(L, H, { bevelHeight: Law.constant(b), flankTaper: Law.constant(f) });
    const profile = Math.hypot(b, (T - f - e) / 2) + Math.hypot(H - b, f / 2);
    const ends = b * (e + T - f) + (H - b) * (T - f + T);
    expectRelative(measureSurface(body), 2 * L * profile + L * (e + T) + ends, EXACT);
  });

  it("a sharpened wedge of steel down to nothing", () => {
    // Planes up to v* = 0.2/(tan θ − m), then the ground face.
    const [tan, m] = [Math.tan(0.3), (T - e) / 2 / H];
    const v = e / 2 / (tan - m);
    const profile = v * Math.hypot(1, tan) + (H - v) * Math.hypot(1, m);
    const ends = (v * 2 * v * tan) / 2 + ((H - v) * (2 * v * tan + T)) / 2;
    const body = rectangle(L, H, { sharpening: tan });
    expectRelative(measureSurface(body), 2 * L * profile + L * T + 2 * ends, EXACT);
  });

  it("a convex bevel: its arc's length", () => {
    for (const [thick, b] of [
      [4, 30],
      [5, 20],
      [8, 12],
    ] as const) {
      const rise = (thick - e) / 2;
      const radius = (b * b + rise * rise) / (2 * rise);
      const half = Math.asin(Math.hypot(b, rise) / 2 / radius);
      const segment = (radius * radius * (2 * half - Math.sin(2 * half))) / 2;
      const area = b * (e / 2 + thick / 2) + 2 * segment + (H - b) * thick;
      const body = rectangle(L, H, {
        spine: Law.constant(thick),
        form: "convex",
        bevelHeight: Law.constant(b),
      });
      const truth = 2 * L * (2 * half * radius + H - b) + L * (e + thick) + 2 * area;
      expectRelative(measureSurface(body), truth, 1e-8, `${thick} on ${b}`);
    }
  });

  it("a bar that tapers in width and thickness", () => {
    const body = bladeOnly({
      edge: lines(p(0, 0), p(L, 10)),
      around: [p(L, 30), p(0, 40)],
      section: { spine: linear(0, 6, L, 2) },
      plunge: { at: L, length: 0 },
    });
    const faces = 2 * L * 30 * Math.hypot(1, 2 / L);
    const sides = 2 * Math.hypot(L, 10) * 4;
    expectRelative(measureSurface(body), faces + sides + 40 * 6 + 20 * 2, EXACT);
  });

  it("the wall of a plunge of no length", () => {
    const body = rectangle(L, H, {}, { plunge: { at: 30, length: 0 } });
    const ground = (L - 30) * (2 * Math.hypot(H, (T - e) / 2) + e + T) + (H * (T + e)) / 2;
    const unground = 30 * (2 * H + 2 * T) + H * T;
    const wall = (H * (T - e)) / 2;
    expectRelative(measureSurface(body), ground + unground + wall, EXACT);
  });

  it("walls at heel and handle front: only where steel stands on both sides", () => {
    const t10 = e + ((T - e) * 10) / 30;
    const at = (spec: KnifeSpec): number => measureSurface(makeKnife(spec).body("unsharpened"));
    const blade = 120 * (2 * Math.hypot(30, (T - e) / 2) + e + T) + (30 * (T + e)) / 2;
    const heelFace = (10 * (e + t10)) / 2;
    const wall = (20 * (T - t10)) / 2;
    const ricasso = 20 * (2 * 20 + 2 * T);
    // Parallel tang: 80 long.
    expectRelative(at(boxKnife()), blade + heelFace + wall + ricasso + 80 * (40 + 2 * T) + 20 * T, EXACT);
    // A tang of 3 from the handle front on: a step of 1 over its 20 mm.
    const stepped = boxKnife({}, { tang: { thickness: [{ at: { kind: "handle" }, is: 3 }] } });
    expectRelative(at(stepped), blade + heelFace + wall + ricasso + 20 + 80 * (40 + 6) + 20 * 3, EXACT);
    // The same without a ricasso: tang of 3 against the ground blade, thicker above and thinner below y where t = 3.
    const { outline } = stepped.blade;
    if ("family" in outline || "drawing" in outline) throw new Error("a box knife is given by runs");
    const runs = { ...outline.runs, spine: "L0 30", tangBottom: "L0 10", heelFace: "L0 0" };
    const bare = { ...stepped, blade: { ...stepped.blade, outline: { runs } } };
    const crossing = ((3 - e) * 30) / (T - e);
    const step = ((crossing - 10) * (3 - t10)) / 2 + ((30 - crossing) * (T - 3)) / 2;
    expectRelative(at(bare), blade + heelFace + step + 100 * (40 + 6) + 20 * 3, EXACT);
  });

  it("holes: their walls less the faces they take", () => {
    const r = 6;
    const hole = (
      body: (cutouts: { centre: { x: number; y: number }; radius: number }[]) => SteelBody,
    ): number => measureSurface(body([{ centre: p(80, 14), radius: r }])) - measureSurface(body([]));
    const level = hole((cutouts) => rectangle(L, H, {}, { plunge: { at: L, length: 0 }, cutouts }));
    expectWithin(level, 2 * Math.PI * r * T - 2 * Math.PI * r * r, 1e-6);
    const taper = { spine: linear(0, 5, L, 2) };
    const tapered = hole((cutouts) => rectangle(L, H, taper, { plunge: { at: L, length: 0 }, cutouts }));
    const atCentre = 5 - (3 * 80) / L;
    expectWithin(tapered, 2 * Math.PI * r * atCentre - 2 * Math.PI * r * r * Math.hypot(1, 1.5 / L), 1e-6);
    // In a flat bevel the wall is the cylinder under the thickness at its centre, the faces lost slope as the bevel does.
    const bevel = hole((cutouts) => rectangle(L, H, {}, { cutouts }));
    const slope = (T - e) / 2 / H;
    expectWithin(
      bevel,
      2 * Math.PI * r * (e + ((T - e) * 14) / H) - 2 * Math.PI * r * r * Math.hypot(1, slope),
      1e-6,
    );
  });
});

/** Order MG-14, the project's own invented example. */
const mg14: KnifeSpec = {
  steel: { name: "1084" },
  blade: {
    outline: { family: "vegetable", edgeLength: 225, heelHeight: 92, straightEdge: 150, tipHeight: 80 },
    ricasso: 10,
    thickness: [heel(4.6), share(0.6, 3.6), tip(2.2)],
    flankTaper: 0.3,
    plunge: { at: 0, length: 0 },
    bevel: { form: "flat", height: 48, edgeThickness: 0.5 },
    edgeAngle: 16 * DEGREE,
  },
  tang: {
    form: "full",
    length: 128,
    heights: { front: 28, middle: 25, butt: 30 },
    buttThickness: 2.4,
    holes: [
      { kind: "pin", at: p(-26, 76), diameter: 4 },
      { kind: "pin", at: p(-84, 76), diameter: 4 },
      { kind: "thong", at: p(-116, 76), diameter: 6 },
    ],
  },
};

const dropPoint: KnifeSpec = {
  steel: { name: "1084" },
  blade: {
    outline: { family: "drop-point", edgeLength: 110, heelHeight: 30, straightEdge: 60, tipHeight: 18 },
    ricasso: 8,
    thickness: [heel(4), share(0.5, 3.4), tip(2)],
    between: "smooth",
    plunge: { at: 2, length: 10 },
    bevel: { form: "convex", height: "full", edgeThickness: 0.4 },
    edgeAngle: 18 * DEGREE,
  },
  tang: { form: "full", length: 100, heights: { front: 22, middle: 20, butt: 24 } },
};

/** Surface of triangles spanned over stations and creases; walls and rims by their own sums. */
function triangulated(spec: KnifeSpec, outline: Outline, columns: number): number {
  const body = independentBody(spec, outline);
  const field = distanceField(outline.runs.edge);
  const plunge = spec.blade.plunge ?? { at: 0, length: 0 };
  const taperStops = spec.blade.thickness.map(
    ({ at }) => (at.kind === "fraction" ? at.share : 0) * outline.edgeLength,
  );
  const joints = outline.path.segments.map((s) => s.from.x);
  const stops = [
    ...new Set([...joints, ...taperStops, 0, plunge.at, plunge.at + plunge.length, outline.handleFront]),
  ].sort((a, b) => a - b);
  const heights = (x: number): readonly [number, number] => {
    const ys = outline.path.segments
      .filter((s) => Math.min(s.from.x, s.to.x) <= x && Math.max(s.from.x, s.to.x) > x)
      .map(
        (s) =>
          along(
            s,
            halving((t) => along(s, t).p.x - x, 0, 1),
          ).p.y,
      );
    return [Math.min(...ys), Math.max(...ys)];
  };
  /** Heights of a station's creases, as many at every station. */
  const creases = (x: number): number[] => {
    const [low, high] = heights(x);
    if (x < plunge.at) return [low, low, low, high];
    const height = spec.blade.bevel.height;
    const reach = [sharpeningReach(x), typeof height === "number" ? height : Number.POSITIVE_INFINITY];
    const at = reach.map((v) =>
      field(x, high).distance <= v ? high : halving((y) => field(x, y).distance - v, low, high),
    );
    return [low, Math.min(...at), Math.max(...at), high];
  };
  /** Where the sharpening plane leaves the ground face: there the thickness stops growing by 2·tan θ. */
  const sharpeningReach = (x: number): number => {
    const [low, high] = heights(x);
    const tan = Math.tan(spec.blade.edgeAngle as number);
    const full = { ...spec, blade: { ...spec.blade, plunge: { at: 0, length: 0 } } };
    const sharp = independentBody(full, outline);
    const off = (y: number): number => sharp.thickness(x, y) - 2 * tan * field(x, y).distance + 1e-9;
    return off(high) > 0
      ? Number.POSITIVE_INFINITY
      : field(
          x,
          halving((y) => off(y), low, high),
        ).distance;
  };
  let total = 0;
  const rows = Math.max(2, Math.ceil(columns / 3));
  for (let i = 0; i + 1 < stops.length; i++) {
    const [from, to] = [stops[i] as number, stops[i + 1] as number];
    if (to - from < 1e-9) continue;
    const grid = Array.from({ length: columns + 1 }, (_, k) => {
      // Denser toward both ends, and just inside them.
      const u = (1 - Math.cos((Math.PI * k) / columns)) / 2;
      const x = Math.min(to - 1e-9, Math.max(from + 1e-9, from + (to - from) * u));
      const cuts = creases(x);
      const points: (readonly [number, number, number])[] = [];
      for (let z = 0; z < 3; z++) {
        for (let r = 0; r <= rows; r++) {
          const y = (cuts[z] as number) + (((cuts[z + 1] as number) - (cuts[z] as number)) * r) / rows;
          points.push([x, y, body.thickness(x, y) / 2]);
        }
      }
      return points;
    });
    for (let k = 0; k < columns; k++) {
      const [a, b] = [grid[k] as (typeof grid)[number], grid[k + 1] as (typeof grid)[number]];
      for (let j = 0; j + 1 < a.length; j++) {
        total += 2 * (triangle(a[j], b[j], a[j + 1]) + triangle(b[j], b[j + 1], a[j + 1]));
      }
    }
  }
  // Rims: the outline, a hair inside the steel it bounds.
  for (const s of outline.path.segments) {
    const n = 40 * columns;
    for (let k = 0; k < n; k++) {
      const { p: q, d } = along(s, (k + 0.5) / n);
      const upright = s.from.x === s.to.x;
      const inward = d.y > 0 ? -1e-9 : 1e-9;
      const x = Math.min(outline.edgeLength - 1e-9, q.x + (upright ? inward : 0));
      total += (body.thickness(x, q.y) * Math.hypot(d.x, d.y)) / n;
    }
  }
  for (const { at, diameter } of spec.tang.holes ?? []) {
    const r = diameter / 2;
    const slope = (body.thickness(at.x + 1, at.y) - body.thickness(at.x - 1, at.y)) / 2;
    total += 2 * Math.PI * r * body.thickness(at.x, at.y) - 2 * Math.PI * r * r * Math.hypot(1, slope / 2);
  }
  if (plunge.length === 0) {
    // The wall at the heel, above the ricasso's lower side.
    const [low, high] = heights(-1e-6);
    const n = 4000;
    for (let k = 0; k < n; k++) {
      const y = low + ((high - low) * (k + 0.5)) / n;
      total += ((body.thickness(-1e-9, y) - body.thickness(1e-9, y)) * (high - low)) / n;
    }
  }
  return total;
}

type Corner = readonly [number, number, number];
function triangle(a: Corner | undefined, b: Corner | undefined, c: Corner | undefined): number {
  if (a === undefined || b === undefined || c === undefined) return 0;
  const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  const v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const;
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
  return Math.hypot(...n) / 2;
}

describe("surfaces against triangles", () => {
  it.each([
    ["MG-14, a tall vegetable knife", mg14],
    ["a convex drop point with an eased plunge", dropPoint],
  ] as const)("%s", (_, spec) => {
    const knife = makeKnife(spec);
    const [coarse, fine] = [24, 48].map((columns) => triangulated(spec, knife.outline, columns)) as [
      number,
      number,
    ];
    // The error of inscribed triangles falls with the square of their size; extrapolated once.
    const truth = fine + (fine - coarse) / 3;
    const measured = measureSurface(knife.body("finished"));
    expect(Math.abs(fine / coarse - 1)).toBeLessThan(2e-4);
    expectRelative(measured, truth, 5e-7);
  });
});
