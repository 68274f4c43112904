import type { Bounds, Vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CurveLabel, placeLabels, pointsBetween } from "../../src/plot/place-labels.js";
import { textBox } from "../../src/text-metrics.js";

const FIELD = { width: 70, height: 46 };

const level = (text: string, y: number): CurveLabel => ({
  text,
  curve: pointsBetween({ x: 0, y }, { x: FIELD.width, y }),
});

const fromBox = ({ minX, minY, maxX, maxY }: Bounds, { x, y }: Vec2): number =>
  Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));

describe("placeLabels", () => {
  it("puts a name close by its own curve, untied", () => {
    const labels = [level("finished", 10), level("as forged", 30)];
    const { items, left } = placeLabels(FIELD, labels);
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
    expect(placeLabels(FIELD, [long]).left).toEqual([long]);
    const crowd = Array.from({ length: 22 }, (_, index) => level("name", 2 * index + 2));
    expect(placeLabels(FIELD, crowd).left).toHaveLength(22);
  });

  it("names neither of two curves that run together", () => {
    const pair = [level("finished", 10), level("as forged", 10.5)];
    expect(placeLabels(FIELD, pair).left).toEqual(pair);
  });

  it("leaves a name beside its own curve where another one ends before it", () => {
    const short = { text: "edge", curve: pointsBetween({ x: 30, y: 12 }, { x: 70, y: 12 }) };
    const { items, left } = placeLabels(FIELD, [level("spine", 17), short, level("above", 7)]);
    expect(left).toEqual([]);
    const name = items.find((item) => item.kind === "text" && item.text === "edge");
    if (name?.kind !== "text") throw new Error("no label");
    const { maxX, minY, maxY } = textBox(name);
    expect(maxX).toBeLessThanOrEqual(30);
    expect((minY + maxY) / 2).toBeCloseTo(12, 0);
  });

  it("gives up the place nearest to one curve where another name has no other", () => {
    // The long name has room over its line alone, where the short one would stand; that can go to the end of its own.
    const field = { width: 40, height: 16 };
    const long = { text: "a long name for it", curve: pointsBetween({ x: 0, y: 3 }, { x: 40, y: 3 }) };
    const short = { text: "short", curve: pointsBetween({ x: 16, y: 13 }, { x: 36, y: 13 }) };
    expect(placeLabels(field, [short, long]).left).toEqual([]);
  });

  it("lets the figure of a mark come as near to the curve it lies on, and to no other", () => {
    const curve = level("spine", 20);
    const other = level("edge", 26);
    const ring = pointsBetween({ x: 39.3, y: 20 }, { x: 40.7, y: 20 });
    const { items } = placeLabels(FIELD, [
      curve,
      other,
      { text: "4.18", curve: ring, farthest: 1.9, on: [curve] },
    ]);
    const figure = items.find((item) => item.kind === "text" && item.text === "4.18");
    if (figure?.kind !== "text") throw new Error("no figure");
    expect(textBox(figure).maxY).toBeLessThan(20);
  });

  it("never lays a name on a curve, on another name, beside the field or nearer to another curve", () => {
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
        const { items, left } = placeLabels(FIELD, labels);
        const texts = items.flatMap((item) => (item.kind === "text" ? [item] : []));
        const boxes = texts.map(textBox);
        expect(boxes.length + left.length).toBe(labels.length);
        for (const [index, box] of boxes.entries()) {
          expect(Math.min(box.minX, box.minY)).toBeGreaterThanOrEqual(0);
          expect(box.maxX).toBeLessThanOrEqual(FIELD.width);
          expect(box.maxY).toBeLessThanOrEqual(FIELD.height);
          const inside = labels.flatMap(({ curve }) =>
            curve.filter(({ x, y }) => x > box.minX && x < box.maxX && y > box.minY && y < box.maxY),
          );
          expect(inside).toEqual([]);
          const distances = labels.map(({ curve }) => Math.min(...curve.map((point) => fromBox(box, point))));
          const own = distances[labels.findIndex(({ text }) => text === texts[index]?.text)] ?? 0;
          expect(distances.filter((distance) => distance <= own + 0.99)).toEqual([own]);
          // Half a wide line and half a mm of white.
          expect(own).toBeGreaterThan(0.75);
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
