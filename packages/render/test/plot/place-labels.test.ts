import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CurveLabel, placeLabels, pointsBetween } from "../../src/plot/place-labels.js";
import { textBox } from "../../src/text-metrics.js";

const FIELD = { width: 70, height: 46 };

const level = (text: string, y: number): CurveLabel => ({
  text,
  curve: pointsBetween({ x: 0, y }, { x: FIELD.width, y }),
});

describe("placeLabels", () => {
  it("puts a name close by its own curve, untied", () => {
    const labels = [level("finished", 10), level("as forged", 30)];
    const { items, left } = placeLabels(
      FIELD,
      labels,
      labels.map(({ curve }) => curve),
    );
    expect(left).toEqual([]);
    const texts = items.flatMap((item) => (item.kind === "text" ? [item] : []));
    expect(items).toHaveLength(2);
    for (const [index, y] of [10, 30].entries()) {
      const text = texts[index];
      if (text === undefined) throw new Error("no label");
      const { minY, maxY } = textBox(text);
      expect(Math.min(Math.abs(minY - y), Math.abs(maxY - y))).toBeLessThan(2);
    }
  });

  it("gives back what finds no place", () => {
    const long = level("a name that is much longer than the field is wide", 10);
    expect(placeLabels(FIELD, [long], [long.curve]).left).toEqual([long]);
    const crowd = Array.from({ length: 22 }, (_, index) => level("name", 2 * index + 2));
    expect(
      placeLabels(
        FIELD,
        crowd,
        crowd.map(({ curve }) => curve),
      ).left,
    ).toHaveLength(22);
  });

  it("never lays a name on a curve, on another name or beside the field", () => {
    const point = fc.record({ x: fc.integer({ min: 0, max: 70 }), y: fc.integer({ min: 0, max: 46 }) });
    const curves = fc.array(fc.array(point, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(curves, (drawn) => {
        const labels = drawn.map(
          (points, index): CurveLabel => ({
            text: `curve ${index}`,
            curve: points.slice(1).flatMap((to, at) => pointsBetween(points[at] ?? to, to)),
          }),
        );
        const { items, left } = placeLabels(
          FIELD,
          labels,
          labels.map(({ curve }) => curve),
        );
        const boxes = items.flatMap((item) => (item.kind === "text" ? [textBox(item)] : []));
        expect(boxes.length + left.length).toBe(labels.length);
        for (const [index, box] of boxes.entries()) {
          expect(Math.min(box.minX, box.minY)).toBeGreaterThanOrEqual(0);
          expect(box.maxX).toBeLessThanOrEqual(FIELD.width);
          expect(box.maxY).toBeLessThanOrEqual(FIELD.height);
          const inside = labels.flatMap(({ curve }) =>
            curve.filter(({ x, y }) => x > box.minX && x < box.maxX && y > box.minY && y < box.maxY),
          );
          expect(inside).toEqual([]);
          for (const other of boxes.slice(index + 1)) {
            const apart =
              box.maxX <= other.minX ||
              other.maxX <= box.minX ||
              box.maxY <= other.minY ||
              other.maxY <= box.minY;
            expect(apart).toBe(true);
          }
        }
      }),
      { seed: 31, numRuns: 100 },
    );
  });
});
