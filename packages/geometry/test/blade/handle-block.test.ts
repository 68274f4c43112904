import { describe, expect, test } from "vitest";
import { cutoutPath } from "../../src/blade/cutout-path.js";
import { Footprint } from "../../src/blade/footprint.js";
import { type Block, handleBlock, plainBlock } from "../../src/blade/handle-block.js";
import { blockMoments, blockOver, steelInBlock } from "../../src/blade/handle-moments.js";
import { VOLUME, X, XX, XY, Y, YY, ZZ } from "../../src/blade/moments.js";
import type { BlockSpec, HandleBlockSpec, LawSpec } from "../../src/blade/spec.js";
import { hiddenTang, relative, steelLaw } from "./handle-fixtures.js";

/** Relative error that rounding leaves. */
const EXACT = 1e-12;

const wood = { name: "maple" };
const ends = (front: number, rear: number): LawSpec => [
  { at: { kind: "handle" }, is: front },
  { at: { kind: "butt" }, is: rear },
];
const grip = (spec: Partial<HandleBlockSpec>): HandleBlockSpec => ({
  material: wood,
  section: "oval",
  length: 120,
  height: 30,
  width: 20,
  ...spec,
});
const volume = (block: Block): number => blockMoments(block).value[VOLUME] as number;

describe("handles of one section throughout", () => {
  test("an elliptic cylinder: area πab, second moments πa³b/4 and πab³/4", () => {
    const [a, b, length, c] = [15, 10, 120, 22];
    const { value } = blockMoments(handleBlock(grip({}), -10, c));
    const v = Math.PI * a * b * length;
    const middle = -10 - length / 2;
    expect(relative(value[VOLUME] as number, v)).toBeLessThan(EXACT);
    expect(relative(value[X] as number, v * middle)).toBeLessThan(EXACT);
    expect(relative(value[Y] as number, v * c)).toBeLessThan(EXACT);
    expect(relative(value[XX] as number, v * (middle ** 2 + length ** 2 / 12))).toBeLessThan(EXACT);
    expect(relative(value[YY] as number, v * (c * c + (a * a) / 4))).toBeLessThan(EXACT);
    expect(relative(value[ZZ] as number, (v * b * b) / 4)).toBeLessThan(EXACT);
    expect(relative(value[XY] as number, v * middle * c)).toBeLessThan(EXACT);
  });

  test("a regular octagon: area 2(√2 − 1)a² and second moment (11 + 8√2)s⁴/12, the same both ways", () => {
    const across = 24;
    const side = across * (Math.SQRT2 - 1);
    const { value } = blockMoments(handleBlock(grip({ section: "octagonal", height: 24, width: 24 }), 0, 0));
    expect(relative(value[VOLUME] as number, 2 * (Math.SQRT2 - 1) * across ** 2 * 120)).toBeLessThan(EXACT);
    const second = ((11 + 8 * Math.SQRT2) / 12) * side ** 4 * 120;
    expect(relative(value[YY] as number, second)).toBeLessThan(EXACT);
    expect(relative(value[ZZ] as number, second)).toBeLessThan(EXACT);
  });

  test("an octagon by its cuts: the rectangle less four triangles", () => {
    const block = handleBlock(grip({ section: "octagonal", cornerRadius: 4 }), 0, 0);
    expect(relative(volume(block), (30 * 20 - 2 * 4 ** 2) * 120)).toBeLessThan(EXACT);
  });

  test("an octagon higher than wide: cuts of the regular octagon of its width", () => {
    const leg = (20 * (2 - Math.SQRT2)) / 2;
    const block = handleBlock(grip({ section: "octagonal" }), 0, 0);
    expect(relative(volume(block), (30 * 20 - 2 * leg * leg) * 120)).toBeLessThan(EXACT);
  });

  test("a rounded rectangle: the rectangle less (4 − π)r²", () => {
    const block = handleBlock(grip({ section: "rounded", cornerRadius: 6 }), 0, 0);
    expect(relative(volume(block), (30 * 20 - (4 - Math.PI) * 36) * 120)).toBeLessThan(EXACT);
  });

  test("a rounded rectangle's second moment: two bars across, two along, four quarter circles about their own centres", () => {
    const [h, w, r] = [30, 20, 6];
    const { value } = blockMoments(handleBlock(grip({ section: "rounded", cornerRadius: r }), 0, 0));
    // About the middle line: the bar w × (h − 2r), two flanks (w − 2r) × r, and the corners as one circle pulled apart.
    const out = h / 2 - r;
    const flank = (w - 2 * r) * r * ((r * r) / 12 + (out + r / 2) ** 2);
    const corners = (Math.PI * r ** 4) / 4 + Math.PI * r * r * out * out + 2 * out * ((8 * r ** 3) / 6);
    const second = (w * (h - 2 * r) ** 3) / 12 + 2 * flank + corners;
    expect(relative(value[YY] as number, second * 120)).toBeLessThan(EXACT);
  });

  test("bolsters, guards and pommels are boxes or ovals", () => {
    const spec: BlockSpec = { material: { name: "brass" }, at: -2, length: 8, height: 26, width: 14 };
    const box = blockMoments(plainBlock(spec, 12)).value;
    const v = 8 * 26 * 14;
    expect(relative(box[VOLUME] as number, v)).toBeLessThan(EXACT);
    expect(relative(box[X] as number, v * -6)).toBeLessThan(EXACT);
    expect(relative(box[YY] as number, v * (144 + 26 ** 2 / 12))).toBeLessThan(EXACT);
    expect(relative(box[ZZ] as number, (v * 14 ** 2) / 12)).toBeLessThan(EXACT);
    const oval = plainBlock({ ...spec, section: "oval" }, 12);
    expect(relative(volume(oval), (Math.PI / 4) * v)).toBeLessThan(EXACT);
  });
});

