import { describe, expect, it } from "vitest";
import { type HandlePart, handleParts } from "../../src/blade/handle-parts.js";
import { makeKnife } from "../../src/blade/knife.js";
import { measureBody } from "../../src/blade/measure-body.js";
import { VOLUME, X, XX, XY, Y, YY, ZZ } from "../../src/blade/moments.js";
import type { SteelBody } from "../../src/blade/steel-body.js";
import { Law } from "../../src/numeric/law.js";
import { arcAround, line } from "../../src/plane/segment.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { bladeOnly, boxKnife, linear, lines, p, rectangle } from "./bodies.js";
import { halves } from "./independent.js";

/** Sections are straight or circular and everything is exact along x: rounding is what is left. */
const EXACT = 1e-12;

const volume = (body: SteelBody): number => measureBody(body).value[VOLUME] as number;

/** Compares all seven integrals; an integral near nothing against the size of its terms. */
function expectMoments(body: SteelBody, expected: readonly (number | undefined)[], share = EXACT): void {
  const { value, error } = measureBody(body);
  expected.forEach((truth, i) => {
    if (truth === undefined) return;
    expectRelative(value[i] as number, truth, share, `integral ${i}`);
    const off = Math.abs((value[i] as number) - truth);
    expect(off).toBeLessThanOrEqual((error[i] as number) + 1e-13 * Math.abs(truth));
  });
}

const [L, H, T, e] = [200, 30, 4, 0.4];

