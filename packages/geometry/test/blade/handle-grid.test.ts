import { describe, expect, test } from "vitest";
import { handleParts } from "../../src/blade/handle-parts.js";
import { VOLUME, X, XX, XY, Y, YY, ZZ } from "../../src/blade/moments.js";
import type { HandleSpec, HoleSpec } from "../../src/blade/spec.js";
import { arcAround, cubic, pointAt, type Segment } from "../../src/plane/segment.js";
import type { Vec2 } from "../../src/plane/vec2.js";
import { hiddenTang, outlineWith, polyline, relative, steelLaw } from "./handle-fixtures.js";

// A second method, written apart from the kernel: thickness by its definition at the points of a fine grid.

interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Volume integrals of ±h(x, y) by midpoints; `h(x, y)` gives inner and outer half-thickness, equal where there is nothing. */
function byGrid(
  { x0, x1, y0, y1 }: Box,
  nx: number,
  ny: number,
  h: (x: number, y: number) => readonly [number, number],
): number[] {
  const sums = [0, 0, 0, 0, 0, 0, 0];
  const area = ((x1 - x0) / nx) * ((y1 - y0) / ny);
  for (let i = 0; i < nx; i++) {
    const x = x0 + ((x1 - x0) * (i + 0.5)) / nx;
    for (let j = 0; j < ny; j++) {
      const y = y0 + ((y1 - y0) * (j + 0.5)) / ny;
      const [inner, outer] = h(x, y);
      const w = 2 * (outer - inner) * area;
      const terms = [
        w,
        w * x,
        w * y,
        w * x * x,
        w * y * y,
        (2 / 3) * (outer ** 3 - inner ** 3) * area,
        w * x * y,
      ];
      terms.forEach((term, k) => {
        sums[k] = (sums[k] as number) + term;
      });
    }
  }
  return sums;
}

/** Every integral within `share`, measured against the volume at the body's own reach. */
function expectNear(value: Float64Array, sums: readonly number[], reach: number, share: number): void {
  const v = sums[0] as number;
  [VOLUME, X, Y, XX, YY, ZZ, XY].forEach((index, k) => {
    const scale = v * reach ** ([0, 1, 1, 2, 2, 2, 2][k] as number);
    const close = index === ZZ ? (sums[k] as number) : scale;
    expect(Math.abs((value[index] as number) - (sums[k] as number)) / close, `integral ${k}`).toBeLessThan(
      share,
    );
  });
}

test("a rounded handle that swells and tapers, with a tapered tang, a pin off its middle and a thong hole", () => {
  const outline = hiddenTang(80, 15, 9);
  const block: HandleSpec["block"] = {
    material: { name: "maple" },
    section: "rounded",
    between: "smooth",
    length: 110,
    height: [
      { at: { kind: "handle" }, is: 28 },
      { at: { kind: "fraction", share: 0.4 }, is: 34 },
      { at: { kind: "butt" }, is: 30 },
    ],
    width: [
      { at: { kind: "handle" }, is: 18 },
      { at: { kind: "distance", mm: 55 }, is: 23 },
      { at: { kind: "butt" }, is: 20 },
    ],
    cornerRadius: 8,
  };
  const holes: HoleSpec[] = [
    { kind: "pin", at: { x: -25, y: 18 }, diameter: 5 },
    { kind: "thong", at: { x: -100, y: 15 }, diameter: 6 },
  ];
  const found = handleParts(
    { block, pins: { material: { name: "brass" } } },
    outline,
    steelLaw(outline, 4, 2.4),
    holes,
  );
  const smooth = (a: number, m: number, b: number, at: number, length: number, s: number): number => {
    // Shape-preserving cubic through three points of which the middle one is the highest: level there, the slopes at the
    // ends by three points, limited to three secants.
    const [m0, m1] = [(m - a) / at, (b - m) / (length - at)];
    const [h0, h1] = [at, length - at];
    const limit = (p: number, q: number): number => (Math.abs(p) > 3 * Math.abs(q) ? 3 * q : p);
    const p = limit(((2 * h0 + h1) * m0 - h0 * m1) / length, m0);
    const q = limit(((2 * h1 + h0) * m1 - h1 * m0) / length, m1);
    const hermite = (u: number, h: number, y0: number, y1: number, d0: number, d1: number): number =>
      y0 * (1 + 2 * u) * (1 - u) ** 2 + y1 * u * u * (3 - 2 * u) + h * u * (1 - u) * (d0 * (1 - u) - d1 * u);
    return s < at ? hermite(s / at, h0, a, m, p, 0) : hermite((s - at) / h1, h1, m, b, 0, q);
  };
  const half = (x: number, y: number): number => {
    const a = smooth(28, 34, 30, 44, 110, -x) / 2;
    const b = smooth(18, 23, 20, 55, 110, -x) / 2;
    const u = Math.abs(y - 15);
    if (u >= a) return 0;
    return u <= a - 8 ? b : b - 8 + Math.sqrt(64 - (u - a + 8) ** 2);
  };
  const steel = (x: number, y: number): number =>
    x > -80 && Math.abs(y - 15) < (15 + (6 * x) / 80) / 2 ? (4 + (1.6 * x) / 80) / 2 : 0;
  const isDrilled = (x: number, y: number): boolean =>
    Math.hypot(x + 25, y - 18) < 2.5 || Math.hypot(x + 100, y - 15) < 3;
  const box = { x0: -110, x1: 0, y0: -3, y1: 33 };
  const wood = byGrid(box, 1100, 1200, (x, y) => {
    const outer = half(x, y);
    return isDrilled(x, y) ? [0, 0] : [Math.min(outer, steel(x, y)), outer];
  });
  expectNear(found[0]?.moments.value ?? new Float64Array(), wood, 110, 1e-4);
  const pinBox = { x0: -27.5, x1: -22.5, y0: 15.5, y1: 20.5 };
  const pin = byGrid(pinBox, 1000, 1000, (x, y) => [0, Math.hypot(x + 25, y - 18) < 2.5 ? half(x, y) : 0]);
  expect(relative(found[1]?.moments.value[VOLUME] as number, pin[0] as number)).toBeLessThan(1e-4);
});

