import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, type TextItem } from "../../drawing.js";
import { fitText } from "../../fit-text.js";
import { SMALL } from "../../lettering-size.js";
import { textReach, textWidth } from "../../text-metrics.js";
import type { PageInfo, SheetContent } from "../sheet-content.js";
import { lineWidth } from "./collar.js";
import type { TileFrame } from "./tile-frame.js";

/** Height of a page's own label, from the ISO 3098 series (from memory), mm. */
const LABEL = 7;
const BETWEEN = 3;

/** What a page says of itself: its label, the order and the sheet, which of the pages it is, how to print it. Page mm. */
export function pageWords(
  content: SheetContent,
  frame: TileFrame,
  page: { readonly label: string; readonly info: PageInfo; readonly corrected: boolean },
): DrawingItem[] {
  const { box, upright } = frame.words;
  const rotation = upright ? Math.PI / 2 : 0;
  const long = upright ? box.maxY - box.minY : box.maxX - box.minX;
  const high = upright ? box.maxX - box.minX : box.maxY - box.minY;
  const point = (u: number, v: number): Vec2 =>
    upright ? { x: box.maxX - v, y: box.minY + u } : { x: box.minX + u, y: box.minY + v };
  const label = (at: Vec2): TextItem => lettering(page.label, at, { height: LABEL, rotation, bold: true });
  const start = lineWidth(label({ x: 0, y: 0 })) + BETWEEN;
  const lines = wordLines(content, page, long - start);
  const reaches = lines.map((line) => textReach(line, SMALL));
  const left = high - reaches.reduce((sum, { over, under }) => sum + over + under, 0);
  const gap = left / (lines.length + 1);
  let v = high;
  return [
    label(point(0, (high - LABEL) / 2)),
    ...lines.map((line, index) => {
      const { over, under } = reaches[index] ?? { over: 0, under: 0 };
      v -= gap + over;
      const item = lettering(line, point(start, v), { height: SMALL, rotation });
      v -= under;
      return item;
    }),
  ];
}

function wordLines(
  content: SheetContent,
  page: { readonly label: string; readonly info: PageInfo; readonly corrected: boolean },
  width: number,
): string[] {
  const { info, corrected } = page;
  const order = content
    .fields(info)
    .flat()
    .find(({ label }) => label === "Order")?.value;
  const short = order === undefined ? content.title : `${order}, ${content.name}`;
  const which = `Page ${info.page} of ${info.pages}`;
  const print = "PRINT AT 100 %.";
  return [
    longest([content.title, short], width),
    longest(corrected ? [`${which}, corrected for this printer`, `${which}, corrected`] : [which], width),
    ...(content.trueSize
      ? [
          longest(
            [`${print} NO FIT TO PAGE. Measure all four check bars.`, `${print} NO FIT TO PAGE.`, print],
            width,
          ),
        ]
      : []),
  ];
}

/** The first of the texts that fits, else the last one, shortened. */
function longest(texts: readonly string[], width: number): string {
  const found = texts.find((text) => textWidth(text, SMALL) <= width);
  return found ?? fitText(texts.at(-1) ?? "", SMALL, width, 1).join("");
}
