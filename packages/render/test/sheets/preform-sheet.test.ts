import { line, type Path, pathBounds, signedArea, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  checkLayout,
  type Drawing,
  flattenItems,
  layOutSheet,
  type PreformModel,
  papersFor,
  preformContents,
} from "../../src/index.js";

const closed = (points: readonly { x: number; y: number }[]): Path => ({
  closed: true,
  segments: points.map((from, index) => line(from, points[(index + 1) % points.length] ?? from)),
});

/** A tang 100 long and 20 high, a blade 200 long and 40 high that falls to 10 in its last half. */
const plain: PreformModel = {
  code: "PF-1",
  title: "Plain preform",
  steel: "1084",
  units: "mm",
  outline: closed([
    vec2(0, -20),
    vec2(100, -20),
    vec2(100, -40),
    vec2(200, -40),
    vec2(300, -10),
    vec2(300, 0),
    vec2(0, 0),
  ]),
  length: 300,
  shoulder: 100,
  heel: 112,
  marks: Array.from({ length: 9 }, (_, i) => ({
    fromShoulder: 25 * i,
    height: i <= 4 ? 40 : 40 - 7.5 * (i - 4),
    thickness: 6 - 0.5 * i,
  })),
  handle: { front: { height: 20, thickness: 6 }, butt: { height: 20, thickness: 4 } },
  temperature: 950,
  elongation: 0.0128,
  billetMark: 61.2,
  pointDrop: 0,
};

const sheetOf = (model: PreformModel): Drawing => {
  const [page] = layOutSheet(preformContents(model), { kind: "smallest", papers: papersFor(model.units) });
  if (page === undefined) throw new Error("no page");
  return page;
};
const words = (drawing: Drawing): string[] =>
  flattenItems(drawing.items).flatMap((item) => (item.kind === "text" ? [item.text] : []));
const pathNamed = (drawing: Drawing, name: string): Path | undefined =>
  flattenItems(drawing.items).flatMap((item) =>
    item.kind === "path" && item.name === name ? item.paths : [],
  )[0];

describe("the flat preform", () => {
  const drawing = sheetOf(plain);

  it("is drawn hot, every size 1.28 % greater, with its cold size dashed in it, both true to one another", () => {
    const [hot, cold] = [pathNamed(drawing, "outline"), pathNamed(drawing, "cold-outline")];
    expect(cold).toEqual(plain.outline);
    if (hot === undefined) throw new Error("no outline");
    // 100 · 20 + 100 · 40 + 100 · 25
    expect(signedArea(hot)).toBeCloseTo(8500 * 1.0128 ** 2, 9);
    expect(pathBounds(hot)).toEqual({ minX: 0, minY: -40 * 1.0128, maxX: 300 * 1.0128, maxY: 0 });
    expect(words(drawing)).toContain("cold");
    expect(words(drawing)).toContain("hot, 950 °C");
    // 303.84 mm, to the half; 11.962 in, to 1/32
    expect(words(drawing)).toContain('hot 304 mm [11 31/32"]');
  });

  it("has its marks and sections with cold and hot sizes", () => {
    const texts = words(drawing);
    for (const text of ["BUTT END", "SHOULDER", "HEEL", "END"]) expect(texts).toContain(text);
    // Shoulder at 100: hot 101.28; second section at 25: hot 25.32; height 40: hot 40.512; the mark is never shorter than 61.2.
    for (const text of ['101.5 mm [4"]', '25.5 mm [1"]', '40.5 mm [1 19/32"]', '61.5 mm [2 7/16"]'])
      expect(texts).toContain(text);
    // Nine sections, on the bar and in the table, besides 0, 0 and 2 on the check bars, both ways.
    expect(texts.filter((text) => /^\d$/.test(text))).toHaveLength(18 + 6);
    expect(texts.some((text) => text.includes("lights paper"))).toBe(true);
  });

  it("can be read, in inches, long, and with a bent spine", () => {
    for (const model of [
      plain,
      { ...plain, units: "in" as const },
      { ...plain, bendDown: 12, title: "W".repeat(200) },
      { ...plain, bendDown: 60, temperature: 1100, elongation: 0.0158 },
    ])
      expect(checkLayout(sheetOf(model))).toEqual([]);
  });

  it("shows the bent spine as the parabola of even curvature, from the heel", () => {
    const bent = pathNamed(sheetOf({ ...plain, bendDown: 12 }), "bent-spine")?.segments ?? [];
    expect(bent[0]?.from.x).toBeCloseTo(112 * 1.0128, 9);
    expect(bent.at(-1)?.to.x).toBeCloseTo(300 * 1.0128, 9);
    for (const { to } of bent) {
      const u = (to.x / 1.0128 - 112) / 188;
      expect(to.y).toBeCloseTo(-12 * 1.0128 * u * u, 9);
    }
    expect(pathNamed(sheetOf(plain), "bent-spine")).toBeUndefined();
  });

  it("bends a spine that falls from where it is forged, and says how low its end lies", () => {
    const falling: PreformModel = {
      ...plain,
      // From 200 on the spine falls by 16.
      outline: closed([
        vec2(0, -30),
        vec2(100, -30),
        vec2(100, -40),
        vec2(200, -40),
        vec2(300, -26),
        vec2(300, -16),
        vec2(200, 0),
        vec2(100, 0),
        vec2(100, -10),
        vec2(0, -10),
      ]),
      pointDrop: 16,
      bendDown: 12,
    };
    const sheet = sheetOf(falling);
    const end = pathNamed(sheet, "bent-spine")?.segments.at(-1)?.to;
    expect(end?.y).toBeCloseTo(-28 * 1.0128, 3);
    const level = pathNamed(sheet, "heel-level")?.segments[0];
    expect(level?.to.y).toBe(0);
    const said = words(sheet).join(" ");
    // The outline curves between the sections; only the thickness is straight there.
    expect(said).toContain("Height: forge to the outline as it is drawn");
    expect(said).toContain("Thickness: straight between the numbered sections");
    // Cold in the note, hot in the drawing.
    expect(said).toContain('16 mm [5/8"], cold size, below that of the heel');
    expect(said).toContain("the end, hot, 16 mm");
    // 12 + 16 mm at the end, and 12 of them from the bend: 1.28 % more when hot.
    expect(said).toContain("at the end, hot, 12 mm");
    expect(checkLayout(sheet)).toEqual([]);
    expect(pathNamed(sheetOf({ ...falling, pointDrop: -16 }), "heel-level")).toBeUndefined();
  });

  it("draws the level of the heel only with its name, where the spine leaves room for that", () => {
    // Rises by `rise` half way of the blade, and ends 16 below the heel's spine.
    const rising = (rise: number, topAt: number): PreformModel => ({
      ...plain,
      outline: closed([
        vec2(0, -30),
        vec2(100, -30),
        vec2(100, -40),
        vec2(300, -40),
        vec2(300, -16),
        vec2(topAt, rise),
        vec2(100, 0),
        vec2(100, -10),
        vec2(0, -10),
      ]),
      pointDrop: 16,
    });
    const told = (model: PreformModel): [boolean, boolean] => {
      const sheet = sheetOf(model);
      expect(checkLayout(sheet)).toEqual([]);
      return [
        pathNamed(sheet, "heel-level") !== undefined,
        words(sheet).some((text) => text.startsWith("spine at the heel")),
      ];
    };
    expect(told(rising(0, 200))).toEqual([true, true]);
    // Over the line at 70 %, under it nearer the end: the label points there.
    expect(told(rising(8, 230))).toEqual([true, true]);
    // Over it up to 95 % of the blade.
    expect(told(rising(12, 290))).toEqual([false, false]);
  });

  it("gives the handle beside its fillets and in the middle where that is not in line", () => {
    const { front, butt } = plain.handle;
    const handle = { front, butt, middle: { height: 13, thickness: 5 }, fillet: 3 };
    const said = words(sheetOf({ ...plain, handle }));
    expect(said).toContain("middle");
    expect(said).toContain('13.0 mm [0.51"]');
    expect(said.some((text) => text.includes('radius left at the shoulder 3 mm [1/8"]'))).toBe(true);
    expect(words(drawing)).not.toContain("middle");
  });
});

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 10_000 }).map((step) => min + ((max - min) * step) / 10_000);

