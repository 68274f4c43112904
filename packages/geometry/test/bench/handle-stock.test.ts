import { describe, expect, it } from "vitest";
import { handleKnives } from "../../../../tests/reference/handle-knives.js";
import { filletedSlabs } from "../../../../tests/reference/slab-knives.js";
import { handleStock } from "../../src/bench/handle-stock.js";
import { handleLayout } from "../../src/blade/handle-layout.js";
import { makeKnife } from "../../src/blade/knife.js";
import type { HandleSpec } from "../../src/blade/spec.js";
import { crossingsAtX } from "../../src/plane/at-x.js";
import { pathBounds } from "../../src/plane/bounds.js";
import { areaMoments } from "../../src/plane/measure.js";

const slabbed = (handle: HandleSpec, top = "L-10 38 L-110 38") =>
  makeKnife({
    steel: { name: "1084" },
    blade: {
      outline: {
        runs: {
          edge: "M0 0 H200",
          front: "L200 40",
          spine: "L-10 40",
          tangTop: top,
          butt: "L-110 15",
          tangBottom: "L-10 15",
        },
      },
      thickness: [{ at: { kind: "heel" }, is: 4 }],
      bevel: { form: "flat", height: 25, edgeThickness: 0.4 },
      edgeAngle: 0.3,
    },
    tang: {
      form: "full",
      holes: [
        { kind: "pin", at: { x: -30, y: 27 }, diameter: 5.5, pin: 5 },
        { kind: "lightening", at: { x: -60, y: 27 }, diameter: 8 },
      ],
    },
    handle,
  });
const slabs = { material: { name: "European ash" }, thickness: 8 };

describe("a pair of slabs", () => {
  it("have the tang's outline without the step at the handle front, and holes of the pins' own diameter", () => {
    const stock = handleStock(slabbed({ slabs }), 2);
    if (stock?.kind !== "slabs") throw new Error("slabs");
    expect(stock.pieces).toHaveLength(1);
    expect(areaMoments(stock.pieces[0] ?? { segments: [], closed: true }).area).toBeCloseTo(100 * 23, 9);
    expect(stock.holes).toEqual([{ index: 0, kind: "pin", centre: { x: -30, y: 27 }, diameter: 5 }]);
  });

  it("keep the place of each hole among all of the knife, past a lightening hole that the wood has not", () => {
    const steel = slabbed({ slabs }).spec;
    const knife = makeKnife({
      ...steel,
      tang: {
        form: "full",
        holes: [...(steel.tang.holes ?? []), { kind: "pin", at: { x: -90, y: 27 }, diameter: 5 }],
      },
    });
    const { holes = [] } = handleStock(knife, 2) ?? {};
    expect(holes.map(({ index, centre }) => [index, centre.x])).toEqual([
      [0, -30],
      [2, -90],
    ]);
    for (const { index, centre } of holes) expect(knife.holes[index]?.at).toEqual(centre);
  });

  it("are sawn from a blank with as much over all round, the block of a pair with a kerf more", () => {
    const { blank } = handleStock(slabbed({ slabs }, "L-110 40"), 1.5) ?? {};
    expect(blank).toMatchObject({ length: 106, height: 31, corner: { x: -113, y: 12 } });
    expect(blank?.bookMatched).toBeCloseTo(2 * (blank?.thickness ?? 0) + 1.5, 9);
    expect(blank?.thickness).toBeGreaterThan(8);
  });

  it("end where a bolster stands, and are parted by one in their middle", () => {
    const block = { material: { name: "brass" }, length: 12, height: 23, width: 14 };
    const front = handleStock(slabbed({ slabs, bolsters: [{ ...block, at: -10 }] }), 2);
    if (front?.kind !== "slabs") throw new Error("slabs");
    expect(front.pieces.map((piece) => pathBounds(piece)).map(({ minX, maxX }) => [minX, maxX])).toEqual([
      [-110, -22],
    ]);
    const parted = handleStock(slabbed({ slabs, bolsters: [{ ...block, at: -70 }] }), 2);
    if (parted?.kind !== "slabs") throw new Error("slabs");
    const ends = parted.pieces.map((piece) => pathBounds(piece)).map(({ minX, maxX }) => [minX, maxX]);
    expect(ends).toEqual([
      [-70, -10],
      [-110, -82],
    ]);
    const whole = parted.pieces.reduce((sum, piece) => sum + areaMoments(piece).area, 0);
    expect(whole).toBeCloseTo((100 - 12) * 23, 9);
  });

  it("keep an arc of the tang's underside an arc", () => {
    const stock = handleStock(makeKnife(filletedSlabs().spec), 2);
    if (stock?.kind !== "slabs") throw new Error("slabs");
    expect(
      stock.pieces.flatMap(({ segments }) => segments).filter(({ kind }) => kind === "arc"),
    ).toHaveLength(1);
  });
});

describe.each(handleKnives())("a block: $name", ({ spec }) => {
  const knife = makeKnife(spec);
  const stock = handleStock(knife, 2);
  const placed = handleLayout(spec.handle, knife.outline).handle?.block;
  if (stock?.kind !== "block" || placed === undefined) throw new Error("a block");

  it("has the heights and widths of the block that is weighed, and the tang in it as thick as it is", () => {
    const { slab } = knife.body("finished");
    for (const share of [0.03, 0.2, 0.41, 0.66, 0.97]) {
      const x = placed.front + share * (placed.rear - placed.front);
      const { halfHeight, halfWidth } = placed.sectionAt(x);
      const span = (path: typeof stock.side): number => {
        const ys = crossingsAtX(path, x).map(({ point }) => point.y);
        return Math.max(...ys) - Math.min(...ys);
      };
      expect(span(stock.side)).toBeCloseTo(2 * halfHeight, 5);
      expect(span(stock.above)).toBeCloseTo(2 * halfWidth, 5);
      if (x > knife.outline.butt) expect(span(stock.tangAbove)).toBeCloseTo(slab.thicknessAt(x), 5);
    }
  });

  it("lies inside its blank with as much over at either end", () => {
    const { blank, side } = stock;
    const box = pathBounds(side);
    expect(box.minX - blank.corner.x).toBeCloseTo(3, 9);
    expect(blank.corner.x + blank.length - box.maxX).toBeCloseTo(3, 9);
    expect(box.minY - blank.corner.y).toBeCloseTo(3, 9);
  });
});

it("a knife with a handle given by its mass has no stock", () => {
  const parts = [{ name: "handle", mass: 40, at: { x: -60, y: 27 } }];
  expect(handleStock(slabbed({ parts }), 2)).toBeUndefined();
});