describe("handles that swell and taper", () => {
  const area = (h: number, w: number): number => (Math.PI / 4) * h * w;

  test("a frustum between similar ellipses: (h/3)(A1 + A2 + √(A1·A2))", () => {
    const block = handleBlock(grip({ height: ends(30, 24), width: ends(20, 16) }), 0, 0);
    const [a1, a2] = [area(30, 20), area(24, 16)];
    expect(relative(volume(block), 40 * (a1 + a2 + Math.sqrt(a1 * a2)))).toBeLessThan(EXACT);
  });

  test("between ellipses that are not similar: the prismatoid (h/6)(A1 + 4Am + A2)", () => {
    const block = handleBlock(grip({ height: ends(30, 24), width: ends(16, 22) }), 0, 0);
    const prismatoid = 20 * (area(30, 16) + 4 * area(27, 19) + area(24, 22));
    expect(relative(volume(block), prismatoid)).toBeLessThan(EXACT);
  });

  test("the octagon's cuts follow the smaller size where it changes over from width to height", () => {
    // Height 30 to 20, width 20 to 30: equal half way. Each half is a prismatoid of its own.
    const block = handleBlock(
      grip({ section: "octagonal", height: ends(30, 20), width: ends(20, 30) }),
      0,
      0,
    );
    const octagon = (h: number, w: number): number =>
      h * w - 2 * ((Math.min(h, w) * (2 - Math.SQRT2)) / 2) ** 2;
    const half = 10 * (octagon(30, 20) + 4 * octagon(27.5, 22.5) + octagon(25, 25));
    expect(relative(volume(block), 2 * half)).toBeLessThan(EXACT);
  });

  test("stations stand on the handle itself, wherever it begins", () => {
    const spec = grip({
      height: [
        { at: { kind: "handle" }, is: 26 },
        { at: { kind: "distance", mm: 30 }, is: 32 },
        { at: { kind: "fraction", share: 0.5 }, is: 28 },
        { at: { kind: "butt" }, is: 34 },
      ],
      width: 20,
    });
    const block = handleBlock(spec, -16, 0);
    for (const [back, height] of [
      [0, 26],
      [15, 29],
      [30, 32],
      [60, 28],
      [120, 34],
    ] as const) {
      expect(2 * block.sectionAt(-16 - back).halfHeight).toBeCloseTo(height, 12);
    }
    const trapezoids = (30 * (26 + 32) + 30 * (32 + 28) + 60 * (28 + 34)) / 2;
    expect(relative(volume(block), (Math.PI / 4) * 20 * trapezoids)).toBeLessThan(EXACT);
  });

  test("smooth laws: as much as a fine Simpson sum of the same sections", () => {
    const height = [26, 33, 27, 34].map((is, i) => ({ at: { kind: "distance", mm: 40 * i } as const, is }));
    const width = [18, 24, 17].map((is, i) => ({ at: { kind: "distance", mm: 60 * i } as const, is }));
    const block = handleBlock(grip({ between: "smooth", height, width }), 0, 0);
    const area = (back: number): number => {
      const { halfHeight, halfWidth } = block.sectionAt(-back);
      return Math.PI * halfHeight * halfWidth;
    };
    const n = 2400;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      sum += area((120 * i) / n) + 4 * area((120 * (i + 0.5)) / n) + area((120 * (i + 1)) / n);
    }
    expect(relative(volume(block), (sum * 120) / n / 6)).toBeLessThan(1e-11);
  });
});

