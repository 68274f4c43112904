import { describe, expect, it } from "vitest";
import { measureSurface, surfaceOf } from "../../src/blade/body-surface.js";
import { makeKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import type { SteelBody } from "../../src/blade/steel-body.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { bruteSurface } from "./brute-surface.js";
import { DEGREE, heel, tip } from "./random-knives.js";

/** Slopes along x are differences over 4e-5 mm, round faces are summed by 12 points. */
const EXACT = 2e-9;

// A box knife: blade of 120 × 30 and 4 thick at the spine, unsharpened edge 0.4 from z = 0, ricasso of 20, tang of 80 × 20.
const [L, H, T, e] = [120, 30, 4, 0.4];
type Blade = Partial<KnifeSpec["blade"]>;

const body = (blade: Blade = {}, state: "finished" | "unsharpened" | "ready" = "unsharpened"): SteelBody =>
  makeKnife(boxKnife(blade)).body(state);

/** What a form adds to the plain box knife. */
const added = (blade: Blade, base: Blade = {}): number =>
  measureSurface(body(blade)) - measureSurface(body(base));

/** Blade of one thickness throughout: edge as thick as the spine. */
const plate: Blade = { bevel: { form: "flat", height: "full", edgeThickness: T } };

describe("forms by closed form", () => {
  it("a single bevel: one flat face, one sloping", () => {
    const single = body({ bevel: { form: "flat", height: "full", edgeThickness: e, apex: 1 } });
    const both = body();
    const slope = (T - e) / H;
    // The rims and walls are those of the same thicknesses; only the faces differ.
    const faces = L * H * (1 + Math.hypot(1, slope) - 2 * Math.hypot(1, slope / 2));
    expectWithin(measureSurface(single) - measureSurface(both), faces, EXACT * 2e4);
  });

  it("apex off centre, faces of different heights", () => {
    const [a, b, c] = [0.3, 12, 21];
    const made = body({
      bevel: { form: "flat", height: b, edgeThickness: e, apex: a, left: { form: "flat", height: c } },
    });
    const right = (a * T) / 2 + (e * (1 - a)) / 2;
    const left = (-a * T) / 2 + (e * (1 + a)) / 2;
    const profile = Math.hypot(b, T / 2 - right) + H - b + Math.hypot(c, T / 2 - left) + H - c;
    // Area above the edge's lowest 10 mm and whole: what is missing from a plate is a triangle on either face.
    const missing = (b * (T / 2 - right)) / 2 + (c * (T / 2 - left)) / 2;
    const over10 = ((b - 10) ** 2 / b / 2) * (T / 2 - right) + ((c - 10) ** 2 / c / 2) * (T / 2 - left);
    const front = H * T - missing;
    // At the heel: the heel face below the ricasso, the wall above it.
    const heelFace = 10 * T - (missing - over10);
    const behind = 2 * 100 * 20 + 2 * 100 * T + 20 * T;
    expectRelative(
      measureSurface(made),
      L * profile + L * (e + T) + front + heelFace + over10 + behind,
      EXACT,
    );
  });

  it("an eased spine: two quarter cylinders", () => {
    const r = 1.1;
    // Over blade and ricasso; square ends at the front and, against the tang, at the handle front.
    const faces = (L + 20) * (Math.PI * r - 4 * r);
    const corner = 2 * (1 - Math.PI / 4) * r * r;
    expectWithin(added({ ...plate, easedSpine: r }, plate), faces - corner + corner, EXACT * 2e4);
  });

  it("a spine eased by half its thickness: a half cylinder on a sloping face", () => {
    // Bevel of 20, so that the face is level where the circle meets it.
    const low: Blade = { bevel: { form: "flat", height: 20, edgeThickness: e } };
    expectWithin(added({ ...low, easedSpine: T / 2 }, low), (L + 20) * (Math.PI - 4) * 2, EXACT * 2e4);
  });

  it("a swedge on a plate, with the walls at both its ends", () => {
    const [from, to, left, angle] = [40, 90, 1.5, 25 * DEGREE];
    const swedge = {
      from: { kind: "distance" as const, mm: from },
      to: { kind: "distance" as const, mm: to },
      angle,
      thickness: [heel(left)],
    };
    const inset = (T - left) / 2;
    const drop = inset / Math.tan(angle);
    const faces = 2 * (to - from) * (Math.hypot(drop, inset) - drop) - (to - from) * (T - left);
    expectWithin(added({ ...plate, swedge }, plate), faces + 2 * (drop * inset), EXACT * 2e4);
  });

  it("a swedge and an eased spine together", () => {
    // A plane at 45° that leaves 2: it meets the circle of radius 0.5 nowhere, for the circle stands 1 outside it.
    const swedge = {
      from: { kind: "heel" as const },
      to: { kind: "tip" as const },
      angle: 45 * DEGREE,
      thickness: [heel(2)],
    };
    const r = 0.5;
    const both = added({ ...plate, swedge, easedSpine: r }, { ...plate, swedge });
    // What is eased is the ricasso; its end against the swedge loses the corner that the step there was.
    const corner = 2 * (1 - Math.PI / 4) * r * r;
    expectWithin(both, 20 * (Math.PI * r - 4 * r) + corner - corner, EXACT * 2e4);
  });

  it("a fuller in a plate: a strip of a cylinder and two halves of a round cap", () => {
    for (const [radius, depth] of [
      [9, 1],
      [4, 1.2],
      [1.2, 1.2],
      [1, 1.4],
    ] as const) {
      for (const [a, b] of [
        [p(30, 16), p(80, 16)],
        [p(30, 12), p(70, 21)],
        [p(60, 14), p(60, 22)],
        [p(60, 14), p(60, 14)],
      ] as const) {
        const w = depth >= radius ? radius : Math.sqrt(2 * radius * depth - depth * depth);
        const long = Math.hypot(b.x - a.x, b.y - a.y);
        const half = Math.asin(w / radius);
        // The cap is that of a sphere: 2πR·(its height), and upright walls where the groove is deeper than its radius.
        const sunk = Math.max(0, depth - radius);
        const strip = long * (2 * half * radius - 2 * w);
        const caps = 2 * Math.PI * radius * Math.min(depth, radius) - Math.PI * w * w;
        const walls = sunk * (2 * long + 2 * Math.PI * radius);
        const one = { from: a, to: b, radius, depth, faces: "left" as const };
        expectWithin(
          added({ ...plate, fullers: [one] }, plate),
          strip + caps + walls,
          1e-7 * 2e4,
          `${radius}`,
        );
      }
    }
    const both = { from: p(30, 16), to: p(80, 16), radius: 9, depth: 1 };
    const left = { ...both, faces: "left" as const };
    expectWithin(
      added({ ...plate, fullers: [both] }, plate),
      2 * added({ ...plate, fullers: [left] }, plate),
      1e-6,
    );
  });

  it("a slot in a plate, and along a bevel", () => {
    const [r, long] = [3, 25];
    const flat = added({ ...plate, holes: [slot(p(30, 15), p(30 + long, 15), r)] }, plate);
    const rim = 2 * long + 2 * Math.PI * r;
    const area = 2 * r * long + Math.PI * r * r;
    expectWithin(flat, rim * T - 2 * area, EXACT * 2e4);
    // Centred at 15 mm on a flat bevel its mean wall is as high as the bevel is thick there; up the bevel likewise.
    for (const end of [p(30 + long, 15), p(30 + 15, 15 + 8), p(30, 15)]) {
      const middle = (15 + end.y) / 2;
      const run = Math.hypot(end.x - 30, end.y - 15);
      const slanting = added({ holes: [slot(p(30, 15), end, r)] });
      const wall = (2 * run + 2 * Math.PI * r) * (e + ((T - e) * middle) / H);
      const faces = 2 * (2 * r * run + Math.PI * r * r) * Math.hypot(1, (T - e) / 2 / H);
      expectWithin(slanting, wall - faces, EXACT * 2e4);
    }
  });

  it("a slot across a bevel line and across the wall of the plunge", () => {
    const low: Blade = {
      bevel: { form: "flat", height: 15, edgeThickness: e },
      plunge: { at: 40, length: 0 },
    };
    const r = 2;
    // Upright slot from y = 8 to 22 across the bevel line at 15, ahead of the plunge; two upright walls, one cap on the bevel, one on the flat.
    const upright = added({ ...low, holes: [slot(p(70, 8), p(70, 22), r)] }, low);
    const thick = (y: number): number => Math.min(T, e + ((T - e) * y) / 15);
    const long = 2 * ((thick(8) + T) / 2) * 7 + 2 * 7 * T;
    // Mean thickness under a half circle: its centre of gravity lies 2r/π from the diameter.
    const caps = Math.PI * r * (thick(8 - (2 * r) / Math.PI) + T);
    const onBevel = 2 * r * 7 + (Math.PI * r * r) / 2;
    const faces = 2 * onBevel * Math.hypot(1, (T - e) / 2 / 15) + 2 * onBevel;
    expectWithin(upright, long + caps - faces, EXACT * 2e4);
    // A level slot across the plunge's wall, on the bevel at y = 10: the wall between y = 8 and 12 is gone.
    const level = added({ ...low, holes: [slot(p(30, 10), p(52, 10), r)] }, low);
    const t = thick(10);
    const rim = 2 * 10 * T + Math.PI * r * T + 2 * 12 * t + Math.PI * r * t;
    const cut = 2 * (2 * r * 10 + (Math.PI * r * r) / 2);
    const ground = 2 * (2 * r * 12 + (Math.PI * r * r) / 2) * Math.hypot(1, (T - e) / 2 / 15);
    expectWithin(level, rim - cut - ground - 2 * r * (T - t), EXACT * 2e4);
  });

  it("a microbevel: its plane and the edge's above it, on prisms", () => {
    const [m, mu, theta] = [0.4, 26 * DEGREE, 17 * DEGREE];
    const sharp = body({ edgeAngle: theta, microbevel: { height: m, angle: mu } }, "finished");
    const [steep, tan, slope] = [Math.tan(mu), Math.tan(theta), (T - e) / 2 / H];
    // Planes end where m·(tan μ − tan θ) + v·tan θ = e/2 + slope·v.
    const v = (e / 2 - m * (steep - tan)) / (tan - slope);
    const half = (y: number): number =>
      y <= m ? y * steep : y <= v ? m * (steep - tan) + y * tan : e / 2 + y * slope;
    const profile = m * Math.hypot(1, steep) + (v - m) * Math.hypot(1, tan) + (H - v) * Math.hypot(1, slope);
    const area = (y: number): number =>
      m * half(m) + (v - m) * (half(m) + half(v)) + (y - v) * (half(v) + half(y));
    const wall = 20 * T - (area(H) - area(10));
    const behind = 2 * 100 * 20 + 2 * 100 * T + 20 * T;
    expectRelative(
      measureSurface(sharp),
      2 * L * profile + L * T + area(H) + area(10) + wall + behind,
      EXACT,
    );
  });

  it("a bevel still to be ground beside a flank left from the hammer: the step along the bevel line", () => {
    const spec = boxKnife(
      { bevel: { form: "flat", height: 15, edgeThickness: 1 } },
      { finish: { bevels: "ground", flats: "forged" }, allowances: { afterHardening: 0.2 } },
    );
    const knife = makeKnife(spec);
    const ready = measureSurface(knife.body("ready"));
    // 0.2 more on each face of the bevel, not on the flank: a wall 0.2 high along it, and at the ends of the prism.
    const edge = 1 + 0.4;
    const line = T + 0.4;
    const profile = Math.hypot(15, (line - edge) / 2) + 0.2 + 15;
    const front = (15 * (edge + line)) / 2 + 15 * T;
    const at10 = edge + ((line - edge) * 10) / 15;
    const heelFace = (10 * (edge + at10)) / 2;
    // At the heel, above the ricasso's lower side: thinner than the ricasso below where both are 4 thick, thicker above it.
    const even = ((T - edge) * 15) / (line - edge);
    const wall = ((even - 10) * (T - at10)) / 2 + ((15 - even) * (line - T)) / 2;
    const tang = T + 0.4;
    const ricasso = 2 * 20 * 20 + 2 * 20 * T + 20 * (tang - T);
    const behind = 2 * 80 * 20 + 2 * 80 * tang + 20 * tang;
    expectRelative(
      ready,
      2 * L * profile + L * (edge + T) + front + heelFace + wall + ricasso + behind,
      EXACT,
    );
  });
});

const slot = (from: { x: number; y: number }, to: { x: number; y: number }, radius: number) => ({
  kind: "lightening" as const,
  at: from,
  to,
  diameter: 2 * radius,
});

/** Pointed blade of 130 × 32 on a full tang. */
const pointed = (blade: Blade): KnifeSpec => ({
  steel: { name: "test steel", density: 0.00785 },
  blade: {
    outline: { family: "drop-point", edgeLength: 130, heelHeight: 32, straightEdge: 70, tipHeight: 20 },
    ricasso: 12,
    thickness: [heel(4.4), tip(2.4)],
    bevel: { form: "flat", height: 20, edgeThickness: 0.5 },
    edgeAngle: 18 * DEGREE,
    ...blade,
  },
  tang: { form: "full", length: 100, heights: { front: 23, middle: 21, butt: 25 } },
});

describe("forms against the slopes of the body's own faces", () => {
  // Not what is claimed, but what the halving finds: creases in the outermost part of a cell escape it (1e-6 here).
  const BRUTE = 3e-6;
  it.each([
    [
      "single bevel",
      {
        bevel: { form: "flat", height: 20, edgeThickness: 0.4, apex: 1 },
        edgeAngle: { right: "flat", left: 24 * DEGREE },
      },
    ],
    [
      "two faces, plunge with a length, microbevel",
      {
        plunge: { at: 2, length: 11 },
        bevel: {
          form: "flat",
          height: 24,
          edgeThickness: 0.5,
          apex: -0.25,
          left: { form: "convex", height: 15, crown: { share: 0.08 } },
        },
        edgeAngle: { right: 14 * DEGREE, left: 20 * DEGREE },
        microbevel: { height: 0.4, angle: 25 * DEGREE },
      },
    ],
    [
      "hollow to the spine, eased spine",
      { bevel: { form: "hollow", height: "full", edgeThickness: 0.4, wheelRadius: 180 }, easedSpine: 0.6 },
    ],
    [
      "fullers across the bevel line",
      { fullers: [{ from: p(20, 16), to: p(64, 23), radius: 7, depth: 0.8, faces: "right" }] },
    ],
    [
      "a swedge along the point",
      {
        swedge: {
          from: { kind: "distance", mm: 70 },
          to: { kind: "tip" },
          angle: 27 * DEGREE,
          thickness: [
            { at: { kind: "distance", mm: 70 }, is: 3.2 },
            { at: { kind: "tip" }, is: 0.9 },
          ],
        },
      },
    ],
  ] as const satisfies readonly (readonly [string, Blade])[])("%s", (_, blade) => {
    const knife = makeKnife(pointed(blade));
    const finished = knife.body("finished");
    const { input, slab, section } = finished;
    const steps = [...slab.breaks, ...section.breaks, ...(input.crest?.breaks ?? [])];
    steps.push(input.plunge.at, input.plunge.at + input.plunge.length);
    const { area, error } = surfaceOf(finished);
    const truth = bruteSurface(finished, steps, 5e-6);
    expectRelative(area, truth, BRUTE);
    expect(error).toBeLessThan(2e-7 * area);
  });
});