describe("bodies by closed form", () => {
  it("a box: all integrals", () => {
    const box = rectangle(L, H, { edge: Law.constant(T) });
    const V = L * H * T;
    expectMoments(box, [
      V,
      (V * L) / 2,
      (V * H) / 2,
      (V * L * L) / 3,
      (V * H * H) / 3,
      (V * T * T) / 12,
      (V * L * H) / 4,
    ]);
  });

  it("a flat full bevel: 66 mm², 13 200 mm³ and all moments of the trapezoid", () => {
    // t = e + (T − e)·y/H over the height.
    const area = (H * (T + e)) / 2;
    const first = H * H * (e / 2 + (T - e) / 3);
    const second = H ** 3 * (e / 3 + (T - e) / 4);
    const cubes = (H * (T ** 4 - e ** 4)) / (48 * (T - e));
    expect(area * L).toBeCloseTo(13_200, 9);
    expectMoments(rectangle(L, H, {}), [
      area * L,
      (area * L * L) / 2,
      first * L,
      (area * L ** 3) / 3,
      second * L,
      cubes * L,
      (first * L * L) / 2,
    ]);
  });

  it("a flat full bevel under a straight distal taper", () => {
    // t = e(1 − s) + T(x)·s: ∫t³ ds = Σ eᵏ T³⁻ᵏ / 4, and T runs evenly from T0 to T1.
    const [T0, T1] = [5, 1.8];
    const mean = (k: number): number => (T0 ** (k + 1) - T1 ** (k + 1)) / ((k + 1) * (T0 - T1));
    const cubes = (L * H * (e ** 3 + e * e * mean(1) + e * mean(2) + mean(3))) / 4;
    // ∫x·T dx over the taper.
    const xT = L * L * (T0 / 6 + T1 / 3);
    expectMoments(rectangle(L, H, { spine: linear(0, T0, L, T1) }), [
      (L * H * (e + mean(1))) / 2,
      (H / 2) * ((e * L * L) / 2 + xT),
      L * H * H * (e / 2 + (mean(1) - e) / 3),
      undefined,
      L * H ** 3 * (e / 3 + (mean(1) - e) / 4),
      cubes / 12,
      H * H * ((e * L * L) / 2 / 2 + (xT - (e * L * L) / 2) / 3),
    ]);
  });

  it("a bevel whose height runs evenly from 12 to 24", () => {
    // What the bevel takes: r(y) = (T − e)(1 − y/b), so (T − e)·b/2, ·b²/6, ·b³/12 at each station.
    const [b0, b1] = [12, 24];
    const power = (k: number): number => (L * (b1 ** (k + 1) - b0 ** (k + 1))) / ((k + 1) * (b1 - b0));
    const xb = L * L * (b0 / 6 + b1 / 3);
    const V = L * H * T;
    expectMoments(rectangle(L, H, { bevelHeight: linear(0, b0, L, b1) }), [
      V - ((T - e) * power(1)) / 2,
      (V * L) / 2 - ((T - e) * xb) / 2,
      (V * H) / 2 - ((T - e) * power(2)) / 6,
      undefined,
      (V * H * H) / 3 - ((T - e) * power(3)) / 12,
    ]);
  });

  it("a flank taper: full on a low bevel, fading where the bevel nears the spine", () => {
    const f = 0.5;
    for (const b of [10, 20, 22.5, 24, 28, 29.9, 30]) {
      const taken = f * Math.min(1, (4 * (H - b)) / H);
      const line = T - taken;
      const area = (b * (e + line)) / 2 + ((H - b) * (line + T)) / 2;
      const body = rectangle(L, H, { flankTaper: Law.constant(f), bevelHeight: Law.constant(b) });
      expectRelative(volume(body), area * L, EXACT, `bevel ${b}`);
    }
  });

  it("sharpening planes take (e²/4)/(tan θ − slope) a millimetre", () => {
    // Ground face e/2 + m·v and plane v·tan θ meet at v* = (e/2)/(tan θ − m): a triangle of base e and height v*.
    for (const [b, angle] of [
      [30, 0.3],
      [18, 0.2],
      [10, 0.5],
    ] as const) {
      const slope = (T - e) / (2 * b);
      const taken = (e * e) / 4 / (Math.tan(angle) - slope);
      const given = { bevelHeight: Law.constant(b) };
      const before = rectangle(L, H, given);
      const after = rectangle(L, H, { ...given, sharpening: Math.tan(angle) });
      expectRelative(volume(before) - volume(after), taken * L, 1e-10, `${b} high`);
    }
  });

  it("a sharpening plane flatter than the bevel is all there is: a wedge up to the spine", () => {
    const steep = rectangle(L, H, { bevelHeight: Law.constant(10), sharpening: 0.05 });
    // v·0.05 stays below the bevel (from 0.2 at slope 0.18) and reaches 1.5 at the spine.
    expectRelative(volume(steep), L * H * H * 0.05, EXACT);
  });

  it("a plunge that eases in takes half of what the full bevel would over its length", () => {
    // ∫(3u² − 2u³) du = 1/2 and ∫u(3u² − 2u³) du = 7/20.
    const [at, length] = [15, 40];
    const missing = (H * (T - e)) / 2;
    const body = rectangle(L, H, {}, { plunge: { at, length } });
    const V = L * H * T;
    const full = L - at - length;
    expectMoments(body, [
      V - missing * (full + length / 2),
      (V * L) / 2 -
        missing * ((L * L - (at + length) ** 2) / 2 + (at * length) / 2 + (7 / 20) * length * length),
    ]);
  });

  it("a plunge of no length is a wall: unground behind it", () => {
    const body = rectangle(L, H, {}, { plunge: { at: 30, length: 0 } });
    expectRelative(volume(body), L * H * T - (170 * H * (T - e)) / 2, EXACT);
  });

  it("a convex bevel: trapezoid and two circular segments", () => {
    // Project's sheet of published values, section 11: 75.051097 mm² with radius 500.
    const crown = 500 - Math.sqrt(500 ** 2 - (30 ** 2 + 1.8 ** 2) / 4);
    const body = rectangle(L, H, { form: "convex", crown: { kind: "mm", law: Law.constant(crown) } });
    expectWithin(volume(body) / L, 75.051097, 5e-7);
  });

  it.each([2.5, 4, 5, 6, 8, 12, 20, 29])("a steep convex bevel %f high on 8 mm of spine", (b) => {
    // Level arc, or where it would lean out over the edge the upright one; centre and angle by the chord.
    const thick = 8;
    const rise = (thick - e) / 2;
    const chord = Math.hypot(b, rise);
    const radius = rise <= b ? chord ** 2 / (2 * rise) : chord ** 2 / (2 * b);
    const half = Math.asin(chord / 2 / radius);
    const segment = (radius * radius * (2 * half - Math.sin(2 * half))) / 2;
    const area = b * (e / 2 + thick / 2) + 2 * segment + (H - b) * thick;
    const body = rectangle(L, H, {
      spine: Law.constant(thick),
      form: "convex",
      bevelHeight: Law.constant(b),
    });
    expectMoments(body, [area * L], 1e-11);
  });

  it("a wedge 60 × 20 to an edge of 40 at height 30: 16 000 mm³", () => {
    // b·h(2a + c)/6, the project's sheet of published values, section 11.
    const body = bladeOnly({
      edge: lines(p(0, 0), p(40, 0)),
      around: [p(50, 30), p(-10, 30)],
      section: { spine: Law.constant(20), edge: Law.constant(0) },
      plunge: { at: -10, length: 0 },
    });
    expectRelative(volume(body), 16_000, EXACT);
  });
});

