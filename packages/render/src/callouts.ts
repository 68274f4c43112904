import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, strokes } from "./drawing.js";
import { LINE_PITCH, SMALL } from "./lettering-size.js";
import { fontSizeOf, textWidth } from "./text-metrics.js";

/** A short label of a few lines, tied by a thin line to a point below it. */
export interface Callout {
  /** Where the line starts, mm. */
  readonly from: Vec2;
  readonly lines: readonly string[];
}

/** Height of the part in which the lines fan out to their labels, mm. */
const FAN = 6;
const LABEL_GAP = 1.5;
/** Clear space between neighbouring labels, mm. */
const BETWEEN = 2.5;

/**
 * A row of callouts above a view. Labels keep the order of their points and move apart just as far as they must; where
 * they would take much more room than the view is wide they are turned upright, one line each.
 *
 * @param y - where the lines begin to fan out: above everything in the view.
 * @param width - room along x, mm.
 * @returns the items, and the y of the top of the labels.
 */
export function calloutRow(
  callouts: readonly Callout[],
  y: number,
  width: number,
): { items: DrawingItem[]; top: number; left: number } {
  const sorted = [...callouts].sort((a, b) => a.from.x - b.from.x);
  const level = sorted.map((callout) => Math.max(...callout.lines.map((line) => textWidth(line, SMALL))));
  const total = level.reduce((sum, part) => sum + part + BETWEEN, 0);
  const upright = total > width;
  const sizes = upright ? sorted.map(() => fontSizeOf(SMALL) * 1.1) : level;
  const between = upright ? 1 : BETWEEN;
  const places = spread(
    sorted.map((callout) => callout.from.x),
    sizes,
    between,
  );
  const base = y + FAN + LABEL_GAP;
  const items = sorted.flatMap((callout, index) => {
    const x = places[index] ?? callout.from.x;
    const text = upright ? uprightLabel(callout, x, base) : levelLabel(callout, x, base);
    return [leader(callout.from, x, y), ...text];
  });
  const height = upright ? Math.max(0, ...sorted.map(uprightLength)) : blockHeight(sorted);
  const left = Math.min(...places.map((place, index) => place - (sizes[index] ?? 0) / 2));
  return { items, top: base + height, left };
}

const joined = (callout: Callout): string => callout.lines.join("  ");
const uprightLength = (callout: Callout): number => textWidth(joined(callout), SMALL);
const blockHeight = (callouts: readonly Callout[]): number =>
  Math.max(0, ...callouts.map((callout) => callout.lines.length)) * SMALL * LINE_PITCH;

function levelLabel(callout: Callout, x: number, base: number): DrawingItem[] {
  const last = callout.lines.length - 1;
  return callout.lines.map((line, index) => {
    const y = base + 0.4 * SMALL + (last - index) * SMALL * LINE_PITCH;
    return lettering(line, { x, y }, { height: SMALL, anchor: "middle" });
  });
}

function uprightLabel(callout: Callout, x: number, base: number): DrawingItem[] {
  const at = { x: x + SMALL / 2, y: base };
  return [lettering(joined(callout), at, { height: SMALL, rotation: Math.PI / 2 })];
}

function leader(from: Vec2, x: number, y: number): DrawingItem {
  const corner = { x: from.x, y };
  const end = { x, y: y + FAN };
  return strokes("thin", [
    [from, corner],
    [corner, end],
  ]);
}

/**
 * Middles of labels on one line, in order, without overlap, with the least sum of squared moves from where they
 * would like to be. Labels that touch form a block which stands where its members would like it on average; blocks
 * that run into each other are joined.
 *
 * @param wanted - ascending.
 *
 * @example
 * spread([0, 1], [4, 4], 1); // [-2, 3]
 */
export function spread(wanted: readonly number[], sizes: readonly number[], between: number): number[] {
  const offsets: number[] = [];
  for (const [index, size] of sizes.entries()) {
    const before = sizes[index - 1];
    offsets.push(before === undefined ? 0 : (offsets[index - 1] ?? 0) + (before + size) / 2 + between);
  }
  // With the offsets taken off, "in order and clear" becomes "not descending": pool adjacent violators.
  const blocks: { sum: number; count: number }[] = [];
  for (const [index, want] of wanted.entries()) {
    let block = { sum: want - (offsets[index] ?? 0), count: 1 };
    let last = blocks[blocks.length - 1];
    while (last !== undefined && last.sum / last.count > block.sum / block.count) {
      block = { sum: last.sum + block.sum, count: last.count + block.count };
      blocks.pop();
      last = blocks[blocks.length - 1];
    }
    blocks.push(block);
  }
  const means = blocks.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
  return means.map((mean, index) => mean + (offsets[index] ?? 0));
}
