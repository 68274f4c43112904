import { type FileUnits, inchesToMm } from "@scantling/geometry/units";
import { lettering, polyline, rectangle, strokes } from "../../drawing.js";
import type { Part } from "../../lay-out/part.js";
import { SMALL } from "../../lettering-size.js";
import { CROSS, cross, shownLength } from "./bars.js";

/** Thirds of the short side, quarters of the long one and fifths of the diagonal: whole numbers all three. */
const SIZES: Readonly<Record<FileUnits, readonly number[]>> = {
  mm: [40, 30, 20],
  in: [inchesToMm(1.5), inchesToMm(1)],
};

/** Rectangles whose diagonals are of equal length where the print is square, the largest first. */
export const diagonalParts = (units: FileUnits): Part[] =>
  SIZES[units].map((unit) => diagonalPart(unit, units));

const LABEL_DEPTH = 7;

function diagonalPart(unit: number, units: FileUnits): Part {
  const width = 3 * unit;
  const height = 4 * unit;
  return {
    name: "diagonals",
    width: width + 2 * CROSS,
    height: height + 2 * CROSS,
    wish: "corner",
    items: (corner) => {
      const low = { x: corner.x + CROSS, y: corner.y + CROSS };
      const high = { x: low.x + width, y: low.y + height };
      const lowRight = { x: high.x, y: low.y };
      const highLeft = { x: low.x, y: high.y };
      const label = (text: string, y: number) =>
        lettering(text, { x: low.x + width / 2, y }, { height: SMALL, anchor: "middle" });
      return [
        rectangle("check", low, high),
        { kind: "path", role: "check", paths: [polyline([low, high])], name: "diagonal-rising" },
        { kind: "path", role: "check", paths: [polyline([highLeft, lowRight])], name: "diagonal-falling" },
        strokes("check", [low, lowRight, high, highLeft].flatMap(cross)),
        label(`Diagonals ${shownLength(5 * unit, units)}`, high.y - LABEL_DEPTH),
        label("both alike", low.y + LABEL_DEPTH - SMALL),
      ];
    },
  };
}