describe("pieces of bar", () => {
  const bar = (length: number, w0: number, t0: number, w1: number, t1: number): SteelBody =>
    bladeOnly({
      edge: lines(p(0, 0), p(length, (w0 - w1) / 2)),
      around: [p(length, (w0 + w1) / 2), p(0, w0)],
      section: { spine: linear(0, t0, length, t1) },
      // Nothing is ground: the bevels would begin at the far end.
      plunge: { at: length, length: 0 },
    });

  it("tapering in width and thickness: 25 333.333 mm³, where two rules of thumb are wrong", () => {
    // L/6·(2w₁t₁ + w₁t₂ + w₂t₁ + 2w₂t₂), the project's sheet of published values, section 11.
    const measured = volume(bar(200, 40, 6, 20, 2));
    expectRelative(measured, (200 / 6) * (2 * 240 + 80 + 120 + 2 * 40), EXACT);
    expectWithin(measured, 25_333.333, 1e-3);
    const averageEnds = (200 * (240 + 40)) / 2;
    const similarFrustum = (200 / 3) * (240 + 40 + Math.sqrt(240 * 40));
    expect(averageEnds).toBe(28_000);
    expectWithin(similarFrustum, 25_198.64, 5e-3);
    expect(Math.abs(measured - averageEnds) / measured).toBeGreaterThan(0.1);
    expect(Math.abs(measured - similarFrustum) / measured).toBeGreaterThan(0.005);
  });

  it("the frustum of the Moscow papyrus, 4 to 2 over 6, ten times as large: 56 000 mm³", () => {
    // Problem 14, published answer 56 (citation from memory).
    expectRelative(volume(bar(60, 40, 40, 20, 20)), 56_000, EXACT);
  });
});

describe("round holes", () => {
  const drilled = (
    x: number,
    y: number,
    radius: number,
    section = {},
    plunge = { at: L, length: 0 },
  ): readonly number[] => {
    const plain = measureBody(rectangle(L, H, section, { plunge })).value;
    const holed = measureBody(
      rectangle(L, H, section, { plunge, cutouts: [{ centre: p(x, y), radius }] }),
    ).value;
    return Array.from(plain, (v, i) => v - (holed[i] as number));
  };

  it("through a straight taper: the cylinder under the thickness at its centre, and its moments", () => {
    const [T0, T1, x, y, r] = [5, 2, 60, 18, 7];
    const slope = (T1 - T0) / L;
    const t = T0 + slope * x;
    const area = Math.PI * r * r;
    const hole = drilled(x, y, r, { spine: linear(0, T0, L, T1) });
    // Over the disc ξ² has the mean r²/4 and odd powers vanish.
    const expected = [
      area * t,
      area * (t * x + (slope * r * r) / 4),
      area * t * y,
      area * (t * (x * x + (r * r) / 4) + (slope * x * r * r) / 2),
      area * t * (y * y + (r * r) / 4),
      (area / 12) * (t ** 3 + (3 * t * slope * slope * r * r) / 4),
      area * y * (t * x + (slope * r * r) / 4),
    ];
    expected.forEach((truth, i) => {
      expectRelative(hole[i] as number, truth, 1e-9, `integral ${i}`);
    });
  });

  it("in a flat bevel: the thickness at its centre counts", () => {
    const hole = drilled(80, 14, 6, {}, { at: 0, length: 0 });
    expectRelative(hole[VOLUME] as number, Math.PI * 36 * (e + ((T - e) * 14) / H), 1e-10);
  });

  it("across the bevel line: half a cylinder, and half of one under a slope", () => {
    // The mean distance of a half disc from its diameter is 4r/3π.
    const [b, r] = [16, 5];
    const hole = drilled(80, b, r, { bevelHeight: Law.constant(b) }, { at: 0, length: 0 });
    const half = (Math.PI * r * r) / 2;
    const truth = half * T + half * (T - ((T - e) / b) * ((4 * r) / (3 * Math.PI)));
    expectRelative(hole[VOLUME] as number, truth, 1e-10);
  });

  it("across the start of a plunge, by brute force over the disc", () => {
    const [at, length, r, x, y] = [30, 12, 9, 33, 15];
    const body = rectangle(L, H, {}, { plunge: { at, length } });
    const t = (px: number, py: number): number => {
      const u = Math.min(1, Math.max(0, (px - at) / length));
      return T - u * u * (3 - 2 * u) * (T - e) * (1 - py / H);
    };
    const chord = (px: number): number => Math.sqrt(Math.max(0, r * r - (px - x) ** 2));
    // Along y the thickness is linear: its value at the middle of the chord counts.
    const sum = (from: number, to: number): number =>
      halves((px) => [2 * chord(px) * t(px, y)], from, to, [1e-9], 30)[0] as number;
    const truth = sum(x - r, at) + sum(at, x + r);
    const hole = drilled(x, y, r, {}, { at, length });
    expectRelative(hole[VOLUME] as number, truth, 1e-9);
    expectRelative(volume(body), volume(rectangle(L, H, {}, { plunge: { at, length } })), EXACT);
  });
});

