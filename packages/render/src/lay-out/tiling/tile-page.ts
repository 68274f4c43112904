import type { Bounds, Vec2 } from "@scantling/geometry";
import { slimCheckBars } from "../../calibration.js";
import { type Drawing, type DrawingItem, moveBox, moveItem } from "../../drawing.js";
import { SMALL } from "../../lettering-size.js";
import type { PaperSize } from "../../paper.js";
import type { PageInfo, SheetContent, SheetView } from "../sheet-content.js";
import type { BesidePlace } from "./beside-view.js";
import { collarLabel, type Side } from "./collar.js";
import { isKept, type Joint, jointsOf, type Tile, type TileGrid, tileLabel } from "./grid.js";
import { itemsInBox } from "./in-window.js";
import { jointLine, markArm, markItems } from "./marks.js";
import { pageWords } from "./page-words.js";
import { COLLAR, type TileFrame } from "./tile-frame.js";

/** Room for the half of a wide line that reaches into a window from outside, mm. */
const LINE_REACH = 0.5;

/** What all pages of a tiled sheet have in common. */
export interface TiledSheet {
  readonly content: SheetContent;
  readonly view: SheetView;
  readonly paper: PaperSize;
  readonly frame: TileFrame;
  readonly grid: TileGrid;
  /** Boxes of the view's lettering, and where the crossing marks stand; view mm. */
  readonly texts: readonly Bounds[];
  readonly marks: readonly Vec2[];
}

/**
 * One page: its part of the view in the view's own mm, seen through a window, and about it what the page is.
 *
 * @param beside - What else stands in the window, clear of the view.
 */
export function tilePage(
  sheet: TiledSheet,
  tile: Tile,
  info: PageInfo,
  beside: readonly BesidePlace[],
): Drawing {
  const { content, view, paper, frame } = sheet;
  const { window } = tile;
  const origin = { x: frame.window.minX - window.minX, y: frame.window.minY - window.minY };
  const neighbours = neighboursOf(sheet.grid, tile);
  const reach: Bounds = {
    minX: window.minX - LINE_REACH,
    minY: window.minY - LINE_REACH,
    maxX: window.maxX + LINE_REACH,
    maxY: window.maxY + LINE_REACH,
  };
  const { correction, name } = paper;
  return {
    width: paper.width,
    height: paper.height,
    ...(name === undefined ? {} : { paper: name }),
    ...(correction === undefined ? {} : { correction }),
    origin,
    joinedAs: tile.label,
    ...numberOf(frame),
    title: `${content.title}, page ${tile.label}`,
    description: [content.describe(info), joinSentence(tile, neighbours)].join(" "),
    items: [
      { kind: "group", name: "view", clip: window, items: itemsInBox(view.items, reach) },
      { kind: "group", name: "joints", ofPaper: true, items: jointItems(sheet, tile) },
      ...[
        ...beside.map(({ part, corner }) => part.itemOn(corner, info)),
        ...surround(sheet, tile, info, neighbours),
      ].map((item) => moveItem(item, -origin.x, -origin.y)),
    ],
  };
}

/** Room for the number of the page in its file, mm: "file page 99 of 99". */
const NUMBER_ROOM = 40;

/** At the end of the strip that the words leave free. */
function numberOf({ barsAcross, barsUp, words, window }: TileFrame): Pick<Drawing, "numberPlace"> {
  const page = { minX: window.minX - COLLAR, maxY: window.maxY + COLLAR };
  const room = words.upright ? barsAcross.minX - page.minX : page.maxY - barsUp.maxY;
  if (room < NUMBER_ROOM) return {};
  const at = words.upright
    ? { x: page.minX, y: barsAcross.minY + SMALL }
    : { x: barsUp.maxX - SMALL, y: page.maxY };
  const [anchor, rotation] = words.upright ? (["start", 0] as const) : (["end", Math.PI / 2] as const);
  return { numberPlace: { at, anchor, height: SMALL, rotation } };
}

