import { type Bounds, type Path, translateSegment, type Vec2 } from "@scantling/geometry";
import { cleanText } from "./clean-text.js";
import type { PaperName } from "./paper.js";
import type { Role } from "./role.js";

/** Lines and curves of one role. `name` marks a part that can be found again in the written file; unique on a sheet. */
export interface PathItem {
  readonly kind: "path";
  readonly role: Role;
  readonly paths: readonly Path[];
  /** Filled and not stroked: arrowheads in black, areas of plots in grey. */
  readonly fill?: Tone;
  /** Where in the dash pattern the line begins, mm. */
  readonly dashStart?: number;
  readonly name?: string;
}

/** How dark an area is; greys far enough apart to be told from one another on a black-only printer. */
export type Tone = "black" | "dark" | "middle" | "light" | "white";

export interface CircleItem {
  readonly kind: "circle";
  readonly role: Role;
  readonly centre: Vec2;
  readonly radius: number;
  readonly name?: string;
}

export type TextAnchor = "start" | "middle" | "end";

/** One line of lettering. */
export interface TextItem {
  readonly kind: "text";
  /** Point on the base line, mm. */
  readonly at: Vec2;
  readonly anchor: TextAnchor;
  /** Height of the capital letters, mm, as drafting standards count it. */
  readonly height: number;
  /** Turned counter-clockwise about `at`, rad. */
  readonly rotation: number;
  readonly text: string;
  /** Headings and figures that are read from afar. */
  readonly bold?: boolean;
  /** How far a figure may be moved along its dimension line from where it stands, mm forward; left out: not at all. */
  readonly slide?: readonly { readonly from: number; readonly to: number }[];
}

export interface GroupItem {
  readonly kind: "group";
  readonly name?: string;
  /** Nothing of the group is drawn outside this box, mm. */
  readonly clip?: Bounds;
  /** Belongs to the paper and not to what is drawn (title block, check bars, tables): left out of files for CAD. */
  readonly ofPaper?: true;
  readonly items: readonly DrawingItem[];
}

export type DrawingItem = PathItem | CircleItem | TextItem | GroupItem;

/**
 * A sheet as a display list, in mm with y up. Every output format is written from this same list, so what is
 * measured is what is drawn.
 */
export interface Drawing {
  /** Page size, mm. */
  readonly width: number;
  readonly height: number;
  /** Where the origin of the items falls on the page, mm right of and above its lower left corner. */
  readonly origin: Vec2;
  /** The standard paper whose size the page has; undefined where none is large enough. */
  readonly paper?: PaperName;
  /** By how much the page is written larger than true size, for a printer that prints small; 1 each where left out. */
  readonly correction?: PrintCorrection;
  readonly title: string;
  /** What the sheet shows, in a sentence or two, for those who cannot see it. */
  readonly description: string;
  /** Row and column of a page that is joined to others to make the sheet: "B2"; see the map of the pages. */
  readonly joinedAs?: string;
  /** Where its number in a file of several sheets may stand, page mm; left out where there is no room. */
  readonly numberPlace?: NumberPlace;
  readonly items: readonly DrawingItem[];
}

/** Room for a short line of lettering that is known only when all pages are. */
export type NumberPlace = Pick<TextItem, "at" | "anchor" | "height" | "rotation">;

/** Factors by which a page is stretched in the file, across and up, so that it comes out of the printer at true size. */
export interface PrintCorrection {
  readonly across: number;
  readonly up: number;
}

/** Straight lines through the points. */
export function polyline(points: readonly Vec2[], closed = false): Path {
  const ends = closed ? [...points.slice(1), ...points.slice(0, 1)] : points.slice(1);
  return {
    closed,
    segments: ends.map((to, index) => ({ kind: "line", from: points[index] ?? to, to })),
  };
}

/** Straight lines of one role, each given by its two ends. */
export function strokes(role: Role, lines: readonly (readonly [Vec2, Vec2])[]): PathItem {
  return { kind: "path", role, paths: lines.map((ends) => polyline(ends)) };
}

/** A rectangle by two opposite corners. */
export function rectangle(role: Role, a: Vec2, b: Vec2): PathItem {
  const corners = [a, { x: b.x, y: a.y }, b, { x: a.x, y: b.y }];
  return { kind: "path", role, paths: [polyline(corners, true)] };
}

/** A line of lettering, cleaned of what cannot be printed. */
export function lettering(
  text: string,
  at: Vec2,
  options: { height: number; anchor?: TextAnchor; rotation?: number; bold?: boolean },
): TextItem {
  return {
    kind: "text",
    at,
    anchor: options.anchor ?? "start",
    height: options.height,
    rotation: options.rotation ?? 0,
    text: cleanText(text),
    ...(options.bold ? { bold: true } : {}),
  };
}

/** The same item moved by (dx, dy) mm. */
export function moveItem(item: DrawingItem, dx: number, dy: number): DrawingItem {
  switch (item.kind) {
    case "path":
      return { ...item, paths: item.paths.map((path) => movePath(path, dx, dy)) };
    case "circle":
      return { ...item, centre: { x: item.centre.x + dx, y: item.centre.y + dy } };
    case "text":
      return { ...item, at: { x: item.at.x + dx, y: item.at.y + dy } };
    case "group":
      return {
        ...item,
        ...(item.clip === undefined ? {} : { clip: moveBox(item.clip, dx, dy) }),
        items: item.items.map((inner) => moveItem(inner, dx, dy)),
      };
  }
}

/** The same box moved by (dx, dy) mm. */
export const moveBox = (box: Bounds, dx: number, dy: number): Bounds => ({
  minX: box.minX + dx,
  minY: box.minY + dy,
  maxX: box.maxX + dx,
  maxY: box.maxY + dy,
});

function movePath(path: Path, dx: number, dy: number): Path {
  return { ...path, segments: path.segments.map((segment) => translateSegment(segment, dx, dy)) };
}

/** Every item that is not a group, in the order in which it is drawn. */
export function flattenItems(items: readonly DrawingItem[]): Exclude<DrawingItem, GroupItem>[] {
  return items.flatMap((item) => (item.kind === "group" ? flattenItems(item.items) : [item]));
}
