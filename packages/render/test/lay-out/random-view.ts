import { arcAround, cubic, line, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { type DrawingItem, lettering } from "../../src/drawing.js";
import { type SheetContent, viewOf } from "../../src/lay-out/sheet-content.js";

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1e5 }).map((step) => min + ((max - min) * step) / 1e5);
const point = (width: number, height: number): fc.Arbitrary<{ x: number; y: number }> =>
  fc.record({ x: between(0, width), y: between(0, height) });

/** A sheet with a view and nothing else. */
export const contentOf = (
  items: readonly DrawingItem[],
  features: readonly { x: number; y: number }[] = [],
): SheetContent => ({
  name: "test",
  title: "Test view",
  trueSize: true,
  describe: () => "Lines.",
  fields: ({ page, pages }) => [
    [
      { label: "Order", value: "T-1", share: 0.5 },
      { label: "Page", value: `${page} of ${pages}`, share: 0.5 },
    ],
  ],
  view: viewOf(items, { features }),
  parts: [],
});

const segmentIn = (width: number, height: number) =>
  fc.oneof(
    fc.tuple(point(width, height), point(width, height)).map(([a, b]) => line(a, b)),
    fc
      .tuple(point(width, height), point(width, height), point(width, height), point(width, height))
      .map(([a, b, c, d]) => cubic(a, b, c, d)),
    fc
      .tuple(point(width, height), between(1, 120), between(-3, 3), between(0.1, 6))
      .map(([centre, radius, start, sweep]) => arcAround(centre, radius, start, sweep)),
  );

/** Views of a few lines, arcs and curves, holes and words, strewn over up to 900 × 500 mm; much of it is empty. */
export const randomView: fc.Arbitrary<SheetContent> = fc
  .record({ width: between(30, 900), height: between(20, 500) })
  .chain(({ width, height }) =>
    fc.record({
      segments: fc.array(segmentIn(width, height), { minLength: 1, maxLength: 4 }),
      holes: fc.array(point(width, height), { maxLength: 5 }),
      words: fc.array(
        fc.tuple(point(width, height), fc.constantFrom("92 mm", "HEEL", "A", "225 mm at 60 %")),
        {
          maxLength: 3,
        },
      ),
    }),
  )
  .map(({ segments, holes, words }) =>
    contentOf(
      [
        ...segments.map(
          (segment): DrawingItem => ({
            kind: "path",
            role: "outline",
            paths: [{ segments: [segment], closed: false }],
          }),
        ),
        ...holes.map((centre): DrawingItem => ({ kind: "circle", role: "outline", centre, radius: 3 })),
        ...words.map(([at, text], index) =>
          lettering(text, vec2(at.x, at.y), { height: 2.5, rotation: index === 1 ? Math.PI / 2 : 0 }),
        ),
      ],
      holes,
    ),
  );