describe("bevels square to an edge that bends", () => {
  const [b, high] = [9, 60];
  const taken = T - e;
  const section = { bevelHeight: Law.constant(b) };
  /** Slab volume less what a bevel takes. */
  const body = (
    edge: ReturnType<typeof lines> | [ReturnType<typeof line>, ReturnType<typeof arcAround>],
    area: number,
  ): readonly [SteelBody, number] => {
    const end = edge[edge.length - 1];
    const x = end === undefined ? 0 : end.to.x;
    return [bladeOnly({ edge, around: [p(x, high), p(0, high)], section }), area * T];
  };

  it("round an arc: the strip is longer by its curvature, dA = (1 − κv) dv ds", () => {
    const [a, R] = [50, 40];
    for (const turn of [0.3, 0.7, 1.1]) {
      const arc = arcAround(p(a, R), R, -Math.PI / 2, turn);
      const [x, y] = [a + R * Math.sin(turn), R * (1 - Math.cos(turn))];
      // Down to y = 0: the trapezoid under the centre less the sector and the triangle beside it.
      const areaUnderArc = (x - a) * R - (R * R * turn) / 2 - ((x - a) * (R - y)) / 2;
      const [blade, slab] = body([line(p(0, 0), p(a, 0)), arc], x * high - areaUnderArc);
      // Straight part, sector of the arc, and the wedge between its last normal and the upright front.
      const removed =
        taken * ((a * b) / 2 + turn * ((R * b) / 2 - (b * b) / 6) + (Math.tan(turn) * b * b) / 6);
      expectRelative(volume(blade), slab - removed, EXACT, `turn ${turn}`);
    }
  });

  it("a left turn: two facets that meet in a ridge on the bisector", () => {
    for (const turn of [0.2, 0.6, 1]) {
      const [a, c] = [60, 30];
      const end = p(a + c * Math.cos(turn), c * Math.sin(turn));
      const [blade, slab] = body(lines(p(0, 0), p(a, 0), end), end.x * high - ((end.x - a) * end.y) / 2);
      // At the distance v each facet is shorter by v·tan(turn/2); the second is longer by v·tan(turn) at the upright front.
      const removed =
        taken * (((a + c) * b) / 2 - (2 * Math.tan(turn / 2) * b * b) / 6 + (Math.tan(turn) * b * b) / 6);
      expectRelative(volume(blade), slab - removed, EXACT, `turn ${turn}`);
    }
  });

  it("a right turn: two facets and a fan between their normals", () => {
    for (const turn of [0.2, 0.5]) {
      const [a, c] = [60, 40];
      const end = p(a + c * Math.cos(turn), -c * Math.sin(turn));
      const [blade, slab] = body(lines(p(0, 0), p(a, 0), end), end.x * high + ((end.x - a) * -end.y) / 2);
      const removed = taken * (((a + c) * b) / 2 + (turn * b * b) / 6 - (Math.tan(turn) * b * b) / 6);
      expectRelative(volume(blade), slab - removed, 1e-11, `turn ${turn}`);
    }
  });

  it("an edge that slopes all the way: its bevel is as long as the edge", () => {
    const [blade, slab] = body(lines(p(0, 0), p(90, 24)), 90 * high - (90 * 24) / 2);
    // Both upright ends cut the strip the same way round: v·slope is taken at one end and given at the other.
    expectRelative(volume(blade), slab - (taken * Math.hypot(90, 24) * b) / 2, EXACT);
  });
});

