import { invariant, type Vec2 } from "@scantling/geometry";
import { type Drawing, type DrawingItem, moveItem, type NumberPlace, rectangle } from "../drawing.js";
import { SMALL } from "../lettering-size.js";
import type { PaperSize } from "../paper.js";
import {
  TITLE_BLOCK_WIDTH,
  type TitleField,
  titleBlock,
  titleBlockHeight,
  titleNote,
} from "../title-block.js";
import { type Arrangement, FRAME_MARGIN } from "./arrange.js";
import {
  noteAndLevelBars,
  noteAndSlimBars,
  type Part,
  shortUprightBars,
  slimUprightBars,
  uprightBars,
} from "./part.js";
import { correctionWords, usualNote } from "./print-note.js";
import type { PageInfo, SheetContent } from "./sheet-content.js";

/** Room that the title block takes; the same on every page of a sheet. */
export function titleSize(content: SheetContent): { width: number; height: number } {
  const fields = titleRows(content, { paper: undefined, page: 1, pages: 1 });
  return { width: TITLE_BLOCK_WIDTH, height: titleBlockHeight(fields, TITLE_BLOCK_WIDTH) };
}

/** Lines that the first of the texts may take that stop the work. */
const STOP_LINES = 8;

/** The rows of the title block: what stops the work stands over all else. */
function titleRows(content: SheetContent, info: PageInfo): TitleField[][] {
  const { warnings = [] } = content;
  const [first] = warnings;
  const rows = content.fields(info);
  if (first === undefined) return rows;
  const label =
    warnings.length === 1
      ? "Not to be made as it is: scantling check FILE"
      : `Not to be made as it is, for ${warnings.length} reasons: scantling check FILE`;
  return [[{ label, value: first, share: 1, lines: STOP_LINES, bold: true }], ...rows];
}

/** Where the number of the page in a file of several sheets goes: at the right of the row with the order and the title. */
function numberPlace(content: SheetContent, paper: PaperSize, info: PageInfo): NumberPlace {
  const rows = titleRows(content, info);
  const at = titleNote(rows, lowerRight(paper), TITLE_BLOCK_WIDTH, rows.length - content.fields(info).length);
  return { at, anchor: "end", height: SMALL, rotation: 0 };
}

/**
 * What stands on every page of the sheet besides what it holds: each page is held against a rule by itself.
 *
 * @param paper - Where it is corrected for the printer, the words say so.
 */
export function partsOfEveryPage({ trueSize, trueLine, bars }: SheetContent, paper: PaperSize): Part[] {
  if (!trueSize) return [];
  const words = [correctionWords(paper), usualNote(trueLine)] as const;
  return bars === "slim"
    ? [slimUprightBars, noteAndSlimBars(...words)]
    : [bars === "short" ? shortUprightBars : uprightBars, noteAndLevelBars(...words)];
}

/** A page with its frame, title block, parts and view, each where the arrangement says. */
export function drawPage(
  content: SheetContent,
  paper: PaperSize,
  page: {
    readonly parts: readonly Part[];
    readonly arrangement: Arrangement;
    readonly info: PageInfo;
    readonly withView: boolean;
  },
): Drawing {
  const { parts, arrangement, info, withView } = page;
  const { origin, corners } = arrangement;
  const surround = [
    pageFrame(paper),
    ...parts.map((part, index): DrawingItem => {
      const corner = corners[index];
      invariant(corner !== undefined, "every part has found its place");
      return {
        kind: "group",
        name: part.name,
        ...(part.ofPaper === undefined ? {} : { ofPaper: part.ofPaper }),
        items: part.items(corner),
      };
    }),
    pageTitle(content, paper, info),
  ];
  return {
    width: paper.width,
    height: paper.height,
    ...(paper.name === undefined ? {} : { paper: paper.name }),
    ...(paper.correction === undefined ? {} : { correction: paper.correction }),
    origin,
    numberPlace: numberPlace(content, paper, info),
    title: content.title,
    description: content.describe(info),
    items: [
      ...surround.map((item) => moveItem(item, -origin.x, -origin.y)),
      ...(withView ? (content.view?.items ?? []) : []),
    ],
  };
}

const lowerRight = ({ width }: PaperSize): Vec2 => ({ x: width - FRAME_MARGIN, y: FRAME_MARGIN });

/** The frame of a page, in page mm. */
export const pageFrame = ({ width, height }: PaperSize): DrawingItem =>
  rectangle(
    "frame",
    { x: FRAME_MARGIN, y: FRAME_MARGIN },
    { x: width - FRAME_MARGIN, y: height - FRAME_MARGIN },
  );

/** The title block in the frame's lower right corner, in page mm. */
export const pageTitle = (content: SheetContent, paper: PaperSize, info: PageInfo): DrawingItem =>
  titleAt(content, lowerRight(paper), info);

/** The title block with its lower right corner there, in page mm. */
export const titleAt = (content: SheetContent, corner: Vec2, info: PageInfo): DrawingItem => ({
  kind: "group",
  name: "title-block",
  ofPaper: true,
  items: titleBlock(titleRows(content, info), corner, TITLE_BLOCK_WIDTH),
});
