import type { TextItem } from "../../drawing.js";
import { KEY, SMALL } from "../../lettering-size.js";
import { textBox, textWidth } from "../../text-metrics.js";
import type { Span } from "./axis-shifts.js";

/** From one place that is tried to the next, mm. */
const STEP = 1;

/** Lettering at another place of its line, and what it takes there. */
export interface FigurePlace {
  readonly item: TextItem;
  readonly span: Span;
}

/** The axis along which it reads and is moved. */
export const axisOf = ({ rotation }: TextItem): "x" | "y" => (rotation === 0 ? "x" : "y");

/** What lettering takes of an axis where it stands. */
export const spanAlong = (item: TextItem, axis: "x" | "y"): Span => {
  const { minX, maxX, minY, maxY } = textBox(item);
  return axis === "x" ? { from: minX, to: maxX } : { from: minY, to: maxY };
};

/**
 * Where lettering may stand along its line, the place where it is first, then the nearest; none where it may not be moved.
 */
export function figurePlaces(item: TextItem): FigurePlace[] {
  const { slide = [] } = item;
  if (slide.length === 0) return [];
  const axis = axisOf(item);
  const rest = spanAlong(item, axis);
  const moves = slide
    .flatMap(({ from, to }) => [
      ...Array.from({ length: Math.max(0, Math.ceil((to - from) / STEP)) }, (_, step) => from + step * STEP),
      to,
    ])
    .sort((a, b) => Math.abs(a) - Math.abs(b));
  return [0, ...moves].map((by) => ({
    item: { ...item, at: { ...item.at, [axis]: item.at[axis] + by } },
    span: { from: rest.from + by, to: rest.to + by },
  }));
}

/** The same in the small lettering, for which a line has more room; undefined where it is small as it is. */
export function smallFigure(item: TextItem): TextItem | undefined {
  if (item.height !== KEY || item.anchor !== "middle") return undefined;
  const more = (textWidth(item.text, KEY, item.bold) - textWidth(item.text, SMALL, item.bold)) / 2;
  const slide = item.slide?.map(({ from, to }) => ({ from: from - more, to: to + more }));
  return { ...item, height: SMALL, ...(slide === undefined ? {} : { slide }) };
}

/** Between what may be parted: a figure and the same in the other units, two parts of a sentence. */
const PARTED = / (?=\[)|(?<=,) /gu;

/** A line of lettering as two that may stand apart on it, as alike in length as can be; undefined where it is one word. */
export function halvesOf(item: TextItem): readonly [TextItem, TextItem] | undefined {
  const { text, height, bold, slide = [] } = item;
  const width = (words: string): number => textWidth(words, height, bold);
  const pairs = [...text.matchAll(PARTED)].map(({ index }): [string, string] => [
    text.slice(0, index),
    text.slice(index + 1),
  ]);
  const [best] = pairs.sort(
    ([a, b], [c, d]) => Math.abs(width(a) - width(b)) - Math.abs(width(c) - width(d)),
  );
  if (best === undefined) return undefined;
  const before = LEFT_OF[item.anchor] * width(text);
  const half = (words: string): TextItem => {
    // What is less wide has more room on either side of where the whole begins.
    const more = width(text) - width(words);
    const left = before - LEFT_OF[item.anchor] * width(words);
    return {
      ...item,
      text: words,
      slide: slide.map(({ from, to }) => ({ from: from - left, to: to - left + more })),
    };
  };
  return [half(best[0]), half(best[1])];
}

/** How much of the lettering stands before its place, as a share of its width. */
const LEFT_OF = { start: 0, middle: 0.5, end: 1 } as const;

/** What lettering takes of its axis at each place where it may stand, of either height. */
export const figureSpans = (item: TextItem): Span[] => {
  const small = smallFigure(item);
  return [item, ...(small === undefined ? [] : [small])].flatMap((each) =>
    figurePlaces(each).map(({ span }) => span),
  );
};
