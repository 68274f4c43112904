import { type DrawingItem, lettering } from "../../drawing.js";
import { onOneLine, sizeText } from "../../label-text.js";
import { KEY, LINE_PITCH, SMALL } from "../../lettering-size.js";
import { besideUnits, type SheetUnits, styleOf } from "../../sheet-units.js";
import { textReach, textWidth } from "../../text-metrics.js";
import type { Part } from "../part.js";
import type { TileGrid } from "./grid.js";

const HEADING = "HOW TO JOIN THE PAGES";
const HEADING_ROOM = 8;
const INDENT = 5;

/** How the pages are cut, laid together and checked, in the order of work. */
export function joinWords(grid: TileGrid, units: SheetUnits = "mm"): Part {
  const lines = joinLines(grid, units);
  const step = SMALL * LINE_PITCH;
  return {
    name: "how-to-join",
    width: Math.ceil(
      Math.max(textWidth(HEADING, KEY, true), ...lines.map(({ text }) => INDENT + textWidth(text, SMALL))),
    ),
    height: Math.ceil(HEADING_ROOM + lines.length * step),
    wish: "foot",
    ofPaper: true,
    items: ({ x, y }) => {
      const top = y + Math.ceil(HEADING_ROOM + lines.length * step);
      const items: DrawingItem[] = [
        lettering(HEADING, { x, y: top - textReach("", KEY).over }, { height: KEY, bold: true }),
      ];
      for (const [index, { number, text }] of lines.entries()) {
        const base = top - HEADING_ROOM - (index + 1) * step + textReach("", SMALL).under;
        if (number !== "") items.push(lettering(number, { x, y: base }, { height: SMALL, bold: true }));
        items.push(lettering(text, { x: x + INDENT, y: base }, { height: SMALL }));
      }
      return items;
    },
  };
}

function joinLines(
  { columns, rows, width, height, overlap }: TileGrid,
  units: SheetUnits,
): { number: string; text: string }[] {
  // Pages overlap by whole mm: of both units these come first.
  const shown = besideUnits(units) === undefined ? units : { ...styleOf(units), main: "mm" as const };
  const order =
    rows === 1
      ? [columns === 2 ? "Lay A2 on A1." : "Join from the left: A2 on A1, then A3 on A2, and so on."]
      : columns === 1
        ? [rows === 2 ? "Lay B1 on A1." : "Join from the top: B1 on A1, then C1 on B1, and so on."]
        : ["Join each row from the left, then lay row B on row A, and so on."];
  const spans = [
    ...(columns > 2 ? [`${onOneLine(sizeText(width - overlap, shown))} across`] : []),
    ...(rows > 2 ? [`${onOneLine(sizeText(height - overlap, shown))} up`] : []),
  ];
  const steps = [
    ["Measure the check bars of each page before you cut it."],
    ["Cut along the dashes where a page says so:", cutEdges(columns, rows)],
    ["Lay the cut edge on the dashes of the page beside it:", "half rings become rings. Tape."],
    order,
    [
      "Check with a straight edge:",
      "lines run across the joint without a step.",
      ...(spans.length > 0 ? [`From dashes to dashes: ${spans.join(", ")}.`] : []),
    ],
  ];
  return steps.flatMap((lines, step) =>
    lines.map((text, index) => ({ number: index === 0 ? `${step + 1}` : "", text })),
  );
}

function cutEdges(columns: number, rows: number): string {
  if (rows === 1) return "its left edge. Leave the right edge whole.";
  if (columns === 1) return "its upper edge. Leave the lower edge whole.";
  return "its left and its upper edge. Leave the others whole.";
}
