import { describe, expect, it } from "vitest";
import { handleKnives } from "../../../../tests/reference/handle-knives.js";
import { contouredSlabs, filletedSlabs } from "../../../../tests/reference/slab-knives.js";
import { handleBody } from "../../src/bench/handle-sections.js";
import { handleLayout } from "../../src/blade/handle-layout.js";
import { blockMoments } from "../../src/blade/handle-moments.js";
import { type Knife, makeKnife } from "../../src/blade/knife.js";
import { VOLUME } from "../../src/blade/moments.js";
import { layersOnTang } from "../../src/blade/tang-layers.js";
import { gaussLegendre } from "../../src/numeric/gauss.js";
import { pointAt, type Segment } from "../../src/plane/segment.js";

/** ∫f dx from a to b by five points in each of many strips. */
function integral(f: (x: number) => number, a: number, b: number, strips = 300): number {
  const { nodes, weights } = gaussLegendre(5);
  const h = (b - a) / strips;
  let sum = 0;
  for (let i = 0; i < strips; i++) {
    nodes.forEach((node, k) => {
      sum += (weights[k] ?? 0) * h * f(a + (i + node) * h);
    });
  }
  return sum;
}

const slabbed = (edgeRadius: number, runs: { tangTop: string; butt: string; tangBottom: string }): Knife =>
  makeKnife({
    steel: { name: "1084" },
    blade: {
      outline: { runs: { edge: "M0 0 H120", front: "L120 40", spine: "L-10 40", ...runs } },
      thickness: [{ at: { kind: "heel" }, is: 4 }],
      bevel: { form: "flat", height: 20, edgeThickness: 0.4 },
      edgeAngle: 0.3,
    },
    tang: { form: "full" },
    handle: { slabs: { material: { name: "European ash" }, thickness: 8, edgeRadius } },
  });

const LEVEL = { tangTop: "L-110 40", butt: "L-110 15", tangBottom: "L-10 15" };

describe("a section of level slabs", () => {
  it("is a rectangle of 25 × 20 mm less what four quarter circles of 6 leave of their squares", () => {
    const section = handleBody(slabbed(6, LEVEL))?.sectionAt(-50);
    expect(section?.height).toBe(25);
    expect(section?.width).toBe(20);
    expect(section?.area).toBeCloseTo(25 * 20 - (4 - Math.PI) * 36, 9);
    const arcs = section?.half.filter(({ kind }) => kind === "arc") ?? [];
    expect(arcs).toMatchObject([{ radius: 6 }, { radius: 6 }]);
  });

  it("has square corners where no radius is given", () => {
    expect(handleBody(slabbed(0, LEVEL))?.sectionAt(-50)?.area).toBeCloseTo(500, 9);
  });

  it("comes to a ridge where it is lower than twice the radius", () => {
    const low = { tangTop: "L-110 40", butt: "L-110 29", tangBottom: "L-10 29" };
    const section = handleBody(slabbed(8, low))?.sectionAt(-50);
    // Half the height is 5.5: the quarter circles meet where they are √(8² − 2.5²) out.
    expect(section?.width).toBeCloseTo(2 * (2 + Math.sqrt(64 - 6.25)), 9);
  });
});

it("on a slanting side the rounding is a quarter ellipse, as true distances make it", () => {
  const runs = { tangTop: "L-110 40", butt: "L-110 7", tangBottom: "L-10 15" };
  const half = handleBody(slabbed(6, runs))?.sectionAt(-50)?.half ?? [];
  const slope = 8 / 100;
  const low = 15 - 40 * slope;
  const cosine = 1 / Math.hypot(1, slope);
  const below = half.filter(({ kind }) => kind === "cubic");
  expect(below.length).toBeGreaterThan(0);
  for (const segment of below) {
    for (let i = 0; i <= 8; i++) {
      const { x: z, y } = pointAt(segment, i / 8);
      const d = (y - low) * cosine;
      expect(z).toBeCloseTo(10 - 6 + Math.sqrt(Math.max(0, 36 - (6 - d) ** 2)), 4);
    }
  }
});

describe.each([filletedSlabs(), contouredSlabs()])("slabs: $name", ({ spec }) => {
  const knife = makeKnife(spec);
  const body = handleBody(knife);

  it("have sections whose areas add up to the volume that is weighed", () => {
    const { handle } = spec;
    if (handle === undefined || body === undefined) throw new Error("these knives have slabs");
    const { slab } = knife.body("finished");
    const layers = layersOnTang(handle, knife.outline, slab);
    const volume = (layer: typeof layers.whole): number => layer.over(layer.path).value[VOLUME] ?? 0;
    const onTang = volume(layers.whole) - volume(layers.bare);
    const sum = integral(
      (x) => {
        const section = body.sectionAt(x);
        return section === undefined ? 0 : section.area - section.height * slab.thicknessAt(x);
      },
      knife.outline.butt,
      knife.outline.handleFront,
    );
    // Breaks of the laws fall inside strips; a strip is 0.4 mm.
    expect(sum / onTang).toBeCloseTo(1, 3);
  });

  it("have contours without gaps, from the top of the centre plane to its foot", () => {
    for (const x of [-30, -55, -80, -105]) {
      const half: readonly Segment[] = body?.sectionAt(x)?.half ?? [];
      expect(half.length).toBeGreaterThan(2);
      for (const [i, segment] of half.slice(1).entries()) {
        expect(segment.from.x).toBeCloseTo(half[i]?.to.x ?? Number.NaN, 6);
        expect(segment.from.y).toBeCloseTo(half[i]?.to.y ?? Number.NaN, 6);
      }
      expect(half[0]?.from.x).toBe(0);
      expect(half.at(-1)?.to.x).toBe(0);
    }
  });
});

it.each(handleKnives())("a block's sections add up to the volume that is weighed: $name", ({ spec }) => {
  const knife = makeKnife(spec);
  const block = handleLayout(spec.handle, knife.outline).handle?.block;
  const body = handleBody(knife);
  if (block === undefined || body === undefined) throw new Error("these knives have a block");
  const sum = integral((x) => body.sectionAt(x)?.area ?? 0, block.rear, block.front, 200);
  expect(sum / (blockMoments(block).value[VOLUME] ?? 0)).toBeCloseTo(1, 5);
});

it("a knife without slabs or block has no body of a handle", () => {
  const { handle: _, ...spec } = slabbed(0, LEVEL).spec;
  expect(handleBody(makeKnife(spec))).toBeUndefined();
});