describe("what goes through a block", () => {
  test("a round hole across a box is a cylinder", () => {
    const spec: BlockSpec = { material: { name: "brass" }, at: 0, length: 20, height: 26, width: 14 };
    const hole = new Footprint(cutoutPath({ centre: { x: -8, y: 3 }, radius: 2.5 }));
    expect(
      relative(blockOver(plainBlock(spec, 2), hole).value[VOLUME] as number, Math.PI * 6.25 * 14),
    ).toBeLessThan(EXACT);
  });

  test("two round rods of one radius crossing share 16r³/3 (Archimedes)", () => {
    const rod = handleBlock(grip({ height: 20, width: 20 }), 0, 7);
    const hole = new Footprint(cutoutPath({ centre: { x: -50, y: 7 }, radius: 10 }));
    expect(relative(blockOver(rod, hole).value[VOLUME] as number, (16 / 3) * 1000)).toBeLessThan(1e-10);
  });

  test("a slot: rectangle and circle, however it lies", () => {
    const spec: BlockSpec = { material: { name: "brass" }, at: 0, length: 60, height: 60, width: 14 };
    for (const angle of [0, 0.4, Math.PI / 2, 2.5, -1.2]) {
      const from = { x: -30, y: 4 };
      const to = { x: -30 + 12 * Math.cos(angle), y: 4 + 12 * Math.sin(angle) };
      const { value } = blockOver(
        plainBlock(spec, 0),
        new Footprint(cutoutPath({ centre: from, to, radius: 3 })),
      );
      const v = (Math.PI * 9 + 12 * 6) * 14;
      expect(relative(value[VOLUME] as number, v)).toBeLessThan(1e-10);
      expect(relative(value[X] as number, (v * (from.x + to.x)) / 2)).toBeLessThan(1e-10);
      expect(relative(value[Y] as number, (v * (from.y + to.y)) / 2)).toBeLessThan(1e-10);
    }
  });

  test("the steel inside: a tapered tang as a prismatoid", () => {
    const outline = hiddenTang(90, 16, 8);
    const steel = { footprint: new Footprint(outline.path), slab: steelLaw(outline, 4, 2) };
    const inside = steelInBlock(handleBlock(grip({}), 0, 15), steel).value[VOLUME] as number;
    expect(relative(inside, (90 / 6) * (16 * 4 + 4 * 12 * 3 + 8 * 2))).toBeLessThan(EXACT);
  });

  test("steel that would stand out of an oval counts only inside it: the ellipse between two parallels", () => {
    const outline = hiddenTang(200, 60, 60);
    const steel = { footprint: new Footprint(outline.path), slab: steelLaw(outline, 8) };
    const inside = steelInBlock(handleBlock(grip({}), 0, 15), steel).value[VOLUME] as number;
    const share = 4 / 10;
    const area = 2 * 15 * 10 * (share * Math.sqrt(1 - share * share) + Math.asin(share));
    expect(relative(inside, area * 120)).toBeLessThan(1e-11);
  });

  test("steel that would stand out of a cut or a rounded corner counts only inside it", () => {
    const outline = hiddenTang(200, 60, 60);
    const steel = { footprint: new Footprint(outline.path), slab: steelLaw(outline, 16) };
    const cut = steelInBlock(handleBlock(grip({ section: "octagonal", cornerRadius: 5 }), 0, 15), steel);
    // 16 of the 20 wide: of each cut of 5 × 5 only a triangle of 3 × 3 is missing from the steel.
    expect(relative(cut.value[VOLUME] as number, (30 * 16 - 2 * 9) * 120)).toBeLessThan(1e-11);
    const round = steelInBlock(handleBlock(grip({ section: "rounded", cornerRadius: 5 }), 0, 15), steel);
    // In each corner the area under the arc, no higher than 3 above its centre's level: ∫ min(3, √(25 − s²)) ds.
    const corner = 3 * 4 + 0.5 * (25 * (Math.PI / 2 - Math.asin(4 / 5)) - 4 * 3);
    expect(relative(round.value[VOLUME] as number, (20 * 16 + 4 * (5 * 5 + corner)) * 120)).toBeLessThan(
      1e-11,
    );
  });
});