interface Neighbour {
  readonly side: Side;
  readonly label: string;
  /** Of the joint, in view mm. */
  readonly span: { readonly from: number; readonly to: number };
}

function neighboursOf(grid: TileGrid, { row, column }: Tile): Neighbour[] {
  const joints = jointsOf(grid);
  const beside = (side: Side, r: number, c: number): Neighbour[] => {
    if (!isKept(grid, r, c)) return [];
    const joint = joints.find(
      ({ under, over }) =>
        (isAt(under, row, column) && isAt(over, r, c)) || (isAt(over, row, column) && isAt(under, r, c)),
    );
    return joint === undefined ? [] : [{ side, label: tileLabel(r, c), span: joint }];
  };
  return [
    ...beside("left", row, column - 1),
    ...beside("top", row - 1, column),
    ...beside("right", row, column + 1),
    ...beside("bottom", row + 1, column),
  ];
}

const isAt = (tile: Joint["under"], row: number, column: number): boolean =>
  tile.row === row && tile.column === column;

const WHERE: Readonly<Record<Side, string>> = { left: "left", top: "top", right: "right", bottom: "foot" };

function joinSentence(tile: Tile, neighbours: readonly Neighbour[]): string {
  const where = neighbours.map(({ side, label }) => `${label} at its ${WHERE[side]}`).join(", ");
  return where === "" ? `Page ${tile.label}.` : `Page ${tile.label}, joined to ${where}.`;
}

/** The lines to cut or lay along, over the whole window, and the marks in it; view mm, the same on both pages. */
function jointItems({ grid, texts, marks }: TiledSheet, { row, column, window }: Tile): DrawingItem[] {
  const arm = markArm(grid.overlap);
  const half = grid.overlap / 2;
  const upright = (at: number): DrawingItem[] =>
    jointLine({ upright: true, at, from: window.minY, to: window.maxY }, texts, marks, arm);
  const level = (at: number): DrawingItem[] =>
    jointLine({ upright: false, at, from: window.minX, to: window.maxX }, texts, marks, arm);
  const inside = marks.filter(
    ({ x, y }) =>
      x - arm >= window.minX && x + arm <= window.maxX && y - arm >= window.minY && y + arm <= window.maxY,
  );
  return [
    ...(isKept(grid, row, column - 1) ? upright(window.minX + half) : []),
    ...(isKept(grid, row, column + 1) ? upright(window.maxX - half) : []),
    ...(isKept(grid, row - 1, column) ? level(window.maxY - half) : []),
    ...(isKept(grid, row + 1, column) ? level(window.minY + half) : []),
    ...inside.flatMap((mark) => markItems(mark, arm)),
  ];
}

/** What stands about the window, in page mm. */
function surround(
  { content, paper, frame }: TiledSheet,
  tile: Tile,
  info: PageInfo,
  neighbours: readonly Neighbour[],
): DrawingItem[] {
  const { window, barsAcross, barsUp } = frame;
  const onPage = moveBox(window, -tile.window.minX, -tile.window.minY);
  const along = ({ side, span }: Neighbour): { from: number; to: number } => {
    const by = side === "left" || side === "right" ? onPage.minY : onPage.minX;
    return { from: span.from + by, to: span.to + by };
  };
  const bars: DrawingItem[] = content.trueSize
    ? [
        {
          kind: "group",
          name: "check-bars",
          ofPaper: true,
          items: [
            ...slimCheckBars("across", { x: barsAcross.minX, y: barsAcross.minY }),
            ...slimCheckBars("up", { x: barsUp.maxX, y: barsUp.minY }),
          ],
        },
      ]
    : [];
  return [
    ...bars,
    {
      kind: "group",
      name: "page-words",
      ofPaper: true,
      items: pageWords(content, frame, {
        label: tile.label,
        info,
        corrected: paper.correction !== undefined,
      }),
    },
    {
      kind: "group",
      name: "neighbours",
      ofPaper: true,
      items: neighbours.flatMap((neighbour) =>
        collarLabel(window, neighbour.side, neighbour.label, along(neighbour)),
      ),
    },
  ];
}
