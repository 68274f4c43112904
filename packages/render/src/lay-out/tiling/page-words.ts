import { invariant, type Vec2 } from "@scantling/geometry";
import { cleanText } from "../../clean-text.js";
import { type DrawingItem, lettering, moveItem, type TextItem } from "../../drawing.js";
import { fitText } from "../../fit-text.js";
import { KEY, SMALL } from "../../lettering-size.js";
import { textBox, textReach, textWidth } from "../../text-metrics.js";
import type { PageInfo, SheetContent } from "../sheet-content.js";
import { lineWidth } from "./collar.js";
import type { TileFrame } from "./tile-frame.js";

/** Heights of a page's own label, the largest that has room, from the ISO 3098 series (from memory), mm. */
const LABELS = [7, 5, KEY, SMALL];
const BETWEEN = 3;
/** Never shortened, and never left out of what is true size. */
const PRINT = "PRINT AT 100 %.";

/**
 * What a page says of itself: its label, the order and the sheet, which of the pages it is, how to print it. Page mm.
 *
 * The label stands upright on the page as it is joined and as the map shows it, be the words beside it turned or not.
 */
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
  // Beside it the words about printing have to have their room.
  const label = labelIn(page.label, upright ? high : long - BETWEEN - textWidth(PRINT, SMALL));
  const size = textBox(label);
  const width = lineWidth(label);
  const taken = (upright ? size.maxY - size.minY : width) + BETWEEN;
  // Turned words are read from the foot up: they begin under the label's place at the head of their strip.
  const start = upright ? 0 : taken;
  const lines = wordLines(content, page, long - taken);
  const reaches = lines.map(({ text }) => textReach(text, SMALL));
  const left = high - reaches.reduce((sum, { over, under }) => sum + over + under, 0);
  const gap = left / (lines.length + 1);
  let v = high;
  return [
    upright
      ? moveItem(label, box.minX + (high - width) / 2, Math.floor(box.maxY - size.maxY))
      : moveItem(label, box.minX, box.minY + (high - label.height) / 2),
    ...lines.map(({ text, bold }, index) => {
      const { over, under } = reaches[index] ?? { over: 0, under: 0 };
      v -= gap + over;
      const item = lettering(text, point(start, v), { height: SMALL, rotation, bold });
      v -= under;
      return item;
    }),
  ];
}

/** A page's label with its lower left corner at 0, 0, as large as goes into that width. */
function labelIn(text: string, width: number): TextItem {
  const labels = LABELS.map((height) => lettering(text, { x: 0, y: 0 }, { height, bold: true }));
  const found = labels.find((label) => lineWidth(label) <= width) ?? labels.at(-1);
  invariant(found !== undefined, "there are heights of labels");
  return found;
}

interface WordLine {
  readonly text: string;
  readonly bold: boolean;
}

function wordLines(
  content: SheetContent,
  page: { readonly label: string; readonly info: PageInfo; readonly corrected: boolean },
  width: number,
): WordLine[] {
  const { info, corrected } = page;
  const { title, name, lineNote, warnings = [], trueSize } = content;
  const order = content
    .fields(info)
    .flat()
    .find(({ label }) => label === "Order")?.value;
  const short = order === undefined ? title : `${order}, ${name}`;
  const names =
    lineNote === undefined
      ? [title, short, shortened(order ?? title, `, ${name}`, width)]
      : [...[title, short, name].map((text) => `${text}; ${lineNote}`), lineNote];
  const which = `Page ${info.page} of ${info.pages}`;
  const pages = corrected ? [`${which}, corrected for this printer`, `${which}, corrected`] : [which];
  const prints = trueSize
    ? [`${PRINT} NO FIT TO PAGE. Measure all four check bars.`, `${PRINT} NO FIT TO PAGE.`, PRINT]
    : [];
  const [stop] = warnings;
  const first = longest(names, width);
  if (stop === undefined)
    return [first, longest(pages, width), ...(trueSize ? [longest(prints, width)] : [])].map(plain);
  // What stops the job has two lines where the sheet's name goes beside the words about printing.
  const last = [short, ...(lineNote === undefined ? [] : [name])]
    .map((text) => [text, ...(lineNote === undefined ? [] : [lineNote])].join("; "))
    .map((text) => (trueSize ? `${text}. ${PRINT}` : text))
    .find((text) => textWidth(text, SMALL) <= width);
  const stops = fitText(stop, SMALL, width, STOP_LINES, true);
  const isWhole = stops.join(" ") === cleanText(stop);
  if (isWhole && stops.length > 1 && last !== undefined) {
    return [...stops.map((text) => ({ text, bold: true })), plain(last)];
  }
  // There is room for three lines: the page and the words about printing share one. The page is told by its label too.
  const both = trueSize
    ? [...prints.flatMap((text) => pages.map((words) => `${words}. ${text}`)), PRINT]
    : pages;
  const told = isWhole && stops.length === 1 ? [stop] : POINTERS;
  return [{ text: longest(told, width, true), bold: true }, plain(first), plain(longest(both, width))];
}

/** Lines that what stops the job may take at most; the third is needed. */
const STOP_LINES = 2;

/**
 * Where it stands in full, on a page in front or beside the view. Not by a number: pages are counted in the sheet and in
 * its file.
 */
const POINTERS: readonly string[] = [
  "STOP, not to be made as it is: read the title block of this sheet first.",
  "STOP: read the title block of this sheet first.",
  "STOP: read this sheet's title block.",
  "STOP: read the title block.",
  "STOP: see title block.",
  "STOP: see title",
];

const plain = (text: string): WordLine => ({ text, bold: false });

/** A text with what has to stand behind it whole: what there is no room for goes from the text. */
const shortened = (text: string, end: string, width: number): string =>
  fitText(text, SMALL, width - textWidth(end, SMALL), 1).join("") + end;

/** The first of the texts that fits, else the last one, shortened. */
function longest(texts: readonly string[], width: number, bold = false): string {
  const found = texts.find((text) => textWidth(text, SMALL, bold) <= width);
  return found ?? fitText(texts.at(-1) ?? "", SMALL, width, 1, bold).join("");
}