describe("a whole knife of boxes", () => {
  it("adds blade, ricasso and tang", () => {
    const knife = makeKnife(boxKnife());
    const body = knife.body("unsharpened");
    // Blade 120 × 30 as a trapezoid; ricasso 20 × 20 and tang 80 × 20 full.
    expectMoments(body, [120 * 66 + 20 * 20 * 4 + 80 * 20 * 4]);
  });

  it("a tapered tang: mean thickness, and its centre of a trapezoid", () => {
    const knife = makeKnife(boxKnife({}, { tang: { buttThickness: 2 } }));
    const m = measureBody(knife.body("unsharpened")).value;
    const parallel = measureBody(makeKnife(boxKnife()).body("unsharpened")).value;
    expectRelative((parallel[VOLUME] as number) - (m[VOLUME] as number), 80 * 20 * 1, 1e-11);
    // What is missing is a wedge: its centre is two thirds of the way to the butt.
    const moved = (parallel[X] as number) - (m[X] as number);
    expectRelative(moved, 80 * 20 * (-20 - (2 / 3) * 80), 1e-11);
    expect([Y, XX, YY, ZZ, XY].every((i) => Number.isFinite(m[i]))).toBe(true);
  });
});

describe("slabs and pins", () => {
  const slabs = (radius: number, bottom = "L-20 10", butt = "L-100 10"): HandlePart => {
    const spec = boxKnife();
    const { outline } = spec.blade;
    if ("family" in outline || "drawing" in outline) throw new Error("a box knife is given by runs");
    const knife = makeKnife({
      ...spec,
      blade: { ...spec.blade, outline: { runs: { ...outline.runs, butt, tangBottom: bottom } } },
      handle: { slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8, edgeRadius: radius } },
    });
    return handleParts(knife.spec.handle, knife.outline, knife.body("finished").slab, [])[0] as HandlePart;
  };
  /** What a quarter circle leaves out of its square. */
  const lost = (r: number): number => r * r * (1 - Math.PI / 4);

  it("plain boxes without a radius", () => {
    const { value } = slabs(0).moments;
    expectRelative(value[VOLUME] as number, 2 * 8 * 80 * 20, 1e-10);
    expectRelative(value[X] as number, 2 * 8 * 80 * 20 * -60, 1e-10);
    // Each slab lies between 2 and 10 from the centre plane.
    expectRelative(value[ZZ] as number, (2 * 80 * 20 * (10 ** 3 - 2 ** 3)) / 3, 1e-10);
  });

  it.each([1, 4, 8])("long edges rounded by %f: two quarter circles are missing from each slab", (r) => {
    const { value } = slabs(r).moments;
    expectRelative(value[VOLUME] as number, 2 * 8 * 80 * 20 - 4 * lost(r) * 80, 1e-10);
    expectRelative(value[X] as number, -60 * (2 * 8 * 80 * 20 - 4 * lost(r) * 80), 1e-10);
  });

  it("edges that slope are rounded square to themselves", () => {
    for (const drop of [5, 3, 1]) {
      const { value } = slabs(6, "L-20 10", `L-100 ${10 - drop}`).moments;
      const area = 80 * (20 + drop / 2);
      const truth = 16 * area - 2 * lost(6) * (80 + Math.hypot(80, drop));
      expectRelative(value[VOLUME] as number, truth, 1e-10, `bottom drops by ${drop}`);
    }
  });

  it("pins are cylinders through tang and slabs; holes go through the slabs, but not through what is covered", () => {
    const spec = boxKnife(
      {},
      {
        tang: {
          holes: [
            { kind: "pin", at: p(-40, 20), diameter: 5 },
            { kind: "pin", at: p(-70, 20), diameter: 6, pin: 4 },
            { kind: "thong", at: p(-90, 20), diameter: 7 },
            { kind: "lightening", at: p(-55, 20), diameter: 8 },
          ],
        },
        handle: {
          slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8, edgeRadius: 3 },
          pins: { material: { name: "pin metal", density: 0.0085 } },
        },
      },
    );
    const knife = makeKnife(spec);
    const [wood, pins] = handleParts(
      knife.spec.handle,
      knife.outline,
      knife.body("finished").slab,
      knife.holes,
    );
    const through = 4 + 16;
    expectRelative(pins?.moments.value[VOLUME] ?? 0, Math.PI * through * (2.5 ** 2 + 2 ** 2), 1e-9);
    expectRelative(
      wood?.moments.value[VOLUME] ?? 0,
      16 * 80 * 20 - 4 * lost(3) * 80 - 16 * Math.PI * (2.5 ** 2 + 2 ** 2 + 3.5 ** 2),
      1e-9,
    );
  });
});
