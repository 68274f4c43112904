import { GeometryError } from "../errors/errors.js";
import { type PathCommand, pathCommands } from "../plane/svg-commands.js";
import { MM_PER_PX, readCssLength } from "./css-length.js";
import { drawingError, quoted } from "./drawing-issue.js";
import { nameOf } from "./not-read.js";
import { readNumbers } from "./number-list.js";
import type { DrawingElement } from "./xml.js";

const SHAPES = new Set(["path", "line", "polyline", "polygon", "rect", "circle", "ellipse"]);

/** Whether an element is a line that can be cut to. */
export const isShape = ({ tag }: DrawingElement): boolean => SHAPES.has(tag);

/**
 * A shape as path commands in its own coordinates, y down, as the format defines them.
 *
 * Source: W3C, Scalable Vector Graphics 2, chapters 9 (paths) and 10 (basic shapes, each with its equivalent path).
 *
 * @throws {SpecError} `drawing-path-unreadable`, `drawing-number-unreadable`
 */
export function shapeCommands(element: DrawingElement): PathCommand[] {
  const length = (key: string): number => lengthOf(element, key) ?? 0;
  switch (element.tag) {
    case "path":
      return commandsOfPath(element);
    case "line":
      return [
        ["M", length("x1"), length("y1")],
        ["L", length("x2"), length("y2")],
      ];
    case "polyline":
      return corners(element);
    case "polygon":
      return [...corners(element), ["Z"]];
    case "circle":
      return ellipse(length("cx"), length("cy"), length("r"), length("r"));
    case "ellipse": {
      const [rx, ry] = bothRadii(element);
      return ellipse(length("cx"), length("cy"), rx, ry);
    }
    case "rect":
      return rectangle(element, length("x"), length("y"), length("width"), length("height"));
    default:
      return [];
  }
}

function commandsOfPath(element: DrawingElement): PathCommand[] {
  const data = element.attributes.get("d") ?? "";
  if (data.trim() === "" || data.trim() === "none") return [];
  try {
    return pathCommands(data);
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error;
    throw drawingError(
      "drawing-path-unreadable",
      "The path {id} cannot be read: {reason}. Save the drawing again as plain SVG.",
      { id: nameOf(element), reason: quoted(error.message, 160) },
    );
  }
}

function corners(element: DrawingElement): PathCommand[] {
  const text = element.attributes.get("points") ?? "";
  const numbers = readNumbers(text);
  if (numbers === undefined || numbers.length % 2 === 1) throw unreadable(element, "points", text);
  const commands: PathCommand[] = [];
  for (let i = 0; i + 1 < numbers.length; i += 2) {
    commands.push([i === 0 ? "M" : "L", numbers[i] ?? 0, numbers[i + 1] ?? 0]);
  }
  return commands;
}

function ellipse(cx: number, cy: number, rx: number, ry: number): PathCommand[] {
  if (rx === 0 || ry === 0) return [];
  const quarter = (x: number, y: number): PathCommand => ["A", rx, ry, 0, 0, 1, x, y];
  return [
    ["M", cx + rx, cy],
    quarter(cx, cy + ry),
    quarter(cx - rx, cy),
    quarter(cx, cy - ry),
    quarter(cx + rx, cy),
    ["Z"],
  ];
}

function rectangle(element: DrawingElement, x: number, y: number, w: number, h: number): PathCommand[] {
  if (w === 0 || h === 0) return [];
  const [wanted, wantedY] = bothRadii(element);
  const rx = Math.min(wanted, w / 2);
  const ry = Math.min(wantedY, h / 2);
  if (rx === 0 || ry === 0) {
    return [["M", x, y], ["L", x + w, y], ["L", x + w, y + h], ["L", x, y + h], ["Z"]];
  }
  const corner = (toX: number, toY: number): PathCommand => ["A", rx, ry, 0, 0, 1, toX, toY];
  return [
    ["M", x + rx, y],
    ["L", x + w - rx, y],
    corner(x + w, y + ry),
    ["L", x + w, y + h - ry],
    corner(x + w - rx, y + h),
    ["L", x + rx, y + h],
    corner(x, y + h - ry),
    ["L", x, y + ry],
    corner(x + rx, y),
    ["Z"],
  ];
}

/** `rx` and `ry`; the one that is left out is like the other. */
function bothRadii(element: DrawingElement): [number, number] {
  const rx = lengthOf(element, "rx");
  const ry = lengthOf(element, "ry");
  return [rx ?? ry ?? 0, ry ?? rx ?? 0];
}

const SIZES = new Set(["width", "height", "r", "rx", "ry"]);

/** A length in the element's own units; undefined where it is left out. */
function lengthOf(element: DrawingElement, key: string): number | undefined {
  const text = element.attributes.get(key);
  if (text === undefined || text.trim() === "auto") return undefined;
  const length = readCssLength(text);
  if (length === undefined || length.kind === "relative") throw unreadable(element, key, text);
  const value = length.kind === "bare" ? length.value : length.mm / MM_PER_PX;
  if (value < 0 && SIZES.has(key)) throw unreadable(element, key, text);
  return value;
}

function unreadable(element: DrawingElement, key: string, text: string): Error {
  return drawingError(
    "drawing-number-unreadable",
    'The {key} of {id}, "{text}", cannot be read. Turn the shape into a path in the editor.',
    { key, id: nameOf(element), text: quoted(text) },
  );
}
