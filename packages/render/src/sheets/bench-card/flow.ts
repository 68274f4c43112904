import type { Vec2 } from "@scantling/geometry";
import type { CardSide } from "../../models/card-model.js";
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

/** A panel of a part of the work, as wide as a column, or as the page. */
export interface FlowPanel {
  readonly side: CardSide;
  readonly placed: Placed;
  readonly wide: boolean;
  /** In two, the first no higher than `room`, mm; undefined where that does not go. */
  readonly part: (room: number) => readonly [FlowPanel, FlowPanel] | undefined;
}

/** A panel with the upper left corner of its place. */
export interface PlacedPanel {
  readonly panel: FlowPanel;
  readonly corner: Vec2;
}

export const columnWidth = ({ left, right }: Area): number => (right - left - GUTTER) / 2;

/**
 * Panels over pages of two columns, in their order: down the left column, then down the right one. A run of narrow panels
 * between two wide ones is parted where its columns come out most nearly even. A wide panel stands below both columns.
 *
 * @param mayPart - Whether a panel at the foot of a column may go on in the next one, where the run is longer than its
 *   page. One that is higher than a page always may.
 * @returns undefined where a panel is higher than a page and cannot be parted.
 */
export function flowPanels(
  panels: readonly FlowPanel[],
  area: Area,
  mayPart: boolean,
): PlacedPanel[][] | undefined {
  if (panels.length === 0) return [];
  const pages: PlacedPanel[][] = [[]];
  const full = area.top - area.bottom;
  const part: Part = (panel, room) => (mayPart || panel.placed.height > full ? panel.part(room) : undefined);
  let top = area.top;
  let rest = [...panels];
  while (rest.length > 0) {
    const room = top - area.bottom;
    const filled = rest[0]?.wide === true ? placeWide(rest, room, part) : placeColumns(rest, room, part);
    const taken = filled.columns.map((column) => heightOf(column));
    if (taken.every((height) => height === 0)) {
      if (top === area.top) return undefined;
    } else {
      for (const [index, column] of filled.columns.entries()) {
        const left = area.left + index * (columnWidth(area) + GUTTER);
        pages.at(-1)?.push(...placeColumn(column, { x: left, y: top }));
      }
      rest = filled.rest;
      top -= Math.max(...taken) + GUTTER;
    }
    if (!filled.whole && rest.length > 0) {
      pages.push([]);
      top = area.top;
    }
  }
  return pages;
}

type Part = (panel: FlowPanel, room: number) => readonly [FlowPanel, FlowPanel] | undefined;

/** What goes on a page next, column by column, and what is left; whole where all that was to go on did. */
interface Filled {
  readonly columns: readonly (readonly FlowPanel[])[];
  readonly rest: FlowPanel[];
  readonly whole: boolean;
}

function placeWide([first, ...behind]: readonly FlowPanel[], room: number, part: Part): Filled {
  const { column, rest } = fillColumn(first === undefined ? [] : [first], room, part);
  return { columns: [column], rest: [...rest, ...behind], whole: rest.length === 0 };
}

/** The narrow ones before the next wide one. */
function placeColumns(panels: readonly FlowPanel[], room: number, part: Part): Filled {
  const until = panels.findIndex(({ wide }) => wide);
  const run = until < 0 ? panels : panels.slice(0, until);
  const behind = panels.slice(run.length);
  const even = evenColumns(run, room);
  if (even !== undefined) return { columns: even, rest: behind, whole: true };
  const left = fillColumn(run, room, part);
  const right = fillColumn(left.column.length === 0 ? [] : left.rest, room, part);
  const rest = left.column.length === 0 ? left.rest : right.rest;
  return { columns: [left.column, right.column], rest: [...rest, ...behind], whole: rest.length === 0 };
}

/** All of them whole in two columns, as evenly as their order lets them; undefined where they do not fit. */
function evenColumns(run: readonly FlowPanel[], room: number): FlowPanel[][] | undefined {
  const partings = run
    .map((_, index) => [run.slice(0, index + 1), run.slice(index + 1)])
    .map((columns) => ({ columns, height: Math.max(...columns.map(heightOf)) }))
    .filter(({ height }) => height <= room);
  const least = Math.min(...partings.map(({ height }) => height));
  return partings.find(({ height }) => height === least)?.columns;
}

/** As many as fit under one another, the last of them in part where it may be parted. */
function fillColumn(
  panels: readonly FlowPanel[],
  room: number,
  part: Part,
): { column: FlowPanel[]; rest: FlowPanel[] } {
  const column: FlowPanel[] = [];
  let used = 0;
  for (const [index, panel] of panels.entries()) {
    const behind = panels.slice(index + 1);
    if (used + panel.placed.height > room) {
      const parts = part(panel, room - used);
      if (parts === undefined) return { column, rest: [panel, ...behind] };
      return { column: [...column, parts[0]], rest: [parts[1], ...behind] };
    }
    column.push(panel);
    used += panel.placed.height + GUTTER;
  }
  return { column, rest: [] };
}

function placeColumn(panels: readonly FlowPanel[], corner: Vec2): PlacedPanel[] {
  let top = corner.y;
  return panels.map((panel) => {
    const placed = { panel, corner: { x: corner.x, y: top } };
    top -= panel.placed.height + GUTTER;
    return placed;
  });
}

const heightOf = (panels: readonly FlowPanel[]): number =>
  panels.reduce((sum, { placed }) => sum + placed.height + GUTTER, 0) - (panels.length > 0 ? GUTTER : 0);
