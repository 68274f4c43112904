import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FreeSpace } from "../src/free-space.js";

const box = (minX: number, minY: number, width: number, height: number) => ({
  minX,
  minY,
  maxX: minX + width,
  maxY: minY + height,
});

describe("FreeSpace", () => {
  it("finds the lowest place beside what is taken, or the one nearest to the corner", () => {
    const space = new FreeSpace(100, 60);
    expect(space.find(30, 20, "foot")).toEqual({ x: 0, y: 0 });
    space.take(box(0, 0, 80, 10));
    expect(space.find(30, 20, "foot")).toEqual({ x: 0, y: 10 });
    expect(space.find(20, 20, "foot")).toEqual({ x: 80, y: 0 });
    expect(space.find(20, 20, "corner")).toEqual({ x: 0, y: 10 });
    space.take(box(0, 0, 60, 60));
    expect(space.find(40, 20, "corner")).toEqual({ x: 60, y: 10 });
    expect(space.find(41, 20, "corner")).toBeUndefined();
  });

  it("finds the highest place, and there the leftmost", () => {
    const space = new FreeSpace(100, 60);
    expect(space.find(30, 20, "top")).toEqual({ x: 0, y: 40 });
    space.take(box(0, 40, 30, 20));
    expect(space.find(30, 20, "top")).toEqual({ x: 30, y: 40 });
    // Lower, but farther to the left, is no better than higher.
    space.take(box(30, 45, 70, 15));
    expect(space.find(70, 10, "top")).toEqual({ x: 30, y: 35 });
    expect(space.find(71, 10, "top")).toEqual({ x: 0, y: 30 });
    expect(space.find(100, 41, "top")).toBeUndefined();
  });

  it("keeps the gap on every side, and counts a part of a mm as a whole one", () => {
    const space = new FreeSpace(100, 60);
    space.take(box(40.2, 20.2, 10, 10), 3);
    expect(space.isFree(box(0, 0, 37, 60))).toBe(true);
    expect(space.isFree(box(0, 0, 37.1, 60))).toBe(false);
    expect(space.isFree(box(54, 0, 46, 60))).toBe(true);
    expect(space.isFree(box(0, 0, 100, 17))).toBe(true);
    expect(space.isFree(box(0, 33, 100, 1))).toBe(false);
  });

  it("has room for a line beside what is taken, and none for one in it", () => {
    const space = new FreeSpace(100, 60);
    space.take(box(0, 50, 100, 10));
    expect(space.isFree(box(10, 50, 30, 0))).toBe(true);
    expect(space.isFree(box(10, 51, 30, 0))).toBe(false);
    expect(space.isFree(box(100, 10, 0, 30))).toBe(true);
    expect(space.isFree(box(101, 10, 0, 30))).toBe(false);
  });

  it("has no room where nothing is left, nor off the page", () => {
    const space = new FreeSpace(20.9, 20);
    expect(space.isFree(box(0, 0, 20.5, 20))).toBe(false);
    expect(space.isFree(box(-1, 0, 5, 5))).toBe(false);
    expect(space.find(21, 5, "foot")).toBeUndefined();
    space.take(box(-50, -50, 200, 200));
    expect(space.find(1, 1, "foot")).toBeUndefined();
  });

  it("agrees with looking at every box that was taken", () => {
    const whole = (max: number) => fc.integer({ min: 0, max });
    const boxes = fc
      .record({ x: whole(40), y: whole(30), width: fc.integer({ min: 1, max: 12 }), height: whole(12) })
      .map(({ x, y, width, height }) => box(x, y, width, height + 1));
    fc.assert(
      fc.property(fc.array(boxes, { maxLength: 8 }), boxes, (taken, asked) => {
        const space = new FreeSpace(60, 50);
        for (const one of taken) space.take(one);
        const clear = taken.every(
          (one) =>
            one.maxX <= asked.minX ||
            one.minX >= asked.maxX ||
            one.maxY <= asked.minY ||
            one.minY >= asked.maxY,
        );
        expect(space.isFree(asked)).toBe(clear);
      }),
      { seed: 20263 },
    );
  });

  it("finds the place that trying every one of them finds, and a copy finds the same", () => {
    const whole = (max: number) => fc.integer({ min: 0, max });
    const side = fc.integer({ min: 1, max: 14 });
    const boxes = fc.record({ x: whole(36), y: whole(26), width: side, height: side });
    const [columns, rows] = [40, 30];
    /** How near to what is wished; the place with the least comes first. */
    const ranks = {
      foot: (x: number, y: number) => [y, x],
      top: (x: number, y: number) => [-y, x],
      corner: (x: number, y: number) => [x + y, y],
    };
    fc.assert(
      fc.property(
        fc.array(boxes, { maxLength: 9 }),
        side,
        side,
        fc.constantFrom("foot" as const, "top" as const, "corner" as const),
        (taken, width, height, wish) => {
          const space = new FreeSpace(columns, rows);
          // Looked for in between, so that what is remembered of earlier looks is put to the test.
          for (const one of taken) {
            space.take(box(one.x, one.y, one.width, one.height));
            space.find(1, 1, "corner");
          }
          const clear = (x: number, y: number): boolean =>
            taken.every(
              (one) =>
                one.x + one.width <= x ||
                one.x >= x + width ||
                one.y + one.height <= y ||
                one.y >= y + height,
            );
          let best: { x: number; y: number } | undefined;
          for (let y = 0; y + height <= rows; y++) {
            for (let x = 0; x + width <= columns; x++) {
              if (!clear(x, y)) continue;
              const [first = 0, second = 0] = ranks[wish](x, y);
              const [least, next = 0] = best === undefined ? [] : ranks[wish](best.x, best.y);
              if (least === undefined || first < least || (first === least && second < next)) best = { x, y };
            }
          }
          expect(space.find(width, height, wish)).toEqual(best);
          const copy = space.copy();
          expect(copy.find(width, height, wish)).toEqual(best);
          copy.take(box(0, 0, columns, rows));
          expect(space.find(width, height, wish)).toEqual(best);
        },
      ),
      { seed: 20267, numRuns: 300 },
    );
  });
});