const randomPreform: fc.Arbitrary<PreformModel> = fc
  .record({
    handle: between(40, 180),
    handleHeight: between(6, 40),
    drop: between(0, 10),
    fall: fc.oneof(fc.constant(0), between(-20, 40)),
    heights: fc.array(between(4, 110), { minLength: 2, maxLength: 30 }),
    spacing: between(8, 25),
    step: fc.constantFrom(25, 25.4, 50),
    heel: fc.option(between(1, 30), { nil: undefined }),
    bendDown: fc.option(between(0.5, 40), { nil: undefined }),
    units: fc.constantFrom("mm" as const, "in" as const),
    texts: fc.record({ code: fc.string(), title: fc.string({ unit: "grapheme" }), steel: fc.string() }),
  })
  .map(({ handle, handleHeight, drop, fall, heights, spacing, step, heel, bendDown, units, texts }) => {
    const blade = (heights.length - 1) * spacing;
    const at = (x: number): number => {
      const i = Math.min(heights.length - 2, Math.floor(x / spacing));
      const [a = 0, b = 0] = [heights[i], heights[i + 1]];
      return a + (b - a) * (x / spacing - i);
    };
    const spine = (i: number): number => -fall * (i / (heights.length - 1)) ** 2;
    const count = Math.max(1, Math.ceil(blade / step - 0.25));
    const places = [...Array.from({ length: count }, (_, i) => i * step), blade];
    return {
      ...texts,
      outline: closed([
        vec2(0, -drop - handleHeight),
        vec2(handle, -drop - handleHeight),
        ...heights.map((height, i) => vec2(handle + i * spacing, spine(i) - height)),
        ...heights.map((_, i) => vec2(handle + i * spacing, spine(i))).reverse(),
        vec2(handle, -drop),
        vec2(0, -drop),
      ]),
      length: handle + blade,
      shoulder: handle,
      ...(heel === undefined || heel > blade - 1 ? {} : { heel: handle + heel }),
      marks: places.map((fromShoulder) => ({ fromShoulder, height: at(fromShoulder), thickness: 4 })),
      handle: {
        front: { height: handleHeight, thickness: 5 },
        butt: { height: handleHeight, thickness: 3 },
      },
      temperature: 950,
      elongation: 0.0128,
      ...(bendDown === undefined ? {} : { bendDown }),
      billetMark: handle / 3,
      pointDrop: fall,
      units,
    };
  });

it("can be read whatever the preform", () => {
  fc.assert(
    fc.property(randomPreform, (model) => {
      expect(checkLayout(sheetOf(model))).toEqual([]);
    }),
    { seed: 20260202, numRuns: 60 },
  );
});