describe("rounded long edges, by true distance", () => {
  /** Distance to a run that goes on straight past its ends, by many short pieces of it. */
  const distanceTo = (run: readonly Segment[]): ((p: Vec2) => number) => {
    const points = run.flatMap((segment) =>
      Array.from({ length: segment.kind === "line" ? 1 : 60 }, (_, i) =>
        pointAt(segment, i / (segment.kind === "line" ? 1 : 60)),
      ),
    );
    points.push((run[run.length - 1] as Segment).to);
    const away = (from: Vec2, to: Vec2): Vec2 => {
      const n = Math.hypot(to.x - from.x, to.y - from.y);
      // An end that stands upright or turns back goes on level, away from the handle.
      const outward = to.x < -50 ? -1 : 1;
      if (((to.x - from.x) / n) * outward < 0.5) return { x: to.x + 200 * outward, y: to.y };
      return { x: to.x + (200 * (to.x - from.x)) / n, y: to.y + (200 * (to.y - from.y)) / n };
    };
    points.unshift(away(points[1] as Vec2, points[0] as Vec2));
    points.push(away(points[points.length - 2] as Vec2, points[points.length - 1] as Vec2));
    return ({ x, y }) => {
      let best = Number.POSITIVE_INFINITY;
      for (let i = 0; i + 1 < points.length; i++) {
        const a = points[i] as Vec2;
        const b = points[i + 1] as Vec2;
        const [dx, dy] = [b.x - a.x, b.y - a.y];
        const t = Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
        best = Math.min(best, Math.hypot(x - a.x - t * dx, y - a.y - t * dy));
      }
      return best;
    };
  };
  const front = { x: 0, y: 30 };
  const shapes: Record<
    string,
    { top: Segment[]; butt: Segment[]; bottom: Segment[]; inside: (p: Vec2) => boolean }
  > = {
    "a corner half way along the lower edge, turned in": {
      top: polyline(front, { x: -100, y: 30 }),
      butt: polyline({ x: -100, y: 30 }, { x: -100, y: 2 }),
      bottom: polyline({ x: -100, y: 2 }, { x: -50, y: 10 }, { x: 0, y: 4 }),
      inside: ({ x, y }) => y < 30 && y > (x < -50 ? 2 + (8 * (x + 100)) / 50 : 10 - (6 * (x + 50)) / 50),
    },
    "a corner half way along the lower edge, turned out": {
      top: polyline(front, { x: -100, y: 30 }),
      butt: polyline({ x: -100, y: 30 }, { x: -100, y: 9 }),
      bottom: polyline({ x: -100, y: 9 }, { x: -50, y: 3 }, { x: 0, y: 8 }),
      inside: ({ x, y }) => y < 30 && y > (x < -50 ? 9 - (6 * (x + 100)) / 50 : 3 + (5 * (x + 50)) / 50),
    },
    "a handle lower than twice the radius": {
      top: polyline(front, { x: -100, y: 27 }),
      butt: polyline({ x: -100, y: 27 }, { x: -100, y: 22 }),
      bottom: polyline({ x: -100, y: 22 }, { x: 0, y: 20 }),
      inside: ({ x, y }) => y < 30 + (3 * x) / 100 && y > 20 - (2 * x) / 100,
    },
    "a round butt, where the sides go on straight": {
      top: polyline(front, { x: -90, y: 30 }),
      butt: [arcAround({ x: -90, y: 19 }, 11, Math.PI / 2, Math.PI)],
      bottom: polyline({ x: -90, y: 8 }, { x: 0, y: 8 }),
      inside: ({ x, y }) => y > 8 && y < 30 && (x > -90 || Math.hypot(x + 90, y - 19) < 11),
    },
  };
  test.each(Object.entries(shapes))("%s", (_name, { top, butt, bottom, inside }) => {
    const outline = outlineWith({ top, butt, bottom });
    const slabs = { material: { name: "maple" }, thickness: 8, edgeRadius: 6 };
    const [part] = handleParts({ slabs }, outline, steelLaw(outline, 4), []);
    const fromTop = distanceTo(top);
    const fromBottom = distanceTo(bottom);
    const box = { x0: -101, x1: 0, y0: 1, y1: 31 };
    const rear = butt[0]?.kind === "arc" ? -101 : -100;
    const grid = byGrid(box, 1010, 900, (x, y) => {
      if (x < rear || !inside({ x, y })) return [0, 0];
      const v = Math.min(fromTop({ x, y }), fromBottom({ x, y }));
      return [2, v >= 6 ? 10 : 4 + Math.sqrt(36 - (6 - v) ** 2)];
    });
    expectNear(part?.moments.value ?? new Float64Array(), grid, 100, 2e-4);
    const error = (part?.moments.error[VOLUME] as number) / (part?.moments.value[VOLUME] as number);
    expect(error).toBeLessThan(1e-9);
  });

  test.each([
    // A finger groove in the lower edge, drawn as a curve; and a hooked end that turns back under itself.
    ["a curved lower edge", [cubic({ x: -100, y: 6 }, { x: -60, y: -8 }, { x: -30, y: 20 }, { x: 0, y: 6 })]],
    [
      "a lower edge that turns back at the butt",
      [
        cubic({ x: -100, y: 14 }, { x: -108, y: 4 }, { x: -98, y: -6 }, { x: -84, y: -2 }),
        cubic({ x: -84, y: -2 }, { x: -60, y: 6 }, { x: -30, y: 8 }, { x: 0, y: 6 }),
      ],
    ],
  ] as const)("%s", (_name, bottom) => {
    const top = polyline(front, { x: -100, y: 30 });
    const butt = polyline({ x: -100, y: 30 }, bottom[0].from);
    const outline = outlineWith({ top, butt, bottom });
    const slabs = { material: { name: "maple" }, thickness: 8, edgeRadius: 5 };
    const volume = (radius: number): number =>
      handleParts({ slabs: { ...slabs, edgeRadius: radius } }, outline, steelLaw(outline, 4), [])[0]?.moments
        .value[VOLUME] as number;
    // Only what rounding takes off is compared: the square slabs are an outline times a thickness.
    const lost = volume(0) - volume(5);
    const polygon = [...top, ...butt, ...bottom].flatMap((s) =>
      Array.from({ length: 80 }, (_, i) => pointAt(s, i / 80)),
    );
    polygon.push({ x: 0, y: 6 });
    const inside = (p: Vec2): boolean => {
      let isIn = false;
      polygon.forEach((a, i) => {
        const b = polygon[(i + 1) % polygon.length] as Vec2;
        if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) isIn = !isIn;
      });
      return isIn;
    };
    const fromTop = distanceTo(top);
    const fromBottom = distanceTo(bottom);
    const box = { x0: -105, x1: 0, y0: -6, y1: 30 };
    const grid = byGrid(box, 420, 432, (x, y) => {
      const v = Math.min(30 - y < 6 ? fromTop({ x, y }) : 6, fromBottom({ x, y }));
      if (v >= 5 || !inside({ x, y })) return [0, 0];
      return [0, 5 - Math.sqrt(25 - (5 - v) ** 2)];
    });
    expect(relative(lost, grid[0] as number)).toBeLessThan(4e-3);
  });
});
