import type { Vec2 } from "@scantling/geometry";
import type { Placed } from "./placed.js";

/** The paper that panels may take; page mm. */
export interface Area {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Between two columns and between two panels, mm. */
export const GUTTER = 1.6;

/** A panel, as wide as a column, or as the page. */
export interface FlowPanel {
  readonly placed: Placed;
  readonly wide: boolean;
}

/** A panel with the upper left corner of its place. */
export interface PlacedPanel {
  readonly panel: FlowPanel;
  readonly corner: Vec2;
}

export const columnWidth = ({ left, right }: Area): number => (right - left - GUTTER) / 2;

/**
 * Panels over pages of two columns, in their order: down the left column, then down the right one. A run of narrow panels
 * between two wide ones is parted where its columns come out most nearly even. A wide panel stands below both.
 *
 * @returns undefined where a panel is higher than a page.
 */
export function flowPanels(panels: readonly FlowPanel[], area: Area): PlacedPanel[][] | undefined {
  const pages: PlacedPanel[][] = [[]];
  if (panels.length === 0) return [];
  const full = area.top - area.bottom;
  let top = area.top;
  let rest = [...panels];
  const nextPage = (): void => {
    pages.push([]);
    top = area.top;
  };
  while (rest.length > 0) {
    const [first] = rest;
    if (first === undefined) break;
    if (first.wide) {
      if (first.placed.height > full) return undefined;
      if (first.placed.height > top - area.bottom) nextPage();
      pages.at(-1)?.push({ panel: first, corner: { x: area.left, y: top } });
      top -= first.placed.height + GUTTER;
      rest = rest.slice(1);
      continue;
    }
    const until = rest.findIndex(({ wide }) => wide);
    const run = until < 0 ? rest : rest.slice(0, until);
    const parted = partColumns(
      run.map(({ placed }) => placed),
      top - area.bottom,
    );
    if (parted === undefined) {
      if (top === area.top) return undefined;
      nextPage();
      continue;
    }
    const [leftCount, rightCount] = parted;
    const right = area.left + columnWidth(area) + GUTTER;
    const heights = [
      placeColumn(run.slice(0, leftCount), { x: area.left, y: top }, pages),
      placeColumn(run.slice(leftCount, leftCount + rightCount), { x: right, y: top }, pages),
    ];
    top -= Math.max(...heights);
    rest = rest.slice(leftCount + rightCount);
    if (leftCount + rightCount < run.length) nextPage();
  }
  return pages;
}

function placeColumn(panels: readonly FlowPanel[], corner: Vec2, pages: PlacedPanel[][]): number {
  let used = 0;
  for (const panel of panels) {
    pages.at(-1)?.push({ panel, corner: { x: corner.x, y: corner.y - used } });
    used += panel.placed.height + GUTTER;
  }
  return used;
}

const heightOf = (panels: readonly Placed[]): number =>
  panels.reduce((sum, { height }) => sum + height + GUTTER, 0) - (panels.length > 0 ? GUTTER : 0);

/** How many go left and how many right: all of them, evenly, if they fit; else as many as do. Undefined where none fits. */
function partColumns(panels: readonly Placed[], room: number): [number, number] | undefined {
  let best: { parts: [number, number]; height: number } | undefined;
  for (let left = 1; left <= panels.length; left++) {
    const height = Math.max(heightOf(panels.slice(0, left)), heightOf(panels.slice(left)));
    if (height <= room && (best === undefined || height < best.height)) {
      best = { parts: [left, panels.length - left], height };
    }
  }
  if (best !== undefined) return best.parts;
  let left = 0;
  while (left < panels.length && heightOf(panels.slice(0, left + 1)) <= room) left++;
  if (left === 0) return undefined;
  let right = 0;
  while (left + right < panels.length && heightOf(panels.slice(left, left + right + 1)) <= room) right++;
  return [left, right];
}
