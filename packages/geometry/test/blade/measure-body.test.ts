import { describe, expect, it } from "vitest";
import { measureBody } from "../../src/blade/measure-body.js";
import { VOLUME } from "../../src/blade/moments.js";
import type { SteelBody } from "../../src/blade/steel-body.js";
import { Law } from "../../src/numeric/law.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { bladeOnly, linear, lines, p, rectangle } from "./bodies.js";
import { EXACT, expectMoments, volume } from "./closed-moments.js";
import { halves } from "./independent.js";

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
