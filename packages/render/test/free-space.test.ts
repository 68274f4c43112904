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
});
