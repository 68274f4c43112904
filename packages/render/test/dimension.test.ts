import { describe, expect, it } from "vitest";
import { extensionLine, levelDimension, uprightDimension } from "../src/dimension.js";
import { type DrawingItem, flattenItems, type TextItem } from "../src/drawing.js";
import { textBox, textWidth } from "../src/text-metrics.js";

const texts = (items: readonly DrawingItem[]): TextItem[] =>
  flattenItems(items).flatMap((item) => (item.kind === "text" ? [item] : []));

/** Tips of the arrowheads, and the way they point. */
const heads = (items: readonly DrawingItem[]): { x: number; y: number; dx: number; dy: number }[] =>
  flattenItems(items).flatMap((item) => {
    if (item.kind !== "path" || item.fill === undefined) return [];
    const [first, second] = item.paths[0]?.segments ?? [];
    if (!first || !second) return [];
    const back = { x: (second.from.x + second.to.x) / 2, y: (second.from.y + second.to.y) / 2 };
    const tip = first.from;
    return [{ ...tip, dx: Math.sign(Math.round(tip.x - back.x)), dy: Math.sign(Math.round(tip.y - back.y)) }];
  });

describe("levelDimension", () => {
  it("stands over the middle of its line, arrowheads inside, pointing out", () => {
    const items = levelDimension({
      from: 0,
      to: 225,
      y: -10,
      text: "225 mm",
      clearOf: [0, 225],
      beside: "right",
    });
    expect(texts(items)).toMatchObject([{ text: "225 mm", anchor: "middle", at: { x: 112.5 } }]);
    expect(texts(items)[0]?.at.y).toBeGreaterThan(-10);
    expect(heads(items)).toEqual([
      { x: 0, y: -10, dx: -1, dy: 0 },
      { x: 225, y: -10, dx: 1, dy: 0 },
    ]);
  });

  it("turns the arrowheads round and puts the figure beside where there is no room", () => {
    const items = levelDimension({ from: 0, to: 5, y: 0, text: "5 mm", clearOf: [], beside: "left" });
    expect(heads(items).map((head) => head.dx)).toEqual([1, -1]);
    const text = texts(items)[0];
    expect((text?.at.x ?? 0) + textWidth("5 mm", 3.5) / 2).toBeLessThan(0);
  });

  it("keeps clear of other uprights", () => {
    const text = '10 mm [25/64"]';
    const items = levelDimension({ from: 40, to: 50, y: 0, text, clearOf: [20, 60, 200], beside: "left" });
    const x = texts(items)[0]?.at.x ?? 0;
    const half = textWidth(text, 3.5) / 2;
    expect(x + half).toBeLessThan(20);
  });
});

describe("extensionLine", () => {
  it("leaves a gap at the feature and runs past the dimension line", () => {
    const [line] = extensionLine({ x: 7, y: 0 }, -10).paths[0]?.segments ?? [];
    expect(line).toMatchObject({ from: { x: 7, y: -1 }, to: { x: 7, y: -12 } });
  });
});

describe("uprightDimension", () => {
  const base = { low: 0, lowFrom: 10, highFrom: 10, x: 20, main: "92 mm", other: '[3 5/8"]' };

  it("is read from the right along its line", () => {
    const items = uprightDimension({ ...base, high: 92 });
    expect(texts(items)).toMatchObject([{ text: '92 mm [3 5/8"]', rotation: Math.PI / 2, at: { y: 46 } }]);
    expect(texts(items)[0]?.at.x).toBeLessThan(20);
    expect(heads(items).map((head) => head.dy)).toEqual([-1, 1]);
  });

  it("has its figure set smaller along a shorter line, then on both sides of it", () => {
    const smaller = texts(uprightDimension({ ...base, high: 40 }));
    expect(smaller.map((text) => [text.height, text.rotation])).toEqual([[2.5, Math.PI / 2]]);
    const both = texts(uprightDimension({ ...base, high: 22 }));
    expect(both.map((text) => text.text)).toEqual([base.main, base.other]);
    expect(both.map((text) => Math.sign(textBox(text).minX - base.x))).toEqual([-1, 1]);
    expect(both.map((text) => Math.sign(textBox(text).maxX - base.x))).toEqual([-1, 1]);
  });

  it("is level beside a short line, on the side away from the steel", () => {
    expect(texts(uprightDimension({ ...base, high: 12 })).map((text) => text.anchor)).toEqual([
      "start",
      "start",
    ]);
    const left = uprightDimension({ ...base, high: 12, lowFrom: -10, highFrom: -10, x: -20 });
    expect(texts(left).map((text) => text.anchor)).toEqual(["end", "end"]);
  });
});
